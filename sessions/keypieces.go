package sessions

import (
	"time"

	"example.com/hangtape/fit"
)

// A pieceField is a key of a piece's table.
type pieceField func(fit.Piece) sessionField

// pieceTable is the table of a piece: its readings, what only some pieces have,
// how its length changes, and when it was tied.
func pieceTable(p fit.Piece, special ...pieceField) table[Session] {
	path := "kit." + p.Key()
	info := func(s *Session) *fit.PieceInfo { return &s.Fit.Kit.Pieces[p] }
	fields := otherLaid(path)
	for _, f := range append(special, change, bounds, tied, tiedBy) {
		fields = append(fields, f(p))
	}
	return table[Session]{path: path, fields: fields,
		stands: func(s *Session) bool { return info(s).Present },
		begin:  func(s *Session) { info(s).Present = true }}
}

func pieceNumber(key string, at func(*fit.PieceInfo) *fit.Number, about KeyInfo) pieceField {
	return func(p fit.Piece) sessionField {
		return number(key, func(s *Session, _ int) *fit.Number { return at(&s.Fit.Kit.Pieces[p]) }, about)
	}
}

func pieceCount(key string, at func(*fit.PieceInfo) *fit.Number, least, most float64) pieceField {
	return func(p fit.Piece) sessionField {
		return count(key, func(s *Session, _ int) *fit.Number { return at(&s.Fit.Kit.Pieces[p]) }, least, most)
	}
}

var (
	cord     = pieceNumber("cord_mm", func(i *fit.PieceInfo) *fit.Number { return &i.Cord }, between(2, 14))
	strength = pieceNumber("strength_kn", func(i *fit.PieceInfo) *fit.Number { return &i.Strength }, between(0.5, 60))
	wraps    = pieceCount("wraps", func(i *fit.PieceInfo) *fit.Number { return &i.Wraps }, 1, 12)
	strands  = pieceCount("strands", func(i *fit.PieceInfo) *fit.Number { return &i.Strands }, 1, 4)
)

func ownRings(fit.Piece) sessionField {
	return choice("own_rings", func(s *Session, _ int) *fit.Choice { return &s.Fit.Kit.OwnRings })
}

// change is how a piece's length changes; a piece that the kit lacks says
// nothing of it.
func change(p fit.Piece) sessionField {
	f := word("change", func(s *Session, _ int) *fit.How { return &s.Fit.Kit.Pieces[p].Change },
		[]named[fit.How]{{"fixed", fit.Fixed}, {"slides", fit.Slides}, {"re-tie", fit.ReTie}})
	put := f.put
	f.put = func(s *Session, i int) string {
		if info := s.Fit.Kit.Pieces[p]; !info.Present && info.Change == fit.Fixed {
			return ""
		}
		return put(s, i)
	}
	return f
}

func bounds(p fit.Piece) sessionField {
	return pair("bounds_mm",
		func(s *Session, _ int) ([2]float64, bool) {
			info := s.Fit.Kit.Pieces[p]
			return info.Bounds, info.Bounded
		},
		func(s *Session, _ int, two [2]float64) {
			info := &s.Fit.Kit.Pieces[p]
			info.Bounds, info.Bounded = two, true
		},
		length,
		func(two [2]float64) *wrong {
			if two[0] > two[1] {
				return &wrong{found: decimals(two[:]...), accepted: "the least length first, then the most"}
			}
			return nil
		})
}

func tied(p fit.Piece) sessionField {
	return day("tied", func(s *Session, _ int) *time.Time { return &s.Tied[p].On })
}

func tiedBy(p fit.Piece) sessionField {
	return text("tied_by", func(s *Session, _ int) *string { return &s.Tied[p].By })
}
