package rules

import (
	"math"

	"example.com/hangtape/fit"
)

// restsShare is how much of an end's standard uncertainty an input has to bring
// before the end is said to rest on it.
const restsShare = 0.1

// restsOn names the readings without which nobody should leave the ground on a
// must: those that an estimate of the body or a prediction stands for, and those
// that a finding doubts. predicted says that a prediction is among them.
func (a *Assessment) restsOn(e End, u float64) (keys []string, predicted bool) {
	if !(u > 0) {
		return nil, false
	}
	heavy := func(i int) bool {
		return math.Abs(a.p.Contribution(i, int(e))) > restsShare*u
	}
	for k := range fit.NumLikely {
		l := fit.Likely(k)
		if i, ok := a.m.Residual(l.Residual()); ok && heavy(i) {
			keys = append(keys, a.keyOf(l.Reading()))
		}
	}
	for i := range a.m.Inputs {
		in := &a.m.Inputs[i]
		body := in.Reading == fit.Thigh || in.Reading == fit.Shin || in.Reading == fit.Waist
		doubtful := a.doubted[i] || in.Origin == fit.Estimated && body
		if !doubtful && in.Origin != fit.Predicted || !heavy(i) {
			continue
		}
		if in.Origin == fit.Predicted {
			predicted = true
			keys = append(keys, a.doubts(e, i)...)
		} else {
			keys = append(keys, in.Key)
		}
	}
	return fit.SortKeys(keys), predicted
}

// doubts names what would stand in the place of a predicted input in e; for a
// main bridge the heights in e that it has moved.
func (a *Assessment) doubts(e End, i int) []string {
	keys := a.m.Doubts(i)
	if len(keys) > 0 {
		return keys
	}
	for j := range a.m.Inputs {
		in := &a.m.Inputs[j]
		if in.Origin == fit.Predicted && fit.CarriedByBridge(in.Reading) && a.p.Contribution(j, int(e)) != 0 {
			keys = append(keys, a.m.Doubts(j)...)
		}
	}
	return keys
}

// keyOf is the key of r in the hang that read it, or in the latest one.
func (a *Assessment) keyOf(r fit.Reading) string {
	if r.IsHeight() {
		return fit.HeightKey(a.m.HangOf(r), r)
	}
	return fit.LaidKey(r)
}

// Estimates names the readings of the body that an estimate stands for and e
// rests on, whatever its verdict.
func (a *Assessment) Estimates(e End) []string {
	r := &a.ends[e]
	if !(r.U > 0) {
		return nil
	}
	var keys []string
	for k := range fit.NumLikely {
		l := fit.Likely(k)
		if i, ok := a.m.Residual(l.Residual()); ok && math.Abs(a.p.Contribution(i, int(e))) > restsShare*r.U {
			keys = append(keys, a.keyOf(l.Reading()))
		}
	}
	for i := range a.m.Inputs {
		in := &a.m.Inputs[i]
		body := in.Reading == fit.Thigh || in.Reading == fit.Shin || in.Reading == fit.Waist
		if in.Origin == fit.Estimated && body && math.Abs(a.p.Contribution(i, int(e))) > restsShare*r.U {
			keys = append(keys, in.Key)
		}
	}
	return fit.SortKeys(keys)
}
