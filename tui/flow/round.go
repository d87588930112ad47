package flow

import (
	"slices"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// A Round is what was changed after one hang, and the verdicts before and after.
type Round struct {
	AfterHang     int // counted from 1
	Changes       []fit.Change
	Before, After *rules.Report
	Hung          bool        // somebody has hung since
	Stale         []fit.Stale // heights that it moved and nobody has read since
}

// rounds judges the session as it stood before each of its changes.
func (s *State) judgeRounds() []Round {
	if s.Wrong != nil || s.Report == nil {
		return nil
	}
	var list []Round
	changes := s.Session.Fit.Changes
	for h := 1; h <= len(s.Session.Fit.Hangs); h++ {
		after := func(c fit.Change) bool { return c.AfterHang == h }
		if !slices.ContainsFunc(changes, after) {
			continue
		}
		then := s.Session.Clone()
		then.SignOff = nil
		then.Fit.Hangs = then.Fit.Hangs[:h]
		then.Fit.Changes = slices.DeleteFunc(then.Fit.Changes, func(c fit.Change) bool { return c.AfterHang >= h })
		before, err := s.Judge(then)
		if err != nil {
			continue
		}
		if n := len(list); n > 0 {
			list[n-1].After = before
		}
		list = append(list, Round{
			AfterHang: h, Before: before, After: s.Report, Hung: len(s.Session.Fit.Hangs) > h,
			Changes: slices.DeleteFunc(slices.Clone(changes), func(c fit.Change) bool { return !after(c) }),
		})
	}
	if n := len(list); n > 0 {
		list[n-1].Stale = s.staleIn(len(s.Session.Fit.Hangs))
	}
	return list
}

// lookBack sees that what is told in the review of the changes is that of the
// draft.
func (s *State) lookBack() {
	if s.Ask().Key == "review" && s.roundsOf != s.Saves+1 {
		s.Rounds, s.roundsOf = s.judgeRounds(), s.Saves+1
	}
}
