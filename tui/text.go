package tui

import (
	"strings"
	"time"
	"unicode"

	"github.com/charmbracelet/x/ansi"

	"example.com/hangtape/rules"
)

// clean is text from a file or a person made safe to draw: control characters
// and those that turn the direction of writing become a visible mark.
func clean(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t':
			return ' '
		case unicode.IsControl(r), turns(r):
			return '?'
		}
		return r
	}, s)
}

// turns says whether a sign turns the direction of writing.
func turns(r rune) bool { return r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069 }

// minuteOf is when something was, by the clock of the place where the program runs:
// sessions of one day are told apart by it.
func minuteOf(t time.Time) string { return t.Local().Format("2006-01-02 15:04") }

// wrap breaks prose into lines of at most width cells, at spaces where it can.
// A number and its unit or sign stay together.
func wrap(s string, width int) []string {
	if width < 1 {
		return nil
	}
	var lines []string
	line := ""
	for _, w := range rules.Unbroken(s) {
		for ansi.StringWidth(w) > width { // longer than a line: cut it
			if line != "" {
				lines, line = append(lines, line), ""
			}
			head := ansi.Truncate(w, width, "")
			lines = append(lines, head)
			w = strings.TrimPrefix(w, head)
			if head == "" {
				return lines
			}
		}
		switch {
		case line == "":
			line = w
		case ansi.StringWidth(line)+1+ansi.StringWidth(w) <= width:
			line += " " + w
		default:
			lines, line = append(lines, line), w
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// wrap breaks prose after its signs are those that the screen has: some are
// longer in ASCII, and a line that grew would be cut.
func (t theme) wrap(s string, width int) []string { return wrap(t.signs(s), width) }

// signs is s in the signs that the screen has.
func (t theme) signs(s string) string {
	if t.ascii {
		return plainSigns.Replace(s)
	}
	return s
}

// cut is s in at most width cells.
func cut(s string, width int) string {
	if width < 1 {
		return ""
	}
	return ansi.Truncate(s, width, "")
}

// pad is s in exactly width cells.
func pad(s string, width int) string {
	s = cut(s, width)
	return s + strings.Repeat(" ", max(0, width-ansi.StringWidth(s)))
}

// spread puts left and right at the ends of a line; right is kept whole.
func spread(left, right string, width int) string {
	if right == "" {
		return cut(left, width)
	}
	return pad(left, max(0, width-ansi.StringWidth(right)-1)) + " " + cut(right, width)
}

// plainSigns are the signs beyond ASCII that the program itself uses.
var plainSigns = strings.NewReplacer("±", "+-", "°", " deg", "·", "|", "×", "x", "≤", "<=", "≥", ">=", "…", "...", "–", "-")

func textWidth(s string) int { return ansi.StringWidth(s) }
