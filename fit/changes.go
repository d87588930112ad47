package fit

import "strconv"

// pieceReading is what a piece's length is laid on as. A hitch's loop is not
// laid on but read as two heights.
var pieceReading = [NumPieces]Reading{
	PieceMainBridge: MainBridge, PieceHitchLeft: noReading, PieceHitchRight: noReading,
	PieceFootLoop: FootLoop, PieceTether: Tether, PieceBackupBridge: BackupBridge,
}

// SettingSpread is the standard uncertainty, in mm, of setting a piece to a
// length; judgement. A piece that says fixed was re-tied if it was changed.
func (h How) SettingSpread() float64 {
	if h == Slides {
		return 3
	}
	return 8
}

// pieceLengths follows the length of one piece through the changes.
type pieceLengths []pieceLength

type pieceLength struct {
	slot   slot
	since  int // the number of hangs before it
	change int // index of the change that set it, -1 for the kit's first length
}

// at is the place in the chain of the length that the piece had in hang h.
func (p pieceLengths) at(h int) int {
	i := 0
	for j := range p {
		if p[j].since <= h {
			i = j
		}
	}
	return i
}

// now is the slot of the length that the piece has now.
func (p pieceLengths) now() slot { return p[len(p)-1].slot }

// ChangeKey is the key of a change in the session file, i counting from 0.
func ChangeKey(i int, laidOn bool) string {
	if laidOn {
		return "changes." + strconv.Itoa(i+1) + ".measured_mm"
	}
	return "changes." + strconv.Itoa(i+1) + ".to_mm"
}

// addChanges follows the changes of the fitting, in the order of the hangs that
// they come after.
func (m *Model) addChanges() {
	firsts := make([]pieceLength, NumPieces)
	for p := range NumPieces {
		first := unknown
		if r := pieceReading[p]; r != noReading {
			first = m.laid[r]
		}
		firsts[p] = pieceLength{first, 0, -1}
		m.pieces[p] = firsts[p : p+1 : p+1]
	}
	for after := 0; after <= len(m.f.Hangs); after++ {
		for i := range m.f.Changes {
			if c := &m.f.Changes[i]; c.AfterHang == after {
				p := &m.pieces[c.Piece]
				*p = append(*p, pieceLength{m.addChange(i, c), after, i})
			}
		}
	}
}

func (m *Model) addChange(i int, c *Change) slot {
	if len(c.Measured) == 0 {
		return m.add(Input{
			Key: ChangeKey(i, false), V: c.To, U: m.f.Kit.Pieces[c.Piece].Change.SettingSpread(), Unit: "mm",
			Origin: Predicted, Reading: noReading, Change: i + 1,
		})
	}
	in := Input{Key: ChangeKey(i, true), V: Mean(c.Measured), Unit: "mm", Reading: noReading, Change: i + 1, N: len(c.Measured), Kind: Hardware}
	in.L = in.V
	in.U = m.freshU(in, in.N)
	return m.add(in)
}
