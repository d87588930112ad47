package advice

import (
	"fmt"
	"math"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// A WhatIf moves the lengths of one fitting's pieces on trial. The fitting
// itself never changes, and everything told of a moved piece is predicted. It is
// not safe for use by several goroutines at once.
type WhatIf struct {
	f      *fit.Fitting
	limits rules.Limits
	mark   float64
	pieces [fit.NumPieces]Length
}

// A Length is the length of one piece, now and on trial, in mm.
type Length struct {
	Piece  fit.Piece
	How    fit.How
	From   float64    // as it is; NaN where that is not known
	To     float64    // on trial; From where it is not moved
	Bounds [2]float64 // within which it can be set
	Held   string     // why it cannot be moved, in words; "" where it can
}

// Moved says whether the piece is on trial at another length.
func (l *Length) Moved() bool { return l.Held == "" && l.To != l.From }

// NewWhatIf starts with all pieces of f as they are, under the limits l, with
// steps from one multiple of mark mm to the next. f must have no Faults and must
// not be changed while the trial goes on.
func NewWhatIf(f *fit.Fitting, l rules.Limits, mark float64) *WhatIf {
	w := &WhatIf{f: f, limits: l, mark: mark}
	m := fit.NewModel(f, fit.Options{})
	var s fit.State
	m.Current(&s)
	for p := range fit.NumPieces {
		info := &f.Kit.Pieces[p]
		from := m.Length(p, &s)
		n := Length{Piece: p, How: info.Change, From: from, To: from}
		n.Bounds = clipped(p, info.Bounds, &s)
		switch {
		case math.IsNaN(from):
			n.Held = "its length is not known"
		case info.Change == fit.Fixed:
			n.Held = "it is fixed"
		case !info.Bounded:
			n.Held = "it has no bounds"
		case math.IsNaN(n.Bounds[0]):
			n.Held = "how far its rings are apart is not known"
		case n.Bounds[0] > n.Bounds[1]:
			n.Held = "its rings are further apart than its bounds"
		}
		w.pieces[p] = n
	}
	return w
}

// Piece is the length of p on trial.
func (w *WhatIf) Piece(p fit.Piece) Length { return w.pieces[p] }

// Set puts p to mm on trial; its present length takes it off trial. The error says
// why it cannot be there, and nothing moves.
func (w *WhatIf) Set(p fit.Piece, mm float64) error {
	n := &w.pieces[p]
	switch {
	case n.Held != "":
		return fmt.Errorf("%s cannot be moved: %s", p.Key(), n.Held)
	case mm != n.From && !(mm >= n.Bounds[0] && mm <= n.Bounds[1]):
		return fmt.Errorf("%s at %g mm; accepted is %g to %g mm", p.Key(), mm, n.Bounds[0], n.Bounds[1])
	}
	n.To = mm
	return nil
}

// Step moves p by so many marks of the tape, from where it is on trial to the
// next mark first, and no further than the last mark within its bounds; below 0
// is shorter. A piece that is held stays.
func (w *WhatIf) Step(p fit.Piece, marks int) {
	n := &w.pieces[p]
	if n.Held != "" || marks == 0 {
		return
	}
	const near = 1e-9
	k := math.Floor(n.To/w.mark + near) // the mark at or below
	if marks < 0 {
		k = math.Ceil(n.To/w.mark - near)
	}
	lo, hi := math.Ceil(n.Bounds[0]/w.mark-near), math.Floor(n.Bounds[1]/w.mark+near)
	if k = k + float64(marks); marks > 0 {
		k = math.Min(k, hi)
	} else {
		k = math.Max(k, lo)
	}
	// Out of bounds, where a piece may well be now, it only comes back.
	if to := k * w.mark; lo <= hi && (to > n.To) == (marks > 0) {
		n.To = to
	}
}

// Reset takes p off trial.
func (w *WhatIf) Reset(p fit.Piece) { w.pieces[p].To = w.pieces[p].From }

// Lengths are the pieces that are moved, with the lengths that they are on trial
// at, in mm: what to apply.
func (w *WhatIf) Lengths() map[fit.Piece]float64 {
	to := lengths{}
	for p := range w.pieces {
		if n := &w.pieces[p]; n.Moved() {
			to[n.Piece] = n.To
		}
	}
	return to
}

// A Frame is what the model says of the lengths on trial.
type Frame struct {
	Piece  Length        // the one that is looked at
	Checks []rules.Check // by margin and guard alone, in the order of the table
	Poses  []rules.Value // as in check --json
	// Holds is the run of the piece's lengths, in mm, about the one on trial in
	// which all that passes now goes on passing; nil where the piece is held, or
	// is out of its bounds.
	Holds *[2]float64
	// Passes is the run in which every must that the piece moves passes, but for
	// slip-force and tether-strength, which more rope above meets; nil where there
	// is none, or where the piece is held.
	Passes *[2]float64
}

// Frame puts the lengths on trial through the full model, all other pieces held,
// with the windows of p.
func (w *WhatIf) Frame(p fit.Piece) Frame {
	to := w.Lengths()
	f := w.f.Changed(to)
	a := rules.Assess(f, w.limits)
	n := w.pieces[p]
	fr := Frame{Piece: n, Checks: a.PlainChecks(), Poses: a.Poses()}
	if n.Held != "" {
		return fr
	}
	m := a.Model()
	if !n.Moved() { // its window is that of setting it
		to[p] = n.To
		m = fit.NewModel(w.f.Changed(to), fit.Options{})
	}
	t := newTrack(m, &w.limits, p, n.Bounds[0], n.To, n.Bounds[1])
	if n.To >= n.Bounds[0] && n.To <= n.Bounds[1] {
		holds := t.around(passing(a))
		fr.Holds = &holds
	}
	if run, ok := t.passing(t.musts()); ok {
		fr.Passes = &run
	}
	return fr
}
