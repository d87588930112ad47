package fit

import "slices"

// A Stale is a reading that a change of the kit has made stale: it says how
// things were, and has to be taken again.
type Stale struct {
	Reading Reading
	Key     string  // in the session file, of where it is taken again
	Pieces  []Piece // whose change made it stale, in the order of the session file
}

// moves are the heights that a change of each piece moves, in the order of the
// readings.
var moves = [NumPieces][]Reading{
	PieceMainBridge:   movedByBridge[:],
	PieceHitchLeft:    {LeftLoopTop, LeftHitchTop},
	PieceHitchRight:   {RightLoopTop, RightHitchTop},
	PieceFootLoop:     {GardaLevel, KneeLevel},
	PieceTether:       {GardaTaut},
	PieceBackupBridge: {GardaTaut},
}

// Stale are the readings that are to be taken again because of changes up to
// hang h, from 0, in the order of the session file: heights, which hang h reads
// again, and lengths that were set and not laid on again since. With h the
// number of the hangs it is what the hang to come has to read; with an earlier
// one it is what that hang had to read, whatever it has read by now. A height
// that no hang before h read is not stale: it was never taken. Every hang also
// needs its own hip, which is not named.
func (f *Fitting) Stale(h int) []Stale {
	var list []Stale
	for r := firstHeight; r <= lastHeight; r++ {
		if by := f.staleBy(r, h); len(by) > 0 {
			list = append(list, Stale{r, HeightKey(h, r), by})
		}
	}
	for p, r := range pieceReading {
		last := f.lastChange(Piece(p), h)
		if r != noReading && last >= 0 && len(f.Changes[last].Measured) == 0 {
			list = append(list, Stale{r, ChangeKey(last, true), []Piece{Piece(p)}})
		}
	}
	return list
}

// staleBy are the pieces that were changed between the last hang before h that
// read the height r and hang h.
func (f *Fitting) staleBy(r Reading, h int) []Piece {
	g := f.lastRead(r, h)
	if r == KneeLevel { // it counts beside the Garda hitch at level alone
		if g = f.lastRead(GardaLevel, h); g >= 0 && len(f.Hangs[g].Heights[KneeLevel]) == 0 {
			g = -1
		}
	}
	if g < 0 {
		return nil
	}
	var by []Piece
	for p := range NumPieces {
		if last := f.lastChange(p, h); last >= 0 && f.Changes[last].AfterHang > g && slices.Contains(moves[p], r) {
			by = append(by, p)
		}
	}
	return by
}

// lastRead is the last hang before h that read the height r, from 0; -1 for none.
func (f *Fitting) lastRead(r Reading, h int) int {
	for g := min(h, len(f.Hangs)) - 1; g >= 0; g-- {
		if len(f.Hangs[g].Heights[r]) > 0 {
			return g
		}
	}
	return -1
}

// lastChange is the change that set p to the length that it had in hang h, from
// 0; -1 where none had.
func (f *Fitting) lastChange(p Piece, h int) int {
	last := -1
	for i := range f.Changes {
		c := &f.Changes[i]
		if c.Piece == p && c.AfterHang <= h && (last < 0 || c.AfterHang >= f.Changes[last].AfterHang) {
			last = i
		}
	}
	return last
}
