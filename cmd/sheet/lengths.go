package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/advice"
)

// lays are from where to where the tape is laid on a piece, snug.
var lays = [fit.NumPieces]string{
	fit.PieceMainBridge:   "end to end, ring to ring",
	fit.PieceHitchLeft:    "connector top to the wraps",
	fit.PieceHitchRight:   "connector top to the wraps",
	fit.PieceFootLoop:     "boot sole to top of Garda hitch",
	fit.PieceTether:       "Garda hitch to backup bridge",
	fit.PieceBackupBridge: "end to end, ring to ring",
}

// lengths are the pieces of the kit as they are set.
func (s *Subject) lengths(a *rules.Assessment, l rules.Limits) []Length {
	f := &s.Session.Fit
	w := advice.NewWhatIf(f, l, rules.MarkIn(s.Unit))
	var all []Length
	for p := range fit.NumPieces {
		fr := w.Frame(p)
		n := Length{
			Letter: letters[p], Piece: rules.PieceName(p), Lay: lays[p],
			Set:    join(", ", rules.FormatLength(fr.Piece.From, s.Unit), s.worth(a.Model().PieceKey(p))),
			Window: window(fr, s.Unit), Cut: s.cut(p, fr.Piece.From),
		}
		if math.IsNaN(fr.Piece.From) {
			n.Set = "not known"
		}
		if r := fr.Passes; r != nil && !waits(fr.Checks) {
			lo, hi := advice.Inwards(*r, s.Unit)
			n.Off = fr.Piece.From < lo || fr.Piece.From > hi
			n.Passes = n.Off && s.Report.Outcome == rules.Pass
		}
		all = append(all, n)
	}
	return all
}

// window is how far a piece can move, or why it has no window.
func window(fr advice.Frame, unit string) string {
	switch {
	case fr.Piece.Held != "":
		return strings.TrimPrefix(strings.TrimPrefix(fr.Piece.Held, "it is "), "it has ")
	case waits(fr.Checks):
		return "not known"
	case fr.Passes == nil:
		return "none"
	}
	lo, hi := advice.Inwards(*fr.Passes, unit)
	if lo > hi {
		return "none"
	}
	return strings.TrimSuffix(rules.FormatLength(lo, unit), " "+unit) + " to " + rules.FormatLength(hi, unit)
}

// waits says whether a must that lengths move waits for a reading: then nobody
// knows where it passes.
func waits(checks []rules.Check) bool {
	return slices.ContainsFunc(checks, func(c rules.Check) bool {
		return c.Kind == rules.Must && c.Verdict == rules.Unknown && len(c.Missing) > 0 &&
			c.Group != rules.TwoLoadPaths.Info().Group && c.Name != rules.SlipForce.Info().Name
	})
}

// worth says of a length that it was not measured today; "" where it was.
func (s *Subject) worth(key string) string {
	for _, in := range s.Report.Inputs {
		if in.Name == key && in.Origin != "measured" {
			return in.Origin
		}
	}
	return ""
}

// cut is the cord to cut to tie p anew at a length, as the session tells it; ""
// where no such piece is tied.
func (s *Subject) cut(p fit.Piece, length float64) string {
	f := &s.Session.Fit
	if math.IsNaN(length) {
		return ""
	}
	c := fit.CordFor(f, p, length)
	switch {
	case c.Diameter == 0 && f.Kit.Pieces[p].Change == fit.ReTie:
		return "cord not told"
	case c.Check() != nil:
		return ""
	}
	return fmt.Sprintf("%s of %.4g mm", rules.FormatLength(s.Cord.Cut(c, rules.MarkIn(s.Unit)).Length, s.Unit), c.Diameter)
}
