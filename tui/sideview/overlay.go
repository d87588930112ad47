package sideview

import "example.com/hangtape/fit"

// tape draws where the tape goes: for a height the hanging tape beside the rope
// with a level line to the landmark, for a laid length the way that it is laid.
func (c *canvas) tape(sh *fit.Shape, cells map[fit.Landmark]Cell, from, to fit.Landmark) {
	if !sh.At[from].Known() || !sh.At[to].Known() {
		return
	}
	a, b := c.cellOf(sh, cells, from), c.cellOf(sh, cells, to)
	if from != to {
		for _, step := range walk(a, b) {
			c.put(step.at, c.set.laid)
		}
		return
	}
	hangs := Cell{c.l.rope + 2, a.Row}
	for row := range c.l.rows {
		if at := (Cell{hangs.Col, row}); c.empty(at) {
			c.put(at, c.set.tape)
		}
	}
	for _, step := range walk(a, hangs) {
		if c.empty(step.at) {
			c.put(step.at, c.set.lines[level])
		}
	}
	c.put(hangs, c.set.tapeMark)
}

// gap draws the height between two landmarks where there is a free column near
// them and they do not lie in one row.
func (c *canvas) gap(cells map[fit.Landmark]Cell, lower, upper fit.Landmark) {
	top, end, ok := c.between(cells, upper, lower)
	if !ok {
		return
	}
	for row := top.Row + 1; row < end.Row; row++ {
		c.put(Cell{top.Col, row}, c.set.gap)
	}
	c.put(top, c.set.gapTop)
	c.put(end, c.set.gapEnd)
}

// clash draws what runs into each other, beside the letters of both.
func (c *canvas) clash(cells map[fit.Landmark]Cell, clash fit.Clash) {
	top, end, ok := c.between(cells, clash.Lower, clash.Upper)
	if !ok {
		for _, m := range []fit.Landmark{clash.Lower, clash.Upper} {
			if at, drawn := cells[m]; drawn {
				top, end, ok = Cell{at.Col - 1, at.Row}, Cell{at.Col - 1, at.Row}, true
				break
			}
		}
	}
	for row := top.Row; ok && row <= end.Row; row++ {
		c.put(Cell{top.Col, row}, c.set.clash)
	}
}

// farthestGap is how many columns from its landmarks a gap is drawn at most.
const farthestGap = 6

// between finds the nearest free column beside two landmarks, from the row of
// the one to that of the other; false where they are in one row or nothing is free.
func (c *canvas) between(cells map[fit.Landmark]Cell, a, b fit.Landmark) (top, end Cell, ok bool) {
	p, okP := cells[a]
	q, okQ := cells[b]
	if !okP || !okQ || p.Row == q.Row {
		return Cell{}, Cell{}, false
	}
	first, last := min(p.Row, q.Row), max(p.Row, q.Row)
	for off := 1; off <= farthestGap; off++ {
		for _, col := range []int{p.Col - off, p.Col + off} {
			if c.columnEmpty(col, first, last) {
				return Cell{col, first}, Cell{col, last}, true
			}
		}
	}
	return Cell{}, Cell{}, false
}

func (c *canvas) columnEmpty(col, first, last int) bool {
	for row := first; row <= last; row++ {
		if !c.empty(Cell{col, row}) {
			return false
		}
	}
	return true
}
