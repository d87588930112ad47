package advice

import (
	"math"
	"slices"

	"example.com/hangtape/fit"
)

// A piece is a length of the kit that may be changed.
type piece struct {
	id     fit.Piece
	how    fit.How
	from   float64   // mm, the length now
	lo, hi float64   // mm, its bounds
	marks  []float64 // mm, ascending: what a tape sets within the bounds
	cost   int
}

// The work of a change. Judgement: sliding a bridge is a minute's work, tying a
// cord anew several, and a foot loop has two ends to fit.
const (
	costSlides     = 1
	costReTie      = 2
	costFootLoop   = 3 // tied anew
	costBothLoops  = 3 // both hitch loops together, at most
	leastOverRings = 1 // mm that a bridge has to be longer than its rings are apart
	leastFreed     = 1 // mm, a length whose bounds are freed
	mostFreed      = 5000
)

// order is that in which the search takes the pieces: the backup bridge and the
// foot loop settle most of what the others may be, and the hitch loops hang on
// the main bridge alone. Of two choices that move as far in all, the one that
// moves the first piece less is told.
var order = [fit.NumPieces]fit.Piece{
	fit.PieceBackupBridge, fit.PieceFootLoop, fit.PieceTether, fit.PieceMainBridge, fit.PieceHitchLeft, fit.PieceHitchRight,
}

// pieces are those of the kit that may be changed, by their place in order; nil
// where one is fixed, has no bounds, or has no length that is known.
func pieces(f *fit.Fitting, m *fit.Model, mark float64) [fit.NumPieces]*piece {
	var s fit.State
	m.Current(&s)
	var list [fit.NumPieces]*piece
	for i, id := range order {
		info := &f.Kit.Pieces[id]
		from := m.Length(id, &s)
		if info.Change == fit.Fixed || !info.Bounded || math.IsNaN(from) {
			continue
		}
		b := clipped(id, info.Bounds, &s)
		p := &piece{id: id, how: info.Change, from: from, lo: b[0], hi: b[1], cost: cost(id, info.Change)}
		p.layOut(mark)
		if len(p.marks) > 0 {
			list[i] = p
		}
	}
	return list
}

func cost(id fit.Piece, how fit.How) int {
	switch {
	case how == fit.Slides:
		return costSlides
	case id == fit.PieceFootLoop:
		return costFootLoop
	}
	return costReTie
}

// layOut lays out the marks between the bounds.
func (p *piece) layOut(mark float64) {
	const near = 1e-9
	p.marks = nil
	for k := math.Ceil(p.lo/mark - near); k*mark <= p.hi+near; k++ {
		p.marks = append(p.marks, k*mark)
	}
}

// clipped are the bounds of p, those of a bridge no shorter than its rings allow.
func clipped(p fit.Piece, b [2]float64, s *fit.State) [2]float64 {
	switch p {
	case fit.PieceMainBridge:
		b[0] = math.Max(b[0], s.MainBridgeRings+leastOverRings)
	case fit.PieceBackupBridge:
		b[0] = math.Max(b[0], s.BackupBridgeRings+leastOverRings)
	}
	return b
}

// A set is a choice of pieces to change: a bit for each place in order.
type set uint

func (s set) has(i int) bool { return s&(1<<i) != 0 }

// cost is the work of changing the pieces of s.
func (s set) cost(ps *[fit.NumPieces]*piece) int {
	total, loops := 0, 0
	for i, p := range ps {
		switch {
		case !s.has(i):
		case p.id == fit.PieceHitchLeft || p.id == fit.PieceHitchRight:
			loops += p.cost
		default:
			total += p.cost
		}
	}
	return total + min(loops, costBothLoops)
}

// sets are all choices among the pieces that may change, with those of forced
// in each of them; the cheapest first.
func sets(ps *[fit.NumPieces]*piece, forced set) []set {
	var free set
	for i, p := range ps {
		if p != nil {
			free |= 1 << i
		}
	}
	var list []set
	for s := set(0); s <= free; s++ {
		if s&^free == 0 && s&forced == forced {
			list = append(list, s)
		}
	}
	slices.SortStableFunc(list, func(a, b set) int { return a.cost(ps) - b.cost(ps) })
	return list
}
