package advice

import (
	"cmp"
	"math"
	"slices"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// Places in order.
const (
	placeBackup = 0
	placeLeft   = 4
	placeRight  = 5
)

// samples is how many marks of a piece are propagated; between them variance and
// shift are interpolated, which are smooth.
const samples = 11

// A sampler fills tables from the full model.
type sampler struct {
	t        *tables
	m        *fit.Model // with all pieces set to the reference
	ref      lengths
	relevant []bool
}

// alsoAway adds the inputs that have a part only away from the reference: what a
// pose was read with cancels where nothing is changed.
func (r *sampler) alsoAway(ps *[fit.NumPieces]*piece) {
	for _, pc := range ps {
		if pc != nil {
			k := len(pc.marks) / 3
			if pc.marks[k] == r.ref[pc.id] {
				k = 0
			}
			r.m.SetLength(pc.id, pc.marks[k])
		}
	}
	for i, away := range r.m.Propagate(numOutputs, outputs(&r.t.subject.limits)).Relevant() {
		r.relevant[i] = r.relevant[i] || away
	}
	for id, v := range r.ref {
		r.m.SetLength(id, v)
	}
}

// piece works out the terms of the piece at place i: unchanged, and on its marks.
func (r *sampler) piece(i int, pc *piece) {
	n := len(pc.marks)
	margins := make([][numOutputs]float64, n)
	out := outputs(&r.t.subject.limits)
	var state fit.State
	for k, v := range pc.marks {
		r.m.SetLength(pc.id, v)
		r.m.Current(&state)
		out(nil, &state, margins[k][:])
	}
	xs, got := r.sampled(pc, slices.Compact([]int{0, n / 2, n - 1}))
	if !straight(xs, got) {
		xs, got = r.sampled(pc, r.sampleMarks(pc))
	}
	r.m.SetLength(pc.id, r.ref[pc.id])
	without := r.ref.clone()
	delete(without, pc.id)
	left := sumsOf(r.t.subject.changed(without).Propagate(numOutputs, out))

	scale := r.scale(pc)
	scaled := make([]float64, len(xs))
	for j, x := range xs {
		scaled[j] = scale(x)
	}
	for o := range numOutputs {
		sign := signOf(margins, o)
		if sign == 0 {
			continue
		}
		base := r.t.base[o]
		tm := &term{options: make([]sum, n+1), sign: sign}
		tm.options[unchanged] = left[o].minus(base)
		variance := between(scaled, func(j int) float64 { return got[j][o].variance })
		shift := between(scaled, func(j int) float64 { return got[j][o].shift })
		for k, v := range pc.marks {
			tm.options[k+1] = sum{margins[k][o], variance(scale(v)), shift(scale(v))}.minus(base)
		}
		r.t.terms[i][o] = tm
	}
}

// sampled propagates with the piece at some of its marks.
func (r *sampler) sampled(pc *piece, at []int) (xs []float64, got [][]sum) {
	out := outputs(&r.t.subject.limits)
	for _, k := range at {
		r.m.SetLength(pc.id, pc.marks[k])
		xs = append(xs, pc.marks[k])
		got = append(got, sumsOf(r.m.PropagateOnly(r.relevant, numOutputs, out)))
	}
	return xs, got
}

// beyondBounds finds the outputs that are out of the domain whatever is set, and
// would be known with some piece beyond its bounds.
func (r *sampler) beyondBounds(ps *[fit.NumPieces]*piece) {
	var out []int
	for e := range rules.NumEnds {
		if end := r.t.subject.assessed.End(e); math.IsNaN(r.t.base[e].margin) && end.Plain == rules.Unknown && len(end.Missing) == 0 {
			out = append(out, int(e))
		}
	}
	if len(out) == 0 {
		return
	}
	const step = 50.0 // mm
	var state fit.State
	var margins [numOutputs]float64
	for i, pc := range ps {
		if pc == nil {
			continue
		}
		for v := step; v < mostFreed; v += step {
			r.m.SetLength(pc.id, v)
			r.m.Current(&state)
			outputs(&r.t.subject.limits)(nil, &state, margins[:])
			for _, o := range out {
				r.t.beyond[i][o] = r.t.beyond[i][o] || !math.IsNaN(margins[o])
			}
		}
		r.m.SetLength(pc.id, r.ref[pc.id])
	}
}

// signOf is the way in which output o goes as the piece gets longer, 0 where it
// does not move it.
func signOf(margins [][numOutputs]float64, o int) int {
	lo, hi := math.NaN(), math.NaN()
	for k := range margins {
		if v := margins[k][o]; !math.IsNaN(v) {
			if math.IsNaN(lo) {
				lo = v
			}
			hi = v
		}
	}
	switch d := hi - lo; {
	case d > 1e-9:
		return 1
	case d < -1e-9:
		return -1
	}
	return 0
}

// scale is what the terms of a piece are smooth in: the logarithm of its rise for
// a bridge, whose slope grows without limit as it comes to be straight, and for
// the others the length.
func (r *sampler) scale(pc *piece) func(v float64) float64 {
	var s fit.State
	r.m.Current(&s)
	switch pc.id {
	case fit.PieceMainBridge:
		return func(v float64) float64 { return math.Log(fit.Rise(v, s.MainBridgeRings)) }
	case fit.PieceBackupBridge:
		return func(v float64) float64 { return math.Log(fit.Rise(v, s.BackupBridgeRings)) }
	}
	return func(v float64) float64 { return v }
}

// sampleMarks chooses which marks are propagated: both ends, and closer together
// at the short end, where the slopes are steepest.
func (r *sampler) sampleMarks(pc *piece) []int {
	scale, n := r.scale(pc), len(pc.marks)
	lo, hi := scale(pc.marks[0]), scale(pc.marks[n-1])
	var at []int
	for j := range samples {
		f := float64(j) / (samples - 1)
		x := lo + (hi-lo)*(0.4*f+0.6*f*f)
		k, _ := slices.BinarySearchFunc(pc.marks, x, func(v, x float64) int { return cmp.Compare(scale(v), x) })
		if k = min(k, n-1); len(at) == 0 || k > at[len(at)-1] {
			at = append(at, k)
		}
	}
	return at
}

// pairs works out the variance of the pair of hitches with none, one or both of
// the loops tied anew.
func (r *sampler) pairs(ps *[fit.NumPieces]*piece) {
	e := int(rules.HitchPairLevel.Ends()[0])
	out := outputs(&r.t.subject.limits)
	for left := range 2 {
		for right := range 2 {
			to := r.ref.clone()
			if left == 0 || ps[placeLeft] == nil {
				delete(to, fit.PieceHitchLeft)
			}
			if right == 0 || ps[placeRight] == nil {
				delete(to, fit.PieceHitchRight)
			}
			u, _ := r.t.subject.changed(to).Propagate(numOutputs, out).U(e)
			r.t.pair[left][right] = u * u
		}
	}
}
