package tui

import (
	"cmp"
	"slices"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/tui/flow"
	"example.com/hangtape/tui/sideview"
)

// sidePoses are the poses of the side view, in the order of a climb.
var sidePoses = [...]fit.Pose{fit.Seated, fit.ThighLevel, fit.TetherTaut, fit.Standing, fit.OnTether}

// A side is what the side view shows: a pose, where the tape goes, and the check
// whose margin is drawn.
type side struct {
	pose    fit.Pose
	reading fit.Reading  // of no landmarks where none is asked for
	check   *rules.Check // nil where none shows in the pose
}

// sideOf is what the side view shows with the question that is asked now: its
// pose, or that of the check that decides. A check that is looked at goes first.
func sideOf(s *flow.State, looked string) side {
	v := side{pose: s.Step().Pose}
	a := s.Ask()
	if a.Kind == flow.Reading && a.Reading < fit.NumReadings {
		v.reading = a.Reading
		v.pose = sideview.PoseFor(a.Reading)
	}
	v = v.in(v.pose, s, looked)
	if v.pose == fit.NoPose {
		v.pose = fit.Seated
		if span, _ := v.check.Span(); span.Pose != fit.NoPose {
			v.pose = span.Pose
		}
	}
	return v
}

// in is v in pose p with the check that decides there; none in a re-check, which
// gives no verdicts.
func (v side) in(p fit.Pose, s *flow.State, looked string) side {
	v.pose, v.check = p, nil
	if s.Report != nil && !s.ReChecking() {
		v.check = deciding(s.Report.Checks, p, looked)
	}
	return v
}

// deciding is the check in pose p, in any where it is NoPose, that stands most
// against going up: the worst verdict, the smallest margin for its guard.
func deciding(checks []rules.Check, p fit.Pose, looked string) *rules.Check {
	var in []rules.Check
	for _, c := range checks {
		span, _ := c.Span()
		if span.Pose == fit.NoPose || p != fit.NoPose && span.Pose != p || !c.Has.Known() {
			continue
		}
		if c.Name == looked {
			return &c
		}
		in = append(in, c)
	}
	if len(in) == 0 {
		return nil
	}
	c := slices.MinFunc(in, func(a, b rules.Check) int {
		return cmp.Or(a.Verdict.Rank()-b.Verdict.Rank(), count(a.Kind == rules.Should)-count(b.Kind == rules.Should), undrawn(a)-undrawn(b), cmp.Compare(ratio(a), ratio(b)))
	})
	return &c
}

// undrawn is 1 for a check whose margin no two landmarks show.
func undrawn(c rules.Check) int {
	_, ok := c.Span()
	return count(!ok)
}

func ratio(c rules.Check) float64 { return rules.Ratio(float64(c.Margin), float64(c.Guard)) }

// shapeOf is climber and kit from what the session has; false where its readings
// cannot be true together.
func shapeOf(s *flow.State, v side) (fit.Shape, bool) {
	if s.Report == nil || s.Wrong != nil {
		return fit.Shape{}, false
	}
	f := s.Session.Fit
	f.Started = s.Session.Started
	m := fit.NewModel(&f, fit.Options{})
	if from, to, ok := v.reading.Landmarks(); ok {
		return m.Shape(v.pose, from, to), true
	}
	return m.Shape(v.pose), true
}

// sideWords is the side view in words, a sentence each.
func sideWords(s *flow.State, v side) []string {
	sh, ok := shapeOf(s, v)
	if !ok {
		return nil
	}
	return sideview.Describe(&sh, sideview.Options{Unit: string(s.Session.Unit), Reading: v.reading, Check: v.check})
}
