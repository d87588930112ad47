package sessions

import (
	"example.com/hangtape/rules"
)

// RulesFor is the limits that judge s: the defaults with what the school moved.
func (s *Session) RulesFor() rules.Limits { return rules.DefaultLimits().With(s.Limits) }

// Judge judges the session afresh. The error is of readings that cannot be true
// together.
func (s *Session) Judge() (*rules.Report, error) {
	f := s.Fit
	f.Started = s.Started
	return rules.Judge(s.ID, &f, s.RulesFor())
}

// inputFaults are the faults in an error of Judge.
func inputFaults(err error) []Fault { return nil }
