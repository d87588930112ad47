package advice

import (
	"fmt"
	"math"
	"slices"
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

// only lets one piece change by 120 mm either way, and no other.
func only(p fit.Piece) func(f *fit.Fitting) {
	return func(f *fit.Fitting) {
		wide(f)
		for other := range f.Kit.Pieces {
			if fit.Piece(other) != p {
				f.Kit.Pieces[other].Change = fit.Fixed
			}
		}
	}
}

// The tables, from which plans are picked, say what the full model says: a leg's
// bend about as closely as it matters, all else exactly; with all pieces free,
// and with each of them alone.
func TestTablesAgreeWithTheFullModel(t *testing.T) {
	for _, example := range []string{"1-good-kit", "2-one-must-fails", "3-stature-only", "5-two-hangs-one-change"} {
		t.Run(example, func(t *testing.T) {
			if held := tablesAgree(t, advising(t, example, wide)); held < 200 {
				t.Errorf("%d held against the full model", held)
			}
			for p := range fit.NumPieces {
				t.Run(p.Key(), func(t *testing.T) {
					if held := tablesAgree(t, advising(t, example, only(p))); held < 20 {
						t.Errorf("%d held against the full model", held)
					}
				})
			}
		})
	}
}

// tablesAgree holds plans against the full model and says how many margins.
func tablesAgree(t *testing.T, a *adviser) (held int) {
	t.Helper()
	h, sub := a.chooser, a.subjects[0]
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
				t.Errorf("%s at %q with %v: %g, by the full model %g", d.e.Check(), d.e.At(), h.lengths(p), got, want)
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
	return held
}

// What the spread of setting a piece brings to a margin's variance is its square
// by that of the margin's mean slope over the marks, or for a bend by that of its
// slope at the reference, in the full model; and never more than all there is.
func TestWhatSettingSpreadBrings(t *testing.T) {
	a := advising(t, "1-good-kit", wide)
	h, sub := a.chooser, a.subjects[0]
	moved := 0
	for i, pc := range h.ps {
		at := func(mm float64) []sum {
			to := h.musts[0].t.sampler.ref.clone()
			to[pc.id] = mm
			return sub.sums(sub.f, to)
		}
		ref := h.musts[0].t.sampler.ref[pc.id]
		lo, hi := pc.marks[0], pc.marks[len(pc.marks)-1]
		first, last, below, above := at(lo), at(hi), at(ref-1), at(ref+1)
		for _, d := range h.musts {
			slope, within := (last[d.e].margin-first[d.e].margin)/(hi-lo), 1e-6
			if d.curve != nil { // over a distance that a bridge does not move evenly
				slope, within = (above[d.e].margin-below[d.e].margin)/2, 0.1
			}
			got, want := d.settingVariance(i, 8), slope*slope*64
			if math.Abs(got-want) > within*math.Max(1, want) {
				t.Errorf("%s at %q by the %s: %g, want %g", d.e.Check(), d.e.At(), rules.PieceName(pc.id), got, want)
			}
			if all := d.t.base[d.e].variance; d.settingVariance(i, pc.how.SettingSpread()) > all {
				t.Errorf("%s at %q by the %s: more than all there is, %g", d.e.Check(), d.e.At(), rules.PieceName(pc.id), all)
			}
			if want > 0 {
				moved++
			}
		}
	}
	if moved < 10 {
		t.Errorf("%d margins moved: too few", moved)
	}
}

// Where no reading helps, the pieces are named that would do if they were set
// exactly; where none of them would, those that bring more than a tenth of the
// standard uncertainty of what is in conflict.
func TestPiecesThatAreSetTooLoosely(t *testing.T) {
	for _, c := range []struct {
		name, check string
		want        string
	}{
		{"1-good-kit", "hitch-top-reach", "[main_bridge hitch_left hitch_right]"},
		{"3-stature-only", "hitch-top-reach", "[hitch_left]"}, // the reach itself is known to 50 mm
		{"1-good-kit", "knee-bend-on-tether", "[foot_loop tether backup_bridge]"},
		{"3-stature-only", "slip-drop", "[foot_loop backup_bridge]"}, // the tether slides, to 3 mm
	} {
		a := advising(t, c.name, wide)
		for _, d := range a.chooser.musts {
			d.more.margin = -1e6
		}
		if got := fmt.Sprint(a.loose([]string{c.check})); got != c.want {
			t.Errorf("%s, %s: %s, want %s", c.name, c.check, got, c.want)
		}
	}
	a := advising(t, "1-good-kit", wide)
	h := a.chooser
	reach := h.musts[slices.IndexFunc(h.musts, func(d *demand) bool { return d.e == rules.HitchTopReach.Ends()[0] })]
	h.musts = []*demand{reach}
	lo, hi := -1000.0, 1000.0
	for hi-lo > 0.01 {
		if reach.more.margin = (lo + hi) / 2; h.any(h.musts) {
			hi = reach.more.margin
		} else {
			lo = reach.more.margin
		}
	}
	reach.more.margin = lo - 0.5 // which setting the left loop exactly makes good, and the bridge does not
	if got := fmt.Sprint(a.loose([]string{"hitch-top-reach"})); got != "[hitch_left]" {
		t.Errorf("half a millimetre short: %s", got)
	}
}

// A curve is followed between its samples and no further; what its distance
// scatters more than where it was taken counts by slope and curvature.
func TestCurveByHand(t *testing.T) {
	var at, got []sum
	for x := 100.0; x <= 200; x += 10 { // the further, the more the distance scatters
		at, got = append(at, sum{margin: x, variance: x / 10}), append(got, sum{x * x, 3 * x, 7})
	}
	c := fitCurve(at, got)
	for _, k := range []struct{ d, variance, at float64 }{{150, 15, 150}, {150, 34, 150}, {130, 10, 130}, {90, 30, 100}, {230, 30, 200}} {
		is := c.at(sum{margin: k.d, variance: k.variance})
		more := k.variance - k.at/10
		want := sum{k.at * k.at, 3*k.at + 4*k.at*k.at*more, 7 + more}
		if math.Abs(is.margin-want.margin) > 1e-6 || math.Abs(is.variance-want.variance) > 1e-4 || math.Abs(is.shift-want.shift) > 1e-4 {
			t.Errorf("at %g ± √%g: %v, want %v", k.d, k.variance, is, want)
		}
	}
	at, got = nil, nil // within less than a millimetre
	for x := 100.0; x < 101; x += 0.25 {
		at, got = append(at, sum{margin: x, variance: 4}), append(got, sum{x * x, 3 * x, 7})
	}
	for _, x := range []float64{100, 100.4, 100.75} {
		if is := fitCurve(at, got).at(sum{margin: x, variance: 9}); math.Abs(is.shift-(7+5)) > 1e-4 || math.Abs(is.variance-(3*x+4*x*x*5)) > 1e-4 {
			t.Errorf("of a short curve at %g: %v", x, is)
		}
	}
	if got := c.at(sum{margin: math.NaN()}); !math.IsNaN(got.margin) {
		t.Errorf("at nothing known: %v", got)
	}
	if c := fitCurve(at[:3], got[:3]); c != nil {
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
