package flow

import (
	"fmt"
	"slices"
	"strings"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules/drill"
	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/number"
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
			return append([]Option{{Word: "back to the review", Act: ToReview}, d.noDrill()}, d.toRead()...)
		}
		word := "up now: start the clock"
		if d.Session.Drill != nil {
			word = "once more: up now, start the clock"
		}
		return append([]Option{{Word: word, Act: DrillUp}, d.noDrill()}, d.toRead()...)
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

// yesNo is where a note of a step is kept that is yes or no; nil of another one.
func yesNo(n drill.Note, x *sessions.DrillStep) *fit.Choice {
	switch n {
	case drill.KneeFree:
		return &x.KneeFree
	case drill.HandsReach:
		return &x.HandsReach
	case drill.CameBackUp:
		return &x.CameBackUp
	case drill.Drop, drill.GardaAt, drill.SagSeen:
	}
	return nil
}

// noteOf asks for what is noted of a step that was seen.
func noteOf(i int, st drill.Step, n drill.Note) Ask {
	step := func(d *Draft) *sessions.DrillStep { return d.seenIn(st.Name) }
	a := noteAsk(n, step)
	a.Key = "drill.steps." + st.Name + "." + a.Key
	asked := a.Title
	a.Title = st.Title + ": " + asked
	if !strings.HasPrefix(asked, "Garda") {
		a.Title = st.Title + ": " + strings.ToLower(asked[:1]) + asked[1:]
	}
	a.When = func(d *Draft) bool {
		return d.Session.Drill != nil && step(d).Held == fit.Yes && (d.cameTo(i) || a.Kind != Choice)
	}
	a.Aside = func(d *Draft) bool { return !d.cameTo(i) }
	if a.Kind != Choice {
		return a
	}
	value := func(d *Draft) *fit.Choice { return yesNo(n, step(d)) }
	a.Options = func(*Draft) []Option {
		return []Option{
			{Word: "yes", set: func(d *Draft) { *value(d) = fit.Yes }},
			{Word: "STOP: no", Act: DrillStop, set: func(d *Draft) { *value(d) = fit.No; d.stopDrill(st, asked+" No") }},
			{Word: "not looked at yet", Act: Stay},
		}
	}
	a.Mark = func(d *Draft) int { return map[fit.Choice]int{fit.Yes: 0, fit.No: 1, fit.Unanswered: 2}[*value(d)] }
	a.cell = func(d *Draft) any { return value(d) }
	return a
}

// noteAsk is the question for a note, its key without that of the step.
func noteAsk(n drill.Note, step func(*Draft) *sessions.DrillStep) Ask {
	const most = 2000 // mm
	amount := func(key, title, how string, least float64, at func(*Draft) *fit.Number) Ask {
		return Ask{Key: key, Kind: Amount, Title: title, How: how, Topic: "drill.steps." + key, Quantity: number.Height,
			Accepted: number.Range{Least: least, Most: most}, cell: func(d *Draft) any { return at(d) }}
	}
	choice := func(key, title, how string) Ask {
		return Ask{Key: key, Kind: Choice, Title: title, How: how, Topic: "drill.steps." + key}
	}
	switch n {
	case drill.Drop:
		return amount("drop_mm", "How far did the body sink?", "Against the hanging tape; 0 where it did not. Empty: not looked at.", 0,
			func(d *Draft) *fit.Number { return &step(d).Drop })
	case drill.GardaAt:
		return amount("garda_mm", "Garda hitch above the hip, tether loaded", "The top of the Garda hitch on the hanging tape, less the hip point. Empty: not read.", -most,
			func(d *Draft) *fit.Number { return &step(d).Garda })
	case drill.SagSeen:
		a := amount("sag_mm", "How far did the rope sag?", "From the rope drawn snug by hand until it carries all. Empty: not read.", 1, func(d *Draft) *fit.Number {
			if d.Session.Drill == nil {
				return &fit.Number{}
			}
			return &d.Session.Drill.Sag
		})
		a.Topic = "drill.sag_mm"
		return a
	case drill.KneeFree:
		return choice("knee_free", "Is the knee free?", "Let the leg push a little: it has to be able to.")
	case drill.HandsReach:
		return choice("hands_reach", "Do both hands reach?", "Touch both hitches and the Garda hitch.")
	case drill.CameBackUp:
	}
	return choice("came_back_up", "Did the climber come back up?", "Without help, until both hitches carry again.")
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
			return append([]string{fmt.Sprintf("Stopped: %s. %s", strings.ToLower(st.Title[:1])+st.Title[1:], st.Then.In(string(d.Session.Unit)))}, gettingDown()...)
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
			return append(out, d.toRead()...)
		},
		Mark: func(*Draft) int { return 1 },
	}
}
