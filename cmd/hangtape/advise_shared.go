package main

import (
	"fmt"
	"slices"
	"strings"

	"example.com/hangtape/rules"
	"example.com/hangtape/rules/advice"
	"example.com/hangtape/sessions"
)

// shared tells what one kit for several climbers has to be.
func (p *advicePage) shared(files []*sessions.File, a *advice.SharedAnswer) {
	names := make([]string, len(a.Files))
	for i, f := range a.Files {
		names[i] = printable(f)
	}
	short, unknown := 0, 0
	for i, checks := range a.LeastChange.Checks {
		short, unknown = short+len(advice.ShortMusts(checks, a.Unknown[i])), unknown+len(a.Unknown[i])
	}
	p.line(indented(0, "one kit for "+strings.Join(names, ", ")+": "+adviceHead(a.Conflict != nil, a.LeastChange.Changes, short, unknown)))
	p.stopped(a.StoppedEarly)
	for i, keys := range a.Estimated {
		p.keys("Rests on an estimate in "+names[i]+": lengths to cut and start from, not a fitting", keys)
	}
	if c := a.Conflict; c != nil {
		group := make([]string, len(c.Files))
		for i, f := range c.Files {
			group[i] = printable(f)
		}
		title := "Who cannot share a kit: " + strings.Join(group, ", ")
		if len(group) == 1 {
			title = "Whose kit cannot pass even alone, within the bounds: " + group[0]
		}
		p.title(title)
		p.item("", c.Words(p.unit))
	} else {
		least := outcome{a.LeastChange.Cost, a.LeastChange.Changes, nil}
		p.outcomes(nil, least, outcome{a.BestFit.Cost, a.BestFit.Changes, nil})
		p.asTheyAre(names, append(slices.Clone(a.LeastChange.Changes), a.BestFit.Changes...))
	}
	p.own(a.Own)
	for i := range files {
		columns := []column{{"now", a.Now[i]}}
		if a.Conflict == nil {
			columns = append(columns, column{"least change", a.LeastChange.Checks[i]}, column{"best fit", a.BestFit.Checks[i]})
		}
		p.table("Checks of "+names[i]+", by margin and guard alone; after a change predicted", columns, false)
		if a.Conflict == nil {
			p.left(advice.ShortMusts(a.LeastChange.Checks[i], a.Unknown[i]))
		}
		p.names("Not known for want of a reading in "+names[i], a.Unknown[i])
	}
	p.closing(len(a.LeastChange.Changes)+len(a.BestFit.Changes) > 0)
}

// asTheyAre tells the lengths that the pieces to change have in each file.
func (p *advicePage) asTheyAre(names []string, changes []advice.Change) {
	if len(changes) == 0 {
		return
	}
	p.section("As they are")
	told := map[string]bool{}
	for _, c := range changes {
		if told[c.Piece] {
			continue
		}
		told[c.Piece] = true
		var each []string
		for i, from := range c.Each {
			each = append(each, fmt.Sprintf("%s in %s", rules.FormatLength(float64(from), p.unit), names[i]))
		}
		if len(each) > 0 {
			p.item(rules.InputName("kit."+c.Piece), strings.Join(each, ", "))
		}
	}
}

// own names the pieces that stay as each file has them although they differ.
func (p *advicePage) own(pieces []string) {
	if len(pieces) == 0 {
		return
	}
	p.title("Left as each file has it: these differ, and some file cannot change them")
	for _, piece := range pieces {
		p.item("", rules.InputName("kit."+piece))
	}
}
