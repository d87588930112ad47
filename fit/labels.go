package fit

import "math"

// Standard uncertainties of what is told or read off a label, unless the session says
// better: judgement.
const (
	toldStatureU    = 15.0 // mm, of a stature that nobody measured
	massU           = 2.0  // kg, of climber, clothes and kit
	diameterU       = 0.2  // mm, of a rope or a cord
	insideWidthU    = 0.5  // mm, of the Garda hitch's connectors
	ElongationShare = 0.05 // of the rope's elongation itself
)

// addLabels adds what is told of the cord of piece p.
func (m *Model) addLabels(p Piece) {
	info, keys, l := &m.f.Kit.Pieces[p], &labelKeys[p], &m.labels[p]
	l.cord = m.addKnown(keys.cord, info.Cord, diameterU, "mm")
	l.strands = m.addKnown(keys.strands, info.Strands, 0, "")
	l.wraps = m.addKnown(keys.wraps, info.Wraps, 0, "")
	l.strength = m.addKnown(keys.strength, info.Strength, 0, "kN")
}

func (m *Model) labelsAt(x []float64, s *State) {
	s.RopeDiameter, s.InsideWidth = x[m.rope.diameter], x[m.width]
	for i, p := range [2]Piece{PieceHitchLeft, PieceHitchRight} {
		l := &m.labels[p]
		s.HitchCord[i], s.HitchWraps[i] = x[l.cord], x[l.wraps]
		s.HitchStrength[i] = m.strength(x, l)
	}
	l := &m.labels[PieceTether]
	s.TetherCord, s.TetherStrands, s.TetherStrength = x[l.cord], x[l.strands], m.strength(x, l)
}

// strength is a cord's from its label, or else from its nominal diameter, which
// is exact here.
func (m *Model) strength(x []float64, l *labelSlots) float64 {
	if l.strength != unknown {
		return x[l.strength]
	}
	if n := CordStrength(m.x[l.cord]); n.Known {
		return n.V
	}
	return math.NaN()
}
