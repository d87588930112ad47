package fit

import "math"

// estimate is what the survey says of a body part: a mean that is a sum of
// inputs, and a residual input of mean 0 that is correlated with the others'.
type estimate struct {
	told     bool
	mean     linear
	residual slot
}

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

// addEstimates ties the body to stature, sharpened by what was measured. Without
// a stature nothing is estimated.
func (m *Model) addEstimates() {
	if m.stature == unknown {
		return
	}
	regression := m.f.Survey
	if regression == nil {
		regression = SurveyRegression
	}
	m.regression = regression(m.f.Sex, m.inseam != unknown)
	ps := m.partners(nil)
	likely := make([]sharpening, len(ps))
	for i, p := range ps {
		likely[i].part = p.part
	}
	m.estimate(likely, ps)
	m.addLikelihoods(likely, ps)
}

// estimate adds what the survey and the partners ps say of the parts that were
// not read, and works out what likely each partner is held against.
func (m *Model) estimate(likely []sharpening, ps []partner) {
	var room [NumBodyParts]sharpening
	estimates := room[:0]
	for part := BodyPart(0); part < NumBodyParts; part++ {
		if !m.wasRead(part) {
			estimates = append(estimates, sharpening{part: part})
		}
	}
	m.sharpen(estimates, likely, ps)
	n := len(estimates)
	block := Block{Start: len(m.x), Corr: make([][]float64, n)}
	corr := make([]float64, n*n)
	for i := range estimates {
		e := &estimates[i]
		r := m.addResidual(m.residual(e, e, ps))
		m.estimates[e.part] = estimate{true, m.mean(e, ps), r}
	}
	for i := range block.Corr {
		block.Corr[i] = corr[i*n : (i+1)*n]
		block.Corr[i][i] = 1
		for j := range i {
			r := m.residual(&estimates[i], &estimates[j], ps) / (m.u[block.Start+i] * m.u[block.Start+j])
			block.Corr[i][j], block.Corr[j][i] = r, r
		}
	}
	m.blocks = append(m.blocks, block)
}

func (m *Model) addResidual(variance float64) slot {
	return m.add(Input{U: math.Sqrt(variance), Unit: "mm", Origin: Estimated, Reading: noReading, Hidden: true})
}

// wasRead says whether a reading stands for the part, so that the survey is not
// asked. The nose and the full reach always are: an estimated wrist, and the
// question whether a reading is likely, need them.
func (m *Model) wasRead(part BodyPart) bool {
	switch part {
	case PartThigh:
		return m.laid[Thigh] != unknown
	case PartShin:
		return m.laid[Shin] != unknown
	case PartDown:
		return m.height[WristDown] != unknown
	case PartWaist:
		return m.laid[Waist] != unknown
	}
	return false
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
