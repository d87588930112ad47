package fit

import "math"

// Gravity is standard gravity in m/s².
const Gravity = 9.80665

// Weight is the force, in kN, on a mass in kg.
func Weight(mass float64) float64 { return mass * Gravity / 1000 }

// RopeModulus is a rope's force per unit strain, in kN, from the elongation on
// its label: per cent between 50 kg and 150 kg (EN 1891), so 100 kg·g over it.
func RopeModulus(elongation float64) float64 { return Weight(100) / (elongation / 100) }

// PeakForce is the largest force in a linear spring of stiffness k that catches
// a body of weight w after a free drop h ≥ 0, in any consistent units: the drop
// through the spring's own stretch counts. It is 2·w at h = 0.
// Source: the standard equation for impact force on a climbing rope (Goldstone;
// Wexler, The Theory of Belaying, 1950).
func PeakForce(w, k, h float64) float64 { return w + math.Sqrt(w*w+2*k*h*w) }

// LeastRope is the shortest length of two legs of rope of modulus K each, in the
// unit of the drop h, with which a body of weight w that drops h is caught at no
// more than flim. It is NaN where flim ≤ 2·w, since then no rope is long enough.
func LeastRope(K, h, w, flim float64) float64 {
	if !(flim > 2*w) {
		return math.NaN()
	}
	return 4 * K * h * w / ((flim-w)*(flim-w) - w*w)
}

// legsStiffness is the stiffness, in kN/mm, of two legs of rope of modulus K kN
// and length l mm each, side by side.
func legsStiffness(K, l float64) float64 { return 2 * K / l }

func (m *Model) slip(x []float64, s *State) {
	s.Weight = Weight(x[m.mass])
	s.Modulus = RopeModulus(x[m.rope.elongation])
	s.LeastAbove, s.DrillAbove = x[m.rope.least], x[m.rope.drill]
	h := s.Drop()
	s.PeakForce = PeakForce(s.Weight, legsStiffness(s.Modulus, s.LeastAbove), h)
	k := legsStiffness(s.Modulus, s.DrillAbove)
	s.Stretch = (PeakForce(s.Weight, k, h) - s.Weight) / k
	s.Sag = s.Weight / k
}
