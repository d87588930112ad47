package main

import (
	"fmt"
	"math"
	"strings"

	"example.com/hangtape/rules"
	"example.com/hangtape/rules/drill"
	"example.com/hangtape/sessions"
)

// drill tells a plan to people, in the order in which they need it.
func (p *page) drill(f *sessions.File, a drillAnswer) {
	head := "the drill may be done"
	if len(a.plan.Refused) > 0 {
		head = "NO DRILL YET"
	}
	p.line(printable(f.Name) + ": " + head)
	p.about(f.Session)
	if len(a.plan.Refused) > 0 {
		p.section("Why not yet")
		for _, r := range a.plan.Refused {
			p.item("", "- "+r.In(p.unit))
		}
	}
	p.section("Before anybody loads a tether")
	for _, c := range drill.Cautions() {
		p.item("", "- "+c)
	}
	p.section("Where to hang")
	p.item("", a.plan.HangAtWords(p.unit))
	first := 0 // the step that tells how a hitch is eased
	for i, s := range a.plan.Steps {
		p.step(i+1, s, first)
		if s.Eases && first == 0 {
			first = i + 1
		}
	}
	p.paths(a.plan.Paths)
	p.force(a)
	p.rehearsal(a)
	p.drilled(a.review)
	p.cautions()
}

// drilled tells what a drill that was done has shown.
func (p *page) drilled(r *drill.Review) {
	if r == nil {
		return
	}
	p.section("What was seen in the drill")
	for _, l := range r.Words(p.unit) {
		p.item("", l)
	}
}

// step tells a step; what is the same for every hitch that is eased stands with
// the first one.
func (p *page) step(n int, s drill.Step, first int) {
	p.section(fmt.Sprintf("%d. %s", n, s.Title))
	again := s.Eases && first > 0
	if s.Eases && !again {
		p.item("slack first", drill.TakeUpSlack().In(p.unit))
	}
	p.item("", s.Do.In(p.unit))
	if again {
		p.item("", fmt.Sprintf("Slack first, to be seen, STOP and then: as in step %d.", first))
	}
	for _, see := range s.See {
		if !again {
			p.item("", "- to be seen: "+see.In(p.unit))
		}
	}
	for _, e := range s.Expect {
		p.item("", "- expected: "+e.In(p.unit))
	}
	if !again {
		p.item("STOP", s.Stop.In(p.unit)+".")
		p.item("then", s.Then.In(p.unit))
	}
}

// paths names the ways from saddle to rope.
func (p *page) paths(paths drill.Paths) {
	p.section("Ways from saddle to rope")
	for _, c := range paths.Chains {
		p.item("", "- saddle, "+strings.Join(c, ", ")+", rope")
	}
	switch {
	case !paths.Known:
		p.item("", "How many of them share no part is not known: it was not said on which rings the backup bridge hangs.")
	case len(paths.Shared) > 0:
		p.item("", fmt.Sprintf("%d without a part in common; each of these alone holds the climber: %s.", paths.Ways, strings.Join(paths.Shared, ", ")))
	default:
		p.item("", fmt.Sprintf("%d without a part in common. Saddle webbing, rope and union are shared by all.", paths.Ways))
	}
}

// force tells what a catch comes to.
func (p *page) force(a drillAnswer) {
	f := a.plan.Force
	p.section("Force")
	chart := f.Chart(textWidth-4, p.unit, a.ascii)
	if chart == nil {
		p.item("", "Not known: mass, rope and the lengths behind the drop are needed.")
		return
	}
	p.item("", drill.ChartWords)
	p.line("")
	for _, l := range chart {
		p.line("  " + strings.TrimRight(l, " "))
	}
	p.line("")
	for d := range drill.NumFalls {
		p.item("", fmt.Sprintf("- drop, %s: %s", d, rules.FormatLength(f.Drops[d], p.unit)))
	}
	p.item("", "So far below the union each stays, at least, with these lengths:")
	for _, s := range f.Stay {
		p.item("", "- "+p.stay(s, f.Limits))
	}
	p.item("", drill.LeftOut)
}

// stay tells how far below the union a climber stays.
func (p *page) stay(s drill.Stay, limits [2]float64) string {
	below := func(mm, limit float64) string {
		if math.IsNaN(mm) {
			return fmt.Sprintf("no rope is long enough for %.1f kN", limit)
		}
		return fmt.Sprintf("%s for %.1f kN", rules.FormatBelow(mm, p.unit), limit)
	}
	return fmt.Sprintf("a climber of %.0f kg: %s, better %s", s.Mass, below(s.Peak, limits[0]), below(s.Saddle, limits[1]))
}

// rehearsal teaches one move.
func (p *page) rehearsal(a drillAnswer) {
	r := a.plan.Rehearsal
	p.section("One move, to rehearse")
	for i, m := range r.Moves {
		p.item("", fmt.Sprintf("%d. %s", i+1, m.Do))
		for _, e := range m.Expect {
			p.line(indented(5, "- "+e.In(p.unit)))
		}
	}
	if a.height > 0 {
		p.item("", r.Climb(a.height, p.unit).In(p.unit))
	}
}
