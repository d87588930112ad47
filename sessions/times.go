package sessions

import (
	"time"

	"example.com/hangtape/rules"
)

// A session that starts so much later than the clock that judges it is told as
// odd: clocks of phones are off by less. Judgement.
const aheadOfClock = 31 * 24 * time.Hour

// OddTimes are the findings on times of s that can be written and hardly be
// true; no verdict changes. now is the time by the clock of whoever judges.
func OddTimes(s *Session, now time.Time) []rules.Finding {
	const day, minute = "2006-01-02", "2006-01-02 15:04"
	var odd []rules.Finding
	tell := func(key, text string) {
		odd = append(odd, rules.Finding{Name: "odd-reading", Text: text, Inputs: []string{key}})
	}
	if s.Started.Sub(now) > aheadOfClock {
		tell("session.started", "it started on "+s.Started.Format(day)+", and today is "+now.UTC().Format(day)+": which clock is off?")
	}
	if !s.Finished.IsZero() && s.Finished.Before(s.Started) {
		tell("session.finished", "it finished "+s.Finished.Format(minute)+" UTC, before it started, "+s.Started.Format(minute)+" UTC")
	}
	return odd
}
