// Package sideview draws climber and kit to scale in text. A drawing is a
// picture, in which each landmark is one letter and everything else is lines,
// and beside it a key of those letters.
//
//	    |L
//	N   #l
//	..  C    a landmark is within one cell of its place
//	 . .c    times the printed scale
//	 H..|..K
package sideview

import (
	"errors"
	"slices"
	"strings"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// Options say how to draw. Shape and options together settle the drawing.
type Options struct {
	Width, Height int    // of the whole drawing, in cells; at least Narrowest by Lowest
	ASCII         bool   // no character beyond ASCII; else box drawing and block elements as well
	Unit          string // of lengths: mm, cm, in

	Reading fit.Reading  // shows where the tape goes for it; the zero Reading, stature, shows none
	Check   *rules.Check // shows its margin; nil shows none

	bare bool // without heights, and without what follows from them
}

// The smallest drawing.
const (
	Narrowest = 30
	Lowest    = 12
)

// ErrTooSmall says that there is no room for a drawing.
var ErrTooSmall = errors.New("no room for the side view")

// A Cell is a place in a drawing, counted from 0 at the top left.
type Cell struct{ Col, Row int }

// A Drawing is a side view in text.
type Drawing struct {
	Lines []string              // none longer than the width asked for, nor more of them than its height
	Cells map[fit.Landmark]Cell // of the letters drawn
	Asked []fit.Landmark        // where the tape goes
	Scale Scale
	// Columns is how many columns the picture takes; the key is to its right.
	Columns int
	// Tints say what cells of the picture stand out for, by row and column.
	Tints [][]Tint
}

// A Tint is what a cell of a picture stands out for. A drawing without any
// colour says the same by its signs.
type Tint byte

// The tints.
const (
	Plain     Tint = iota
	TintTape       // where the tape goes
	TintGap        // the margin that is asked for
	TintClash      // what collides
)

// Draw draws sh. A landmark that is unknown has no letter, nor has one so close
// to others that no cell within one of its place is free.
func Draw(sh *fit.Shape, o Options) (Drawing, error) {
	if o.Width < Narrowest || o.Height < Lowest {
		return Drawing{}, ErrTooSmall
	}
	span, gap := o.Check.Span()
	gap = gap && span.Pose == sh.Pose
	from, to, tape := o.Reading.Landmarks()
	d := Drawing{Asked: asked(sh, from, to, tape)}
	wanted := d.Asked
	if gap {
		wanted = append(slices.Clone(wanted), span.Lower, span.Upper)
	}
	drawn := marksOf(sh, wanted)
	var captions []string
	if !o.bare {
		captions = captionsOf(sh, drawn, o)
	}
	l := layOut(sh, drawn, o, o.Height-1-len(captions))
	d.Cells, d.Scale, d.Columns = place(sh, drawn, l), l.scale, l.cols

	c := newCanvas(l, o.ASCII)
	for m, cell := range d.Cells {
		if c.tint = Plain; slices.Contains(d.Asked, m) {
			c.tint = TintTape
		}
		c.mark(cell, letterOf(m))
	}
	c.tint = Plain
	c.strokes(sh, d.Cells)
	if c.tint = TintTape; tape {
		c.tape(sh, d.Cells, from, to)
	}
	if c.tint = TintGap; gap {
		c.gap(d.Cells, span.Lower, span.Upper)
	}
	c.tint = TintClash
	for _, clash := range sh.Clashes() {
		c.clash(d.Cells, clash)
	}
	d.Tints = c.tints
	d.Lines = c.beside(keyOf(sh, d.Cells, d.Asked, l, o))
	d.Lines = append(d.Lines, l.caption(o))
	d.Lines = append(d.Lines, captions...)
	for i, line := range d.Lines {
		d.Lines[i] = strings.TrimRight(line, " ")
	}
	return d, nil
}

// asked are the landmarks between which the tape goes. The end of a foot loop with
// a foot in it is where the sole is.
func asked(sh *fit.Shape, from, to fit.Landmark, ok bool) []fit.Landmark {
	switch {
	case !ok:
		return nil
	case from == to:
		return []fit.Landmark{from}
	case from == fit.MarkLoopEnd && sh.At[from] == sh.At[fit.MarkSole]:
		from = fit.MarkSole
	}
	return []fit.Landmark{from, to}
}
