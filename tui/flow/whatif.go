package flow

import (
	"fmt"
	"slices"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/advice"
	"example.com/hangtape/tui/number"
)

// The events of a trial. Nothing of the session changes by them.
type (
	// Try puts a piece on trial at a length, in mm.
	Try struct {
		Piece fit.Piece
		To    float64
	}
	// TryMarks moves a piece on trial by marks of the tape; below 0 is shorter.
	TryMarks struct {
		Piece fit.Piece
		Marks int
	}
	// TryPiece looks at a piece.
	TryPiece struct{ Piece fit.Piece }
	// TryBack takes a piece off trial.
	TryBack struct{ Piece fit.Piece }
	// EndTrial forgets what is on trial and leads back.
	EndTrial struct{}
)

func (Try) event()      {}
func (TryMarks) event() {}
func (TryPiece) event() {}
func (TryBack) event()  {}
func (EndTrial) event() {}

// WhatIfKey is the question where pieces are moved on trial.
const WhatIfKey = "what-if"

// whatIf is the place where lengths are moved by hand. It is reached from the
// review and the advice alone.
func whatIf() Step {
	s := Step{ID: "what-if", Title: "What if", Phase: Close, Asks: []Ask{
		{Key: WhatIfKey, Kind: Choice, Title: "Move which piece, on trial?", Topic: "what-if",
			How:     "Nothing is changed by it. All that is told of a moved piece is predicted.",
			Options: tries,
			Mark:    func(d *Draft) int { return len(tries(d)) - 1 }},
		{Key: "what-if.to", Kind: Amount, Title: "Its length, on trial", Topic: "what-if", Quantity: number.Laid,
			How:  "Finished, pulled snug; of the loop for a hitch. Empty: as it is.",
			note: func(s *State, v answer) { s.try(s.OnTrial, v.number) }},
	}}
	for i := range s.Asks {
		s.Asks[i].When = func(d *Draft) bool { return d.judged && !d.Hanging() }
		s.Asks[i].Aside = func(*Draft) bool { return true }
	}
	return s
}

// tries are the pieces to move, and the two ways out.
func tries(d *Draft) []Option {
	var out []Option
	for p := range fit.NumPieces {
		out = append(out, Option{Word: d.tryWord(p), do: func(s *State) { s.tryPiece(p) }})
	}
	if len(d.Trial) > 0 {
		out = append(out, Option{Word: "set these lengths on the kit", do: func(s *State) { s.apply(Apply{To: s.Trial}) }})
	}
	return append(out, Option{Word: "leave: nothing is changed", do: (*State).endTrial})
}

// tryWord is a piece with its length now and on trial.
func (d *Draft) tryWord(p fit.Piece) string {
	show := func(mm float64) string { return rules.FormatLength(mm, string(d.Session.Unit)) }
	word := rules.PieceName(p)
	if now := d.length(p); now.Known {
		word += ", " + show(now.V)
	}
	if to, ok := d.Trial[p]; ok {
		word += ", on trial " + show(to)
	}
	return word
}

// WhatIf are the lengths on trial, on the draft as it is; of use where the
// readings can be.
func (s *State) WhatIf() *advice.WhatIf {
	f := s.Session.Fit
	w := advice.NewWhatIf(&f, s.Session.RulesFor(), s.mark())
	for p, to := range s.Trial {
		_ = w.Set(p, to) // it was taken before
	}
	return w
}

func (s *State) toWhatIf() { s.move(s.placeAside(WhatIfKey)) }

// tryPiece asks for the length of p, or says why it cannot be moved.
func (s *State) tryPiece(p fit.Piece) {
	l := s.WhatIf().Piece(p)
	s.OnTrial = p
	if l.Held != "" {
		s.Said = Said{Kind: Noted, Text: fmt.Sprintf("the %s is held: %s", rules.PieceName(p), l.Held)}
		return
	}
	s.move(Place{Step: s.At.Step, Ask: 1, Hang: s.Hang})
}

// try puts p on trial and says which verdicts turn.
func (s *State) try(p fit.Piece, mm float64) {
	before := s.WhatIf()
	w := s.WhatIf()
	if err := w.Set(p, mm); err != nil {
		s.Said = Said{Kind: Refused, Text: s.outOfReach(w.Piece(p), mm)}
		return
	}
	s.Trial = w.Lengths()
	if s.Ask().Key != WhatIfKey {
		s.setText(s.field(), "")
		s.move(s.placeAside(WhatIfKey))
	}
	s.Said = Said{Kind: Noted, Text: s.turned(before.Frame(p), w.Frame(p))}
}

// tryMarks moves p by marks of the tape, as far as its bounds let it.
func (s *State) tryMarks(p fit.Piece, marks int) {
	w := s.WhatIf()
	w.Step(p, marks)
	s.OnTrial, s.Trial = p, w.Lengths()
}

// tryBack takes p off trial.
func (s *State) tryBack(p fit.Piece) {
	w := s.WhatIf()
	w.Reset(p)
	s.OnTrial, s.Trial = p, w.Lengths()
}

// Movable says whether any length may be changed.
func (s *State) Movable() bool {
	return slices.ContainsFunc(s.Session.Fit.Kit.Pieces[:], func(p fit.PieceInfo) bool { return p.Present && p.Change != fit.Fixed && p.Bounded })
}

// AsItIs are the checks of the draft by margin and guard alone, as a trial's are.
func (s *State) AsItIs() []rules.Check {
	f := s.Session.Fit
	return rules.Assess(&f, s.Session.RulesFor()).PlainChecks()
}

func (s *State) outOfReach(l advice.Length, mm float64) string {
	show := func(mm float64) string { return rules.FormatLength(mm, string(s.Session.Unit)) }
	name := "the " + rules.PieceName(l.Piece)
	if l.Held != "" {
		return name + " is held: " + l.Held
	}
	return fmt.Sprintf("%s at %s; accepted is %s to %s", name, show(mm), show(l.Bounds[0]), show(l.Bounds[1]))
}

// turned says which verdicts a frame turns, and the window of its piece.
func (s *State) turned(before, after advice.Frame) string {
	unit := string(s.Session.Unit)
	words := "PREDICTED, on trial: no verdict turns."
	turns := ""
	for i := range after.Checks {
		if a, b := &after.Checks[i], &before.Checks[i]; a.Verdict != b.Verdict {
			turns += fmt.Sprintf(" %s: %s, then %s.", a.Name, b.Brief(unit), a.Brief(unit))
		}
	}
	if turns != "" {
		words = "PREDICTED, on trial:" + turns
	}
	return words + " " + WindowWords(&after, unit)
}

// WindowWords says where the piece of a frame may be, with lengths in unit.
func WindowWords(f *advice.Frame, unit string) string {
	show := func(mm float64) string { return rules.FormatLength(mm, unit) }
	switch n := &f.Piece; {
	case n.Held != "":
		return "It is held: " + n.Held + "."
	case f.Passes == nil:
		return "No length of this piece alone lets every must that it moves pass."
	default:
		where := "within"
		if n.To < f.Passes[0] || n.To > f.Passes[1] {
			where = "outside"
		}
		return fmt.Sprintf("The musts that it moves pass from %s to %s: %s is %s.", show(f.Passes[0]), show(f.Passes[1]), show(n.To), where)
	}
}

func (s *State) endTrial() {
	s.Trial = nil
	s.move(s.placeOf("review"))
}
