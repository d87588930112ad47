package flow

import (
	"example.com/hangtape/fit"
	"example.com/hangtape/rules/drill"
	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/number"
)

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
