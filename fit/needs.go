package fit

// A Quantity is something that a check rests on, for which readings may be
// missing.
type Quantity int

// The quantities. Those of a side come left, then right.
const (
	NeedThigh Quantity = iota
	NeedShin
	NeedWaist
	NeedNose
	NeedWristUp
	NeedWristDown
	NeedConnectorTop
	NeedConnectorBottom
	NeedLoopLeft
	NeedLoopRight
	NeedHitchTopLeft
	NeedHitchTopRight
	NeedPair
	NeedSolesAboveGround
	NeedYLevel
	NeedYTaut
	NeedFootLoop
	NeedMass
	NeedElongation
	NeedLeastAbove
	NeedDrillAbove
	NeedRopeDiameter
	NeedInsideWidth
	NeedCordLeft
	NeedCordRight
	NeedWrapsLeft
	NeedWrapsRight
	NeedStrengthLeft
	NeedStrengthRight
	NeedTetherStrands
	NeedTetherStrength
)

// Missing names the keys that would have to be told before q is known; none
// where q is known, or where it is only out of the domain. The order is not
// settled: see SortKeys.
func (m *Model) Missing(q Quantity) []string {
	switch q {
	case NeedThigh:
		return m.bodyMissing(Thigh, PartThigh)
	case NeedShin:
		return m.bodyMissing(Shin, PartShin)
	case NeedWaist:
		return m.bodyMissing(Waist, PartWaist)
	case NeedNose:
		return m.bodyMissing(Nose, PartNose)
	case NeedWristUp:
		if m.height[WristUp] == unknown && m.estimates[PartFull].told {
			return m.Missing(NeedNose)
		}
		return m.bodyMissing(WristUp, PartFull)
	case NeedWristDown:
		return m.bodyMissing(WristDown, PartDown)
	case NeedConnectorTop:
		return m.carriedMissing(ConnectorTop)
	case NeedConnectorBottom:
		return m.carriedMissing(ConnectorBottom)
	case NeedLoopLeft, NeedLoopRight:
		return m.loopMissing(&m.sides[q-NeedLoopLeft])
	case NeedHitchTopLeft, NeedHitchTopRight:
		return m.hitchMissing(&m.sides[q-NeedHitchTopLeft])
	case NeedPair:
		l, r := &m.sides[0], &m.sides[1]
		keys := append(m.wrapsMissing(l), m.wrapsMissing(r)...)
		if l.standsOn() == r.standsOn() {
			return keys
		}
		return append(keys, m.carriedPairMissing(l.standsOn(), r.standsOn())...)
	case NeedSolesAboveGround:
		return m.pairMissing(Soles, Ground)
	case NeedYLevel:
		keys := append(m.Missing(NeedThigh), m.Missing(NeedShin)...)
		keys = append(keys, m.pieceMissing(PieceFootLoop, m.poses.footNow)...)
		if m.height[GardaLevel] != unknown {
			keys = append(keys, m.heightMissing(GardaLevel)...)
			keys = append(keys, m.pieceMissing(PieceFootLoop, m.poses.footLevel)...)
		}
		return keys
	case NeedYTaut:
		return m.tautMissing()
	case NeedFootLoop:
		return m.pieceMissing(PieceFootLoop, m.poses.footNow)
	}
	return m.labelMissing(q)
}

// labelMissing is Missing for what is told, or read off a label.
func (m *Model) labelMissing(q Quantity) []string {
	switch q {
	case NeedMass:
		return missingKey(m.mass, "climber.mass_kg")
	case NeedElongation:
		return missingKey(m.rope.elongation, "rope.elongation_percent")
	case NeedLeastAbove:
		return missingKey(m.rope.least, "rope.least_above_mm")
	case NeedDrillAbove:
		return missingKey(m.rope.drill, "rope.drill_above_mm")
	case NeedRopeDiameter:
		return missingKey(m.rope.diameter, "rope.diameter_mm")
	case NeedInsideWidth:
		return missingKey(m.width, "kit.garda.inside_width_mm")
	case NeedCordLeft, NeedCordRight:
		p := PieceHitchLeft + Piece(q-NeedCordLeft)
		return missingKey(m.labels[p].cord, labelKeys[p].cord)
	case NeedWrapsLeft, NeedWrapsRight:
		p := PieceHitchLeft + Piece(q-NeedWrapsLeft)
		return missingKey(m.labels[p].wraps, labelKeys[p].wraps)
	case NeedStrengthLeft, NeedStrengthRight:
		return m.strengthMissing(PieceHitchLeft + Piece(q-NeedStrengthLeft))
	case NeedTetherStrands:
		return missingKey(m.labels[PieceTether].strands, labelKeys[PieceTether].strands)
	case NeedTetherStrength:
		return m.strengthMissing(PieceTether)
	}
	return nil // no quantity: a test of rules holds that each end's names its keys
}

