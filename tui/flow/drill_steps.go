package flow

import (
	"fmt"
	"slices"
	"strings"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules/drill"
	"example.com/hangtape/sessions"
)

// groundDrill walks the steps of the drill: each is seen before the next is
// asked, and a stop leads to getting down.
func groundDrill() Step {
	s := Step{ID: DrillStep, Title: "Ground drill", Phase: Close, Asks: append([]Ask{drillStart()}, toRead()...)}
	for i, st := range drill.Steps() {
		s.Asks = append(s.Asks, seen(i, st))
		for _, n := range st.Notes {
			s.Asks = append(s.Asks, noteOf(i, st, n))
		}
	}
	note := text("drill.note", "Note to the drill", "What else was seen. Empty: nothing.", func(d *Draft) *string {
		if d.Session.Drill == nil {
			return new(string)
		}
		return &d.Session.Drill.Note
	})
	note.When = func(d *Draft) bool { return d.Session.Drill != nil && !d.Hanging() }
	note.Aside = func(d *Draft) bool { return !d.drill.just }
	s.Asks = append(s.Asks, drillDown(), note, drillResult())
	for i := range s.Asks {
		s.Asks[i].When = both(s.Asks[i].When, (*Draft).drillable)
	}
	return s
}

// drillStart is the gate before the drill.
func drillStart() Ask {
	options := func(d *Draft) []Option {
		switch {
		case d.Drilling():
			return []Option{{Word: "still up: go on", Act: StayUp}}
		case d.drill.plan == nil || len(d.drill.plan.Refused) > 0:
			return append([]Option{{Word: "back to the review", Act: ToReview}, d.noDrill()}, d.readOptions()...)
		}
		word := "up now: start the clock"
		if d.Session.Drill != nil {
			word = "once more: up now, start the clock"
		}
		return append([]Option{{Word: word, Act: DrillUp}, d.noDrill()}, d.readOptions()...)
	}
	return Ask{Key: "drill.start", Kind: Choice, Title: "The ground drill: is the climber up?", Topic: "drill",
		When:    func(d *Draft) bool { return !d.hangRuns() },
		Aside:   func(d *Draft) bool { return d.blocked || !d.judged || d.drill.passed() },
		Tells:   (*Draft).tellDrill,
		Options: options,
		Mark:    func(d *Draft) int { return count(!d.Drilling()) },
	}
}

// noDrill is the option that passes over the drill.
func (d *Draft) noDrill() Option {
	if d.wantsDrill() {
		return Option{Word: "no drill: to the sign-off, with a note", Act: GoOn}
	}
	return Option{Word: "no drill now: on to the sign-off", Act: GoOn}
}

// wantsDrill says whether the school requires a drill and none was seen whole.
func (d *Draft) wantsDrill() bool {
	r := d.drill.seen
	return d.drill.required && (r == nil || r.Stale || len(r.NotSeen) > 0)
}

// required says that the school does not do without the drill.
const required = "The school requires this drill: without it no sign-off is complete, unless the instructor notes why."

// tellDrill tells how high to hang and what comes first, or why it is not to be
// done yet; and what one that was done has shown.
func (d *Draft) tellDrill() []string {
	unit := string(d.Session.Unit)
	var out []string
	if d.wantsDrill() {
		out = append(out, required)
	}
	if d.drill.seen != nil && !d.Drilling() {
		out = append(out, "Done already. "+strings.Join(d.drill.seen.Words(unit), ". ")+".")
	}
	p := d.drill.plan
	if p == nil {
		return append(out, noPlan)
	}
	for _, r := range p.Refused {
		out = append(out, "Not yet: "+r.In(unit))
	}
	return append(append(out, p.HangAtWords(unit)), drill.Cautions()...)
}

