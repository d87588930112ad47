package fit_test

import (
	"math"
	"testing"

	"example.com/hangtape/fit"
)

// inch in mm.
const inch = 25.4

// prusikCuts are the cut lengths of loops with three wraps on 11 mm rope, tied
// with a double fisherman's bend: Evans, "Empirical Breaking Strengths of Single
// Prusiks in Four Diameters on 11 mm Static Rope", Western Washington
// University. Seen in a copy of the paper; finished lengths are not in what was
// seen.
var prusikCuts = []struct{ cord, cut float64 }{{5, 790}, {6, 910}, {7, 1040}, {8, 1140}}

// A loop with room for a hand (a foot of it) is never cut shorter than these.
func TestHitchIsNotCutShorterThanPublished(t *testing.T) {
	for _, p := range prusikCuts {
		c := fit.StandardCord(fit.CordHitch)
		c.Finished, c.Diameter, c.Host = 305, p.cord, 11
		if err := c.Check(); err != nil {
			t.Fatal(err)
		}
		if cut := fit.LearnCord(nil).Cut(c, 5); cut.Length < p.cut {
			t.Errorf("%g mm cord: cut %.0f mm, published loops are cut from %.0f", p.cord, cut.Length, p.cut)
		}
	}
}

// Loops of 5 mm cord for a friction hitch are cut from 1.2 to 1.6 m, mostly 1.5 m
// (two web pages of the trade, seen); such cord is tied in loops of 1 ft with 3 or 4
// wraps (Raleigh, Knots and Ropes for Climbers, p. 34, seen in a copy). Three wraps
// are taken here.
func TestThinHitchIsCutAsPublished(t *testing.T) {
	c := fit.StandardCord(fit.CordHitch)
	c.Finished, c.Diameter, c.Host = 12*inch, 5, 11
	if cut := fit.LearnCord(nil).Cut(c, 5).Length; cut < 1200 || cut > 1600 {
		t.Errorf("cut %.0f mm, published 1200 to 1600", cut)
	}
}

// The published loops bound what the bend can use: not less than its four turns
// of cord round cord, and not more than wraps and tails of 4 in leave of the cut.
func TestBendLiesWithinPublishedBounds(t *testing.T) {
	least := fit.WrapLength(4, 1, 1)
	most := math.Inf(1)
	for _, p := range prusikCuts {
		most = min(most, (p.cut-fit.WrapLength(6, p.cord, 11)-2*fit.LeastTail)/p.cord)
	}
	near(t, "least bend, in diameters", least, 25.4, 0.1)
	near(t, "most bend, in diameters", most, 57, 0.5)
	if d := fit.DoubleFishermans.Info().PerD; d < least || d > most {
		t.Errorf("a double fisherman's bend of %g d lies outside %.1f to %.1f d", d, least, most)
	}
}

// Common practice, without a source: a tether finished at 6 to 8 in is cut from
// 42 to 48 in of 8 mm cord.
func TestTetherIsCutAsInCommonPractice(t *testing.T) {
	for _, finished := range []float64{6, 7, 8} {
		c := fit.StandardCord(fit.CordTether)
		c.Finished, c.Diameter = finished*inch, 8
		cut := fit.LearnCord(nil).Cut(c, inch/4)
		if in := cut.Length / inch; in < 42 || in > 48 {
			t.Errorf("finished at %g in: cut %.2f in, want 42 to 48", finished, in)
		}
	}
}

// Two foot slings come out of 25 ft (7.62 m) of 6 mm cord: one from foot to
// ear, one from foot to elbow, loops of about 1 ft at both ends of each, and a
// tail of 5 ft on the long one: a mountaineering handbook's stair-step prusik,
// fig. 13-7, seen in a copy. Ear and elbow height of a person of 1.75 m: 0.936
// (eye, for the ear) and 0.630 of stature (Drillis and Contini, from memory).
func TestTwoFootSlingsFromOneCord(t *testing.T) {
	sling := func(finished float64) float64 {
		c := fit.StandardCord(fit.CordFootLoop)
		c.Finished, c.Diameter = finished, 6
		if err := c.Check(); err != nil {
			t.Fatal(err)
		}
		return fit.LearnCord(nil).Cut(c, 5).Length
	}
	long, short := sling(0.936*1750)+5*12*inch, sling(0.630*1750)
	p, err := fit.PlanSpools(7620, []fit.Want{{Count: 1, Length: long}, {Count: 1, Length: short}})
	if err != nil {
		t.Fatal(err)
	}
	if len(p.Spools) != 1 || p.Leftover[0] > 7620/5 {
		t.Errorf("%.0f and %.0f mm: got %+v, want both out of one cord with less than a fifth left", long, short, p)
	}
}
