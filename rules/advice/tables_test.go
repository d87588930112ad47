package advice

import (
	"math"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// wide lets every piece change by 120 mm either way.
func wide(f *fit.Fitting) {
	s := rules.Assess(f, rules.DefaultLimits()).State()
	now := [fit.NumPieces]float64{s.MainBridge, s.Loop[0], s.Loop[1], s.FootLoop, s.Tether, s.BackupBridge}
	for p := range f.Kit.Pieces {
		info := &f.Kit.Pieces[p]
		info.Change, info.Bounded = fit.How(1+p%2), true
		info.Bounds = [2]float64{math.Max(50, now[p]-120), now[p] + 120}
	}
}

// The tables, from which plans are picked, say what the full model says: a leg's
// bend about as closely as it matters, all else exactly.
func TestTablesAgreeWithTheFullModel(t *testing.T) {
	for _, name := range []string{"1-good-kit", "2-one-must-fails", "3-stature-only", "5-two-hangs-one-change"} {
		a := advising(t, name, wide)
		h, sub := a.chooser, a.subjects[0]
		held := 0
		hold := func(p *plan) {
			full := sub.sums(sub.f, h.lengths(p))
			for _, d := range append(append([]*demand(nil), h.musts...), h.shoulds...) {
				got, want := d.at(&p.c), full[d.e]
				if math.IsNaN(want.margin) {
					continue
				}
				held++
				within := sum{1e-6, 1e-3, 1e-3}
				if d.e.Check() == rules.KneeBendOnTether {
					within = sum{1e-3, 0.02, 0.5}
				}
				if !(math.Abs(got.margin-want.margin) <= within.margin && math.Abs(math.Sqrt(got.variance)-math.Sqrt(want.variance)) <= within.variance &&
					math.Abs(got.shift-want.shift) <= within.shift) {
					t.Errorf("%s: %s at %q with %v: %g, by the full model %g", name, d.e.Check(), d.e.At(), h.lengths(p), got, want)
				}
			}
		}
		for i, pc := range h.ps {
			if pc == nil {
				continue
			}
			for _, k := range []int{unchanged + 1, len(pc.marks) / 3, len(pc.marks) / 2, len(pc.marks)} {
				p := plan{set: 1 << i}
				p.c[i] = k
				hold(&p)
			}
		}
		for _, share := range []float64{0.3, 0.6} {
			var p plan
			for i, pc := range h.ps {
				if pc != nil {
					p.set |= 1 << i
					p.c[i] = 1 + int(share*float64(len(pc.marks)-1))
				}
			}
			hold(&p)
		}
		if held < 200 {
			t.Errorf("%s: %d held against the full model", name, held)
		}
	}
}

// A curve is followed between its samples and no further; what its distance
// scatters more than when it was taken counts by slope and curvature.
func TestCurveByHand(t *testing.T) {
	var xs []float64
	var ys []sum
	for x := 100.0; x <= 200; x += 10 {
		xs, ys = append(xs, x), append(ys, sum{x * x, 3 * x, 7})
	}
	c := fitCurve(xs, ys, 25)
	for _, k := range []struct{ d, variance, at float64 }{{150, 25, 150}, {150, 34, 150}, {133, 20, 133}, {90, 30, 100}, {230, 30, 200}} {
		got := c.at(sum{margin: k.d, variance: k.variance})
		more := k.variance - 25
		want := sum{k.at * k.at, 3*k.at + 4*k.at*k.at*more, 7 + more}
		if k.at == 100 || k.at == 200 { // the curvature is taken on one side
			want.shift = 7 + more/2
		}
		if math.Abs(got.margin-want.margin) > 1e-6 || math.Abs(got.variance-want.variance) > 1e-4 || math.Abs(got.shift-want.shift) > 1e-4 {
			t.Errorf("at %g ± √%g: %v, want %v", k.d, k.variance, got, want)
		}
	}
	if got := c.at(sum{margin: math.NaN()}); !math.IsNaN(got.margin) {
		t.Errorf("at nothing known: %v", got)
	}
	if c := fitCurve(xs[:3], ys[:3], 25); c != nil {
		t.Errorf("a curve of three samples: %v", c)
	}
}

// What scatters along a line is told from three samples.
func TestStraightByItsSamples(t *testing.T) {
	row := func(variance, shift float64) []sum {
		list := make([]sum, numOutputs)
		list[2] = sum{0, variance, shift}
		return list
	}
	nan := math.NaN()
	for _, c := range []struct {
		got  [][]sum
		want bool
	}{
		{[][]sum{row(1, 5), row(2, 5), row(5, 5)}, true},
		{[][]sum{row(1, 5), row(2.1, 5), row(5, 5)}, false},
		{[][]sum{row(1, 5), row(2, 5.1), row(5, 5)}, false},
		{[][]sum{row(1e9, 5), row(2e9+0.1, 5), row(5e9, 5)}, true},
		{[][]sum{row(nan, 0), row(nan, 0), row(nan, 0)}, true},
		{[][]sum{row(nan, 0), row(2, 0), row(5, 0)}, false},
		{[][]sum{row(1, 0), row(2, 0), row(nan, 0)}, false},
		{[][]sum{row(1, 5), row(9, 5)}, true},
	} {
		if got := straight([]float64{10, 11, 14}[:len(c.got)], c.got); got != c.want {
			t.Errorf("%v: %t", c.got, got)
		}
	}
}
