package pages

import (
	"fmt"
	"strings"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/compare"
)

// Compare is two sessions side by side: who and when, what changed, then all
// there is.
func Compare(c *compare.Comparison, l Look) []string {
	p := comparing(c, l)
	p.line("")
	p.para(0, "Everything, B less A. * marks what changed by more than its uncertainty (95 %); ×3 was read three times, est. is estimated, pred. predicted; ± is one standard uncertainty. Heights count from the hip point.")
	p.rows("Readings and labels", c.Readings, rules.InputName)
	p.rows("Lengths of the pieces at the end", c.Lengths, pieceNamed)
	p.rows("Poses", c.Poses, poseName)
	p.checkRows(c.Checks)
	p.cautions()
	return p.lines
}

// Changes is what changed between two sessions, alone.
func Changes(c *compare.Comparison, l Look) []string {
	p := comparing(c, l)
	p.cautions()
	return p.lines
}

// comparing is a page that has told which sessions and what changed.
func comparing(c *compare.Comparison, l Look) *page {
	p := newPage(l)
	p.head("A", c.A)
	p.head("B", c.B)
	if !c.SameClimber {
		p.para(0, "These are not told to be the same climber: a change may be that of the person.")
	}
	p.changes("What changed from A to B by more than its uncertainty (95 %)", c.Changes())
	return p
}

func (p *page) head(letter string, h compare.Head) {
	var about []string
	for _, word := range []string{p.typed(h.Climber), p.typed(h.Place), day(h.Started), sessions.Purpose(h.Purpose).Word()} {
		if word != "" {
			about = append(about, word)
		}
	}
	name := p.typed(h.File)
	if name == "" {
		name = h.ID
	}
	p.para(0, letter+": "+name)
	p.para(3, strings.Join(about, ", ")+": "+h.Outcome.Loud())
}

// day is the date of a time in RFC 3339.
func day(started string) string {
	date, _, _ := strings.Cut(started, "T")
	return date
}

// changes tells what changed in sentences.
func (p *page) changes(title string, c compare.Changes) {
	p.section(title)
	p.changed(c)
}

// changed tells what changed, an item each.
func (p *page) changed(c compare.Changes) {
	if c.None() {
		p.item("", "nothing")
		return
	}
	for _, r := range c.Checks {
		p.item(r.Name, p.checkChange(r))
	}
	for _, r := range c.Lengths {
		p.item(pieceNamed(r.Name), p.rowChange(r))
	}
	for _, r := range c.Readings {
		p.item(rules.InputName(r.Name), p.rowChange(r))
	}
	for _, m := range c.Limits {
		p.item("limit "+m.Name, fmt.Sprintf("%s, then %s", p.limit(float64(m.A), m.Unit), p.limit(float64(m.B), m.Unit)))
	}
	for _, w := range c.Told {
		p.item(toldName(w.Key), fmt.Sprintf("%s, then %s", p.told(w.Key, w.A), p.told(w.Key, w.B)))
	}
}

func (p *page) checkChange(r compare.CheckRow) string {
	text := r.A.Verdict.Loud() + " then and now"
	if r.VerdictChanged {
		text = fmt.Sprintf("%s, then %s", r.A.Verdict.Loud(), r.B.Verdict.Loud())
	}
	switch {
	case !r.Delta.Known():
		return text
	case r.Changed:
		return text + "; margin " + p.moreOrLess(r.Delta, r.U, r.Unit)
	}
	return text + "; the margin did not change by more than its uncertainty"
}

func (p *page) rowChange(r compare.Row) string {
	return fmt.Sprintf("%s, then %s: %s", p.value(r.A.Value, r.A.U, r.Unit), p.value(r.B.Value, r.B.U, r.Unit), p.moreOrLess(r.Delta, r.U, r.Unit))
}

func (p *page) moreOrLess(delta, u rules.Num, unit string) string {
	word := "more"
	if delta < 0 {
		word, delta = "less", -delta
	}
	return p.value(delta, u, unit) + " " + word
}

// The columns of the wide layout.
const (
	wideFrom   = 80
	nameColumn = 24
	sideColumn = 20
)

// table is a row with a name, both sides and the change; a line each where there
// is no room for columns.
func (p *page) table(name, a, b, change string) {
	if p.Width >= wideFrom {
		above := ""
		if width(name) >= nameColumn {
			above, name = name, ""
		}
		row := column(name, nameColumn) + column(a, sideColumn) + column(b, sideColumn) + change
		if width(row) <= p.Width {
			if above != "" {
				p.line(above)
			}
			p.line(row)
			return
		}
		name += above
	}
	p.para(0, name)
	sides := "  A " + a + "  B " + b
	if width(sides) > p.Width {
		p.line("  A " + a)
		sides = "  B " + b
	}
	p.line(sides)
	p.line("  change " + strings.TrimPrefix(change, " "))
}

// column is a cell that at least one blank parts from the next one.
func column(s string, width int) string { return pad(s+" ", width) }

func (p *page) columns(title string) {
	p.section(title)
	if p.Width >= wideFrom {
		p.line(pad("", nameColumn) + pad("A", sideColumn) + pad("B", sideColumn) + " change")
	}
}

func (p *page) rows(title string, rows []compare.Row, name func(string) string) {
	if len(rows) == 0 {
		return
	}
	p.columns(title)
	for _, r := range rows {
		p.table(name(r.Name), p.side(r.A, r.Unit), p.side(r.B, r.Unit), p.change(r))
	}
}

func (p *page) side(s compare.Side, unit string) string {
	text := p.value(s.Value, s.U, unit)
	switch {
	case !s.Value.Known():
		return "not known"
	case s.N > 1:
		text += fmt.Sprintf(" ×%d", s.N)
	}
	switch s.Origin {
	case fit.Estimated.String():
		text += " est."
	case fit.Predicted.String():
		text += " pred."
	}
	return text
}

func (p *page) change(r compare.Row) string {
	switch {
	case !r.Delta.Known():
		return " -"
	case r.Shared:
		return " same reading"
	case r.Delta == 0 && r.U == 0:
		return " same"
	}
	return p.signed(r.Delta, r.U, r.Unit, r.Changed)
}

// signed is a difference with its sign, marked where it is a change.
func (p *page) signed(delta, u rules.Num, unit string, changed bool) string {
	text := p.value(delta, u, unit)
	if delta > 0 {
		text = "+" + text
	}
	if changed {
		return "*" + text
	}
	return " " + text
}

func (p *page) checkRows(rows []compare.CheckRow) {
	p.columns("Margins and verdicts, by the rules of today")
	for _, r := range rows {
		change := " -"
		switch {
		case r.Delta == 0 && r.U == 0:
			change = " same"
		case r.Delta.Known():
			change = p.signed(r.Delta, r.U, r.Unit, r.Changed)
		}
		p.table(r.Name, p.checkSide(r.A, r.Unit), p.checkSide(r.B, r.Unit), change)
	}
}

func (p *page) checkSide(s compare.CheckSide, unit string) string {
	if !s.Margin.Known() {
		return s.Verdict.Loud()
	}
	return s.Verdict.Loud() + " " + p.value(s.Margin, s.U, unit)
}
