package sideview

import (
	"math"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// Scale is what one cell stands for, in mm. A cell is about twice as high as it
// is wide, so that Row is twice Column.
type Scale struct{ Column, Row float64 }

// String is the scale as it is printed.
func (s Scale) String(unit string) string {
	return sayColumn + rules.FormatLength(s.Column, unit) + sayRow + rules.FormatLength(s.Row, unit)
}

// caption is the scale as it stands under the picture, and what heights count
// from where there is room to say so.
func (l layout) caption(o Options) string {
	scale := l.scale.String(o.Unit)
	if l.values && len(scale)+len(sayFrom) <= o.Width {
		return scale + sayFrom
	}
	return scale
}

// grainOf is what scales are a multiple of, in mm, so that what is printed is exact.
func grainOf(unit string) float64 {
	if unit == "in" {
		return 25.4 / 16
	}
	return 1
}

// A layout is where the picture lies: its scale, its size, and the cell of the
// frame's origin, the hip point of the climber hanging seated.
type layout struct {
	scale      Scale
	cols, rows int
	origin     Cell
	rope       int  // the column of the rope
	values     bool // the key has room for heights
}

// exact is the place of p in cells, with fractions.
func (l layout) exact(p fit.Point) (col, row float64) {
	return float64(l.origin.Col) + p.X/l.scale.Column, float64(l.origin.Row) - p.Y/l.scale.Row
}

// middle is the place of the middle of a cell.
func (l layout) middle(c Cell) fit.Point {
	return fit.Point{X: float64(c.Col-l.origin.Col) * l.scale.Column, Y: float64(l.origin.Row-c.Row) * l.scale.Row}
}

// border is how many columns a picture has beyond its outermost landmarks, for
// the tape and for letters that have to give way.
const border = 1

// layOut chooses the finest scale at which all marks lie in the picture, and
// whether the key has room for heights.
func layOut(sh *fit.Shape, marks []fit.Landmark, o Options, rows int) layout {
	left, right, bottom, top := extent(sh, marks)
	names, values := keyWidth(sh, marks, o)
	l := scaleTo(left, right, bottom, top, o.Width-names-1, rows, o.Unit)
	if !o.bare && l.cols <= o.Width-names-values-2 {
		l.values = true
	}
	l.rope = int(math.Round(float64(l.origin.Col) + sh.At[fit.MarkRopeTop].X/l.scale.Column))
	return l
}

// scaleTo fits a box in mm into so many columns, eight at least, and rows.
func scaleTo(left, right, bottom, top float64, cols, rows int, unit string) layout {
	grain := grainOf(unit)
	least := math.Max((right-left)/float64(cols), (top-bottom)/float64(2*rows))
	for q := grain * math.Max(1, math.Ceil(least/grain)); ; q += grain {
		l := layout{scale: Scale{q, 2 * q}}
		l.origin = Cell{int(math.Ceil(-left/q)) + border, int(math.Ceil(top / (2 * q)))}
		l.cols = l.origin.Col + int(math.Ceil(right/q)) + 1 + border
		l.rows = l.origin.Row + int(math.Ceil(-bottom/(2*q))) + 1
		if l.cols <= cols && l.rows <= rows {
			return l
		}
	}
}

// extent is the box around what is drawn, in mm; the frame's origin and the
// rope are always in it, and room for half a climber, however little is known.
func extent(sh *fit.Shape, marks []fit.Landmark) (left, right, bottom, top float64) {
	left, right, bottom, top = -100, 300, -300, 600
	add := func(p fit.Point) {
		if p.Known() {
			left, right = math.Min(left, p.X), math.Max(right, p.X)
			bottom, top = math.Min(bottom, p.Y), math.Max(top, p.Y)
		}
	}
	for _, m := range marks {
		add(sh.At[m])
	}
	add(sh.At[fit.MarkShoulder])
	if head := sh.Head; head.Centre.Known() {
		add(fit.Point{X: head.Centre.X - head.RX, Y: head.Centre.Y + head.RY})
	}
	if rope := sh.At[fit.MarkRopeTop]; rope.Known() {
		left, right = math.Min(left, rope.X), math.Max(right, rope.X+tapeBeyond)
	}
	return left, right, bottom, top
}

// tapeBeyond is how far ahead of the rope there is always room, in mm.
const tapeBeyond = 150
