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
	for i, contr := range a.p.Contributions(int(e)) {
		if !(math.Abs(contr) > restsShare*u) { // false for NaN
			continue
		}
		switch in := &a.m.Inputs[i]; {
		case in.Origin == fit.Predicted:
			predicted = true
			keys = append(keys, a.doubts(e, i)...)
		case a.doubted[i]:
			keys = append(keys, in.Key)
		default:
			keys = append(keys, a.estimates(i)...)
		}
	}
	return fit.SortKeys(keys), predicted
}

// estimates names the readings of the body that input i stands for without their
// having been taken: the one that the survey leaves open by it, or a length that
// was kept for too long.
func (a *Assessment) estimates(i int) (keys []string) {
	in := &a.m.Inputs[i]
	if in.Origin != fit.Estimated {
		return nil
	}
	switch in.Reading {
	case fit.Thigh, fit.Shin, fit.Waist:
		return []string{in.Key}
	}
	for k := range fit.NumLikely {
		l := fit.Likely(k)
		if residual, ok := a.m.Residual(l.Residual()); ok && residual == i {
			keys = append(keys, a.keyOf(l.Reading()))
		}
	}
	return keys
}

// doubts names what would stand in the place of a predicted input in e; for a
// main bridge the heights in e that it has moved.
func (a *Assessment) doubts(e End, i int) []string {
	keys := a.m.Doubts(i)
	if len(keys) > 0 {
		return keys
	}
	for j, contr := range a.p.Contributions(int(e)) {
		in := &a.m.Inputs[j]
		if in.Origin == fit.Predicted && fit.CarriedByBridge(in.Reading) && contr != 0 {
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
	for i, contr := range a.p.Contributions(int(e)) {
		if math.Abs(contr) > restsShare*r.U {
			keys = append(keys, a.estimates(i)...)
		}
	}
	return fit.SortKeys(keys)
}
