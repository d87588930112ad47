package sheet

import (
	"strings"
	"unicode"

	"github.com/mattn/go-runewidth"

	"example.com/hangtape/rules"
)

// language is that of all words, for readers that speak (BCP 47).
const language = "en"

// textWidth is what fits most terminals, and paper.
const textWidth = 80

// A textPage is plain text as it grows, no line wider than textWidth cells.
type textPage struct{ strings.Builder }

// line writes s broken between words, all lines after so many blanks and those
// after the first after more.
func (p *textPage) line(blanks, more int, s string) {
	if s == "" {
		p.WriteString("\n")
	}
	for i, l := range wrapCells(visible(s), textWidth-blanks-more) {
		if i == 1 {
			blanks += more
		}
		p.WriteString(strings.Repeat(" ", blanks) + l + "\n")
	}
}

// columns writes s as it is, whose blanks keep its columns; where it is wider
// than a line it is broken like any other.
func (p *textPage) columns(s string) {
	if runewidth.StringWidth(s) > textWidth {
		p.line(2, 2, s)
		return
	}
	p.WriteString(visible(s) + "\n")
}

func (p *textPage) section(title string) { p.line(0, 0, ""); p.line(0, 0, title) }

// items are the lines of a section; none where there are no lines.
func (p *textPage) items(title string, lines []string) {
	if len(lines) == 0 {
		return
	}
	p.section(title)
	for _, l := range lines {
		p.line(2, 2, l)
	}
}

// wrapCells breaks s into lines of at most width cells of a terminal, also inside
// a word that is wider.
func wrapCells(s string, width int) []string {
	var lines []string
	line := ""
	for _, word := range rules.Unbroken(s) {
		joined := strings.TrimPrefix(line+" "+word, " ")
		if runewidth.StringWidth(joined) <= width {
			line = joined
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		for line = word; runewidth.StringWidth(line) > width; {
			head := runewidth.Truncate(line, width, "")
			lines, line = append(lines, head), line[len(head):]
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// padded is s with blanks after it up to so many cells.
func padded(s string, cells int) string { return runewidth.FillRight(s, cells) }

// visible is s with what a terminal may take for a command, or that turns text
// around, as Instead.
func visible(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsPrint(r) || unicode.IsSpace(r) {
			return r
		}
		return Instead
	}, s)
}
