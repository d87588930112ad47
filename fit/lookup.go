package fit

// What others look up in a model: which of its inputs stands for what.

// HipValue is the hip's reading of hang h on its tape; NaN where it was not
// taken.
func (m *Model) HipValue(h int) float64 {
	if h >= len(m.hips) {
		return nan
	}
	return m.x[m.hips[h]]
}

// HangOf is the hang, from 0, whose reading of the height r counts, or else the
// latest one, in which it would be read.
func (m *Model) HangOf(r Reading) int {
	if h := m.hang[r]; h >= 0 {
		return h
	}
	return m.latestHang()
}

// Read says whether the reading r was taken, so that nothing stands for it.
func (m *Model) Read(r Reading) bool {
	if r.IsHeight() {
		return m.height[r] != unknown
	}
	return len(m.f.Laid[r]) > 0
}

// FreshU is the standard uncertainty that input i would have if it were read n
// times afresh with today's spread; ok is false where it cannot be read again:
// it is no reading, stands for a height that a change has moved, is the hip of
// an earlier hang, or a length that a piece no longer has.
func (m *Model) FreshU(i, n int) (u float64, ok bool) {
	in := &m.Inputs[i]
	if in.N == 0 || in.Hidden || in.Origin == Predicted || in.Reading == Hip && in.Hang != m.latestHang() || m.Superseded(i) {
		return 0, false
	}
	return m.freshU(*in, n), true
}

// Superseded says whether input i is a length that a piece no longer has.
func (m *Model) Superseded(i int) bool {
	for _, chain := range m.pieces {
		for _, l := range chain[:len(chain)-1] {
			if int(l.slot) == i && i != int(unknown) {
				return true
			}
		}
	}
	return false
}

// IsPartner says whether a reading of input i sharpens what the survey says of
// the other parts of the body.
func (m *Model) IsPartner(i int) bool {
	switch m.Inputs[i].Reading {
	case Thigh, Shin, Waist, WristDown:
		return true
	case Hip:
		return m.height[WristDown] != unknown && m.hipOf[WristDown] == slot(i)
	}
	return false
}

// PostureInput is the input that holds the posture p.
func (m *Model) PostureInput(p Posture) int { return int(m.posture[p]) }

// PieceKey is the key of the length that the piece has now.
func (m *Model) PieceKey(p Piece) string {
	if now := m.pieces[p].now(); now != unknown {
		return m.Inputs[now].Key
	}
	return "kit." + p.Key() + ".length_mm"
}

// FootLoopAtLevel is the key of the length that the foot loop had when the Garda
// hitch was read at level, or that it has now where it was not read.
func (m *Model) FootLoopAtLevel() string { return m.Inputs[m.poses.footLevel].Key }

// Mass is the climber's mass in kg.
func (m *Model) Mass() float64 { return m.x[m.mass] }

// MassU is the standard uncertainty of the climber's mass in kg.
func (m *Model) MassU() float64 { return m.u[m.mass] }
