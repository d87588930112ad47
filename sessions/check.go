package sessions

import (
	"fmt"

	"example.com/hangtape/rules"
)

// complete sets what follows from the rest, and what a file may leave out.
func complete(s *Session) {
	if s.Purpose == "" {
		s.Purpose = FirstFitting
	}
	if s.Unit == "" {
		s.Unit = MM
	}
	s.Fit.Started = s.Started
}

// checkSession is what cannot be between several keys of a session, but for the
// geometry.
func checkSession(s *Session) []Fault {
	faults := checkLimits(s.Limits)
	if s.Follows != "" && s.Follows == s.ID {
		faults = append(faults, Fault{Key: "session.follows", Found: "the session's own id", Accepted: "the id of an earlier session"})
	}
	for i, c := range s.Fit.Changes {
		if c.AfterHang > len(s.Fit.Hangs) {
			faults = append(faults, Fault{Key: fmt.Sprintf("changes.%d.after_hang", i+1), Found: fmt.Sprint(c.AfterHang),
				Accepted: "the number of a hang of this session", Hint: fmt.Sprintf("it has %d", len(s.Fit.Hangs))})
		}
	}
	first := map[string]int{}
	for i, k := range s.Fit.Kept {
		if n := first[k.Key]; n > 0 {
			faults = append(faults, Fault{Key: fmt.Sprintf("kept.%d.key", i+1), Found: fmt.Sprintf("%q, as is that of kept.%d", k.Key, n), Accepted: "each key once"})
		}
		first[k.Key] = i + 1
	}
	return faults
}

func checkSchool(s *School) []Fault { return checkLimits(s.Limits) }

// checkLimits refuses limits that leave nothing between them. Their bounds are
// the schema's.
func checkLimits(moved map[rules.Limit]float64) []Fault {
	var faults []Fault
	for _, f := range rules.DefaultLimits().With(moved).Faults() {
		l := f.Limit
		if _, there := moved[l]; !there && l == rules.LeastOver {
			l = rules.MostOver // the default is not to blame
		}
		faults = append(faults, Fault{Key: "limits." + l.String(), Found: decimal(moved[l]), Accepted: f.Text})
	}
	return faults
}
