package rules_test

import (
	"testing"

	"pgregory.net/rapid"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// A step of an input works out only the margins and poses that it may have a
// part in, by a table. All of them worked out for every step come to the same.
func TestMarginsAgainstWholeSteps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := rules.DefaultLimits()
		m := fit.NewModel(drawFitting(t), fit.Options{})
		n := int(rules.NumEnds) + rules.NumPoses
		of := func(s *fit.State, out []float64) {
			rules.Margins(s, &l, out)
			rules.PosesOf(s, &l, out[rules.NumEnds:])
		}
		some := m.Propagate(n, func(_ []float64, s *fit.State, out []float64) { of(s, out) })
		all := m.Propagate(n, func(x []float64, _ *fit.State, out []float64) {
			var s fit.State
			m.At(x, &s)
			of(&s, out)
		})
		for i := range m.Inputs {
			for o := range n {
				if got, want := some.Contribution(i, o), all.Contribution(i, o); !same(rules.Num(got), rules.Num(want), 1e-9) {
					t.Fatalf("%s adds %v to the uncertainty of output %d, by whole steps %v: fit/stages.go does not name what it has a part in", m.Inputs[i].Key, got, o, want)
				}
			}
		}
	})
}
