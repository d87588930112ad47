package sideview

import (
	"strings"

	"example.com/hangtape/fit"
)

// A canvas is the picture. Letters are drawn first, and nothing covers them.
type canvas struct {
	l      layout
	set    charset
	cells  [][]rune
	tints  [][]Tint
	locked map[Cell]bool
	tint   Tint // of what is put now
}

func newCanvas(l layout, ascii bool) *canvas {
	c := &canvas{l: l, set: charsetFor(ascii), cells: make([][]rune, l.rows), tints: make([][]Tint, l.rows), locked: map[Cell]bool{}}
	for i := range c.cells {
		c.cells[i] = []rune(strings.Repeat(" ", l.cols))
		c.tints[i] = make([]Tint, l.cols)
	}
	return c
}

// mark draws a letter for good.
func (c *canvas) mark(at Cell, letter rune) {
	c.put(at, letter)
	c.locked[at] = true
}

// put draws r unless a letter stands there or the cell is outside.
func (c *canvas) put(at Cell, r rune) {
	if c.inside(at) && !c.locked[at] {
		c.cells[at.Row][at.Col], c.tints[at.Row][at.Col] = r, c.tint
	}
}

func (c *canvas) inside(at Cell) bool {
	return at.Row >= 0 && at.Row < c.l.rows && at.Col >= 0 && at.Col < c.l.cols
}

func (c *canvas) empty(at Cell) bool { return c.inside(at) && c.cells[at.Row][at.Col] == ' ' }

// strokes draws all lines of the shape, those that matter most last.
func (c *canvas) strokes(sh *fit.Shape, cells map[fit.Landmark]Cell) {
	for s := fit.StrokeRope; s <= fit.StrokeGarda; s++ {
		for _, l := range sh.Lines {
			if l.Stroke == s {
				c.stroke(s, c.cellOf(sh, cells, l.From), c.cellOf(sh, cells, l.To))
			}
		}
		if s == fit.StrokeBody {
			c.head(sh.Head)
		}
	}
	if g, ok := cells[fit.MarkGround]; ok {
		for col := range c.l.cols {
			if at := (Cell{col, g.Row}); c.empty(at) {
				c.put(at, c.set.ground)
			}
		}
	}
}

// head fills the cells whose middle lies in it.
func (c *canvas) head(e fit.Ellipse) {
	for row := range c.l.rows {
		for col := range c.l.cols {
			if at := (Cell{col, row}); e.Holds(c.l.middle(at)) {
				c.put(at, c.set.body)
			}
		}
	}
}

// cellOf is the cell of a landmark's letter, or of its place where it has none.
func (c *canvas) cellOf(sh *fit.Shape, cells map[fit.Landmark]Cell, m fit.Landmark) Cell {
	if at, ok := cells[m]; ok {
		return at
	}
	switch m {
	case fit.MarkRopeTop:
		return Cell{c.l.rope, 0}
	case fit.MarkRopeEnd:
		return Cell{c.l.rope, c.l.rows - 1}
	}
	near := c.l.near(sh.At[m])
	if len(near) == 0 {
		col, row := c.l.exact(sh.At[m])
		return Cell{int(col), int(row)}
	}
	return near[0]
}

// stroke draws a line between two cells, which it leaves alone.
func (c *canvas) stroke(s fit.Stroke, from, to Cell) {
	if s == fit.StrokeRope {
		to.Row++ // both ends of the rope are drawn
		from.Row--
	}
	for _, step := range walk(from, to) {
		c.put(step.at, c.set.of(s, step.slope))
	}
}

// beside puts the lines of the key to the right of the picture.
func (c *canvas) beside(key []string) []string {
	out := make([]string, c.l.rows)
	for i := range out {
		out[i] = string(c.cells[i]) + " " + key[i]
	}
	return out
}

// A slope is how a line crosses a cell.
type slope int

const (
	level slope = iota
	upright
	rising // to the right
	falling
)

// A pace is one cell on the way of a line.
type pace struct {
	at    Cell
	slope slope
}

// walk lists the cells between two, without these.
func walk(from, to Cell) []pace {
	dc, dr := to.Col-from.Col, to.Row-from.Row
	n := max(abs(dc), abs(dr))
	at := func(i int) Cell {
		return Cell{from.Col + share(dc, i, n), from.Row + share(dr, i, n)}
	}
	out := make([]pace, 0, n)
	for i := 1; i < n; i++ {
		a, b, c := at(i-1), at(i), at(i+1)
		p := pace{at: b, slope: level}
		switch {
		case abs(dr) >= abs(dc) && a.Col == b.Col && b.Col == c.Col:
			p.slope = upright
		case abs(dr) < abs(dc) && a.Row == b.Row && b.Row == c.Row:
		case (dc > 0) == (dr > 0):
			p.slope = falling
		default:
			p.slope = rising
		}
		out = append(out, p)
	}
	return out
}

// share is d·i/n to the nearest whole number, the same way for both signs.
func share(d, i, n int) int {
	if d < 0 {
		return -share(-d, i, n)
	}
	return (2*d*i + n) / (2 * n)
}

func abs(n int) int { return max(n, -n) }
