package rules_test

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// The guard is 1.645·u and the part of the shift that eats into the margin; the
// verdict follows from margin and guard. Only a must may be held under a pass,
// and then it says what would lift it.
func TestVerdictsFollowMarginAndGuard(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for _, c := range judge(t, drawFitting(t), rules.DefaultLimits()).Checks {
			margin, u, shift, guard := float64(c.Margin), float64(c.U), float64(c.Shift), float64(c.Guard)
			if math.IsNaN(margin) {
				if c.Verdict != rules.Unknown || !math.IsNaN(guard) {
					t.Errorf("%s without a margin: %s, guard %v", c.Name, c.Verdict, guard)
				}
				continue
			}
			if want := 1.645*u + math.Max(0, -shift); !(math.Abs(guard-want) <= 1e-9) {
				t.Errorf("%s: guard %v, u %v and shift %v make %v", c.Name, guard, u, shift, want)
			}
			want := rules.Pass
			switch {
			case margin < 0:
				want = rules.Fail
			case margin < guard:
				want = rules.Tight
			}
			held := c.Kind == rules.Must && want == rules.Pass && c.Verdict == rules.Tight && len(c.Missing) > 0
			if c.Verdict != want && !held {
				t.Errorf("%s: %s with margin %v and guard %v, missing %v", c.Name, c.Verdict, margin, guard, c.Missing)
			}
		}
	})
}

// Source: JCGM 106:2012, 9.5.2: a guard of k·u leaves a risk of 1 − Φ(k) that
// what is accepted is not so (second hand). Each check is held to 95 %.
func TestGuardIsNinetyFivePerCent(t *testing.T) {
	f := goodFitting()
	c := check(t, judge(t, f, rules.DefaultLimits()), "garda-release-room") // linear: no shift
	if got := distuv.UnitNormal.CDF(float64(c.Guard / c.U)); !(math.Abs(got-0.95) <= 1e-4) {
		t.Errorf("a margin of one guard is right in %v of all cases, want 0.95", got)
	}
	// A margin that bends against us needs the shift on top.
	if c := check(t, judge(t, f, rules.DefaultLimits()), "hitch-cord-grip"); !(c.Shift < 0 && c.Guard-1.645*c.U > -0.99*c.Shift) {
		t.Errorf("hitch-cord-grip: guard %v, u %v, shift %v", c.Guard, c.U, c.Shift)
	}
}

// Nobody leaves the ground on an estimate of the body: with all of it estimated
// every must that rests on it is at best tight, however large the margin.
func TestNoMustPassesOnAnEstimate(t *testing.T) {
	f := goodFitting()
	for _, r := range []fit.Reading{fit.Thigh, fit.Shin, fit.Nose, fit.WristUp, fit.WristDown, fit.Waist, fit.GardaLevel, fit.KneeLevel, fit.GardaTaut} {
		*list(f, r) = nil
	}
	// Ample room everywhere.
	for _, r := range []fit.Reading{fit.LeftHitchTop, fit.RightHitchTop, fit.LeftLoopTop, fit.RightLoopTop} {
		(*list(f, r))[0] -= 150
	}
	*list(f, fit.ConnectorBottom), *list(f, fit.MainBridge) = []float64{2158}, []float64{1278} // which agree
	(*list(f, fit.Tether))[0] += 40
	r := judge(t, f, rules.DefaultLimits())
	for name, lift := range map[string]string{
		"hitch-top-reach":         "hangs.1.wrist_up_mm",
		"garda-under-connector":   "climber.shin_mm",
		"tether-lets-thigh-level": "climber.thigh_mm",
	} {
		c := check(t, r, name)
		if !(c.Margin > c.Guard) {
			t.Errorf("%s: margin %v, guard %v: this test is about an ample margin", name, c.Margin, c.Guard)
		}
		if c.Verdict != rules.Tight || !slices.Contains(c.Missing, lift) {
			t.Errorf("%s on an estimate: %s, missing %v, want tight for want of %s", name, c.Verdict, c.Missing, lift)
		}
	}
	if c := check(t, r, "garda-release-room"); c.Verdict != rules.Pass {
		t.Errorf("garda-release-room rests on no estimate and is %s, missing %v", c.Verdict, c.Missing)
	}
}

// Of readings that would help alike the first in the session file is named.
func TestNextReadingBreaksTiesByTheFile(t *testing.T) {
	f := goodFitting()
	*list(f, fit.RightHitchTop) = []float64{2562}
	r := judge(t, f, rules.DefaultLimits())
	if c := check(t, r, "hitch-pair-level"); c.Verdict != rules.Tight {
		t.Fatalf("hitch-pair-level is %s with margin %v and guard %v, want tight", c.Verdict, c.Margin, c.Guard)
	}
	for _, n := range r.Next {
		if n.Check == "hitch-pair-level" {
			if n.Reading != "hangs.1.left_hitch_top_mm" {
				t.Errorf("next for hitch-pair-level is %s, want the left hitch top, which comes first", n.Reading)
			}
			return
		}
	}
	t.Error("nothing is next for hitch-pair-level")
}

// Of two ends as near as each other the first decides, wherever the tape's zero.
func TestEqualEndsAreDecidedByTheFirst(t *testing.T) {
	for i := range 50 {
		zero := 0.37 * float64(i)
		f := goodFitting()
		hangAgain(f)
		f.Hangs[1].Heights[fit.Hip] = []float64{898.525 + zero}
		f.Hangs[1].Heights[fit.ConnectorTop] = []float64{1548.525 + zero, 1548.425 + zero, 1548.625 + zero}
		f.Hangs[0].Heights[fit.Nose] = []float64{2170.1, 2169.8, 2170.1} // 650 above the hip, as the connector
		if c := check(t, judge(t, f, rules.DefaultLimits()), "connector-at-face"); c.At != "below" || c.Needs != -70 {
			t.Errorf("zero moved by %g: %s decides, against %v, want below", zero, c.At, c.Needs)
		}
	}
}
