package drill

import (
	"fmt"
	"math"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// Modulus is a rope's force per unit strain, kN, from its label, from the sag
// that was seen, and from both.
type Modulus struct {
	Label, LabelU float64
	Sag, SagU     float64
	Both, BothU   float64 // the label's alone where they disagree
	Disagrees     bool
	Peak          [2]float64 // kN with the least rope above: by the label, by both; NaN where it is not known
}

// sagReading is the standard uncertainty, in mm, of a sag seen beside a tape;
// judgement.
const sagReading = 10.0

// modulus weighs the label's modulus and that of the sag by their variances; the
// mass and the rope above count in the sag's, the label does not. It is nil where
// the rope's sag is not expected or cannot be.
func modulus(a *rules.Assessment, expected Expectation, sag float64) *Modulus {
	if math.IsNaN(expected.Value) || !(sag > 0) {
		return nil
	}
	s := a.State()
	m := &Modulus{Label: s.Modulus, LabelU: fit.ElongationShare * s.Modulus}
	m.Sag = s.Modulus * s.Sag / sag
	m.SagU = m.Sag * math.Hypot(sagReading/sag, a.Model().MassU()/a.Model().Mass())
	m.Both, m.BothU = m.Label, m.LabelU
	m.Disagrees = math.Abs(sag-expected.Value) > rules.TwoSided*math.Hypot(expected.U, sagReading)
	if !m.Disagrees {
		wl, ws := 1/(m.LabelU*m.LabelU), 1/(m.SagU*m.SagU)
		m.Both, m.BothU = (m.Label*wl+m.Sag*ws)/(wl+ws), 1/math.Sqrt(wl+ws)
	}
	for i, K := range [2]float64{m.Label, m.Both} {
		m.Peak[i] = fit.PeakForce(s.Weight, 2*K/s.LeastAbove, s.Drop())
	}
	return m
}

// Elongation is what a label would say of a rope of modulus K kN, in per cent
// between 50 kg and 150 kg.
func Elongation(K float64) float64 { return 100 * fit.Weight(100) / K }

// Words tell the modulus as the elongation that a label would give.
func (m *Modulus) Words() string {
	percent := func(K, u float64) string {
		return fmt.Sprintf("%.2f ± %.2f %%", Elongation(K), Elongation(K)*u/K)
	}
	words := fmt.Sprintf("The rope's elongation, 50 kg to 150 kg: %s by the label, %s by the sag", percent(m.Label, m.LabelU), percent(m.Sag, m.SagU))
	if m.Disagrees {
		return words + "; they disagree, so the label's stands until it is found out why"
	}
	words += ", " + percent(m.Both, m.BothU) + " by both"
	if !math.IsNaN(m.Peak[0]) {
		words += fmt.Sprintf("; the peak force with the least rope above is then %.2f kN in place of %.2f kN", m.Peak[1], m.Peak[0])
	}
	return words
}
