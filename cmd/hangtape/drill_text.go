package main

import (
	"fmt"
	"strings"

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
	p.list(drill.Cautions())
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
	p.section(drill.PathsHead)
	words := paths.Words()
	last := len(words) - 1
	p.list(words[:last])
	p.item("", words[last])
}

// force tells what a catch comes to.
func (p *page) force(a drillAnswer) {
	f := a.plan.Force
	p.section("Force")
	chart := f.Chart(textWidth-4, p.unit, a.ascii)
	if chart == nil {
		p.item("", drill.ForceNotKnown)
		return
	}
	p.item("", drill.ChartWords)
	p.line("")
	for _, l := range chart {
		p.line("  " + strings.TrimRight(l, " "))
	}
	p.line("")
	p.list(f.DropWords(p.unit))
	p.item("", drill.StayHead)
	p.list(f.StayWords(p.unit))
	p.item("", drill.LeftOut)
}

// rehearsal teaches one move.
func (p *page) rehearsal(a drillAnswer) {
	r := a.plan.Rehearsal
	p.section("One move, to rehearse")
	for _, l := range r.Words(p.unit) {
		if strings.HasPrefix(l, "- ") {
			p.line(indented(5, l))
			continue
		}
		p.item("", l)
	}
	if a.height > 0 {
		p.item("", r.Climb(a.height, p.unit).In(p.unit))
	}
}
