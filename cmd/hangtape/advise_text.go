package main

import (
	"fmt"
	"slices"
	"strings"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/advice"
	"example.com/hangtape/sessions"
)

// advicePage is the text of an answer of advise.
type advicePage struct {
	page
	cord func(piece fit.Piece, finished float64) string // to cut for a piece; nil: none is told
}

// column is the checks of one moment: as they are, or after an answer.
type column struct {
	title  string
	checks []advice.Check
}

func (p *advicePage) answer(f *sessions.File, a *advice.Answer) {
	short := advice.ShortMusts(a.LeastChange.Checks, a.Unknown)
	p.line(printable(f.Name) + ": " + adviceHead(a.Conflict != nil, a.LeastChange.Changes, len(short), len(a.Unknown)))
	p.about(f.Session)
	p.stopped(a.StoppedEarly)
	p.keys("Rests on an estimate: lengths to cut and start from, not a fitting", a.Estimated)
	if a.Sooner != nil {
		p.section("Read again first")
		p.item("", a.Sooner.Words(a.LeastChange.Cost))
	}
	columns := []column{{"now", a.Now}}
	if a.Conflict != nil {
		p.section("Why no set of lengths can pass")
		p.item("", a.Conflict.Words(p.unit))
		p.table("Musts as they are, by margin and guard alone", columns, true)
	} else if len(a.LeastChange.Changes)+len(a.BestFit.Changes) == 0 {
		p.table("Musts as they are, by margin and guard alone", columns, true)
		p.left(short)
	} else {
		columns = p.outcomes(columns, outcome{a.LeastChange.Cost, a.LeastChange.Changes, a.LeastChange.Checks},
			outcome{a.BestFit.Cost, a.BestFit.Changes, a.BestFit.Checks})
		p.table("Checks before and after, by margin and guard alone; after is predicted", columns, true)
		p.left(short)
	}
	p.cordToCut(a.LeastChange.Changes, a.BestFit.Changes)
	p.names("Not known for want of a reading", a.Unknown)
	p.bounds(a.OddBounds)
	p.closing(len(a.LeastChange.Changes)+len(a.BestFit.Changes) > 0)
}

// adviceHead is an answer in a line; short counts the musts that no length
// settles, unknown those that wait for a reading.
func adviceHead(conflict bool, changes []advice.Change, short, unknown int) string {
	pieces := slices.DeleteFunc(slices.Clone(changes), func(c advice.Change) bool { return c.Window == nil })
	head := rules.Count(len(pieces), "piece", "pieces") + " to change"
	switch {
	case conflict:
		head = "NO SET OF LENGTHS CAN PASS"
	case len(pieces) == 0 && len(changes) > 0:
		head = "no piece to change, more rope above"
	case len(pieces) == 0:
		head = "nothing to change"
	}
	if short > 0 && !conflict {
		head += ", and not enough for " + rules.Count(short, "must", "musts")
	}
	if unknown > 0 {
		head += fmt.Sprintf("; %s not known", rules.Count(unknown, "must", "musts"))
	}
	return head
}

// outcome is what is told of one of the two answers.
type outcome struct {
	cost    int
	changes []advice.Change
	checks  []advice.Check
}

// outcomes tells both answers, and adds their checks to the columns.
func (p *advicePage) outcomes(columns []column, least, best outcome) []column {
	p.outcome("Least change", "every must that the lengths can move passes", least)
	if advice.SameChanges(least.changes, best.changes) {
		p.section("Best fit: the same")
		if len(least.changes) > 0 {
			columns = append(columns, column{"after", least.checks})
		}
		return columns
	}
	p.outcome("Best fit", "and as many shoulds as can be", best)
	return append(columns, column{"least change", least.checks}, column{"best fit", best.checks})
}

func (p *advicePage) outcome(title, what string, o outcome) {
	p.section(fmt.Sprintf("%s, work %d: %s (predicted)", title, o.cost, what))
	for i := range o.changes {
		p.item("", o.changes[i].Words(p.unit))
	}
	if len(o.changes) == 0 {
		p.item("", "nothing to change")
	}
}

// bounds tells which bounds are not simply what was searched.
func (p *advicePage) bounds(odd []advice.OddBound) {
	if len(odd) == 0 {
		return
	}
	p.section(advice.BoundsHead)
	for _, words := range advice.BoundWords(odd, p.unit) {
		p.item("", words)
	}
}

// cordToCut tells how much cord to cut for the pieces that are tied anew.
func (p *advicePage) cordToCut(answers ...[]advice.Change) {
	told := advice.CordWords(p.cord, answers...)
	if len(told) == 0 {
		return
	}
	p.section(rules.CordHead)
	p.list(told)
	p.item("", rules.CordCautions()[0])
}

// table sets the checks side by side: what an answer turns, and the musts, all
// or those that are short of pass.
func (p *advicePage) table(title string, columns []column, allMusts bool) {
	p.title(title)
	const name, width = 25, 15
	row := fmt.Sprintf("  %-*s", name, "")
	for _, c := range columns {
		row += fmt.Sprintf("%-*s", width, c.title)
	}
	if len(columns) > 1 {
		p.line(strings.TrimRight(row, " "))
	}
	for i, now := range columns[0].checks {
		id, _ := rules.CheckNamed(now.Name)
		turned := slices.ContainsFunc(columns, func(c column) bool { return c.checks[i].Verdict != now.Verdict })
		if must := id.Info().Kind == rules.Must && (allMusts || now.Verdict != rules.Pass); !must && !turned {
			continue
		}
		row := fmt.Sprintf("  %-*s", name, now.Name)
		for _, c := range columns {
			row += fmt.Sprintf("%-*s", width, c.checks[i].Brief(p.unit))
		}
		p.line(strings.TrimRight(row, " "))
	}
}

// left tells what is short of pass after the least change too, since no length
// moves it.
func (p *advicePage) left(short []advice.Check) {
	if len(short) == 0 {
		return
	}
	p.section("What no length that may change will settle")
	for _, c := range short {
		id, _ := rules.CheckNamed(c.Name)
		p.item(c.Name+" "+c.Verdict.Loud(), id.Info().Do)
	}
}

func (p *advicePage) stopped(early bool) {
	if early {
		p.line("The search was stopped early: there may be a better answer.")
	}
}

func (p *advicePage) keys(title string, keys []string) {
	names := make([]string, len(keys))
	for i, k := range keys {
		names[i] = rules.InputName(k)
	}
	p.names(title, names)
}

func (p *advicePage) names(title string, names []string) {
	if len(names) > 0 {
		p.title(title)
		for _, n := range names {
			p.item("", n)
		}
	}
}

// closing tells what an answer is not.
func (p *advicePage) closing(changes bool) {
	if changes {
		p.line("\n" + indented(0, advice.Setting+" The window of a piece holds with the others where they are told to be; windows do not add up."))
	}
	p.cautions()
}
