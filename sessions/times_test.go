package sessions_test

import (
	"testing"
	"time"

	"example.com/hangtape/sessions"
)

func TestTimesThatHardlyCanBeAreTold(t *testing.T) {
	now := time.Date(2026, 5, 7, 12, 0, 0, 0, time.UTC)
	for _, c := range []struct {
		what              string
		started, finished time.Time
		want              string // the key that is told
	}{
		{"an hour of today", now.Add(-time.Hour), now, ""},
		{"not finished", now, time.Time{}, ""},
		{"by a clock that is a week ahead", now.Add(7 * 24 * time.Hour), time.Time{}, ""},
		{"in 2099", now.AddDate(73, 0, 0), time.Time{}, "session.started"},
		{"before it started", now, now.Add(-time.Second), "session.finished"},
	} {
		got := ""
		for _, f := range sessions.OddTimes(&sessions.Session{Started: c.started, Finished: c.finished}, now) {
			got += f.Inputs[0]
		}
		if got != c.want {
			t.Errorf("%s: told of %q, want %q", c.what, got, c.want)
		}
	}
}
