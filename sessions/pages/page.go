// Package pages tells past fittings to people: one session, two side by side, a
// climber's over the years. A page is lines of plain text for a terminal of a
// given width; it neither reads files nor looks at a clock.
package pages

import (
	"strconv"
	"strings"
	"time"

	"github.com/mattn/go-runewidth"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// A Look is how a page is to be written.
type Look struct {
	Width int                 // cells; at least 44
	Unit  string              // of lengths: mm, cm or in
	ASCII bool                // no signs beyond ASCII in charts
	Clean func(string) string // makes safe what people typed; nil leaves it
	Signs func(string) string // puts a text into the signs that the screen has; nil leaves it
}

// page is a page as it grows.
type page struct {
	Look
	lines []string
}

func newPage(l Look) *page {
	l.Width = max(44, l.Width)
	if l.Clean == nil {
		l.Clean = func(s string) string { return s }
	}
	if l.Signs == nil {
		l.Signs = func(s string) string { return s }
	}
	return &page{Look: l}
}

func (p *page) line(text string) { p.lines = append(p.lines, strings.TrimRight(text, " ")) }

// para is text broken between words, every line after so many blanks; a word
// that is longer than a line is cut into lines.
func (p *page) para(blanks int, text string) {
	before, room := strings.Repeat(" ", blanks), p.Width-blanks
	for l := range strings.SplitSeq(strings.TrimRight(rules.Wrap(p.Signs(text), room), "\n"), "\n") {
		for width(l) > room {
			head := runewidth.Truncate(l, room, "")
			p.line(before + head)
			l = l[len(head):]
		}
		p.line(before + l)
	}
}

func (p *page) section(title string) {
	p.line("")
	p.para(0, title)
}

// item is one entry of a section: a name, where it has one, and a text.
func (p *page) item(name, text string) {
	switch {
	case text == "":
		return
	case name != "":
		text = name + ": " + text
	}
	p.para(2, text)
}

// typed is what people typed, in one line and safe to show.
func (p *page) typed(s string) string { return p.Clean(strings.Join(strings.Fields(s), " ")) }

// length is a length that was read, as the tape shows it.
func (p *page) length(mm float64) string { return rules.FormatTold(mm, "mm", p.Unit) }

// unitOf is the unit in which a quantity is shown.
func (p *page) unitOf(unit string) string {
	if unit == "mm" {
		return p.Unit
	}
	return unit
}

// value is a quantity with its standard uncertainty.
func (p *page) value(v, u rules.Num, unit string) string {
	if unit == "" && !(u > 0) && v.Known() { // a count
		return strconv.FormatFloat(float64(v), 'g', 4, 64)
	}
	return p.Signs(rules.FormatPM(float64(v), float64(u), p.unitOf(unit)))
}

// limit is a limit as it was set.
func (p *page) limit(v float64, unit string) string { return rules.FormatTold(v, unit, p.Unit) }

func (p *page) cautions() {
	p.section("Cautions")
	for _, c := range append([]string{rules.ShortCaution}, rules.VerdictCautions()...) {
		p.item("", c)
	}
}

// dayOf is a day as people write it down; "no date" where it is not told.
func dayOf(t time.Time) string {
	if t.IsZero() {
		return "no date"
	}
	return t.Format("2006-01-02")
}

// pad is s in at least so many cells.
func pad(s string, cells int) string {
	return s + strings.Repeat(" ", max(0, cells-width(s)))
}

// width is how many cells of a terminal s takes.
func width(s string) int {
	for i := range len(s) {
		if s[i] >= 0x80 {
			return runewidth.StringWidth(s)
		}
	}
	return len(s)
}

// pieceNamed is a piece's name in words by its key.
func pieceNamed(key string) string {
	for p := range fit.NumPieces {
		if p.Key() == key {
			return rules.PieceName(p)
		}
	}
	return key
}
