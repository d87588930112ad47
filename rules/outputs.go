package rules

import (
	"math"

	"example.com/hangtape/fit"
)

// The outputs that an Assessment propagates, in one vector: first the margins of
// the ends.
const (
	outPoses = int(NumEnds)
	outFull  = outPoses + numPoses
	outSpare = outFull + 1  // of the foot loop, of the leg
	outStand = outSpare + 2 // one for each stand-in, then each offset, then each likely reading
)

// outputs are what one fitting propagates beside what all do.
type outputs struct {
	m        *fit.Model
	l        *Limits
	standIns []fit.Reading // what something stands for
	offsets  []fit.Offset  // that were read
	likely   []fit.Likely  // of the readings that the survey can be held against
}

// outputsOf are those of m, which is in the state s.
func outputsOf(m *fit.Model, s *fit.State, l *Limits) outputs {
	out, x := outputs{m: m, l: l, standIns: standIns(m)}, m.Values()
	for k := range fit.NumOffsets {
		if o := fit.Offset(k); !math.IsNaN(m.Disagreement(o, x, s)) {
			out.offsets = append(out.offsets, o)
		}
	}
	for k := range fit.NumLikely {
		if l := fit.Likely(k); !math.IsNaN(m.Offset(l, x, s)) {
			out.likely = append(out.likely, l)
		}
	}
	return out
}

// atOffsets and atLikely are where the offsets and the likely readings begin.
func (o *outputs) atOffsets() int { return outStand + len(o.standIns) }
func (o *outputs) atLikely() int  { return o.atOffsets() + len(o.offsets) }
func (o *outputs) count() int     { return o.atLikely() + len(o.likely) }

// fill fills out in the state s of the values x.
func (o *outputs) fill(x []float64, s *fit.State, out []float64) {
	Margins(s, o.l, out)
	posesOf(s, o.l, out[outPoses:outFull])
	out[outFull] = s.Full
	out[outSpare], out[outSpare+1] = s.LoopToSpare, s.LegToSpare
	for i, r := range o.standIns {
		out[outStand+i] = s.Standing(r)
	}
	for i, k := range o.offsets {
		out[o.atOffsets()+i] = o.m.Disagreement(k, x, s)
	}
	for i, k := range o.likely {
		out[o.atLikely()+i] = o.m.Offset(k, x, s)
	}
}

// Margins fills out with the margin of every end in state s, by End; that of the
// load paths does not follow from the state and is 0. Those that follow only from
// stages of s that were not computed anew are left as they are.
func Margins(s *fit.State, l *Limits, out []float64) {
	for _, e := range endsAnew[s.Anew()] {
		out[e] = e.margin(s, l)
	}
}

// endsAnew are the ends whose margins any of the stages has a part in, and those
// that do not follow from a state.
var endsAnew = func() (anew [fit.AllStages + 1][]End) {
	for stages := range anew {
		for e := range NumEnds {
			if end := &endInfo[e]; end.balance == nil || end.stages&fit.Stage(stages) != 0 {
				anew[stages] = append(anew[stages], e)
			}
		}
	}
	return anew
}()
