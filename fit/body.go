package fit

import "math"

func (m *Model) body(x []float64, s *State) {
	part := func(p BodyPart) float64 {
		e := &m.estimates[p]
		if !e.told {
			return math.NaN()
		}
		return e.mean.at(x) + x[e.residual]
	}
	known := func(r Reading) bool { return m.height[r] != unknown }
	sole := x[m.posture[Sole]]
	if s.Thigh = x[m.laid[Thigh]]; m.laid[Thigh] == unknown {
		s.Thigh = part(PartThigh)
	}
	if s.Shin = x[m.laid[Shin]]; m.laid[Shin] == unknown {
		s.Shin = part(PartShin) + sole
	}
	if s.Waist = x[m.laid[Waist]]; m.laid[Waist] == unknown {
		s.Waist = part(PartWaist) + sole
	}
	if s.WristDown = m.y(x, WristDown); !known(WristDown) {
		s.WristDown = part(PartDown)
	}
	s.Full = part(PartFull)
	if s.Nose = m.y(x, Nose); !known(Nose) {
		s.Nose = m.noseEstimate(x, s, part(PartNose))
	}
	if s.WristUp = m.y(x, WristUp); !known(WristUp) {
		s.WristUp = m.wristEstimate(x, s, s.Nose, s.Full)
	}
	s.Ahead = x[m.laid[Ahead]]
}

// noseEstimate leans the survey's nose, which is 45 mm under the eye.
func (m *Model) noseEstimate(x []float64, s *State, nose float64) float64 {
	return (nose + postureInfo[EyeAboveNose].V - x[m.posture[EyeAboveNose]]) * s.angles.cosLean
}

// wristEstimate is the comfortable share of the way from the nose to full reach.
func (m *Model) wristEstimate(x []float64, s *State, nose, full float64) float64 {
	return nose + x[m.posture[ReachFactor]]*(full*s.angles.cosLean-nose)
}
