package flow

import (
	"fmt"
	"slices"
)

// Progress is the place of the present step among those that have questions now,
// counted from 1.
func (s *State) Progress() (n, of int) {
	for st, step := range s.Steps {
		if slices.ContainsFunc(step.Asks, func(a Ask) bool { return a.asked(&s.Draft) }) {
			if of++; st <= s.At.Step {
				n = of
			}
		}
	}
	return n, of
}

// A Group is a step with the questions that are asked as things stand.
type Group struct {
	Step   int
	Title  string
	Places []Place
	Told   int // how many have an answer
	Of     int // how many can have one: no gate and nothing that is only read
}

// Says is the group with how much of it was answered.
func (g Group) Says() string {
	if g.Of == 0 {
		return g.Title
	}
	return fmt.Sprintf("%s, %d of %d answered", g.Title, g.Told, g.Of)
}

// Asked are the steps that have questions now. Heights are those of the present hang.
func (s *State) Asked() []Group {
	var out []Group
	for st, step := range s.Steps {
		g := Group{Step: st, Title: step.Title}
		for a, ask := range step.Asks {
			if !ask.asked(&s.Draft) {
				continue
			}
			g.Places = append(g.Places, Place{Step: st, Ask: a, Hang: s.Hang})
			if ask.cell == nil {
				continue
			}
			g.Of++
			if ask.Kind == Choice && !ask.unanswered(&s.Draft) || ask.Told(&s.Draft) > 0 {
				g.Told++
			}
		}
		if len(g.Places) > 0 {
			out = append(out, g)
		}
	}
	return out
}
