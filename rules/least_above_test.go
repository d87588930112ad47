package rules_test

import (
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// The least rope above is the shortest on a step of 100 mm with which slip-force
// passes with its guard; there is none where the limit is not over twice the
// weight, or where what it takes is not known.
func TestLeastAbove(t *testing.T) {
	for _, mass := range []float64{55, 80, 105} {
		for _, kN := range []float64{3, 4, 6} {
			f := goodFitting()
			f.Mass = fit.Some(mass)
			l := rules.DefaultLimits().With(map[rules.Limit]float64{rules.PeakForce: kN})
			passes := func(above float64) bool {
				g := *f
				g.Rope.LeastAbove = fit.Some(above)
				return rules.Assess(&g, l).End(rules.SlipForce.Ends()[0]).Plain == rules.Pass
			}
			if mm, ok := rules.LeastAbove(f, l, fit.Options{}); !ok || !passes(mm) || passes(mm-100) || mm != 100*float64(int(mm/100)) {
				t.Errorf("%g kg under %g kN: %g mm %t", mass, kN, mm, ok)
			}
		}
	}
	for name, put := range map[string]func(f *fit.Fitting, l *rules.Limits){
		"a limit of twice the weight": func(f *fit.Fitting, l *rules.Limits) { l[rules.PeakForce] = 2 * fit.Weight(f.Mass.V) },
		"no mass":                     func(f *fit.Fitting, _ *rules.Limits) { f.Mass = fit.Number{} },
		"no elongation":               func(f *fit.Fitting, _ *rules.Limits) { f.Rope.Elongation = fit.Number{} },
	} {
		f, l := goodFitting(), rules.DefaultLimits()
		put(f, &l)
		if mm, ok := rules.LeastAbove(f, l, fit.Options{}); ok {
			t.Errorf("%s: %g mm", name, mm)
		}
	}
}
