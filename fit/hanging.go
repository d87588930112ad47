package fit

// y is the height of r above the hip, as the hang that counts read it.
func (m *Model) y(x []float64, r Reading) float64 { return x[m.height[r]] - x[m.hipOf[r]] }

// lift is how far the main bridge has come up since r was read.
func (m *Model) lift(x []float64, r Reading) float64 {
	return m.liftBetween(x, m.poses.bridgeRead[r], m.poses.bridgeNow)
}

// above is the height of r above b; where one hang read both, the hip has no
// part in it.
func (m *Model) above(x []float64, r, b Reading) float64 {
	if m.hang[r] == m.hang[b] {
		return x[m.height[r]] - x[m.height[b]]
	}
	return m.y(x, r) - m.y(x, b)
}

// carriedAbove is the height of r above b as both hang now, where the main bridge
// carries both: what it has lifted both by cancels, and needs no length.
func (m *Model) carriedAbove(x []float64, r, b Reading) float64 {
	if r == b {
		return 0
	}
	return m.above(x, r, b) + m.liftBetween(x, m.poses.bridgeRead[r], m.poses.bridgeRead[b])
}

// liftBetween is how much higher a bridge of length to comes up than one of
// length from.
func (m *Model) liftBetween(x []float64, from, to slot) float64 {
	if from == to {
		return 0
	}
	rings := x[m.laid[MainBridgeRings]]
	return Rise(x[to], rings) - Rise(x[from], rings)
}

// wraps is how high the wraps of a hitch that was tied anew were: its old top
// above the old end of its loop, both at the same main bridge.
func (m *Model) wraps(x []float64, sd *side) float64 {
	w := x[m.height[sd.hitchTop]] - x[sd.wrapLoop]
	if sd.wrapHang != m.hang[sd.hitchTop] {
		w += x[sd.wrapHip] - x[m.hipOf[sd.hitchTop]]
		w += m.liftBetween(x, m.poses.bridgeRead[sd.hitchTop], sd.wrapRead)
	}
	return w
}

func (m *Model) hanging(x []float64, s *State) {
	s.ConnectorTop = m.y(x, ConnectorTop) + m.lift(x, ConnectorTop)
	s.ConnectorBottom = m.y(x, ConnectorBottom) + m.lift(x, ConnectorBottom)
	var above [2]float64 // of the hitches above the marks that they stand on
	for i := range m.sides {
		sd := &m.sides[i]
		if s.Loop[i] = x[sd.retied]; sd.retied == unknown {
			s.Loop[i] = m.carriedAbove(x, sd.loopTop, ConnectorTop)
		}
		if sd.moved {
			above[i] = m.wraps(x, sd)
			if sd.retied != unknown {
				above[i] += s.Loop[i]
			}
		}
		s.HitchTop[i] = m.y(x, sd.standsOn()) + m.lift(x, sd.standsOn()) + above[i]
	}
	s.PairDifference = m.carriedAbove(x, m.sides[0].standsOn(), m.sides[1].standsOn()) + above[0] - above[1]
	s.MainRings, s.BackupRings = m.y(x, MainRings), m.y(x, BackupRings)
	s.Soles, s.HipAboveGround = m.y(x, Soles), -m.y(x, Ground)
	s.SolesAboveGround = m.above(x, Soles, Ground)
	s.MainBridge, s.MainBridgeRings = x[m.poses.bridgeNow], x[m.laid[MainBridgeRings]]
	s.BackupBridge, s.BackupBridgeRings = x[m.poses.backupNow], x[m.laid[BackupBridgeRings]]
	s.Tether, s.FootLoop, s.GardaToTether = x[m.poses.tetherNow], x[m.poses.footNow], x[m.laid[GardaToTether]]
}

// ReadAbove is how much higher r was read than b, in mm, each in the hang that
// counts; NaN where one was not read.
func (m *Model) ReadAbove(x []float64, r, b Reading) float64 {
	if m.height[r] == unknown || m.height[b] == unknown {
		return nan
	}
	return m.above(x, r, b)
}

// Moved says whether a change has moved the height r since it was read.
func (m *Model) Moved(r Reading) bool {
	return m.height[r] != unknown && m.Inputs[m.height[r]].Origin == Predicted
}
