package sessions

import (
	"maps"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// A School is a school's own defaults, kept as school.toml beside its sessions.
// A new session takes over its place, unit, tape and limits.
type School struct {
	Name         string
	Place        string
	Instructors  []string
	Unit         Unit
	RecheckDays  int     // after so many days a climber is due again and a kept length counts as estimated
	HangBreakMin float64 // suggest a break after so many minutes of hanging
	RequireDrill bool    // no sign-off without the drill, unless noted
	Tape         fit.Tape
	Limits       map[rules.Limit]float64 // only what the school has moved
}

// DefaultSchool is what holds where a school says nothing. The break after five
// minutes is judgement: one in five motionless head-up hangs shows faint signs
// within ten (HSE 2009).
func DefaultSchool() *School {
	return &School{
		Unit:         MM,
		RecheckDays:  180,
		HangBreakMin: 5,
		Tape:         fit.Tape{Class: fit.ClassII, Division: 1, Hook: true},
	}
}

// Begin is a session as it begins, with what the school has settled: neither an
// id nor a start.
func (s *School) Begin() *Session {
	begun := &Session{
		Purpose: FirstFitting,
		Place:   s.Place,
		Unit:    s.Unit,
		Limits:  maps.Clone(s.Limits),
	}
	if len(s.Instructors) == 1 {
		begun.Instructor = s.Instructors[0]
	}
	begun.Fit.Tape = s.Tape
	begun.Fit.RecheckDays = s.RecheckDays
	return begun
}
