package fit

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

// bodyMissing is what a part of the body lacks: nothing where it is estimated from
// a stature, else its reading.
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

// loopMissing is what the length of a hitch's loop lacks.
func (m *Model) loopMissing(s *side) []string {
	if s.retied != unknown {
		return nil
	}
	return m.carriedPairMissing(s.loopTop, ConnectorTop)
}

// hitchMissing is what the height of a hitch's top lacks.
func (m *Model) hitchMissing(s *side) []string {
	return append(m.carriedMissing(s.standsOn()), m.wrapsMissing(s)...)
}

// wrapsMissing is what the height of the wraps of a hitch tied anew lacks: it is
// taken from the old hitch, loop top to hitch top. Those of others need nothing.
func (m *Model) wrapsMissing(s *side) []string {
	h := m.hang[s.hitchTop]
	switch {
	case !s.moved:
		return nil
	case s.wrapLoop == unknown: // the old loop top was never read: the new hitch top will do, in a hang to come
		return []string{HeightKey(len(m.f.Hangs), s.hitchTop)}
	case s.wrapHang == h:
		return nil
	}
	keys := append(missingKey(s.wrapHip, HeightKey(s.wrapHang, Hip)), missingKey(m.hipOf[s.hitchTop], HeightKey(h, Hip))...)
	return append(keys, m.liftMissing(s.wrapRead, m.poses.bridgeRead[s.hitchTop])...)
}

// pieceMissing is the length of piece p where s, the one that counts, is unknown.
func (m *Model) pieceMissing(p Piece, s slot) []string {
	return missingKey(s, "kit."+p.Key()+".length_mm")
}

// tautMissing is what the Garda hitch's height with the tether taut lacks: itself,
// and what was changed since it was read; else all that it is added up from.
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
