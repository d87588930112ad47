package records

import (
	"cmp"
	"slices"

	"example.com/hangtape/fit"
	"example.com/hangtape/sessions"
)

// A Cord is a piece of a kit with the day on which it was tied.
type Cord struct {
	Kit   string // its label; a kit without one is its climber's
	Piece fit.Piece
	Tied  sessions.Tied
	Seen  *Entry // the newest session that tells it
}

// Cords lists every piece of every kit that somebody said when it was tied, the
// oldest first. A kit is known by its label, one without by its climber.
func (l *List) Cords() []Cord {
	type piece struct {
		kit, climber string
		piece        fit.Piece
	}
	told := map[piece]bool{}
	var all []Cord
	for _, e := range l.Sessions() {
		of := piece{kit: Fold(e.Kit)}
		if of.kit == "" {
			if of.climber = Fold(e.Climber); of.climber == "" {
				of.climber = e.Path
			}
		}
		for p := range fit.NumPieces {
			of.piece = p
			if on := e.Tied[p].On; !on.IsZero() && !told[of] {
				told[of] = true
				all = append(all, Cord{e.Kit, p, e.Tied[p], e})
			}
		}
	}
	slices.SortStableFunc(all, func(a, b Cord) int {
		return cmp.Or(a.Tied.On.Compare(b.Tied.On), cmp.Compare(a.Kit, b.Kit), cmp.Compare(a.Piece, b.Piece))
	})
	return all
}
