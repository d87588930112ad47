package pages

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/history"
)

// History is a climber's sessions in the order of time: when the climber is due
// again, the margins over time, what the rules and limits of today judge
// otherwise, and what changed from one to the next.
func History(h *history.History, l Look) []string {
	p := newPage(l)
	p.para(0, p.typed(h.Climber)+": "+rules.Count(len(h.Sessions), "session", "sessions"))
	p.para(0, due(h.Due))
	p.section("Sessions")
	for i, s := range h.Sessions {
		p.past(s)
		if i > 0 && s.ID == h.Sessions[i-1].ID {
			p.para(4, "the same id as the one before: a copy, "+p.typed(filepath.Base(s.File)))
		}
	}
	p.margins(h.Sessions)
	p.judgedToday(h.Sessions)
	p.steps(h.Sessions)
	p.cautions()
	return p.lines
}

// People is everybody of a folder and who is due for a re-check.
func People(all []history.Person, l Look) []string {
	p := newPage(l)
	n := 0
	for _, who := range all {
		if who.Due.Now {
			n++
		}
	}
	p.para(0, fmt.Sprintf("%s, %d due for a re-check", rules.Count(len(all), "climber", "climbers"), n))
	for _, who := range all {
		p.item(p.typed(who.Climber), join(due(who.Due), rules.Count(who.Sessions, "session", "sessions"), prefixed("the last ", who.Last)))
	}
	return p.lines
}

// due says when a climber is due for a re-check.
func due(d history.Due) string {
	switch {
	case d.Signed == "":
		return "DUE: nobody has signed a session yet"
	case d.Now && d.Days == 0:
		return "DUE for a re-check today; last signed " + d.Signed
	case d.Now:
		return fmt.Sprintf("DUE for a re-check since %s, %s; last signed %s", d.On, rules.Count(-d.Days, "day", "days"), d.Signed)
	}
	return fmt.Sprintf("due for a re-check on %s, in %s; last signed %s", d.On, rules.Count(d.Days, "day", "days"), d.Signed)
}

// past is one session in the list.
func (p *page) past(s history.Session) {
	head := join(dayOfStamp(s.Started), sessions.Purpose(s.Purpose).Word(), p.typed(s.Place), p.typed(s.Kit))
	switch {
	case s.Error != "":
		p.item("", head+": cannot be judged")
		p.para(4, p.typed(s.Error))
		return
	case s.Signed != nil:
		head += fmt.Sprintf(": %s, signed %s %s", s.Outcome.Loud(), s.Signed.Outcome.Loud(), by(p.typed(s.Signed.By)))
	default:
		head += ": " + s.Outcome.Loud() + ", not signed"
	}
	if !s.Finished && s.Signed == nil {
		head += ", not finished"
	}
	p.item("", head)
}

// steps tells what changed from each session to the next.
func (p *page) steps(all []history.Session) {
	titled := false
	for i, s := range all {
		if s.Since == nil {
			continue
		}
		if !titled {
			p.section("What changed from one to the next by more than its uncertainty (95 %)")
			titled = true
		}
		p.item("", dayOfStamp(all[i-1].Started)+" to "+dayOfStamp(s.Started))
		indented := *p
		indented.lines, indented.Width = nil, p.Width-2
		indented.changed(*s.Since)
		for _, l := range indented.lines {
			p.line("  " + l)
		}
	}
}

func dayOfStamp(started string) string {
	if started == "" {
		return "no date"
	}
	return day(started)
}

// margins draws how the margins of the checks moved that are of interest: some
// verdict is not pass, or some margin changed.
func (p *page) margins(all []history.Session) {
	interesting := map[string]bool{}
	for _, s := range all {
		for _, c := range s.Checks {
			if c.Verdict != rules.Pass {
				interesting[c.Name] = true
			}
		}
		if s.Since != nil {
			for _, c := range s.Since.Checks {
				interesting[c.Name] = true
			}
		}
	}
	p.section("Margins over time")
	if len(interesting) > 0 {
		s := p.signs()
		p.para(2, fmt.Sprintf("%s is 0: left of it a check fails. %s is the guard: from there it passes.", s.zero, s.guard))
		if slices.ContainsFunc(all, tightBeyondGuard) {
			p.para(2, "TIGHT from there on rests on what is estimated, predicted or in doubt.")
		}
	}
	var calm []string
	for id := range rules.NumChecks {
		name := id.Info().Name
		if !interesting[name] {
			calm = append(calm, name)
			continue
		}
		p.bars(name, all)
	}
	if len(calm) > 0 && len(calm) < int(rules.NumChecks) {
		p.line("")
	}
	if len(calm) > 0 {
		p.item("always PASS, without a change", strings.Join(calm, ", "))
	}
}

// tightBeyondGuard says whether a check of s has its guard and is no pass all the
// same.
func tightBeyondGuard(s history.Session) bool {
	return slices.ContainsFunc(s.Checks, func(c history.Check) bool { return c.Verdict == rules.Tight && c.Margin >= c.Guard })
}

// judgedToday tells the sessions that the rules and limits of today judge
// otherwise.
func (p *page) judgedToday(all []history.Session) {
	p.section("What the rules and limits of today judge otherwise")
	none := true
	for _, s := range all {
		if len(s.Today.Differs) == 0 {
			continue
		}
		none = false
		p.item("", fmt.Sprintf("%s, %s: %s today", dayOfStamp(s.Started), sessions.Purpose(s.Purpose).Word(), s.Today.Outcome.Loud()))
		for _, d := range s.Today.Differs {
			then := d.Then.Word()
			if then == "" {
				then = "not judged"
			}
			p.para(4, fmt.Sprintf("%s: %s then, %s now", d.Check, then, d.Now.Word()))
		}
	}
	if none {
		p.item("", "nothing")
	}
}
