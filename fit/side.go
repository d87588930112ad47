package fit

// A side is one friction hitch: how its loop and its top follow from what was
// read and what was changed since.
type side struct {
	piece             Piece
	loopTop, hitchTop Reading

	retied   slot // the loop's length as it was set, where no hang has read it since
	moved    bool // the hitch top was not read since the loop was tied anew
	wrapLoop slot // the loop top that belongs to the old hitch top
	wrapHip  slot
	wrapHang int
	wrapRead slot // main bridge when it was read
}

// standsOn is the mark that the hitch's top follows from: itself, or where its
// loop was tied anew since, the loop's end if that was read, else the connector.
func (s *side) standsOn() Reading {
	switch {
	case !s.moved:
		return s.hitchTop
	case s.retied == unknown:
		return s.loopTop
	}
	return ConnectorTop
}

var hitchSides = [2]side{
	{piece: PieceHitchLeft, loopTop: LeftLoopTop, hitchTop: LeftHitchTop},
	{piece: PieceHitchRight, loopTop: RightLoopTop, hitchTop: RightHitchTop},
}

// movedByBridge are the heights that the main bridge carries.
var movedByBridge = [...]Reading{ConnectorTop, ConnectorBottom, LeftLoopTop, LeftHitchTop, RightLoopTop, RightHitchTop}

// resolve works out which lengths belong to which readings: those of the hang
// that read them, and those that there are now.
func (m *Model) resolve() {
	p := &m.poses
	chain := func(piece Piece, r Reading) (then, now slot) {
		c := m.pieces[piece]
		if h := m.hang[r]; h >= 0 {
			return c[c.at(h)].slot, c.now()
		}
		return c.now(), c.now()
	}
	p.footLevel, p.footNow = chain(PieceFootLoop, GardaLevel)
	p.tetherTaut, p.tetherNow = chain(PieceTether, GardaTaut)
	p.backupTaut, p.backupNow = chain(PieceBackupBridge, GardaTaut)
	for _, r := range movedByBridge {
		p.bridgeRead[r], p.bridgeNow = chain(PieceMainBridge, r)
	}
	switch h := m.hang[KneeLevel]; {
	case m.hang[GardaLevel] < 0:
		p.kneeElsewhere, p.kneeElsewhereHip = m.height[KneeLevel], m.hipOf[KneeLevel]
	case h == m.hang[GardaLevel]:
		p.kneeSlot, p.kneeHip = m.height[KneeLevel], m.hipOf[KneeLevel]
	default:
		m.takeKneeOf(m.hang[GardaLevel])
	}
	for i := range m.sides {
		m.sides[i] = hitchSides[i]
		m.resolveSide(&m.sides[i])
	}
}

// takeKneeOf makes the knee of hang h count, also where a later hang read it
// again without the Garda hitch: the two belong together.
func (m *Model) takeKneeOf(h int) {
	p := &m.poses
	if s := m.height[KneeLevel]; s != unknown {
		m.Inputs[s].Hidden = true
		m.height[KneeLevel] = unknown
	}
	m.hang[KneeLevel] = -1
	if len(m.f.Hangs[h].Heights[KneeLevel]) == 0 {
		return
	}
	p.kneeSlot, p.kneeHip = m.addHeight(h, KneeLevel), m.hips[h]
	m.hang[KneeLevel], m.height[KneeLevel], m.hipOf[KneeLevel] = h, p.kneeSlot, p.kneeHip
}

func (m *Model) resolveSide(s *side) {
	chain := m.pieces[s.piece]
	last := len(chain) - 1
	if last == 0 {
		return
	}
	if h := m.hang[s.loopTop]; h < 0 || chain.at(h) != last {
		s.retied = chain.now()
	}
	h := m.hang[s.hitchTop]
	if h < 0 || chain.at(h) == last {
		return
	}
	s.moved = true
	g := m.loopBeside(s, h)
	if g < 0 {
		return
	}
	if m.hips[g] == unknown && len(m.f.Hangs[g].Heights[Hip]) > 0 {
		m.hips[g] = m.addHeight(g, Hip)
	}
	s.wrapHang, s.wrapHip, s.wrapRead = g, m.hips[g], m.bridgeAt(g)
	if m.hang[s.loopTop] == g {
		s.wrapLoop = m.height[s.loopTop]
	} else {
		s.wrapLoop = m.addHeight(g, s.loopTop)
	}
}

// loopBeside is the hang whose loop top belongs to the hitch top that hang h
// read: h itself, or else the latest that read the same loop; -1 for none.
func (m *Model) loopBeside(s *side, h int) int {
	read := func(g int) bool { return len(m.f.Hangs[g].Heights[s.loopTop]) > 0 }
	if read(h) {
		return h
	}
	chain := m.pieces[s.piece]
	for g := len(m.f.Hangs) - 1; g >= 0; g-- {
		if read(g) && chain.at(g) == chain.at(h) {
			return g
		}
	}
	return -1
}

// bridgeAt is the main bridge as it was in hang h.
func (m *Model) bridgeAt(h int) slot {
	c := m.pieces[PieceMainBridge]
	return c[c.at(h)].slot
}
