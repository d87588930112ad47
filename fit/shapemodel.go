package fit

import (
	"math"
	"slices"
)

// Shape is the side view of the fitting in pose p, as State.Shape, and which of
// its landmarks are estimated: those that move when an estimated or predicted
// input moves by its standard uncertainty. The landmarks that are asked for and
// unknown get a place where they usually are, and are marked as estimated too.
func (m *Model) Shape(p Pose, asked ...Landmark) Shape {
	x := m.Values()
	var s, moved State
	m.At(x, &s)
	sh := s.Shape(p)
	for i := range m.Inputs {
		if o := m.Inputs[i].Origin; o != Estimated && o != Predicted || !(m.u[i] > 0) {
			continue
		}
		x[i] += m.u[i]
		m.At(x, &moved)
		x[i] -= m.u[i]
		sh.estimate(moved.Shape(p))
	}
	if slices.ContainsFunc(asked, func(k Landmark) bool { return !sh.At[k].Known() }) {
		usual := s.usual()
		sh.standIn(usual.Shape(p), asked)
		sh.finish(s.Ahead)
	}
	return sh
}

// estimate marks what is elsewhere, or nowhere, in moved.
func (s *Shape) estimate(moved Shape) {
	for k, at := range s.At {
		stays := math.Hypot(at.X-moved.At[k].X, at.Y-moved.At[k].Y) < 1e-6
		s.Estimated[k] = s.Estimated[k] || at.Known() && !stays
	}
}

// standIn takes the landmarks that are asked for and unknown from usual.
func (s *Shape) standIn(usual Shape, asked []Landmark) {
	for _, k := range asked {
		if !s.At[k].Known() {
			s.At[k], s.Estimated[k] = usual.At[k], true
		}
	}
}
