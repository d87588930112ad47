package advice

import (
	"fmt"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// An OddBound is a piece whose bounds are not simply what is searched: it is set
// outside them, or they reach below what its rings allow.
type OddBound struct {
	Piece  fit.Piece
	From   float64    // mm, as it is set; NaN where that is not known
	Bounds [2]float64 // mm, as told
	Least  float64    // mm, the shortest that is tried; the lower bound where no ring stands in the way
}

// oddBounds are those of the pieces that may be changed, in the order of the
// session file.
func oddBounds(f *fit.Fitting, m *fit.Model) []OddBound {
	var s fit.State
	m.Current(&s)
	var odd []OddBound
	for id := range fit.NumPieces {
		info := &f.Kit.Pieces[id]
		if info.Change == fit.Fixed || !info.Bounded {
			continue
		}
		b := OddBound{Piece: id, From: m.Length(id, &s), Bounds: info.Bounds, Least: clipped(id, info.Bounds, &s)[0]}
		if b.outside() || b.Least > b.Bounds[0] { // both false where one is unknown
			odd = append(odd, b)
		}
	}
	return odd
}

// outside says whether the piece is set outside its bounds; false where its length
// is not known.
func (b *OddBound) outside() bool {
	return b.From < b.Bounds[0] || b.From > b.Bounds[1]
}

// Words tells what is odd and what the search does about it, with lengths in
// unit (mm, cm, in).
func (b *OddBound) Words(unit string) string {
	say := func(mm float64) string { return rules.FormatLength(mm, unit) }
	name, least := rules.PieceName(b.Piece), atLeast(b.Least, unit)
	switch {
	case b.Least > b.Bounds[1]:
		return fmt.Sprintf("%s: its rings keep it at %s or more, its bounds end at %s: it is left as it is", name, least, say(b.Bounds[1]))
	case b.outside():
		return fmt.Sprintf("%s: set to %s, outside its bounds of %s to %s; a change ends within them", name, say(b.From), say(b.Bounds[0]), say(b.Bounds[1]))
	}
	return fmt.Sprintf("%s: its bounds go down to %s, its rings keep it at %s or more: nothing shorter is tried", name, say(b.Bounds[0]), least)
}
