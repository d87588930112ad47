package flow

import (
	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/number"
)

// Steps is the one table of steps, in the order that keeps the climber up for
// the shortest time: all that needs no hanging first, then the hip and the
// other seated heights, the thigh level, the tether taut. Screens, prompts,
// keys of resumed work and help follow from it; which readings there are
// follows from the table of readings in package fit.
func Steps() []Step {
	steps := []Step{people(), news(), tape(), rope(), kit()}
	steps = append(steps, pieces()...)
	steps = append(steps, body(), changed(), set(), up())
	for _, p := range []fit.Pose{fit.Seated, fit.ThighLevel, fit.TetherTaut} {
		steps = append(steps, hanging(p))
	}
	return append(steps, down(), hitchesTied(), review(), whatToChange(), whatIf(), groundDrill(), signOff(), reCheckEnd())
}

func people() Step {
	return Step{ID: "people", Title: "People and purpose", Asks: []Ask{
		purpose(),
		text("session.climber", "Climber", "The name that the session is kept and found under.", func(d *Draft) *string { return &d.Session.Climber }),
		text("session.instructor", "Instructor", "Who measures and decides.", func(d *Draft) *string { return &d.Session.Instructor }),
		text("session.place", "Place", "The tree or the site.", func(d *Draft) *string { return &d.Session.Place }),
		choice("session.unit", "Unit that you read and type in", "A number without a unit is taken in this one; others may be typed with theirs.",
			func(d *Draft) *sessions.Unit { return &d.Session.Unit },
			word[sessions.Unit]{"mm", sessions.MM}, word[sessions.Unit]{"cm", sessions.CM}, word[sessions.Unit]{"in", sessions.Inch}),
	}}
}

func purpose() Ask {
	a := choice("session.purpose", "Why does the climber hang today?", "It settles what is asked on the way; all else is there to go to.",
		func(d *Draft) *sessions.Purpose { return &d.Session.Purpose },
		word[sessions.Purpose]{"first fitting", sessions.FirstFitting},
		word[sessions.Purpose]{"re-tune: something of the kit is new", sessions.ReTune},
		word[sessions.Purpose]{"re-check: is it still right?", sessions.ReCheck},
		word[sessions.Purpose]{"review: no climber here", sessions.Review})
	options, mark := a.Options, a.Mark
	a.Options = func(d *Draft) []Option {
		var out []Option
		for _, o := range options(d) {
			out = append(out, atLength(o))
		}
		return append(out, shortFitting())
	}
	a.Mark = func(d *Draft) int {
		if d.Short() {
			return len(options(d))
		}
		return mark(d)
	}
	return a
}

func tape() Step {
	return Step{ID: "tape", Title: "Tape", Asks: []Ask{
		choice("tape.class", "Accuracy class of the tape", "",
			func(d *Draft) *fit.TapeClass { return &d.Session.Fit.Tape.Class },
			word[fit.TapeClass]{"I", fit.ClassI}, word[fit.TapeClass]{"II", fit.ClassII}, word[fit.TapeClass]{"III", fit.ClassIII}),
		amount("tape.division_mm", "Smallest division of the tape", "", number.Diameter,
			func(d *Draft) any { return &d.Session.Fit.Tape.Division }),
		choice("tape.hook", "Do laid lengths start from the end of the tape?", "",
			func(d *Draft) *bool { return &d.Session.Fit.Tape.Hook },
			word[bool]{"yes", true}, word[bool]{"no", false}),
	}}
}

func rope() Step {
	return Step{ID: "rope", Title: "Rope", Asks: []Ask{
		amount("rope.diameter_mm", "Diameter of the rope", "", number.Diameter,
			func(d *Draft) any { return &d.Session.Fit.Rope.Diameter }),
		amount("rope.elongation_percent", "Elongation of the rope, 50 kg to 150 kg", "", number.Percent,
			func(d *Draft) any { return &d.Session.Fit.Rope.Elongation }),
		amount("rope.least_above_mm", "Least rope above the climber", "", number.Laid,
			func(d *Draft) any { return &d.Session.Fit.Rope.LeastAbove }),
		amount("rope.drill_above_mm", "Rope above during the drill", "", number.Laid,
			func(d *Draft) any { return &d.Session.Fit.Rope.DrillAbove }),
	}}
}

