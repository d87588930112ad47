package advice

import (
	"math"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
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

// Marks lie within the bounds, and on them where a mark does, however it rounds.
func TestMarksReachBothBounds(t *testing.T) {
	for _, c := range []struct{ lo, hi, mark, first, last float64 }{
		{100, 120, rules.MarkMetric, 100, 120},
		{101, 119, rules.MarkMetric, 105, 115},
		{99.9, 120.1, rules.MarkMetric, 100, 120},
		{4 * 25.4, 10.25 * 25.4, rules.MarkInch, 101.6, 260.35},
		{0.1 * 3, 0.7, 0.1, 0.3, 0.7}, // three times 0.1 is a little more than 0.3, seven times less than 0.7
		{101, 104, rules.MarkMetric, 0, 0},
	} {
		p := &piece{lo: c.lo, hi: c.hi, marks: []float64{1, 2, 3}}
		p.layOut(c.mark)
		want := 0
		if c.last > 0 {
			want = 1 + int(math.Round((c.last-c.first)/c.mark))
		}
		if len(p.marks) != want {
			t.Errorf("from %g to %g: %v, want %d marks", c.lo, c.hi, p.marks, want)
			continue
		}
		for k, v := range p.marks {
			if math.Abs(v-(c.first+float64(k)*c.mark)) > 1e-9 {
				t.Errorf("from %g to %g: %v, want from %g to %g", c.lo, c.hi, p.marks, c.first, c.last)
			}
		}
	}
}

// What is exactly enough passes; what is less does not, nor what is unknown.
func TestExactlyEnoughPasses(t *testing.T) {
	for margin, want := range map[float64]bool{10: true, 10.001: true, 9.999: false, math.NaN(): false} {
		d := &demand{t: &tables{base: []sum{{margin: margin, variance: 25}}}, factor: 2, need: 1}
		if got := d.met(&choice{}); got != want {
			t.Errorf("%g of margin over twice 5: met %t", margin, got)
		}
		d.exact = true
		if got := d.met(&choice{}); got != (margin > 0) {
			t.Errorf("%g of margin with nothing uncertain: met %t", margin, got)
		}
	}
	d := &demand{t: &tables{base: []sum{{variance: 25}}}, factor: 2, need: 1, exact: true}
	if !d.met(&choice{}) {
		t.Error("no margin and nothing uncertain: not met")
	}
}
