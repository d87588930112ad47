package advice

import (
	"math"

	"gonum.org/v1/gonum/interp"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// A curve is a margin over the distance d that it follows from. Variance and
// shift are without what d's own variance brings, which is not the same for all
// choices that come to one distance.
type curve struct {
	margin, variance, shift interp.NotAKnotCubic
	lo, hi                  float64 // of d
}

// bendSamples is how many distances the curves are taken at.
const bendSamples = 21

// at is the margin at the distance d, whose variance counts by the slope, and in
// the shift by the curvature.
func (c *curve) at(d sum) sum {
	if math.IsNaN(d.margin) { // which the splines take for their lower end
		return sum{d.margin, d.margin, d.margin}
	}
	x := math.Min(math.Max(d.margin, c.lo), c.hi)
	by := c.brings(x, d.variance)
	return sum{c.margin.Predict(x), c.variance.Predict(x) + by.variance, c.shift.Predict(x) + by.shift}
}

// brings is what a variance of d brings to the margin's at x.
func (c *curve) brings(x, variance float64) sum {
	h := math.Min(1, (c.hi-c.lo)/2) // mm
	slope := c.margin.PredictDerivative(math.Min(math.Max(x, c.lo), c.hi))
	near := math.Min(math.Max(x, c.lo+h), c.hi-h)
	curvature := (c.margin.PredictDerivative(near+h) - c.margin.PredictDerivative(near-h)) / (2 * h)
	return sum{variance: slope * slope * variance, shift: curvature * variance / 2}
}

// bends takes the curves of the knee and the leg, moving one of the pieces that
// the distance depends on as far as it goes with all of them, and where a leg
// that bends at all can be.
func (r *sampler) bends(ps *[fit.NumPieces]*piece) {
	t := r.t
	mover, lo, hi := r.bendRange()
	if mover < 0 {
		return
	}
	pc, sign := ps[mover], t.terms[mover][outDistance].sign
	out := outputs(&t.subject.limits)
	ends := rules.KneeBendOnTether.Ends()
	var at []sum // the distances
	var got [2][]sum
	for j := range bendSamples {
		share := float64(j) / (bendSamples - 1)
		v := r.ref[pc.id] + float64(sign)*(lo+(hi-lo)*share-t.base[outDistance].margin)
		r.m.SetLength(pc.id, v)
		s := sumsOf(r.m.PropagateOnly(r.relevant, numOutputs, out))
		d := s[outDistance]
		if further := len(at) == 0 || d.margin > at[len(at)-1].margin; further && !math.IsNaN(s[ends[0]].variance+s[ends[1]].variance) {
			at = append(at, d)
			for k, e := range ends {
				got[k] = append(got[k], s[e])
			}
		}
	}
	r.m.SetLength(pc.id, r.ref[pc.id])
	for k := range ends {
		t.bend[k] = fitCurve(at, got[k])
	}
}

// bendRange is the range of the distance, and the place of a piece that moves it
// by as much as itself; -1 where none does. The backup bridge by itself needs no
// curve, since the ends then are its terms alone.
func (r *sampler) bendRange() (mover int, lo, hi float64) {
	mover = -1
	lo = r.t.base[outDistance].margin
	hi = lo
	for i := range r.t.terms {
		tm := r.t.terms[i][outDistance]
		if tm == nil {
			continue
		}
		least, most := math.Inf(1), math.Inf(-1)
		for _, s := range tm.options {
			if !math.IsNaN(s.margin) {
				least, most = math.Min(least, s.margin), math.Max(most, s.margin)
			}
		}
		lo, hi = lo+least, hi+most
		if i != placeBackup {
			mover = i
		}
	}
	var s fit.State
	r.m.Current(&s)
	// Nearer than this no knee folds, further off no leg stretches.
	if lo, hi = math.Max(lo, 0.3*s.LegReach), math.Min(hi, 1.1*s.LegReach); !(lo < hi) {
		return -1, lo, hi
	}
	return mover, lo, hi
}

// fitCurve lays a curve through what a margin came to at some distances,
// ascending; nil where there are too few, or they lie too close for one.
func fitCurve(at, got []sum) *curve {
	if len(at) < 4 {
		return nil
	}
	xs := make([]float64, len(at))
	for k, d := range at {
		xs[k] = d.margin
	}
	c := &curve{lo: xs[0], hi: xs[len(xs)-1]}
	through := func(y func(k int) float64) []float64 {
		ys := make([]float64, len(xs))
		for k := range ys {
			ys[k] = y(k)
		}
		return ys
	}
	own := func(k int) sum { return c.brings(xs[k], at[k].variance) }
	for _, part := range []struct {
		of *interp.NotAKnotCubic
		y  func(k int) float64
	}{
		{&c.margin, func(k int) float64 { return got[k].margin }}, // first: its slope is in the others
		{&c.variance, func(k int) float64 { return got[k].variance - own(k).variance }},
		{&c.shift, func(k int) float64 { return got[k].shift - own(k).shift }},
	} {
		if err := part.of.Fit(xs, through(part.y)); err != nil {
			return nil
		}
	}
	return c
}
