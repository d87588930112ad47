package sessions

import (
	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/drill"
)

// DrillPlan is the ground drill for the session, whose readings must be able to
// be true together.
func (s *Session) DrillPlan() *drill.Plan {
	f, a := s.assessed()
	return drill.New(f, s.RulesFor(), a)
}

// DrillReview holds what was seen in the drill against the model; nil where there
// was none. The readings must be able to be true together.
func (s *Session) DrillReview() *drill.Review {
	if s.Drill == nil {
		return nil
	}
	_, a := s.assessed()
	seen := s.Drill.seen()
	seen.Stale = s.changedSince(s.Drill)
	return drill.Look(a, seen)
}

// changedSince says whether the kit was changed after the drill d: the hang after
// a change, in which it is seen, came after the drill or has not come yet. A drill
// without its times is taken at its word.
func (s *Session) changedSince(d *Drill) bool {
	at := d.Started
	if at.IsZero() {
		at = d.Done
	}
	if at.IsZero() {
		return false
	}
	for _, c := range s.Fit.Changes {
		if c.AfterHang >= len(s.Fit.Hangs) || s.Fit.Hangs[c.AfterHang].Started.After(at) {
			return true
		}
	}
	return false
}

func (s *Session) assessed() (*fit.Fitting, *rules.Assessment) {
	f := s.fitting()
	return f, rules.Assess(f, s.RulesFor())
}

func (d *Drill) seen() drill.Seen {
	seen := drill.Seen{Sag: d.Sag}
	for _, s := range d.Steps {
		seen.Steps = append(seen.Steps, drill.SeenStep(s))
	}
	return seen
}
