package sideview

import (
	"math"
	"sort"

	"example.com/hangtape/fit"
)

// place gives each mark a cell of its own, less than one column and one row from
// its exact place (at most one where that is the middle of a cell). Marks on the
// rope keep their order from top to bottom. Where there is no way to do it, the
// marks that say least are left out.
func place(sh *fit.Shape, marks []fit.Landmark, l layout) map[fit.Landmark]Cell {
	for n := len(marks); ; n-- {
		kept := append([]fit.Landmark(nil), marks[:n]...)
		sort.SliceStable(kept, func(i, j int) bool { return before(sh, kept[i], kept[j]) })
		p := placer{sh: sh, l: l, marks: kept, cells: make([]Cell, n), taken: map[Cell]bool{}, tries: 20_000}
		if p.from(0) {
			out := make(map[fit.Landmark]Cell, n)
			for i, m := range kept {
				out[m] = p.cells[i]
			}
			return out
		}
	}
}

// before is the order in which marks are placed: the hip, which the scale hangs
// on, then the rope from its top, then the rest.
func before(sh *fit.Shape, a, b fit.Landmark) bool {
	ra, rb := rank(sh, a), rank(sh, b)
	if ra != rb {
		return ra < rb
	}
	return ra == onRope && sh.At[a].Y > sh.At[b].Y
}

// The ranks, in the order in which they are placed.
const (
	atHip = iota
	onRope
	elsewhere
)

func rank(sh *fit.Shape, m fit.Landmark) int {
	switch {
	case m == fit.MarkHip:
		return atHip
	case sh.At[m].X == sh.At[fit.MarkRopeTop].X:
		return onRope
	}
	return elsewhere
}

// A placer tries cells for marks, one after the other, going back where none is
// left.
type placer struct {
	sh    *fit.Shape
	l     layout
	marks []fit.Landmark
	cells []Cell // of the marks so far
	taken map[Cell]bool
	tries int // that are left: where letters crowd, one less is drawn sooner than all ways are tried
}

// from places the marks from the i-th on; false where that cannot be done.
func (p *placer) from(i int) bool {
	if i == len(p.marks) {
		return true
	}
	if p.tries--; p.tries < 0 {
		return false
	}
	above := -1
	if i > 0 && rank(p.sh, p.marks[i]) == onRope && rank(p.sh, p.marks[i-1]) == onRope {
		above = p.cells[i-1].Row
	}
	for _, c := range p.l.near(p.sh.At[p.marks[i]]) {
		if p.taken[c] || c.Row < above {
			continue
		}
		p.cells[i], p.taken[c] = c, true
		if p.from(i + 1) {
			return true
		}
		delete(p.taken, c)
	}
	return false
}

// near lists the cells in which p may be drawn, the nearest first.
func (l layout) near(p fit.Point) []Cell {
	x, y := l.exact(p)
	var out []Cell
	for _, col := range around(x) {
		for _, row := range around(y) {
			if col >= 0 && col < l.cols && row >= 0 && row < l.rows {
				out = append(out, Cell{col, row})
			}
		}
	}
	off := func(c Cell) float64 { return math.Hypot(float64(c.Col)-x, 2*(float64(c.Row)-y)) }
	sort.SliceStable(out, func(i, j int) bool { return off(out[i]) < off(out[j]) })
	return out
}

// around lists the whole numbers within one of v.
func around(v float64) []int {
	low, high := int(math.Ceil(v-1)), int(math.Floor(v+1))
	var out []int
	for n := low; n <= high; n++ {
		out = append(out, n)
	}
	return out
}
