package rules_test

import (
	"strings"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// What is told beside a length is what the model of cord says of that piece.
func TestCordToCut(t *testing.T) {
	f, m := goodFitting(), fit.LearnCord(nil)
	f.Kit.Pieces[fit.PieceTether].Cord = fit.Some(8)
	for _, c := range []struct {
		piece    fit.Piece
		finished float64
		unit     string
		want     string
	}{
		{fit.PieceTether, 178, "mm", "cut 1140 mm of 8 mm cord for a backup tether of 178 mm"},
		{fit.PieceTether, 177.8, "in", "cut 44 3/4 in of 8 mm cord for a backup tether of 7 in"},
		{fit.PieceFootLoop, 1000, "mm", "cut 2370 mm of 6 mm cord, or 2560 mm of 8 mm cord, or 2745 mm of 10 mm cord for a foot loop of 1000 mm"},
		{fit.PieceTether, -1, "mm", ""},
	} {
		if got := rules.CordToCut(m, f, c.piece, c.finished, c.unit); got != c.want {
			t.Errorf("%s of %g mm in %s: %q, want %q", c.piece.Key(), c.finished, c.unit, got, c.want)
		}
	}
	f.Kit.Pieces[fit.PieceHitchLeft].Cord, f.Rope.Diameter = fit.Some(8), fit.Some(11.4)
	loop := fit.CordFor(f, fit.PieceHitchLeft, 330)
	want := rules.FormatLength(m.Cut(loop, 5).Length, "mm")
	if got := rules.CordToCut(m, f, fit.PieceHitchLeft, 330, "mm"); !strings.HasPrefix(got, "cut "+want+" of 8 mm cord") {
		t.Errorf("%q, want %s", got, want)
	}
	f.Rope.Diameter = fit.Number{}
	if got := rules.CordToCut(m, f, fit.PieceHitchLeft, 330, "mm"); !strings.Contains(got, "once the rope's diameter is told") {
		t.Errorf("without a rope: %q", got)
	}
}