// strengthMissing is what the strength of a piece's cord lacks: its diameter, or
// its label where EN 564 does not cover the diameter.
func (m *Model) strengthMissing(p Piece) []string {
	l := &m.labels[p]
	switch {
	case l.strength != unknown || CordStrength(m.x[l.cord]).Known:
		return nil
	case l.cord == unknown:
		return []string{labelKeys[p].cord}
	}
	return []string{labelKeys[p].strength}
}

func missingKey(s slot, key string) []string {
	if s != unknown {
		return nil
	}
	return []string{key}
}

// latestHang is the hang whose readings would count, from 0.
func (m *Model) latestHang() int { return max(0, len(m.f.Hangs)-1) }

// heightMissing is what a height above the hip lacks: itself, and its hang's hip.
func (m *Model) heightMissing(r Reading) []string {
	if m.height[r] != unknown {
		return missingKey(m.hipOf[r], HeightKey(m.hang[r], Hip))
	}
	h := m.latestHang()
	keys := []string{HeightKey(h, r)}
	if h >= len(m.hips) || m.hips[h] == unknown {
		keys = append(keys, HeightKey(h, Hip))
	}
	return keys
}

func (m *Model) bodyMissing(r Reading, part BodyPart) []string {
	switch {
	case !r.IsHeight() && m.laid[r] == unknown && !m.estimates[part].told:
		return []string{LaidKey(r)}
	case !r.IsHeight():
		return nil
	case m.height[r] == unknown && m.estimates[part].told:
		return nil
	}
	return m.heightMissing(r)
}

// carriedMissing is heightMissing for a height that the main bridge carries.
func (m *Model) carriedMissing(r Reading) []string {
	return append(m.heightMissing(r), m.liftMissing(m.poses.bridgeRead[r], m.poses.bridgeNow)...)
}

// carriedPairMissing is pairMissing for two heights that the main bridge carries.
func (m *Model) carriedPairMissing(a, b Reading) []string {
	return append(m.pairMissing(a, b), m.liftMissing(m.poses.bridgeRead[a], m.poses.bridgeRead[b])...)
}

// liftMissing is what the difference of the rises of two main bridges lacks.
func (m *Model) liftMissing(a, b slot) []string {
	if a == b {
		return nil
	}
	keys := append(m.pieceMissing(PieceMainBridge, a), m.pieceMissing(PieceMainBridge, b)...)
	return append(keys, missingKey(m.laid[MainBridgeRings], LaidKey(MainBridgeRings))...)
}

// pairMissing is what the difference of two heights lacks: no hip where one hang
// read both.
func (m *Model) pairMissing(a, b Reading) []string {
	if h := m.hang[a]; h >= 0 && h == m.hang[b] {
		return nil
	}
	if h := m.latestHang(); (m.height[a] == unknown || m.hang[a] == h) && (m.height[b] == unknown || m.hang[b] == h) {
		return append(missingKey(m.height[a], HeightKey(h, a)), missingKey(m.height[b], HeightKey(h, b))...)
	}
	return append(m.heightMissing(a), m.heightMissing(b)...)
}

func (m *Model) loopMissing(s *side) []string {
	if s.retied != unknown {
		return nil
	}
	return m.carriedPairMissing(s.loopTop, ConnectorTop)
}

func (m *Model) hitchMissing(s *side) []string {
	return append(m.carriedMissing(s.standsOn()), m.wrapsMissing(s)...)
}

// wrapsMissing is what the wraps of a hitch tied anew lack; those of others need
// nothing.
func (m *Model) wrapsMissing(s *side) []string {
	h := m.hang[s.hitchTop]
	switch {
	case !s.moved:
		return nil
	case s.wrapLoop == unknown:
		return []string{HeightKey(len(m.f.Hangs), s.hitchTop)}
	case s.wrapHang == h:
		return nil
	}
	keys := append(missingKey(s.wrapHip, HeightKey(s.wrapHang, Hip)), missingKey(m.hipOf[s.hitchTop], HeightKey(h, Hip))...)
	return append(keys, m.liftMissing(s.wrapRead, m.poses.bridgeRead[s.hitchTop])...)
}

func (m *Model) pieceMissing(p Piece, s slot) []string {
	return missingKey(s, "kit."+p.Key()+".length_mm")
}

func (m *Model) tautMissing() []string {
	p := &m.poses
	rings := missingKey(m.laid[BackupBridgeRings], LaidKey(BackupBridgeRings))
	if m.height[GardaTaut] == unknown {
		keys := append(m.heightMissing(BackupRings), rings...)
		keys = append(keys, m.pieceMissing(PieceBackupBridge, p.backupNow)...)
		keys = append(keys, m.pieceMissing(PieceTether, p.tetherNow)...)
		return append(keys, missingKey(m.laid[GardaToTether], LaidKey(GardaToTether))...)
	}
	keys := m.heightMissing(GardaTaut)
	if p.backupNow != p.backupTaut {
		keys = append(append(keys, rings...), m.pieceMissing(PieceBackupBridge, p.backupTaut)...)
	}
	if p.tetherNow != p.tetherTaut {
		keys = append(keys, m.pieceMissing(PieceTether, p.tetherTaut)...)
	}
	return keys
}
