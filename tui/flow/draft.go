package flow

import (
	"fmt"
	"slices"
	"strings"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules/advice"
	"example.com/hangtape/sessions"
)

// A Draft is the one owner of what has been accepted so far.
type Draft struct {
	Session  sessions.Session
	Followed *sessions.Session // that this one re-tunes or re-checks, or nil; never written to
	Hang     int               // index of the hang whose heights are asked for
	Change   int               // index of the change that is laid on again; the number of changes while none is
	Pending  *fit.Change       // a change whose new length is not told yet
	Down     bool              // the clock was just stopped: are they really on the ground?
	SignBy   string            // who signs, or says how a re-check came out
	SignNote string            // what is to stand beside the sign-off

	Advice    *advice.Answer        // what to change in this draft; nil until it is worked out
	ToSet     [fit.NumPieces]bool   // pieces to set before the next hang
	RopeAbove float64               // mm, that an answer counts on and nobody has agreed to yet; 0 for none
	Trial     map[fit.Piece]float64 // mm, lengths on trial; never written to
	OnTrial   fit.Piece             // the piece that is looked at

	carried   *sessions.Session // of a next student: what was known when it was begun; nil of any other
	newLength float64           // of Pending, mm; 0 until told
	judged    bool              // the rules could run
	short     bool              // a must is short of pass
	blocked   bool              // a must keeps everybody from signing
	drill     drilling
	tied      [fit.NumPieces]tiedCord // cord of pieces that were tied
	again     []fit.Reading           // to be taken three times afresh, in hang againIn or before it
	againIn   int
	wants     map[string]string // in a short fitting: the check that each reading may settle, by its key
	tried     map[string]int    // in a short fitting: how often a reading was asked for, by its key
}

// Hanging says whether somebody hangs, for readings or in the drill: the clock
// runs.
func (d *Draft) Hanging() bool { return d.hangRuns() || d.Drilling() }

// hangRuns says whether somebody hangs for readings.
func (d *Draft) hangRuns() bool {
	n := len(d.Session.Fit.Hangs)
	return n > 0 && d.Session.Fit.Hangs[n-1].Ended.IsZero()
}

// begin starts telling of a change of p.
func (d *Draft) begin(p fit.Piece) {
	d.Pending = &fit.Change{Piece: p, From: d.length(p), AfterHang: len(d.Session.Fit.Hangs)}
	d.Change = len(d.Session.Fit.Changes)
}

// length is what p measures now, in mm, as far as it was read or told; of the
// loop for a hitch.
func (d *Draft) length(p fit.Piece) fit.Number {
	for _, c := range slices.Backward(d.Session.Fit.Changes) {
		switch {
		case c.Piece != p:
		case len(c.Measured) > 0:
			return mean(c.Measured)
		default:
			return fit.Some(c.To)
		}
	}
	f := &d.Session.Fit
	switch p {
	case fit.PieceHitchLeft:
		return d.loop(fit.LeftLoopTop)
	case fit.PieceHitchRight:
		return d.loop(fit.RightLoopTop)
	}
	return mean(f.Laid[pieceReading[p]])
}

// pieceReading is what a piece's length is laid on as; a hitch's is not.
var pieceReading = map[fit.Piece]fit.Reading{fit.PieceMainBridge: fit.MainBridge, fit.PieceFootLoop: fit.FootLoop,
	fit.PieceTether: fit.Tether, fit.PieceBackupBridge: fit.BackupBridge}

func (d *Draft) loop(top fit.Reading) fit.Number {
	for _, h := range slices.Backward(d.Session.Fit.Hangs) {
		a, b := mean(h.Heights[top]), mean(h.Heights[fit.ConnectorTop])
		if a.Known && b.Known {
			return fit.Some(a.V - b.V)
		}
	}
	return fit.Number{}
}

func mean(v []float64) fit.Number {
	if len(v) == 0 {
		return fit.Number{}
	}
	return fit.Some(fit.Mean(v))
}

// settle draws what follows from an answer: a change whose length is told joins
// the list, bounds hold once both ends are told, a part of which something was
// told is there.
func (d *Draft) settle() {
	f := &d.Session.Fit
	if d.Pending != nil && d.newLength > 0 {
		c := *d.Pending
		c.To = d.newLength
		f.Changes = append(f.Changes, c)
		d.Pending, d.newLength, d.Change = nil, 0, len(f.Changes)-1
	}
	for p := range f.Kit.Pieces {
		info := &f.Kit.Pieces[p]
		info.Bounded = info.Bounds[0] > 0 && info.Bounds[1] > 0
	}
	f.Started = d.Session.Started
}

// Slot names the place of an answer in the session file: the key of a with the
// number of the hang or change in it. Unsent text is kept under it.
func (d *Draft) Slot(a Ask) string {
	if rest, ok := strings.CutPrefix(a.Key, "hangs."); ok {
		return fmt.Sprintf("hangs.%d.%s", d.Hang+1, rest)
	}
	if rest, ok := strings.CutPrefix(a.Key, "changes."); ok {
		change := d.Change
		if a.change != nil {
			change = a.change(d)
		}
		return fmt.Sprintf("changes.%d.%s", change+1, rest)
	}
	return a.Key
}

// clone is a copy of d that shares nothing with it that may be written to.
func (d Draft) clone() Draft {
	d.Session = *d.Session.Clone()
	if d.Pending != nil {
		p := *d.Pending
		d.Pending = &p
	}
	return d
}
