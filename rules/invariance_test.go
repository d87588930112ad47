package rules_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// A height counts from the hip of its own hang, so where the tape's zero hangs
// changes nothing.
func TestTapeZeroNeverMatters(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := drawFitting(t)
		moved := copyOf(f)
		zero := float64(rapid.IntRange(-3000, 3000).Draw(t, "zero"))
		for r := range moved.Hangs[0].Heights {
			for i := range moved.Hangs[0].Heights[r] {
				moved.Hangs[0].Heights[r][i] += zero
			}
		}
		before, after := judge(t, f, rules.DefaultLimits()), judge(t, moved, rules.DefaultLimits())
		for i, c := range before.Checks {
			d := after.Checks[i]
			if c.Verdict != d.Verdict || !same(c.Margin, d.Margin, 1e-7) || !same(c.U, d.U, 1e-7) || !same(c.Guard, d.Guard, 1e-7) {
				t.Errorf("%s: %s %v guard %v, with the zero moved %s %v guard %v", c.Name, c.Verdict, c.Margin, c.Guard, d.Verdict, d.Margin, d.Guard)
			}
		}
	})
}

// With all lengths q times as large every length that follows is, and no force
// or ratio changes. What the survey or a label fixes in millimetres stays out.
func TestScalingLengthsScalesMargins(t *testing.T) {
	everything := make([]fit.Reading, fit.NumReadings)
	for r := range everything {
		everything[r] = fit.Reading(r)
	}
	rapid.Check(t, func(t *rapid.T) {
		f := drawFitting(t, everything...)
		q := rapid.Float64Range(0.5, 1.3).Draw(t, "q")
		scaled := copyOf(f)
		for r := fit.Reading(0); r < fit.NumReadings; r++ {
			for i := range *list(scaled, r) {
				(*list(scaled, r))[i] *= q
			}
		}
		for p := fit.Posture(0); p < fit.NumPostures; p++ {
			if i := p.Info(); i.Unit == "mm" {
				scaled.Posture[p] = fit.Setting{V: q * i.V, U: max(q, 1) * i.U, Given: true}
			}
		}
		scaled.Rope.LeastAbove.V *= q
		scaled.Rope.DrillAbove.V *= q
		limits := rules.DefaultLimits()
		scaledLimits := limits
		for l := range limits {
			if rules.Limit(l).Info().Unit == "mm" {
				scaledLimits[l] *= q
			}
		}
		before, after := judge(t, f, limits), judge(t, scaled, scaledLimits)
		for i, c := range before.Checks {
			want := float64(c.Margin)
			if c.Unit == "mm" && c.Name != "garda-connector-size" {
				want *= q
			}
			// The side or end that decides may be another one: the guards do
			// not scale with it.
			if d := after.Checks[i]; c.At == d.At && !same(d.Margin, rules.Num(want), 1e-7) {
				t.Errorf("%s at %q: margin %v, %g times as large %v, want %v", c.Name, c.At, c.Margin, q, d.Margin, want)
			}
		}
		for i, p := range before.Poses {
			want := float64(p.Value)
			if p.Unit == "mm" {
				want *= q
			}
			if !same(after.Poses[i].Value, rules.Num(want), 1e-7) {
				t.Errorf("%s: %v, %g times as large %v, want %v", p.Name, p.Value, q, after.Poses[i].Value, want)
			}
		}
	})
}

// longer is f with a piece of its kit set longer by d after the last hang.
func longer(f *fit.Fitting, p fit.Piece, r fit.Reading, d float64) *fit.Fitting {
	c := copyOf(f)
	sum := 0.0
	for _, v := range f.Laid[r] {
		sum += v
	}
	c.Changes = append(c.Changes, fit.Change{Piece: p, To: sum/float64(len(f.Laid[r])) + d, AfterHang: len(f.Hangs)})
	return c
}

func TestLongerPiecesMoveWhatHangsOnThem(t *testing.T) {
	for _, c := range []struct {
		piece  fit.Piece
		laid   fit.Reading
		grows  string
		others []string // poses that stay
	}{
		{fit.PieceTether, fit.Tether, "over", []string{"ylevel", "gain"}},
		{fit.PieceBackupBridge, fit.BackupBridge, "over", []string{"ylevel", "gain"}},
		{fit.PieceFootLoop, fit.FootLoop, "ylevel", []string{"ytaut"}},
	} {
		t.Run(c.piece.Key(), func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				f := drawFitting(t, fit.Thigh, fit.Shin, fit.Hip, fit.BackupRings, fit.BackupBridge, fit.BackupBridgeRings, fit.Tether, fit.GardaToTether, fit.FootLoop)
				before := judge(t, f, rules.DefaultLimits())
				after := judge(t, longer(f, c.piece, c.laid, rapid.Float64Range(1, 60).Draw(t, "longer")), rules.DefaultLimits())
				if a, b := pose(t, before, c.grows), pose(t, after, c.grows); !(b > a) {
					t.Errorf("%s was %v and is %v", c.grows, a, b)
				}
				for _, p := range c.others {
					if a, b := pose(t, before, p), pose(t, after, p); !same(rules.Num(a), rules.Num(b), 1e-9) {
						t.Errorf("%s was %v and is %v", p, a, b)
					}
				}
				for _, name := range []string{"hitch-top-reach", "hitch-handhold", "hitch-pair-level"} {
					a, b := check(t, before, name), check(t, after, name)
					if a.Verdict != b.Verdict || !same(a.Margin, b.Margin, 1e-9) || !same(a.Guard, b.Guard, 1e-9) {
						t.Errorf("%s was %s %v and is %s %v", name, a.Verdict, a.Margin, b.Verdict, b.Margin)
					}
				}
			})
		})
	}
}