// seen asks whether a step of the drill has shown what it should.
func seen(i int, st drill.Step) Ask {
	held := func(h fit.Choice, why string) func(*Draft) {
		return func(d *Draft) {
			if h != fit.Unanswered {
				d.noteHeld(st.Name, h)
			}
			if why != "" {
				d.stopDrill(st, why)
			}
		}
	}
	return Ask{Key: "drill.steps." + st.Name, Kind: Choice, Title: st.Title, Topic: "drill",
		When: func(d *Draft) bool { return d.cameTo(i) },
		Tells: func(d *Draft) []string {
			return tellStep(d.expected(i, st), string(d.Session.Unit))
		},
		Options: func(d *Draft) []Option {
			out := []Option{{Word: "seen: it held", set: held(fit.Yes, "")}}
			if st.Eases {
				out = append(out, Option{Word: "over " + drill.SlackIn(string(d.Session.Unit)) + " of slack: not eased", do: (*State).refuseEasing})
			}
			return append(out,
				Option{Word: "STOP: it did not hold", Act: DrillStop, set: held(fit.No, "it did not hold")},
				Option{Word: "STOP: something else", Act: DrillStop, set: held(fit.Unanswered, "something else")},
				Option{Word: "not yet", Act: Stay})
		},
		Mark: func(d *Draft) int {
			if d.seenIn(st.Name).Held == fit.Yes {
				return 0
			}
			return 3 + count(st.Eases)
		},
		cell: func(d *Draft) any { return &d.seenIn(st.Name).Held },
	}
}

// refuseEasing keeps a hitch from being eased with slack in the tether.
func (s *State) refuseEasing() {
	s.Said = Said{Kind: Refused, Text: "not eased: take up the slack first. Where it cannot be taken up, stop: the tether or the backup bridge is too long."}
}

// expected is step i with what the model expects of it.
func (d *Draft) expected(i int, st drill.Step) drill.Step {
	if d.drill.plan != nil {
		return d.drill.plan.Steps[i]
	}
	st.Expect = nil
	return st
}

func tellStep(s drill.Step, unit string) []string {
	var out []string
	if s.Eases {
		out = append(out, drill.TakeUpSlack().In(unit))
	}
	out = append(out, s.Do.In(unit), "STOP where "+s.Stop.In(unit)+".") // in a small window the rest may be further down
	for _, x := range s.See {
		out = append(out, "To be seen: "+x.In(unit)+".")
	}
	for _, e := range s.Expect {
		out = append(out, "Expected: "+e.In(unit)+".")
	}
	return out
}

// drillDown is where the drill ends, seen through or stopped.
func drillDown() Ask {
	return Ask{Key: "drill.down", Kind: Choice, Title: "Is the climber on the ground?", Topic: "hang",
		When: (*Draft).Drilling,
		Tells: func(d *Draft) []string {
			st, ok := d.stopped()
			if !ok {
				return []string{"The drill is through: come down."}
			}
			return append([]string{fmt.Sprintf("Stopped: %s. %s", st.Title, st.Then.In(string(d.Session.Unit)))}, gettingDown()...)
		},
		Options: func(d *Draft) []Option {
			out := []Option{{Word: "down: stop the clock", stops: true}, {Word: "still up: go on with the drill", Act: StayUp, set: unstop}}
			if _, ok := d.stopped(); !ok && d.drill.plan != nil {
				out = append(out, d.toRehearse())
			}
			return out
		},
		Mark: func(d *Draft) int { return 0 },
	}
}

// unstop takes back that the drill was stopped, so that it goes on where it was.
func unstop(d *Draft) {
	r := d.Session.Drill
	r.Note = remarked(r.Note, stoppedAt, "")
	no := func(c *fit.Choice) {
		if *c == fit.No {
			*c = fit.Unanswered
		}
	}
	for i := range r.Steps {
		for _, c := range []*fit.Choice{&r.Steps[i].KneeFree, &r.Steps[i].HandsReach, &r.Steps[i].CameBackUp} {
			no(c)
		}
	}
	r.Steps = slices.DeleteFunc(r.Steps, func(s sessions.DrillStep) bool { return s.Held == fit.No })
}

// drillResult tells what the drill has shown.
func drillResult() Ask {
	return Ask{Key: "drill.result", Kind: Choice, Title: "What the drill has shown", Topic: "drill-disagrees",
		When:  func(d *Draft) bool { return d.Session.Drill != nil && !d.Hanging() },
		Aside: func(d *Draft) bool { return !d.drill.just },
		Tells: func(d *Draft) []string {
			if d.drill.seen == nil {
				return nil
			}
			return d.drill.seen.Words(string(d.Session.Unit))
		},
		Options: func(d *Draft) []Option {
			out := []Option{{Word: "on to the sign-off", Act: GoOn}, {Word: "back to the review", Act: ToReview}, {Word: "once more", Act: DrillAgain}}
			return append(out, d.readOptions()...)
		},
		Mark: func(*Draft) int { return 1 },
	}
}
