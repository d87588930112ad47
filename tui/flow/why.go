package flow

import (
	"math"
	"slices"
	"strings"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// tenths rounds a length to what is written of one that was worked out.
func tenths(mm float64) float64 { return math.Round(mm*10) / 10 }

// staleIn are the heights that hang h reads again because of changes: none in the
// first one.
func (d *Draft) staleIn(h int) []fit.Stale {
	return slices.DeleteFunc(d.Session.Fit.Stale(h), func(s fit.Stale) bool { return !s.Reading.IsHeight() })
}

// wanted says whether the hang in hand is to read r again, because advice asked
// for it.
func (d *Draft) wanted(r fit.Reading) bool {
	return d.againIn == d.Hang && slices.Contains(d.again, r)
}

// brief says whether the hang in hand reads only what a change made stale or
// advice asked for.
func (d *Draft) brief() bool {
	return len(d.staleIn(d.Hang)) > 0 || d.againIn == d.Hang && len(d.again) > 0
}

// leavesOut says whether a brief hang passes over the reading r on the way: all
// that is neither stale nor asked for by advice. The hip is always read, since
// every height of a hang counts against it.
func (d *Draft) leavesOut(r fit.Reading) bool {
	return r != fit.Hip && !d.wanted(r) && !slices.ContainsFunc(d.staleIn(d.Hang), func(s fit.Stale) bool { return s.Reading == r })
}

// Why says why a question is asked again, or what is to be done before it is
// answered, a line each.
func (s *State) Why(a Ask) []string {
	d := &s.Draft
	show := func(mm float64) string { return rules.FormatLength(mm, string(s.Session.Unit)) }
	var out []string
	setTo := func(i int) {
		c := &d.Session.Fit.Changes[i]
		out = append(out, setWords(c, d.Session.Fit.Kit.Pieces[c.Piece].Change, show))
	}
	switch {
	case a.Key == "hang" && !d.Hanging():
		out = append(out, d.whatToRead()...)
	case a.Key == "sign_off.note":
		out = append(out, s.whyNote()...)
	case a.Key == "sign_off" && s.Session.Climber == "":
		out = append(out, "Nobody has told whose fitting this is: the card will bear no name. Tab, then the first step.")
	case a.Key == "set":
		for p := range fit.NumPieces {
			if i := d.lastChange(p); d.ToSet[p] && i >= 0 {
				setTo(i)
			}
		}
	case a.Key == "changes.to_mm" && d.Pending != nil:
		line := "Of the " + rules.PieceName(d.Pending.Piece)
		if from := d.Pending.From; from.Known {
			line += ", from " + show(from.V)
		}
		out = append(out, line+".")
	case a.change != nil:
		setTo(a.change(d))
	case a.Key == "changes.measured_mm" && d.Change < len(d.Session.Fit.Changes):
		setTo(d.Change)
	case a.Key == "set.rope_above":
		line := "Stay at least " + show(d.RopeAbove) + " below the union"
		if now := d.Session.Fit.Rope.LeastAbove; now.Known {
			line += ", not " + show(now.V)
		}
		out = append(out, line+".")
	case a.Kind == Reading && a.Reading < fit.NumReadings:
		out = append(out, d.whyAgain(a.Reading)...)
	}
	return out
}

// whatToRead says what the hang to come reads, where that is not all.
func (d *Draft) whatToRead() []string {
	next := *d
	next.Hang = len(d.Session.Fit.Hangs)
	if next.Hang == 0 || !next.brief() {
		return nil
	}
	var names []string
	for r := range fit.NumReadings {
		if (r.IsHeight() || r == fit.Ahead) && !next.leavesOut(r) {
			names = append(names, r.String())
		}
	}
	return []string{"It reads only: " + strings.Join(names, "; ") + ". All else is there to go to."}
}

func (d *Draft) whyAgain(r fit.Reading) []string {
	var out []string
	aloft := r.IsHeight() && d.Hang > 0
	if r == fit.Hip && aloft && d.brief() {
		out = append(out, "Every hang has its own hip: the heights of this one count against it.")
	}
	if aloft {
		for _, st := range d.staleIn(d.Hang) {
			if st.Reading == r {
				out = append(out, "Stale: "+changedWords(st.Pieces)+" since it was read.")
			}
		}
	}
	if (d.wanted(r) || !r.IsHeight() && slices.Contains(d.again, r)) && r != fit.Hip {
		out = append(out, "To be read three times afresh: it may settle what is short of pass.")
	}
	return out
}

// changedWords says of pieces that they were changed.
func changedWords(list []fit.Piece) string {
	names := make([]string, len(list))
	for i, p := range list {
		names[i] = "the " + rules.PieceName(p)
	}
	if len(names) == 1 {
		return names[0] + " was changed"
	}
	last := len(names) - 1
	return strings.Join(names[:last], ", ") + " and " + names[last] + " were changed"
}
