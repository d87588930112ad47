package rules_test

import (
	"testing"

	"example.com/hangtape/rules"
)

// What knots leave of a line's strength, from two published lists: single
// kernmantle line (Army Mountain Warfare School, Military Mountaineer Course Knot
// Guide, seen in a copy; the worse end of each band), and mostly laid rope (Jacobson,
// Outdoor Knots, p. 28, after Day 1970 and Dent 1964, second hand).
var (
	kernmantleKnots = map[string]float64{"overhand": 0.60, "clove hitch": 0.60, "bowline": 0.70, "water knot": 0.60, "two half hitches": 0.60, "figure eight": 0.75}
	laidKnots       = map[string]float64{"overhand": 0.45, "clove hitch": 0.75, "bowline": 0.60, "two half hitches": 0.75, "figure eight": 0.48, "square": 0.45, "anchor bend": 0.70}
)

// The efficiency that cords are judged with is no better than any published one
// of kernmantle cord, and than the worse end of the band for accessory cord, 20 to
// 50 % off (encyclopaedia entry on accessory cord, citing Schubert, bergundsteigen
// 2/2008, second hand); a school may go below the worst of either list.
func TestKnotEfficiencyIsNoBetterThanPublished(t *testing.T) {
	info := rules.KnotEfficiency.Info()
	if info.Default > 1-0.50 {
		t.Errorf("the default is %g, the band ends at 0.50", info.Default)
	}
	for knot, left := range kernmantleKnots {
		if info.Default > left {
			t.Errorf("%s in kernmantle leaves %g, the default is %g", knot, left, info.Default)
		}
	}
	for knot, left := range laidKnots {
		if info.Bounds[0] > left {
			t.Errorf("%s in laid rope leaves %g, a school cannot go below %g", knot, left, info.Bounds[0])
		}
	}
}
