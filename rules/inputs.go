package rules

import (
	"math"
	"slices"

	"example.com/hangtape/fit"
)

// estimable are the readings of the body for which an estimate may stand.
var estimable = [...]fit.Reading{fit.Thigh, fit.Shin, fit.Waist, fit.Nose, fit.WristUp, fit.WristDown}

// standIns are the readings for which something stands: an estimate of the body,
// or the model's value for a height that a change has moved.
func standIns(m *fit.Model) []fit.Reading {
	var list []fit.Reading
	for _, r := range estimable {
		if estimated(m, r) {
			list = append(list, r)
		}
	}
	for i := range m.Inputs {
		if in := &m.Inputs[i]; in.Origin == fit.Predicted && in.Change == 0 && !in.Hidden && !slices.Contains(list, in.Reading) {
			list = append(list, in.Reading)
		}
	}
	return list
}

// estimated says whether an estimate stands for the reading r of the body.
func estimated(m *fit.Model, r fit.Reading) bool {
	_, ok := m.Residual(residualOf(r))
	return ok && !m.Read(r)
}

// inputs lists the base inputs and the estimates that stand for readings, under
// their keys, in the order of the session file.
func (a *Assessment) inputs() []Input {
	list := make([]Input, 0, len(a.m.Inputs)+8)
	for i := range a.m.Inputs {
		in := &a.m.Inputs[i]
		if in.Hidden {
			continue
		}
		v := Input{in.Key, Num(in.V), Num(in.U), in.Unit, in.Origin.String()}
		if n := slices.Index(a.outputs.standIns, in.Reading); n >= 0 && in.Origin == fit.Predicted {
			if a.m.HangOf(in.Reading) == in.Hang {
				v = a.standing(outStand+n, in.Reading, in.Key, fit.Predicted)
			} else { // read again since: it only tells how the hitch was wrapped
				v.Origin = fit.Measured.String()
			}
		}
		list = append(list, v)
	}
	for n, r := range a.outputs.standIns {
		if slices.Contains(estimable[:], r) {
			list = append(list, a.standing(outStand+n, r, a.keyOf(r), fit.Estimated))
		}
	}
	if _, ok := a.m.Residual(fit.PartFull); ok {
		list = append(list, a.standing(outFull, fit.Stature, "estimate.full_mm", fit.Estimated))
	}
	return list
}

// standing is what stands for a reading: on the tape's scale where it is a
// height, with the standard uncertainty of the height above the hip.
func (a *Assessment) standing(o int, r fit.Reading, key string, origin fit.Origin) Input {
	value := a.p.Values[o]
	if r.IsHeight() {
		value += a.m.HipValue(a.m.HangOf(r))
	}
	u, _ := a.p.U(o)
	if math.IsNaN(value) {
		u = value
	}
	return Input{key, Num(value), Num(u), "mm", origin.String()}
}

// residualOf is the part of an estimate that stands for the reading r, one of
// estimable.
func residualOf(r fit.Reading) (part fit.BodyPart) {
	for k := range fit.NumLikely {
		if l := fit.Likely(k); l.Reading() == r {
			part = l.Residual()
		}
	}
	return part
}
