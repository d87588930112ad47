package flow

import "slices"

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
			if ask.Kind == Choice || ask.Told(&s.Draft) > 0 {
				g.Told++
			}
		}
		if len(g.Places) > 0 {
			out = append(out, g)
		}
	}
	return out
}
