package fit

import "slices"

// Changed is a copy of f in which, after its last hang, each piece of to is set
// to a new length in mm. What is set so is predicted, with the spread of setting
// it. The copy may hold a change after no hang at all, which a file may not.
func (f *Fitting) Changed(to map[Piece]float64) *Fitting {
	g := *f
	g.Changes = slices.Clone(f.Changes)
	for p := Piece(0); p < NumPieces; p++ {
		if v, ok := to[p]; ok {
			g.Changes = append(g.Changes, Change{Piece: p, To: v, AfterHang: len(f.Hangs)})
		}
	}
	return &g
}

// SetLength moves the length that the last change has set p to, in mm. The
// model must have been made with such a change, not laid on again.
func (m *Model) SetLength(p Piece, v float64) {
	s := m.pieces[p].now()
	m.Inputs[s].V, m.x[s] = v, v
}

// Length is the length of p as it is now, in mm; NaN where it is not known. That
// of a hitch is its loop's.
func (m *Model) Length(p Piece, s *State) float64 {
	switch p {
	case PieceMainBridge:
		return s.MainBridge
	case PieceHitchLeft, PieceHitchRight:
		return s.Loop[p-PieceHitchLeft]
	case PieceFootLoop:
		return s.FootLoop
	case PieceTether:
		return s.Tether
	}
	return s.BackupBridge
}

// Current is the state at the inputs' values.
func (m *Model) Current(s *State) { m.At(m.x, s) }

// PropagateOnly is Propagate with only the inputs of relevant stepped.
func (m *Model) PropagateOnly(relevant []bool, n int, f func(x []float64, s *State, out []float64)) *Propagation {
	u := make([]float64, len(m.u))
	for i, r := range relevant {
		if r {
			u[i] = m.u[i]
		}
	}
	return m.propagate(u, n, f)
}

// SetLeastAbove moves the least rope above, in mm, which must be known.
func (m *Model) SetLeastAbove(v float64) {
	s := m.rope.least
	m.Inputs[s].V, m.x[s] = v, v
}
