package pages

import (
	"fmt"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/compare"
)

// ways tells what was changed between the hangs, and what came of it: the
// verdicts before the first change against those at the end.
func (p *page) ways(f *sessions.File) {
	s := f.Session
	if len(s.Fit.Changes) == 0 {
		return
	}
	p.section("Changes between the hangs")
	for _, c := range s.Fit.Changes {
		text := "to " + p.length(c.To)
		if c.From.Known {
			text = "from " + p.length(c.From.V) + " " + text
		}
		text = fmt.Sprintf("%s, after hang %d", text, c.AfterHang)
		if len(c.Measured) > 0 {
			text += ", laid on again: " + p.length(fit.Mean(c.Measured))
		} else {
			text += ", not laid on again"
		}
		p.item(rules.PieceName(c.Piece), text)
	}
	c, err := compare.Of(before(f), f)
	if err != nil {
		return // the session itself cannot be judged, which is told already
	}
	p.section("Checks before the first change and at the end")
	for _, r := range c.Checks {
		if r.Changed || r.VerdictChanged {
			p.item(r.Name, p.checkChange(r))
		}
	}
	if len(c.Changes().Checks) == 0 {
		p.item("", "No margin changed by more than its uncertainty.")
	}
}

// before is the session as it was before its first change: the hangs until
// then.
func before(f *sessions.File) *sessions.File {
	s := f.Session.Clone()
	first := len(s.Fit.Hangs)
	for _, c := range s.Fit.Changes {
		first = min(first, c.AfterHang)
	}
	s.Fit.Hangs, s.Fit.Changes = s.Fit.Hangs[:first], nil
	return &sessions.File{Name: f.Name, Session: s}
}
