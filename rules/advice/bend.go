package advice

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/interp"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// A curve is a margin over the distance d that it follows from.
type curve struct {
	margin, variance, shift interp.NotAKnotCubic
	lo, hi                  float64 // of d
	distance                float64 // variance of d where the curve was taken
}

// bendSamples is how many distances the curves are taken at.
const bendSamples = 21

// at is the margin at the distance d. A variance of d other than the curve's own
// counts by the slope, and in the shift by the curvature.
func (c *curve) at(d sum) sum {
	if math.IsNaN(d.margin) { // which the splines take for their lower end
		return sum{d.margin, d.margin, d.margin}
	}
	x := math.Min(math.Max(d.margin, c.lo), c.hi)
	const h = 1.0 // mm
	slope := c.margin.PredictDerivative(x)
	curvature := (c.margin.PredictDerivative(math.Min(x+h, c.hi)) - c.margin.PredictDerivative(math.Max(x-h, c.lo))) / (2 * h)
	more := d.variance - c.distance
	return sum{c.margin.Predict(x), c.variance.Predict(x) + slope*slope*more, c.shift.Predict(x) + curvature*more/2}
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
	var xs []float64
	var got [2][]sum
	for j := range bendSamples {
		share := float64(j) / (bendSamples - 1)
		v := r.ref[pc.id] + float64(sign)*(lo+(hi-lo)*share-t.base[outDistance].margin)
		if mover == placeBackup { // does not move it by as much as itself
			if sign < 0 {
				share = 1 - share
			}
			v = pc.marks[0] + (pc.marks[len(pc.marks)-1]-pc.marks[0])*share
		}
		r.m.SetLength(pc.id, v)
		s := sumsOf(r.m.PropagateOnly(r.relevant, numOutputs, out))
		x := s[outDistance].margin
		if further := len(xs) == 0 || x > xs[len(xs)-1]; further && !math.IsNaN(s[ends[0]].variance+s[ends[1]].variance) {
			xs = append(xs, x)
			for k, e := range ends {
				got[k] = append(got[k], s[e])
			}
		}
	}
	r.m.SetLength(pc.id, r.ref[pc.id])
	for k := range ends {
		t.bend[k] = fitCurve(xs, got[k], t.base[outDistance].variance)
	}
}

// bendRange is the range of the distance, and the place of a piece that moves it,
// by as much as itself if there is one; -1 where none does.
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
		if mover < 0 || mover == placeBackup {
			mover = i
		}
	}
	var s fit.State
	r.m.Current(&s)
	if lo, hi = math.Max(lo, 0.3*s.LegReach), math.Min(hi, 1.1*s.LegReach); !(lo < hi) {
		return -1, lo, hi
	}
	return mover, lo, hi
}

func fitCurve(xs []float64, ys []sum, distance float64) *curve {
	of := func(part func(sum) float64) []float64 {
		list := make([]float64, len(ys))
		for i, y := range ys {
			list[i] = part(y)
		}
		return list
	}
	if len(xs) > 3 {
		c := &curve{lo: xs[0], hi: xs[len(xs)-1], distance: distance}
		if errors.Join(
			c.margin.Fit(xs, of(func(s sum) float64 { return s.margin })),
			c.variance.Fit(xs, of(func(s sum) float64 { return s.variance })),
			c.shift.Fit(xs, of(func(s sum) float64 { return s.shift })),
		) == nil {
			return c
		}
	}
	return nil
}
