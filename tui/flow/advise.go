package flow

import (
	"fmt"
	"slices"
	"strings"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/advice"
)

// Advised is that the advice on the present draft was worked out.
type Advised struct{ Answer *advice.Answer }

// Apply is to set pieces of the kit to other lengths, in mm, before the next hang.
type Apply struct {
	To        map[fit.Piece]float64
	RopeAbove float64 // the least rope above that goes with them; 0 where what is told will do
}

func (Advised) event() {}
func (Apply) event()   {}

// AdviceKey is the question where what to change is read and chosen.
const AdviceKey = "advice"

// whatToChange is the place where the advice is read and an answer chosen. It is
// reached from the review alone.
func whatToChange() Step {
	return Step{ID: "advice", Title: "What to change", Phase: Close, Asks: []Ask{{
		Key: AdviceKey, Kind: Choice, Title: "Which of these?", Topic: "advice",
		How:     "An answer is noted as changes to set on the kit before the next hang; it can be taken back there.",
		When:    func(d *Draft) bool { return d.short && !d.Hanging() },
		Aside:   func(*Draft) bool { return true },
		Options: answers,
		Mark:    func(d *Draft) int { return len(answers(d)) - 1 },
	}}}
}

// answers are the options that the advice on the draft comes to; the last one
// leads back.
func answers(d *Draft) []Option {
	var out []Option
	if a := d.Advice; a != nil {
		for _, o := range []struct {
			name string
			*advice.Outcome
		}{{"least change", &a.LeastChange}, {"best fit", &a.BestFit}} {
			if len(o.Changes) > 0 && (o.Outcome == &a.LeastChange || !advice.SameChanges(o.Changes, a.LeastChange.Changes)) {
				out = append(out, Option{Word: fmt.Sprintf("%s: work %d", o.name, o.Cost), do: func(s *State) { s.apply(told(o.Outcome)) }})
			}
		}
		if again := d.toReadAgain(); len(again) > 0 {
			out = append(out, Option{Word: "read again first, change nothing yet", do: func(s *State) { s.readAgain(again) }})
		}
		out = append(out, Option{Word: "what if: move a length by hand", do: (*State).toWhatIf})
	}
	return append(out, Option{Word: "back to the review", do: func(s *State) { s.move(s.placeOf("review")) }})
}

// told is what an answer says as something to apply.
func told(o *advice.Outcome) Apply {
	a := Apply{To: map[fit.Piece]float64{}}
	for _, c := range o.Changes {
		for p := range fit.NumPieces {
			if p.Key() == c.Piece {
				a.To[p] = c.To
			}
		}
		if c.Window == nil {
			a.RopeAbove = c.To
		}
	}
	return a
}

// toReadAgain are the keys of what the advice would have read again before
// anything is changed.
func (d *Draft) toReadAgain() []string {
	switch a := d.Advice; {
	case a == nil:
		return nil
	case a.Conflict != nil:
		return a.Conflict.Next
	case a.Sooner != nil:
		return a.Sooner.Readings
	}
	return nil
}

// Advise works out what to change in the draft; nil where its readings cannot be.
// It takes some hundredths of a second.
func (s *State) Advise() *advice.Answer {
	if s.Wrong != nil {
		return nil
	}
	f := s.Session.Fit
	return advice.Advise(s.Session.ID, &f, s.Session.RulesFor(), s.mark())
}

// Unadvised says whether the advice is asked for and not worked out yet.
func (s *State) Unadvised() bool { return s.Ask().Key == AdviceKey && s.Advice == nil }

// mark is the step that the people's tape sets a length to, in mm.
func (d *Draft) mark() float64 { return rules.MarkIn(string(d.Session.Unit)) }

func (s *State) toAdvice() { s.move(s.placeAside(AdviceKey)) }

// apply notes the lengths to set as changes after the last hang, and leads to
// where they are set on the kit.
func (s *State) apply(a Apply) {
	d := s.Draft.clone()
	if len(d.Session.Fit.Hangs) == 0 {
		s.Said = Said{Kind: Noted, Text: "Nobody has hung on this kit yet: set the lengths on it, lay the tape on, and tell them as the kit's; then hang."}
		return
	}
	w := s.WhatIf()
	for p := range fit.NumPieces {
		if to, ok := a.To[p]; ok {
			d.change(p, w.Piece(p).From, to)
		}
	}
	d.RopeAbove = a.RopeAbove
	d.Trial, d.again = nil, nil
	if s.commit(d) {
		s.move(s.placeOf("set"))
	}
}

// short says whether a must of the report is short of pass.
func short(r *rules.Report) bool {
	return r != nil && slices.ContainsFunc(r.Checks, func(c rules.Check) bool { return c.Kind == rules.Must && c.Verdict != rules.Pass })
}

// readAgain leads to readings that are to be taken again, those on the ground
// first.
func (s *State) readAgain(keys []string) {
	d := s.Draft.clone()
	d.again, d.againIn = nil, len(d.Session.Fit.Hangs)
	for _, key := range keys {
		for r := range fit.NumReadings {
			info := r.Info()
			if key == info.Table+"."+info.Key || r.IsHeight() && strings.HasPrefix(key, "hangs.") && strings.HasSuffix(key, "."+info.Key) {
				d.again = append(d.again, r)
			}
		}
	}
	names := make([]string, len(d.again))
	for i, r := range d.again {
		names[i] = r.String()
	}
	s.Draft = d
	s.move(s.placeOf("set"))
	s.Said = Said{Kind: Noted, Text: "To be read three times afresh: " + strings.Join(names, "; ")}
}
