package fit

import "math"

// A Likely is a reading of the body that the survey can be held against.
type Likely int

// The readings that the survey says something of, in the order of the session
// file.
const (
	LikelyThigh Likely = iota
	LikelyShin
	LikelyWaist
	LikelyNose
	LikelyWristUp
	LikelyWristDown

	numLikely
)

// NumLikely is how many there are.
const NumLikely = int(numLikely)

var likelyReading = [numLikely]Reading{
	LikelyThigh: Thigh, LikelyShin: Shin, LikelyWaist: Waist,
	LikelyNose: Nose, LikelyWristUp: WristUp, LikelyWristDown: WristDown,
}

// Reading is the reading that l is about.
func (l Likely) Reading() Reading { return likelyReading[l] }

// Residual is the body part whose own residual an estimate of the reading rests
// on: for the raised wrist the full reach's.
func (l Likely) Residual() BodyPart {
	return [numLikely]BodyPart{PartThigh, PartShin, PartWaist, PartNose, PartFull, PartDown}[l]
}

// likelihood is what the survey says of a part that was measured, from stature
// and the other measured parts alone.
type likelihood struct {
	told     bool
	mean     linear
	residual slot
}

// addLikelihoods adds for each measured partner what the others say of it.
func (m *Model) addLikelihoods(likely []sharpening, ps []partner) {
	for l := Likely(0); l < numLikely; l++ {
		for i := range likely {
			if s := &likely[i]; s.part == l.Residual() {
				m.likely[l] = likelihood{true, m.mean(s, ps), m.addResidual(m.residual(s, s, ps))}
			}
		}
	}
}

// Offset is how far the reading l stands from what stature and the other
// measured parts say of it; NaN where it was not read or nothing is said.
func (m *Model) Offset(l Likely, x []float64, s *State) float64 {
	said := func() float64 { return m.likely[l].mean.at(x) + x[m.likely[l].residual] }
	nose := func() float64 {
		e := &m.estimates[PartNose]
		return m.noseEstimate(x, s, e.mean.at(x)+x[e.residual])
	}
	switch l {
	case LikelyNose, LikelyWristUp:
		if m.height[l.Reading()] == unknown || !m.estimates[PartNose].told {
			return math.NaN()
		}
		if l == LikelyNose {
			return s.Nose - nose()
		}
		return s.WristUp - m.wristEstimate(x, s, nose(), s.Full)
	}
	if !m.likely[l].told {
		return math.NaN()
	}
	switch l {
	case LikelyThigh:
		return s.Thigh - said()
	case LikelyShin:
		return s.Shin - said() - x[m.posture[Sole]]
	case LikelyWaist:
		return s.Waist - said() - x[m.posture[Sole]]
	default:
		return s.WristDown - said()
	}
}
