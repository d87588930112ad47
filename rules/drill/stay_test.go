package drill_test

import (
	"math"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/drill"
)

// Who stays as far below the union as is told passes slip-force, with the limit
// of the peak as with that of the saddle; half a metre closer it does not.
func TestWhoStaysBelowTheUnionPasses(t *testing.T) {
	for _, name := range []string{"1-good-kit", "2-one-must-fails", "3-stature-only", "5-two-hangs-one-change"} {
		f, l, _ := example(t, name)
		for _, s := range drill.New(f, l, rules.Assess(f, l)).Force.Stay {
			for limit, above := range map[rules.Limit]float64{rules.PeakForce: s.Peak, rules.SaddleForce: s.Saddle} {
				holds := func(above float64) rules.Verdict {
					g, limits := *f, l
					g.Mass.V, g.Rope.LeastAbove = s.Mass, fit.Some(above)
					limits[rules.PeakForce] = l[limit]
					return rules.Assess(&g, limits).End(rules.SlipForce.Ends()[0]).Plain
				}
				if at, closer := holds(above), holds(above-100); at != rules.Pass || closer == rules.Pass {
					t.Errorf("%s: %g kg %g mm below the union: %s by %s, 0.1 m closer %s", name, s.Mass, above, at, limit, closer)
				}
			}
		}
	}
}

// No rope is long enough for a climber whose weight twice over is more than the
// saddle is to see: a climber hangs with that much at the least.
func TestWhoIsTooHeavyForTheSaddleStaysNowhere(t *testing.T) {
	f, l, _ := example(t, "1-good-kit")
	g := *f
	g.Mass = fit.Some(210) // 4.1 kN twice over
	for _, s := range drill.New(&g, l, rules.Assess(&g, l)).Force.Stay {
		if s.Mass >= 210 && !math.IsNaN(s.Saddle) {
			t.Errorf("%g kg: %g mm", s.Mass, s.Saddle)
		}
	}
}
