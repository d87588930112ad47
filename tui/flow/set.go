package flow

import (
	"fmt"
	"slices"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/tui/number"
)

// set is what is done on the ground between an answer and the next hang: lengths
// set on the kit, laid on again where somebody will, and lengths read again.
func set() Step {
	s := Step{ID: "set", Title: "Before the next hang"}
	for p := range fit.NumPieces {
		s.Asks = append(s.Asks, cordOf(p))
	}
	s.Asks = append(s.Asks, Ask{
		Key: "set", Kind: Choice, Title: "Set these lengths on the kit. Are they set?", Topic: "changes",
		How:  "Somebody else looks over every knot and every slider before the climber leaves the ground again.",
		When: func(d *Draft) bool { return d.setting() },
		Tells: func(d *Draft) []string {
			for p := range fit.NumPieces {
				if d.ToSet[p] && d.reTied(p) {
					return rules.CordCautions()
				}
			}
			return nil
		},
		Options: func(*Draft) []Option {
			return []Option{{Word: "set: go on", Act: GoOn}, {Word: "no: leave the kit as it was", Act: ToReview, set: (*Draft).takeBack}}
		},
	})
	for p := range fit.NumPieces {
		s.Asks = append(append(s.Asks, laidOn(p)), tiedAnew(p)...)
	}
	s.Asks = append(s.Asks, ropeAbove())
	for r := range fit.NumReadings {
		if !r.IsHeight() && r != fit.Ahead {
			a := reading(r)
			a.When = func(d *Draft) bool { return slices.Contains(d.again, r) }
			s.Asks = append(s.Asks, a)
		}
	}
	for i := range s.Asks {
		s.Asks[i].When = both(s.Asks[i].When, func(d *Draft) bool { return !d.Hanging() })
	}
	return s
}

// cordOf asks for the cord of a piece that is to be tied anew, where it was not told:
// how much to cut follows from it. It is put right where the piece is told.
func cordOf(p fit.Piece) Ask {
	at := func(d *Draft) *fit.Number { return &d.Session.Fit.Kit.Pieces[p].Cord }
	a := amount("kit."+p.Key()+".cord_mm", rules.Upper(rules.PieceName(p))+": diameter of its cord", "How much to cut follows from it. Empty: not told.",
		number.Diameter, func(d *Draft) any { return at(d) })
	a.When = func(d *Draft) bool { return d.ToSet[p] && d.reTied(p) && !at(d).Known }
	return a
}

// laidOn asks for the length of a piece that was changed. It is passed over but
// where the piece is to be set now.
func laidOn(p fit.Piece) Ask {
	return Ask{Key: "changes.measured_mm", Kind: Reading, Title: rules.Upper(rules.PieceName(p)) + ", laid on again", Quantity: number.Laid, Topic: "changes",
		How:     "Set it, then lay the tape on, pulled snug. Empty: set and not measured, so that the length stays predicted.",
		Reading: fit.NumReadings,
		When:    func(d *Draft) bool { return d.lastChange(p) >= 0 },
		Aside:   func(d *Draft) bool { return !d.ToSet[p] },
		change:  func(d *Draft) int { return d.lastChange(p) },
		cell:    func(d *Draft) any { return &d.Session.Fit.Changes[d.lastChange(p)].Measured }}
}

// ropeAbove asks to keep to the rope above that an answer counts on.
func ropeAbove() Ask {
	return Ask{Key: "set.rope_above", Kind: Choice, Title: "Will the climber keep to that much rope above?", Topic: "rope.least_above_mm",
		How:  "It changes no piece, only practice: nobody goes up further than that.",
		When: func(d *Draft) bool { return d.RopeAbove > 0 },
		Options: func(*Draft) []Option {
			return []Option{
				{Word: "yes: it is the least rope above from now on", set: func(d *Draft) {
					d.Session.Fit.Rope.LeastAbove, d.RopeAbove = fit.Some(d.RopeAbove), 0
				}},
				{Word: "no: leave it as it is", Act: GoOn},
			}
		},
		Mark: func(*Draft) int { return 1 }}
}

// setting says whether lengths are to be set before the next hang.
func (d *Draft) setting() bool { return d.ToSet != [fit.NumPieces]bool{} }

// change notes that p is to be set to a length, in mm. A change of it that nobody
// has hung on or laid a tape on is replaced; back to where it was, it goes.
func (d *Draft) change(p fit.Piece, from, to float64) {
	f := &d.Session.Fit
	d.ToSet[p] = true
	if i := d.lastChange(p); i >= 0 && f.Changes[i].AfterHang == len(f.Hangs) && len(f.Changes[i].Measured) == 0 {
		if f.Changes[i].To = to; f.Changes[i].From == fit.Some(to) {
			d.drop(i)
		}
		return
	}
	c := fit.Change{Piece: p, To: to, AfterHang: len(f.Hangs)}
	if from == from { // known
		c.From = fit.Some(tenths(from))
	}
	f.Changes = append(f.Changes, c)
	d.Change = len(f.Changes)
}

// drop takes out change i.
func (d *Draft) drop(i int) {
	f := &d.Session.Fit
	d.ToSet[f.Changes[i].Piece] = false
	f.Changes = slices.Delete(f.Changes, i, i+1)
	d.Change = len(f.Changes)
}

// takeBack takes out what was to be set before the next hang.
func (d *Draft) takeBack() {
	f := &d.Session.Fit
	for i := len(f.Changes) - 1; i >= 0; i-- {
		if c := &f.Changes[i]; d.ToSet[c.Piece] && c.AfterHang == len(f.Hangs) {
			d.drop(i)
		}
	}
	d.ToSet, d.RopeAbove = [fit.NumPieces]bool{}, 0
}

// lastChange is the change that set p to its length, from 0; -1 where none did.
func (d *Draft) lastChange(p fit.Piece) int {
	last := -1
	for i, c := range d.Session.Fit.Changes {
		if c.Piece == p {
			last = i
		}
	}
	return last
}

// unset marks for setting what a resumed session has changed since its last hang
// and not laid on again.
func (d *Draft) unset() {
	for p := range fit.NumPieces {
		if i := d.lastChange(p); i >= 0 {
			c := &d.Session.Fit.Changes[i]
			d.ToSet[p] = c.AfterHang == len(d.Session.Fit.Hangs) && len(c.Measured) == 0 && !d.Hanging()
		}
	}
}

// setWords tells a change as something to do.
func setWords(c *fit.Change, how fit.How, show func(float64) string) string {
	words := "Set the " + rules.PieceName(c.Piece) + " to " + show(c.To)
	if c.From.Known {
		words += ", from " + show(c.From.V)
	}
	return fmt.Sprintf("%s (%s).", words, rules.HowWord(how))
}
