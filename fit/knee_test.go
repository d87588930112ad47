package fit

import (
	"math"
	"testing"
)

// The knee's height is found again from the Garda hitch's, also where the hitch
// hangs under the boot: of two places that the knee could be in, it is the one
// further forward.
func TestKneeIsFoundAgainFromTheGardaHitch(t *testing.T) {
	tilt := radians(20)
	found := 0
	for _, g := range []leg{{440, 530, 160, 0, 1}, {440, 530, 160, math.Sin(tilt), math.Cos(tilt)}, {400, 560, -40, 0, 1}} {
		for k := -390.0; k <= 390; k += 30 {
			for _, F := range []float64{300, 450, 700, 1040} {
				y, _ := g.garda(k, F)
				if math.IsNaN(y) {
					continue
				}
				got := g.knee(y, F)
				forward := math.Sqrt(g.t*g.t - k*k)
				if math.Abs(got-k) < 1e-6 {
					found++
				} else if x, again := math.Sqrt(g.t*g.t-got*got), yOf(g.garda(got, F)); !(x > forward) || math.Abs(again-y) > 1e-6 {
					// another one than it was made from has to lie further forward
					if up := y + g.s*g.cosP - got; math.Abs(math.Hypot(x+g.s*g.sinP-g.a, up)-F) > 1e-6 || !(x > forward) {
						t.Errorf("leg %+v, loop %g, knee at %g: found at %g", g, F, k, got)
					}
				}
			}
		}
	}
	if found < 100 {
		t.Errorf("found again %d times", found)
	}
	g := leg{440, 530, 160, 0, 1}
	if k := g.knee(yOf(g.garda(-400, 50)), 50); math.Abs(k-(-400)) > 1e-6 {
		t.Errorf("under the boot: %g", k)
	}
}

func yOf(y, _ float64) float64 { return y }

// The spans of a leg at the ends of what it can do.
func TestLegAtTheEndsOfItsReach(t *testing.T) {
	g := leg{440, 530, 160, 0, 1}
	for d, want := range map[float64]float64{970: 0, 1000: 0, 90: 180, 50: 180} {
		if got := g.flexion(d); math.Abs(got-want) > 1e-6 {
			t.Errorf("sole %g mm off: %g deg, want %g", d, got, want)
		}
	}
}
