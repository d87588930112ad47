package fit

import "math"

// Shape is the side view of the fitting in pose p, as State.Shape, and which of
// its landmarks are estimated: those that move when an estimated or predicted
// input moves by its standard uncertainty.
func (m *Model) Shape(p Pose) Shape {
	x := m.Values()
	var s State
	m.At(x, &s)
	sh := s.Shape(p)
	for i := range m.Inputs {
		if o := m.Inputs[i].Origin; o != Estimated && o != Predicted || !(m.u[i] > 0) {
			continue
		}
		x[i] += m.u[i]
		m.At(x, &s)
		x[i] -= m.u[i]
		moved := s.Shape(p)
		for k, at := range sh.At {
			sh.Estimated[k] = sh.Estimated[k] || at.Known() && movedFrom(at, moved.At[k])
		}
	}
	return sh
}

// movedFrom says whether b is elsewhere than a, or nowhere.
func movedFrom(a, b Point) bool { return !(math.Hypot(a.X-b.X, a.Y-b.Y) < 1e-6) }
