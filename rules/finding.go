package rules

import (
	"math"
	"slices"

	"example.com/hangtape/fit"
)

const unlikelyFactor = 3 // of the difference's own standard uncertainty; judgement

// disagreements are the poses whose reading does not agree with the lengths that
// make it, and marks what they name as doubted. The height that was read comes
// first, then the largest contributor among the other readings.
func (a *Assessment) disagreements() []Finding {
	var list []Finding
	for k, off := range a.outputs.offsets {
		o := a.outputs.atOffsets() + k
		u, _ := a.p.U(o)
		if v := a.p.Values[o]; math.Abs(v) > TwoSided*u {
			first := a.inputOf(off.Reading())
			names := []int{first}
			if second := a.largest(o, first); second >= 0 {
				names = append(names, second)
			}
			list = append(list, a.doubt("readings-disagree", names,
				"%v is %v off what the other readings make of it (standard uncertainty %v): read both again", off.Reading(), length(v), length(u)))
		}
	}
	return list
}

// largest is the reading, other than first, that contributes most to the
// standard uncertainty of output o; ties go to the order of the session file.
func (a *Assessment) largest(o, first int) int {
	best, most := -1, 0.0
	for i := range a.m.Inputs {
		in := &a.m.Inputs[i]
		if i == first || in.N == 0 || in.Hidden || in.Origin != fit.Measured && in.Origin != fit.KeptOver {
			continue
		}
		if c := math.Abs(a.p.Contribution(i, o)); c > most+1e-12 {
			best, most = i, c
		}
	}
	return best
}

// unlikely are the readings of the body that stature and the other readings
// speak against.
func (a *Assessment) unlikely() []Finding {
	var list []Finding
	for k, l := range a.outputs.likely {
		r := l.Reading()
		i := a.inputOf(r)
		if i < 0 || a.m.Inputs[i].Origin == fit.Estimated {
			continue
		}
		o := a.outputs.atLikely() + k
		u, _ := a.p.U(o)
		if v := a.p.Values[o]; math.Abs(v) > unlikelyFactor*u {
			list = append(list, a.doubt("unlikely-reading", []int{i},
				"%v is %v off what stature and the other readings say of it (standard uncertainty %v)", r, length(v), length(u)))
		}
	}
	return list
}

// doubt is the finding that names the inputs, and marks them as doubted.
func (a *Assessment) doubt(name string, inputs []int, format string, args ...any) Finding {
	var keys []string
	for _, i := range inputs {
		a.doubted[i] = true
		keys = append(keys, a.m.Inputs[i].Key)
	}
	return finding(name, keys, format, args...)
}

// inputOf is the input that holds the reading r that counts, -1 where none does.
func (a *Assessment) inputOf(r fit.Reading) int {
	for i := range a.m.Inputs {
		if in := &a.m.Inputs[i]; in.Reading == r && !in.Hidden && (!r.IsHeight() || in.Hang == a.m.HangOf(r)) {
			return i
		}
	}
	return -1
}

// RepeatsApart is how far apart, in mm, two takes of one reading disagree;
// judgement.
const RepeatsApart = 30

// repeats are the lists whose entries lie too far apart, or too close together
// to have been read afresh.
func (a *Assessment) repeats() []Finding {
	var list []Finding
	a.f.EachList(func(key string, values []float64) {
		if len(values) < 2 {
			return
		}
		lo, hi := slices.Min(values), slices.Max(values)
		switch {
		case hi-lo >= RepeatsApart:
			list = append(list, finding("repeats-disagree", []string{key}, "two readings of %s lie %v apart: read it again", InputName(key), length(hi-lo)))
		case hi == lo && len(values) >= 5:
			list = append(list, finding("identical-repeats", []string{key}, "%d readings of %s are all the same: repeats are read afresh, hands off in between", len(values), InputName(key)))
		}
	})
	return list
}

// domain tells of lengths that no pose can be made of.
func (a *Assessment) domain() []Finding {
	var list []Finding
	unreachable := math.IsNaN(a.s.YLevelModel) && len(a.m.Missing(fit.NeedYLevel)) == 0
	unreadable := math.IsNaN(a.s.YLevel) && !unreachable && len(a.m.Missing(fit.NeedYLevel)) == 0
	thigh, shin := a.lengthKey(fit.Thigh), a.lengthKey(fit.Shin)
	ahead := "posture.ahead_mm"
	if a.m.Read(fit.Ahead) {
		ahead = fit.LaidKey(fit.Ahead)
	}
	switch {
	case unreachable:
		list = append(list, finding("out-of-domain",
			[]string{a.m.PieceKey(fit.PieceFootLoop), thigh, shin, ahead},
			"the foot loop does not reach from the foot to the rope"))
	case unreadable:
		list = append(list, finding("out-of-domain",
			[]string{a.m.FootLoopAtLevel(), thigh, shin, ahead},
			"with the Garda hitch read at level the foot loop did not reach from the foot to the rope, or the knee was read farther from the hip than the thigh is long"))
	default:
		list = append(list, a.edge(outSpare, []string{a.m.PieceKey(fit.PieceFootLoop), thigh, shin, ahead},
			"with the thigh level the foot loop is only %v longer than the foot is away from the rope")...)
	}
	standing := []string{thigh, shin, "posture.behind_rope_mm"}
	switch {
	case math.IsNaN(a.s.YLevel):
	case math.IsNaN(a.s.Gain):
		list = append(list, finding("out-of-domain", standing, "the leg is too short to stand so far from the rope"))
	default:
		list = append(list, a.edge(outSpare+1, standing, "the leg is only %v longer than the climber stands away from the rope")...)
	}
	return list
}

// edge tells of a pose that is not surely inside its domain: what is to spare
// there, an output, is less than the guard that a pass needs, or one input, as
// uncertain as it is, takes it out both ways. What needs the pose rests on these
// lengths then.
func (a *Assessment) edge(o int, lengths []string, words string) []Finding {
	spare := a.p.Values[o]
	u, shift := a.p.U(o)
	if math.IsNaN(spare) || spare >= Guard(GuardFactor, u, shift) {
		return nil
	}
	a.onEdge = append(a.onEdge, lengths...)
	for i := range a.m.Inputs {
		if in := &a.m.Inputs[i]; math.IsNaN(a.p.Contribution(i, o)) && !in.Hidden {
			return []Finding{finding("out-of-domain", append(lengths, in.Key), words+"; %s, as uncertain as it is, takes them apart whether more or less", length(spare), InputName(in.Key))}
		}
	}
	return []Finding{finding("out-of-domain", lengths, words+": what follows from it is not sure", LengthPM{spare, u})}
}

func (a *Assessment) lengthKey(r fit.Reading) string { return fit.LaidKey(r) }

// surveyed is the range of statures that the body survey covers, in mm.
var surveyed = [2]float64{1400, 2000}

func (a *Assessment) outsideSurvey() []Finding {
	for i := range a.m.Inputs {
		in := &a.m.Inputs[i]
		told := in.Key == "climber.stature_told_mm"
		if in.Reading != fit.Stature && !told {
			continue
		}
		if in.V < surveyed[0] || in.V > surveyed[1] {
			return []Finding{finding("outside-survey", []string{in.Key}, "stature %v is outside the body survey (%v to %v): estimates of the body are a guess", length(in.V), length(surveyed[0]), length(surveyed[1]))}
		}
	}
	return nil
}
