package flow

import (
	"fmt"

	"example.com/hangtape/sessions"
)

// up is the gate before the readings for which somebody hangs.
func up() Step {
	return Step{ID: "up", Title: "Before leaving the ground", Asks: []Ask{{
		Key: "hang", Kind: Choice, Title: "Is the climber up?", Topic: "hang",
		How: "Low on the rope, a second person and a rescue plan at hand, the kit inspected. The clock runs from here: seated with the hip first, then thigh level, then tether taut.",
		When: func(d *Draft) bool {
			return d.Session.Purpose != sessions.Review
		},
		Options: func(d *Draft) []Option {
			n := len(d.Session.Fit.Hangs)
			if d.Hanging() {
				return []Option{{Word: "still up: go on", Act: StayUp}}
			}
			out := []Option{{Word: "up now: start the clock", Act: ClimbUp}, {Word: "not now: on to the review", Act: ToReview}}
			for i := range n {
				out = append(out, Option{Word: fmt.Sprintf("correct readings of hang %d", i+1), Act: ToHang, set: func(d *Draft) { d.Hang = i }})
			}
			return out
		},
		Mark: func(d *Draft) int {
			if d.Hanging() {
				return 0
			}
			return 1
		},
	}}}
}

// down is the gate after them, and where "down now" leads.
func down() Step {
	return Step{ID: "down", Title: "Getting down", Asks: []Ask{{
		Key: "down", Kind: Choice, Title: "Is the climber on the ground?", Topic: "hang",
		How:  "A hang without movement is dangerous within minutes.",
		When: func(d *Draft) bool { return d.Hanging() || d.Down },
		Options: func(d *Draft) []Option {
			if d.Hanging() {
				return []Option{{Word: "down: stop the clock", Act: Landed, stops: true}, {Word: "still up: more readings", Act: StayUp}}
			}
			to := Option{Word: "on the ground: to the review", Act: Landed}
			if d.drill.just {
				to = Option{Word: "on the ground: what the drill has shown", Act: ToDrilled}
			}
			return []Option{to, {Word: "still up: the clock goes on", Act: StayUp, set: resume}}
		},
	}}}
}

// review is the place where the verdicts are read. Enter leads back to a climber
// who hangs, else out.
func review() Step {
	options := func(d *Draft) []Option {
		if d.Hanging() {
			return []Option{{Word: "back to the climber", Act: StayUp}, {Word: "another student", Act: ToStudents}, {Word: "leave, all saved", Act: Leave}}
		}
		if d.ReChecking() {
			return []Option{{Word: "end the re-check", Act: GoOn}, {Word: "another hang", Act: Again}, {Word: "leave, all saved", Act: Leave}}
		}
		on, hang := "sign off", "another hang"
		if d.drillable() && d.Session.Drill == nil && d.judged && !d.blocked {
			on = "sign off, the ground drill first"
		}
		if len(d.Session.Fit.Hangs) == 0 {
			hang = "the first hang"
		}
		out := []Option{{Word: on, Act: GoOn}, {Word: hang, Act: Again}}
		if d.short {
			out = append(out, Option{Word: "what to change", do: (*State).toAdvice})
		}
		if d.judged {
			out = append(out, Option{Word: "what if: move a length by hand", do: (*State).toWhatIf})
		}
		return append(out, Option{Word: "another student", Act: ToStudents}, Option{Word: "leave, all saved", Act: Leave})
	}
	return Step{ID: "review", Title: "Review", Phase: Close, Asks: []Ask{{
		Key: "review", Kind: Choice, Title: "And now?", Topic: "verdict", Options: options,
		Mark: func(d *Draft) int {
			if d.Hanging() {
				return 0
			}
			return len(options(d)) - 1
		},
	}}}
}

// signOff is the last step: who answers for the fitting.
func signOff() Step {
	s := Step{ID: "sign-off", Title: "Sign-off", Phase: Close, Asks: []Ask{
		text("session.notes", "Notes", "Anything that the next reader should know. Empty: none.", func(d *Draft) *string { return &d.Session.Notes }),
		text("sign_off.note", "Note to the sign-off", "One note for all that is signed although it is not as it should be.", func(d *Draft) *string { return &d.SignNote }),
		text("sign_off.by", "Signed by", "The name of who answers for this fitting.", func(d *Draft) *string { return &d.SignBy }),
		{Key: "sign_off", Kind: Choice, Title: "Sign?", Topic: "sign-off",
			Options: func(*Draft) []Option {
				return []Option{{Word: "sign", Act: Sign}, {Word: "sign, then the next student on this kit", Act: SignThenNext}, {Word: "not now: leave, all saved", Act: Leave}}
			},
			Mark: func(*Draft) int { return 2 }},
	}}
	for i := range s.Asks {
		notes := s.Asks[i].Key == "session.notes"
		s.Asks[i].When = func(d *Draft) bool { return !d.Hanging() && (notes || !d.ReChecking()) }
	}
	return s
}
