package fit

import "slices"

// markPredicted gives the heights that a change has moved and no hang has read
// since the origin predicted: what stands for them is the model's value from
// the old reading.
func (m *Model) markPredicted() {
	mark := func(s slot) {
		if s != unknown {
			m.Inputs[s].Origin = Predicted
		}
	}
	for p, chain := range m.pieces {
		last := len(chain) - 1
		if last == 0 {
			continue
		}
		for _, r := range moves[p] {
			h := m.hang[r]
			if h < 0 || chain.at(h) == last || r == KneeLevel && m.poses.kneeSlot == unknown {
				continue
			}
			mark(m.height[r])
		}
	}
	for i := range m.sides {
		if m.sides[i].moved {
			mark(m.sides[i].wrapLoop)
		}
	}
}

// Standing is what stands for the reading r by the model: a length of the body,
// or where the landmark of a height is above the hip, in the pose in which it is
// read. NaN where the model has no word for it.
func (s *State) Standing(r Reading) float64 {
	switch r {
	case Thigh:
		return s.Thigh
	case Shin:
		return s.Shin
	case Waist:
		return s.Waist
	case Nose:
		return s.Nose
	case WristUp:
		return s.WristUp
	case WristDown:
		return s.WristDown
	case ConnectorTop:
		return s.ConnectorTop
	case ConnectorBottom:
		return s.ConnectorBottom
	case LeftLoopTop:
		return s.ConnectorTop + s.Loop[0]
	case RightLoopTop:
		return s.ConnectorTop + s.Loop[1]
	case LeftHitchTop:
		return s.HitchTop[0]
	case RightHitchTop:
		return s.HitchTop[1]
	case GardaLevel:
		return s.YLevel
	case KneeLevel:
		return s.KneeAtLevel
	case GardaTaut:
		return s.YTaut
	case MainRings:
		return s.MainRings
	case BackupRings:
		return s.BackupRings
	}
	return nan
}

// CarriedByBridge says whether a change of the main bridge moves the height r.
func CarriedByBridge(r Reading) bool { return slices.Contains(movedByBridge[:], r) }

// Doubts names, for a predicted input, the readings that would stand in its
// place: the height in the hang to come, or the length laid on again. None for a
// main bridge: it matters only through the heights that it moves, and which of
// them matter is not known here.
func (m *Model) Doubts(i int) []string {
	in := &m.Inputs[i]
	coming := func(r Reading) string { return HeightKey(len(m.f.Hangs), r) }
	if in.Reading != noReading {
		for s := range m.sides {
			if sd := &m.sides[s]; in.Reading == sd.loopTop && sd.moved {
				return []string{coming(sd.hitchTop)}
			}
		}
		return []string{coming(in.Reading)}
	}
	for p := range m.pieces {
		chain := m.pieces[p]
		for j, l := range chain {
			if int(l.slot) != i || j == 0 {
				continue
			}
			switch piece := Piece(p); {
			case piece == PieceMainBridge:
				return nil
			case piece == PieceFootLoop && m.Superseded(i):
				return []string{coming(GardaLevel)}
			case piece == PieceHitchLeft:
				return []string{coming(LeftHitchTop)}
			case piece == PieceHitchRight:
				return []string{coming(RightHitchTop)}
			case piece != PieceFootLoop && m.height[GardaTaut] != unknown:
				return []string{coming(GardaTaut)}
			}
			return []string{ChangeKey(l.change, true)}
		}
	}
	return nil
}