func body() Step {
	s := Step{ID: "body", Title: "Body, on the ground", Asks: readings("climber")}
	told := amount("climber.stature_told_mm", "Stature, told", "", number.Laid,
		func(d *Draft) any { return &d.Session.Fit.StatureTold })
	told.When = func(d *Draft) bool { return len(d.Session.Fit.Laid[fit.Stature]) == 0 }
	s.Asks = append(s.Asks, told,
		choice("climber.sex", "Sex, as the body survey recorded it", "",
			func(d *Draft) *fit.Sex { return &d.Session.Fit.Sex },
			word[fit.Sex]{"unsaid", fit.Unsaid}, word[fit.Sex]{"m", fit.Male}, word[fit.Sex]{"f", fit.Female}),
		amount("climber.mass_kg", "Mass, with clothes and kit", "", number.Mass,
			func(d *Draft) any { return &d.Session.Fit.Mass }),
		amount("climber.mass_u_kg", "How sure is the mass, ±", "Empty means ± 2 kg.", number.Mass,
			func(d *Draft) any { return &d.Session.Fit.MassU }))
	return s
}

// changed asks what was set or tied to another length before the next hang.
func changed() Step {
	which := Ask{Key: "changes.piece", Kind: Choice, Title: "Was a length changed since the last hang?", Topic: "changes",
		How: "Each piece that was set or tied anew. Its new length counts as predicted until it is laid on again.",
		Options: func(*Draft) []Option {
			out := []Option{{Word: "nothing more", set: func(d *Draft) { d.Pending, d.Change = nil, len(d.Session.Fit.Changes) }}}
			for p := range fit.NumPieces {
				out = append(out, Option{Word: rules.PieceName(p), set: func(d *Draft) { d.begin(p) }})
			}
			return out
		}}
	to := amount("changes.to_mm", "Its length now", "Finished, pulled snug; of the loop for a hitch.", number.Laid, func(d *Draft) any { return &d.newLength })
	to.When = func(d *Draft) bool { return d.Pending != nil }
	laid := Ask{Key: "changes.measured_mm", Kind: Reading, Title: "Laid on again", Quantity: number.Laid, Topic: "changes",
		How: "Only where the tape was laid on after setting it. Empty: not measured.", Reading: fit.NumReadings,
		cell: func(d *Draft) any { return &d.Session.Fit.Changes[d.Change].Measured },
		When: func(d *Draft) bool { return d.Change < len(d.Session.Fit.Changes) }}
	more := Ask{Key: "changes.more", Kind: Choice, Title: "Another change?",
		When: laid.When,
		Options: func(*Draft) []Option {
			return []Option{{Word: "no", set: func(d *Draft) { d.Change = len(d.Session.Fit.Changes) }}, {Word: "yes", Act: Again, set: func(d *Draft) { d.Change = len(d.Session.Fit.Changes) }}}
		}}
	s := Step{ID: "changes", Title: "What was changed", Asks: []Ask{which, to, laid, more}}
	for i := range s.Asks {
		s.Asks[i].When = both(s.Asks[i].When, func(d *Draft) bool { return len(d.Session.Fit.Hangs) > 0 && !d.Hanging() })
	}
	return s
}

// hanging is the step of one pose: its heights in the order of the table of
// readings, and what else is read while the climber is up.
func hanging(p fit.Pose) Step {
	titles := map[fit.Pose]string{fit.Seated: "Seated on the main bridge", fit.ThighLevel: "Thigh level", fit.TetherTaut: "Tether taut"}
	s := Step{ID: map[fit.Pose]string{fit.Seated: "seated", fit.ThighLevel: "level", fit.TetherTaut: "taut"}[p], Title: titles[p], Phase: Aloft, Pose: p}
	for r := range fit.NumReadings {
		if r.IsHeight() && r.Info().Pose == p {
			s.Asks = append(s.Asks, reading(r))
		}
	}
	if p == fit.Seated {
		s.Asks = append(s.Asks, readings("rope")...)
	}
	for i, a := range s.Asks {
		s.Asks[i].When = both(a.When, func(d *Draft) bool {
			return d.Hang < len(d.Session.Fit.Hangs)
		})
	}
	return s
}

func both(a, b func(*Draft) bool) func(*Draft) bool {
	if a == nil {
		return b
	}
	return func(d *Draft) bool { return a(d) && b(d) }
}
