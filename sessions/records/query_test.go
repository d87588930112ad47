package records_test

import (
	"strings"
	"testing"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/records"
)

func TestFind(t *testing.T) {
	st := newStore(t)
	put(t, st, "ash.toml", func(s *sessions.Session) {
		s.Climber, s.Place, s.Started = "Ash Demo", "Old  Beech", time.Date(2026, 4, 18, 9, 0, 0, 0, time.UTC)
		s.ID, s.Finished, s.SignOff = "01KPFXRYR03M4T5W6X7Y8Z9A01", time.Time{}, nil
	})
	put(t, st, "birch.toml", func(s *sessions.Session) {
		s.Climber, s.Place, s.Started = "Birch Demo", "lime", time.Date(2026, 3, 2, 9, 0, 0, 0, time.UTC)
		s.ID, s.Purpose, s.KitLabel = "01KPFXRYR03M4T5W6X7Y8Z9A02", sessions.ReCheck, "school kit 12"
		s.Finished = s.Started.Add(time.Hour)
		s.Fit.Hangs[0].Heights[fit.LeftHitchTop] = []float64{2600}
		s.SignOff = &sessions.SignOff{By: "X", At: s.Started, Outcome: rules.Pass}
	})
	write(t, st, "broken.toml", "x")
	l := scan(t, st)
	for _, c := range []struct{ query, want string }{
		{"", "ash birch broken"},
		{"demo", "ash birch"},
		{"  DEMO   ash ", "ash"},
		{"climber:birch", "birch"},
		{"place:birch", ""},
		{`"old beech"`, "ash"},
		{`place:"old beech" climber:ash`, "ash"},
		{`"old`, "ash"},
		{"2026", "ash birch"},
		{"2026-03", "birch"},
		{"date:2026-04-18", "ash"},
		{"date:2026-03..2026-03", "birch"},
		{"date:2026-03..", "ash birch"},
		{"date:..2026-03-02", "birch"},
		{"fail", "ash birch"},
		{"verdict:fai", ""},
		{"verdict:pass", ""},
		{"check:hitch-top-reach", "birch"},
		{"hitch-top", "birch"},
		{"top-reach", ""},
		{"piece:hitch-left", "birch"},
		{`piece:"left hitch"`, "birch"},
		{"purpose:re-check", "birch"},
		{"kit:12", "birch"},
		{"is:signed", "birch"},
		{"unsigned", "ash"},
		{"is:unfinished", "ash"},
		{"is:differs", "birch"},
		{"is:bad", "broken"},
		{"broken", "broken"},
		{"9A02", "birch"},
		{"9:30", ""},
		{"climber:", "ash birch broken"}, // half typed
	} {
		q, err := records.ParseQuery(c.query)
		if err != nil {
			t.Errorf("%q: %v", c.query, err)
		} else if got := names(l.Find(q)); got != c.want {
			t.Errorf("%q found %q, want %q", c.query, got, c.want)
		}
	}
}

// A word that is being typed is no error yet, and every state can be asked for.
func TestBeginningsOfWordsAreTaken(t *testing.T) {
	for _, query := range []string{"verdict:", "verdict:p", "verdict:PASS", "is:un", "date:2", "date:2026-", "date:2026-1", "date:2026-04-3", "date:2026-04.", "date:2026-04..", "date:..2026-0", "date:2026-04-18..20", "purpose:re", "check:gar", "piece:hitch l", "piece:TETHER", "is:finished is:unsigned is:differs is:moved is:twice is:bad is:signed is:unfinished"} {
		if _, err := records.ParseQuery(query); err != nil {
			t.Errorf("%q: %v", query, err)
		}
	}
}

func TestUnknownKeyIsTold(t *testing.T) {
	for query, want := range map[string]string{
		"klimber:ash": "did you mean climber:?",
		"x y:z":       "y: is no key to search by",

		"verdict:passed": "accepted are pass, tight, fail, unknown (did you mean verdict:pass?)",
		"is:x":           "is:x finds nothing; accepted are finished",

		"date:2026-99":      "date:2026-99 finds nothing; accepted is a day, month or year, as 2026-04-18, 2026-04 or 2026, or a range from..to of them",
		"date:4/2026":       "date:4/2026 finds nothing",
		"date:2026-04-31":   "date:2026-04-31 finds nothing",
		"date:2026-04..may": "date:2026-04..may finds nothing",
		"purpose:party":     "purpose:party finds nothing; accepted are first-fitting, re-tune, re-check, review",
		"check:slip-forse":  "(did you mean check:slip-force?)",
		"piece:tedder":      "(did you mean piece:tether?)",
	} {
		if _, err := records.ParseQuery(query); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", query, err, want)
		}
	}
}
