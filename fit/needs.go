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
	return nil // no quantity; a test of rules holds that what a check rests on names its keys
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

// missingKey is key where nothing was told of it, so that s is unknown.
func missingKey(s slot, key string) []string {
	if s != unknown {
		return nil
	}
	return []string{key}
}