// kneeOnTether holds the knee's height in the pose that stops at the tether
// against the pose's own definition, written out anew.
func TestKneeOnTetherPutsTheGardaHitchBack(t *testing.T) {
	garda := func(k, thigh, shin, loop, ahead float64) float64 {
		x := math.Sqrt(thigh*thigh-k*k) - ahead // the shin hangs plumb
		return k - shin + math.Sqrt(loop*loop-x*x)
	}
	mean := func(l []float64) float64 {
		s := 0.0
		for _, v := range l {
			s += v
		}
		return s / float64(len(l))
	}
	rapid.Check(t, func(t *rapid.T) {
		f := drawFitting(t, fit.Thigh, fit.Shin, fit.FootLoop, fit.Ahead, fit.Hip, fit.BackupRings,
			fit.BackupBridge, fit.BackupBridgeRings, fit.Tether, fit.GardaToTether)
		f.Hangs[0].Heights[fit.GardaLevel] = nil // so that nothing is learnt from it
		r := judge(t, f, rules.DefaultLimits())
		thigh, shin, loop, ahead := mean(f.Laid[fit.Thigh]), mean(f.Laid[fit.Shin]), mean(f.Laid[fit.FootLoop]), mean(f.Laid[fit.Ahead])
		if got, want := pose(t, r, "ylevel"), garda(0, thigh, shin, loop, ahead); !(math.Abs(got-want) <= 1e-9) {
			t.Errorf("ylevel %v, want %v", got, want)
		}
		past := pose(t, r, "thigh_past_level")
		if math.IsNaN(past) {
			return // no crossing: unknown in silence
		}
		k := thigh * math.Sin(past*math.Pi/180)
		if got, want := garda(k, thigh, shin, loop, ahead), pose(t, r, "ytaut"); !(math.Abs(got-want) <= 1e-9) {
			t.Errorf("with the knee at %v the Garda hitch is at %v, want %v", k, got, want)
		}
	})
}

// With the tether set so that it stops the Garda hitch exactly at level, the
// knee is level.
func TestNothingPastLevelKeepsTheThighLevel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := drawFitting(t, fit.Thigh, fit.Shin, fit.FootLoop, fit.Hip, fit.BackupRings,
			fit.BackupBridge, fit.BackupBridgeRings, fit.Tether, fit.GardaToTether)
		over := pose(t, judge(t, f, rules.DefaultLimits()), "over")
		r := judge(t, longer(f, fit.PieceTether, fit.Tether, -over), rules.DefaultLimits())
		if over, past := pose(t, r, "over"), pose(t, r, "thigh_past_level"); !(math.Abs(over) <= 1e-9 && math.Abs(past) <= 1e-9) {
			t.Errorf("%v mm past level, thigh at %v deg", over, past)
		}
	})
}

// The shortest rope that keeps the peak force at its limit, used as the least
// rope above, gives just that force; and where the tether is not slack after a
// stand the force is twice the weight.
func TestPeakForceOfWholeFittings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := drawFitting(t, fit.Thigh, fit.Shin, fit.Hip, fit.BackupRings, fit.BackupBridge, fit.BackupBridgeRings, fit.Tether, fit.GardaToTether, fit.FootLoop)
		limits := rules.DefaultLimits()
		for _, c := range []struct {
			pose  string
			limit rules.Limit
		}{{"lmin", rules.PeakForce}, {"lmin_saddle", rules.SaddleForce}} {
			if l := pose(t, judge(t, f, limits), c.pose); l > 0 {
				least := copyOf(f)
				least.Rope.LeastAbove = fit.Some(l)
				if got := pose(t, judge(t, least, limits), "fmax"); !(math.Abs(got-limits[c.limit]) <= 1e-9) {
					t.Errorf("%s %v mm: peak force %v, want %v", c.pose, l, got, limits[c.limit])
				}
			}
		}
		slack := pose(t, judge(t, f, limits), "slack")
		taut := copyOf(longer(f, fit.PieceTether, fit.Tether, 0))
		taut.Changes[0].To -= slack + 1
		if taut.Changes[0].To <= 0 { // not a tether; take it from both
			return
		}
		want := 2 * f.Mass.V * fit.Gravity / 1000
		if got := pose(t, judge(t, taut, limits), "fmax"); !(math.Abs(got-want) <= 1e-12) {
			t.Errorf("no slack: peak force %v, want twice the weight, %v", got, want)
		}
	})
}
