package practice

import (
	"math"
	"testing"

	"example.com/hangtape/cmd/trial/truth"
)

var limits = truth.Limits{ConnectorClearance: 25, ReleaseRoom: 40, LeastOver: -20, MostOver: 50, MostFlexion: 120, MostDrop: 600, PeakForce: 6}

// man is a body of about 1.75 m in round numbers.
var man = truth.Body{Sex: "M", Stature: 1755, Navel: 1055, Mass: 85, Thigh: 415, Shin: 490,
	Neck: 615, Eye: 125, Shoulder: 540, UpperArm: 335, Forearm: 268, Lift: 27, ArmDown: 593}

func TestCopiedHasTheLengthsThatAreHandedOn(t *testing.T) {
	d := truth.NewDice(1, 0, 0, 1)
	w := truth.Draw(d, man)
	k := Copied(d, &w, truth.SchoolBounds, truth.Kit{LeastAbove: 3000, DrillAbove: 7000})
	p := w.Poses(k)
	for name, off := range map[string]float64{
		"12 in of loop":           k.Lengths[truth.LeftLoop] - 304.8,
		"foot loop at the navel":  k.Lengths[truth.FootLoop] - w.Navel,
		"tether of 7 in":          k.Lengths[truth.Tether] - 177.8,
		"connector at the nose":   p.ConnectorTop - w.Nose.Y,
		"16 in from nose to hand": p.HitchTop[truth.Left] - w.Nose.Y - 406.4,
	} {
		if math.Abs(off) > 30 {
			t.Errorf("%s: off by %.1f mm", name, off)
		}
	}
}

// Over many climbers the tuned kit misses fewer musts than the copied one, and the
// eye is off by no more than an inch.
func TestByEyeIsTheSamePracticeTuned(t *testing.T) {
	copied, tuned := 0, 0
	for row := range 200 {
		d := truth.NewDice(1, row, 0, 1)
		w := truth.Draw(d, man)
		above := truth.Kit{LeastAbove: 3000, DrillAbove: 7000}
		mc := w.Margins(Copied(d, &w, truth.SchoolBounds, above), &limits)
		k := ByEye(d, &w, truth.SchoolBounds, above)
		mt := w.Margins(k, &limits)
		copied += len(mc.Misses())
		tuned += len(mt.Misses())
		if k.Lengths[truth.LeftLoop] > 330.2 || k.Lengths[truth.FootLoop] > w.Navel+25.4 {
			t.Fatalf("longer than what is handed on and an inch: %v", k.Lengths)
		}
	}
	if tuned >= copied {
		t.Errorf("by eye misses %d musts, copied %d", tuned, copied)
	}
}
