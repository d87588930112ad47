package rules_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// Where an input, as uncertain as it is, takes a pose out of its domain both
// ways, what needs the pose is unknown and a finding says which input that is.
func TestPoseOnTheEdgeOfItsDomainIsUnknownWithWords(t *testing.T) {
	for _, c := range []struct {
		name  string
		put   func(f *fit.Fitting)
		key   string
		words string
		check string
	}{
		{"the knee farther from level than the thigh is long, up or down", func(f *fit.Fitting) {
			*list(f, fit.KneeLevel) = nil
			f.Posture[fit.LevelByEye] = fit.Setting{V: 0, U: 500, Given: true}
		}, "posture.level_by_eye_mm", "knee above the hip when the thigh looks level, as uncertain as it is", "garda-under-connector"},
		{"the leg just long enough when straight", func(f *fit.Fitting) {
			f.Posture[fit.KneeBend] = fit.Setting{V: 0, U: 8, Given: true}
			f.Posture[fit.BehindRope] = fit.Setting{V: 436 + 540 - 1, U: 5, Given: true}
		}, "posture.behind_rope_mm", "the leg is only 1 ± 12 mm longer than the climber stands away from the rope", "slip-drop"},
		{"the leg just long enough with the hip in front of the rope", func(f *fit.Fitting) {
			f.Posture[fit.KneeBend] = fit.Setting{V: 0, U: 8, Given: true}
			f.Posture[fit.BehindRope] = fit.Setting{V: -(436 + 540 - 1), U: 5, Given: true}
		}, "posture.behind_rope_mm", "the leg is only 1 ± 12 mm longer than the climber stands away from the rope", "slip-drop"},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := goodFitting()
			c.put(f)
			r := judge(t, f, rules.DefaultLimits())
			if got := check(t, r, c.check); got.Verdict != rules.Unknown || got.U.Known() || len(got.Missing) > 0 {
				t.Errorf("%s is %s with u %v", c.check, got.Verdict, got.U)
			}
			i := slices.IndexFunc(r.Findings, func(f rules.Finding) bool { return f.Name == "out-of-domain" })
			if i < 0 {
				t.Fatalf("nothing says why: %+v", r.Findings)
			}
			if f := r.Findings[i]; !slices.Contains(f.Inputs, c.key) || !strings.Contains(f.Text, c.words) {
				t.Errorf("finding %q names %v, want %s", f.Text, f.Inputs, c.key)
			}
		})
	}
}

// Near the edge of what foot loop, leg and rope can reach the uncertainty grows
// and stays a number, or the check is unknown with words; and what passes there
// does so in at least nine of ten draws of all that was read, where a draw out of
// the domain counts as none.
func TestNothingPassesTooSurelyNearTheEdgeOfTheDomain(t *testing.T) {
	const draws = 500
	draw := rand.New(rand.NewPCG(5, 6))
	last := math.Inf(1)
	for _, beyond := range []float64{0.001, 0.1, 1, 3, 8, 15, 30, 60, 120, 250} {
		f := goodFitting()
		*list(f, fit.GardaLevel), *list(f, fit.KneeLevel) = nil, nil
		*list(f, fit.FootLoop) = []float64{436 - 190 + beyond}
		f.Posture[fit.ShinAngle] = fit.Setting{V: 0, U: 2, Given: true} // what is left is what was read
		limits := rules.DefaultLimits()
		a := rules.Assess(f, limits)
		m, now := a.Model(), a.End(rules.GardaUnderConnector.Ends()[0])
		if now.Plain == rules.Unknown || math.IsInf(now.U, 0) || !(now.U > 0) {
			t.Fatalf("%g mm beyond the edge: %s with u %v", beyond, now.Plain, now.U)
		}
		if now.U > last {
			t.Errorf("%g mm beyond the edge u is %v, nearer to it %v", beyond, now.U, last)
		}
		last = now.U
		for _, c := range []rules.CheckID{rules.GardaUnderConnector, rules.TetherLetsThighLevel, rules.SlipDrop} {
			for _, e := range c.Ends() {
				held, x := 0, m.Values()
				var s fit.State
				var margins [rules.NumEnds]float64
				for range draws {
					for i := range x {
						x[i] = m.Values()[i] + m.Inputs[i].U*draw.NormFloat64()
					}
					m.At(x, &s)
					rules.Margins(&s, &limits, margins[:])
					if margins[e] >= 0 { // false for NaN
						held++
					}
				}
				if v := a.End(e).Verdict; v == rules.Pass && held < draws*9/10 {
					t.Errorf("%g mm beyond the edge %s at %q passes with margin %v and guard %v, and holds in %d of %d draws",
						beyond, c, e.At(), a.End(e).Margin, a.End(e).Guard, held, draws)
				}
			}
		}
	}
}
