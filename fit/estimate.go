package fit

import "math"

// estimate is what the survey says of a body part: a mean that is a sum of
// inputs, and a residual input of mean 0 that is correlated with the others'.
type estimate struct {
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

// Residual is the input that holds what the survey leaves open of a part; ok is
// false where the part was read or cannot be estimated.
func (m *Model) Residual(p BodyPart) (i int, ok bool) {
	e := &m.estimates[p]
	return int(e.residual), e.told
}
