package rules

import (
	"math"

	"example.com/hangtape/fit"
)

// nowReadings are the readings for which something may stand: an estimate of the
// body, or the model's value for a height that a change has moved.
var nowReadings = [...]fit.Reading{
	fit.Thigh, fit.Shin, fit.Waist, fit.Nose, fit.WristUp, fit.WristDown,
	fit.ConnectorTop, fit.ConnectorBottom, fit.LeftLoopTop, fit.LeftHitchTop, fit.RightLoopTop, fit.RightHitchTop,
	fit.GardaLevel, fit.KneeLevel, fit.GardaTaut,
}

const (
	numEstimable = 6 // the first of nowReadings
	outFull      = len(nowReadings)
	numNow       = len(nowReadings) + 1
)

func nowOf(s *fit.State, out []float64) {
	for i, r := range nowReadings {
		out[i] = s.Standing(r)
	}
	out[outFull] = s.Full
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
		if in.Origin == fit.Predicted {
			if n, ok := nowIndex(in.Reading); ok {
				v = a.standing(n, in.Reading, in.Key, fit.Predicted)
			}
		}
		list = append(list, v)
	}
	for n, r := range nowReadings[:numEstimable] {
		if _, ok := a.m.Residual(residualOf(r)); ok && !a.m.Read(r) {
			list = append(list, a.standing(n, r, a.keyOf(r), fit.Estimated))
		}
	}
	if _, ok := a.m.Residual(fit.PartFull); ok {
		list = append(list, a.standing(outFull, fit.Stature, "estimate.full_mm", fit.Estimated))
	}
	return list
}

// standing is what stands for a reading: on the tape's scale where it is a
// height, with the standard uncertainty of the height above the hip.
func (a *Assessment) standing(n int, r fit.Reading, key string, origin fit.Origin) Input {
	o := outNow + n
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

func nowIndex(r fit.Reading) (int, bool) {
	for i, x := range nowReadings {
		if x == r {
			return i, true
		}
	}
	return 0, false
}

func residualOf(r fit.Reading) fit.BodyPart {
	for k := range fit.NumLikely {
		if l := fit.Likely(k); l.Reading() == r {
			return l.Residual()
		}
	}
	return fit.PartFull
}
