package fit

// y is the height of r above the hip, as the hang that counts read it.
func (m *Model) y(x []float64, r Reading) float64 { return x[m.height[r]] - x[m.hipOf[r]] }

// lift is how far the main bridge has come up since r was read.
func (m *Model) lift(x []float64, r Reading) float64 {
	then, now := m.poses.bridgeRead[r], m.poses.bridgeNow
	if then == now {
		return 0
	}
	rings := x[m.laid[MainBridgeRings]]
	return Rise(x[now], rings) - Rise(x[then], rings)
}

// above is the height of r above b; where one hang read both, the hip has no
// part in it.
func (m *Model) above(x []float64, r, b Reading) float64 {
	if m.hang[r] == m.hang[b] {
		return x[m.height[r]] - x[m.height[b]]
	}
	return m.y(x, r) - m.y(x, b)
}

func (m *Model) hanging(x []float64, s *State) {
	s.ConnectorTop = m.y(x, ConnectorTop) + m.lift(x, ConnectorTop)
	s.ConnectorBottom = m.y(x, ConnectorBottom) + m.lift(x, ConnectorBottom)
	var tops [2]float64 // of the hitches above the connector
	for i := range m.sides {
		sd := &m.sides[i]
		switch {
		case sd.retied != unknown:
			s.Loop[i] = x[sd.retied]
		case m.hang[sd.loopTop] == m.hang[ConnectorTop]:
			s.Loop[i] = m.above(x, sd.loopTop, ConnectorTop)
		default:
			s.Loop[i] = m.y(x, sd.loopTop) + m.lift(x, sd.loopTop) - s.ConnectorTop
		}
		if sd.moved {
			wraps := x[m.height[sd.hitchTop]] - x[sd.wrapLoop]
			if sd.wrapHang != m.hang[sd.hitchTop] {
				wraps += x[sd.wrapHip] - x[m.hipOf[sd.hitchTop]]
			}
			tops[i] = s.Loop[i] + wraps
			s.HitchTop[i] = s.ConnectorTop + tops[i]
			continue
		}
		s.HitchTop[i] = m.y(x, sd.hitchTop) + m.lift(x, sd.hitchTop)
		if tops[i] = s.HitchTop[i] - s.ConnectorTop; m.hang[sd.hitchTop] == m.hang[ConnectorTop] {
			tops[i] = m.above(x, sd.hitchTop, ConnectorTop)
		}
	}
	if l, r := &m.sides[0], &m.sides[1]; !l.moved && !r.moved && m.hang[l.hitchTop] == m.hang[r.hitchTop] {
		s.PairDifference = m.above(x, l.hitchTop, r.hitchTop)
	} else {
		s.PairDifference = tops[0] - tops[1]
	}
	s.MainRings, s.BackupRings = m.y(x, MainRings), m.y(x, BackupRings)
	s.Soles, s.HipAboveGround = m.y(x, Soles), -m.y(x, Ground)
	s.SolesAboveGround = m.above(x, Soles, Ground)
	s.MainBridge, s.MainBridgeRings = x[m.poses.bridgeNow], x[m.laid[MainBridgeRings]]
	s.BackupBridge, s.BackupBridgeRings = x[m.poses.backupNow], x[m.laid[BackupBridgeRings]]
	s.Tether, s.FootLoop, s.GardaToTether = x[m.poses.tetherNow], x[m.poses.footNow], x[m.laid[GardaToTether]]
}
