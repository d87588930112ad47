package advice

import (
	"testing"

	"example.com/hangtape/fit"
)

// The work of a set: slides 1, re-tied 2, the foot loop re-tied 3, both hitch
// loops together at most 3.
func TestCosts(t *testing.T) {
	kit := func(how fit.How) *[fit.NumPieces]*piece {
		var ps [fit.NumPieces]*piece
		for i, id := range order {
			ps[i] = &piece{id: id, how: how, cost: cost(id, how)}
		}
		return &ps
	}
	of := func(pieces ...fit.Piece) (s set) {
		for i, id := range order {
			for _, p := range pieces {
				if p == id {
					s |= 1 << i
				}
			}
		}
		return s
	}
	for _, c := range []struct {
		how    fit.How
		pieces []fit.Piece
		want   int
	}{
		{fit.Slides, nil, 0},
		{fit.Slides, []fit.Piece{fit.PieceMainBridge}, 1},
		{fit.Slides, []fit.Piece{fit.PieceFootLoop}, 1},
		{fit.ReTie, []fit.Piece{fit.PieceTether}, 2},
		{fit.ReTie, []fit.Piece{fit.PieceFootLoop}, 3},
		{fit.ReTie, []fit.Piece{fit.PieceHitchLeft}, 2},
		{fit.ReTie, []fit.Piece{fit.PieceHitchLeft, fit.PieceHitchRight}, 3},
		{fit.Slides, []fit.Piece{fit.PieceHitchLeft, fit.PieceHitchRight}, 2},
		{fit.ReTie, []fit.Piece{fit.PieceHitchLeft, fit.PieceHitchRight, fit.PieceFootLoop, fit.PieceMainBridge}, 8},
	} {
		if got := of(c.pieces...).cost(kit(c.how)); got != c.want {
			t.Errorf("%v %s: %d, want %d", c.pieces, howWords[c.how], got, c.want)
		}
	}
	if list := sets(kit(fit.ReTie), of(fit.PieceTether)); len(list) != 32 || list[0] != of(fit.PieceTether) {
		t.Errorf("with the tether forced there are %d sets, the first %b", len(list), list[0])
	}
}
