package tui

import (
	"slices"
	"strconv"
	"strings"

	"example.com/hangtape/rules"
	"example.com/hangtape/tui/flow"
	"example.com/hangtape/tui/sideview"
)

// group is the step with that number in the list of steps, or nil after it was
// said that there is none.
func (p *plain) group(number string) *flow.Group {
	groups := p.flow.Asked()
	n, err := strconv.Atoi(number)
	if err != nil || n < 1 || n > len(groups) {
		p.say("%q is no step; 1 to %d are.", number, len(groups))
		return nil
	}
	return &groups[n-1]
}

// questions tells the questions of a step, also those that are passed over on the
// way.
func (p *plain) questions(number string) {
	g := p.group(number)
	if g == nil {
		return
	}
	for i, place := range g.Places {
		a := p.flow.Steps[place.Step].Asks[place.Ask]
		p.say("%d: %s", i+1, a.ToldAs(&p.flow.Draft, p.flow.Session.Unit))
	}
	p.say("go %s QUESTION goes to one of them.", number)
}

// goTo goes to a step, or to a question of it: "3", "3 2".
func (p *plain) goTo(where string) {
	step, question, one := strings.Cut(where, " ")
	g := p.group(step)
	if g == nil {
		return
	}
	n := 1
	if one {
		var err error
		if n, err = strconv.Atoi(strings.TrimSpace(question)); err != nil || n < 1 || n > len(g.Places) {
			p.say("%q is no question of step %s; 1 to %d are.", question, step, len(g.Places))
			return
		}
	}
	p.do(flow.GoTo{Place: g.Places[n-1]})
}

// explain tells what a check means and what a longer piece does to its margin, or
// what another word means.
func (p *plain) explain(name string) {
	name = strings.TrimSpace(name)
	if r := p.flow.Report; r != nil {
		if i := slices.IndexFunc(r.Checks, func(c rules.Check) bool { return c.Name == name }); i >= 0 {
			for _, l := range aboutCheck(&p.flow, r.Checks[i]) {
				p.say("%s", l)
			}
			return
		}
	}
	topic, ok := rules.Explain(name)
	if !ok {
		p.say("Nothing is called %q.", name)
		return
	}
	p.sayTopic(topic)
}

// sayTopic says an explanation, and of a reading where the tape goes.
func (p *plain) sayTopic(t rules.Topic) {
	for l := range strings.Lines(t.Text(1000)) {
		if l = strings.TrimSpace(l); l != "" {
			p.say("%s", l)
		}
	}
	if r, ok := t.Reading(); ok && sideview.Tape(r) != "" {
		p.say("%s", sideview.Tape(r))
	}
}
