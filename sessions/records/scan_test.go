package records_test

import (
	"crypto/rand"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/records"
	"example.com/hangtape/sessions/sessionstest"
)

const example = "../../testdata/sessions/examples/2-one-must-fails.toml"

func noon() time.Time { return time.Date(2026, 4, 18, 12, 0, 0, 0, time.UTC) }

func newStore(t testing.TB) *sessions.Store {
	t.Helper()
	st, err := sessions.OpenStore(filepath.Join(t.TempDir(), "sessions"), noon, rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	return st
}

// put writes a session of the store: an example with what set changes.
func put(t testing.TB, st *sessions.Store, name string, set func(*sessions.Session)) *sessions.Session {
	t.Helper()
	f, err := sessions.ReadFile(example, nil)
	if err != nil {
		t.Fatal(err)
	}
	set(f.Session)
	write(t, st, name, string(sessions.Encode(f.Session)))
	return f.Session
}

func write(t testing.TB, st *sessions.Store, name, text string) {
	t.Helper()
	if err := os.WriteFile(filepath.Join(st.Dir(), name), []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
}

func scan(t testing.TB, st *sessions.Store) *records.List {
	t.Helper()
	l, err := records.Scan(st)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// names are the files of entries, without the folder.
func names(entries []*records.Entry) string {
	var all []string
	for _, e := range entries {
		all = append(all, strings.TrimSuffix(filepath.Base(e.Path), ".toml"))
	}
	return strings.Join(all, " ")
}

func TestScanListsTheNewestFirstAndBadFilesLast(t *testing.T) {
	st := newStore(t)
	put(t, st, "old.toml", func(s *sessions.Session) { s.Started = noon().AddDate(-1, 0, 0) })
	put(t, st, "renamed by hand.toml", func(s *sessions.Session) { s.ID = "01KPFXRYR03M4T5W6X7Y8Z9A0C"; s.Started = noon() })
	write(t, st, "a-newer.toml", "format = 2\nstrange = true\n")
	write(t, st, "half.toml", "format = 1\n[session]\nid = \"01K")
	write(t, st, ".hidden.toml", "x")
	write(t, st, "notes.txt", "x")
	l := scan(t, st)
	if got, want := names(l.Entries), "renamed by hand old a-newer half"; got != want || l.Bad != 2 || len(l.Sessions()) != 2 {
		t.Fatalf("got %s, %d bad; want %s", got, l.Bad, want)
	}
	if err := l.Entries[2].Err; !strings.Contains(err.Error(), "newer") {
		t.Errorf("a newer format: %v", err)
	}
}

// What an entry says of a session is what check says of it.
func TestEntriesJudgeAsReportsDo(t *testing.T) {
	st := newStore(t)
	paths, err := sessionstest.Write(st.Dir(), 40)
	if err != nil {
		t.Fatal(err)
	}
	differ := 0
	for _, e := range scan(t, st).Sessions() {
		f, err := st.Load(e.Path)
		if err != nil {
			t.Fatal(err)
		}
		r, err := f.Judge()
		if err != nil {
			t.Fatal(err)
		}
		if e.Outcome != r.Outcome {
			t.Errorf("%s: %s, check says %s", e.ID, e.Outcome, r.Outcome)
		}
		for _, c := range r.Checks {
			id, _ := rules.CheckNamed(c.Name)
			if e.Verdict(id) != c.Verdict {
				t.Errorf("%s: %s is %s, check says %s", e.ID, c.Name, e.Verdict(id), c.Verdict)
			}
		}
		if d := len(sessions.JudgedDifferently(f.Session, r)) > 0; d != e.Differs {
			t.Errorf("%s: differs %v, check says %v", e.ID, e.Differs, d)
		} else if d {
			differ++
		}
	}
	if len(paths) != 40 || differ == 0 {
		t.Errorf("%d sessions, %d judged differently", len(paths), differ)
	}
}

func TestReadingsThatCannotBeTrueTogetherAreASessionAllTheSame(t *testing.T) {
	st := newStore(t)
	put(t, st, "x.toml", func(s *sessions.Session) { s.Fit.Hangs[0].Heights[fit.Nose] = []float64{100} })
	l := scan(t, st)
	if e := l.Entries[0]; l.Bad != 0 || e.Outcome != "" || !strings.Contains(e.Impossible, "nose") || e.Climber == "" {
		t.Errorf("got %+v", e)
	}
}

func TestOneIDInSeveralFilesIsTold(t *testing.T) {
	st := newStore(t)
	put(t, st, "a.toml", func(*sessions.Session) {})
	put(t, st, "b.toml", func(*sessions.Session) {})
	put(t, st, "c.toml", func(s *sessions.Session) { s.ID = "01KPFXRYR03M4T5W6X7Y8Z9A0C"; s.Started = s.Started.Add(-time.Hour) })
	l := scan(t, st)
	if got := names(l.Entries[0].Same); got != "a b" || names(l.Entries[1].Same) != "a b" || l.Entries[2].Same != nil {
		t.Errorf("got %q", got)
	}
}

func TestTroubledPieces(t *testing.T) {
	st := newStore(t)
	put(t, st, "x.toml", func(s *sessions.Session) {
		h := &s.Fit.Hangs[0].Heights
		h[fit.LeftHitchTop] = []float64{2600}
		h[fit.RightLoopTop] = []float64{h[fit.RightLoopTop][0] + 20} // else short of a handhold
	})
	e := scan(t, st).Entries[0]
	if e.Verdict(rules.HitchTopReach) != rules.Fail || !e.Troubled(fit.PieceHitchLeft) || e.Troubled(fit.PieceHitchRight) {
		t.Errorf("hitch-top-reach is %s; left %v, right %v", e.Verdict(rules.HitchTopReach), e.Troubled(fit.PieceHitchLeft), e.Troubled(fit.PieceHitchRight))
	}
}

// A school that moves a limit sees which old sessions it concerns.
func TestLimitsOfTodayAreHeldAgainstOldSessions(t *testing.T) {
	st := newStore(t)
	put(t, st, "x.toml", func(*sessions.Session) {})
	e := scan(t, st).Entries[0]
	if e.Today != "" || e.Moved {
		t.Errorf("no limit was moved: today %q, moved %v", e.Today, e.Moved)
	}
	write(t, st, "school.toml", "format = 1\n[limits]\nleast-over = -35\n")
	l := scan(t, st)
	if e = l.Entries[0]; e.Outcome != rules.Fail || e.Today == rules.Fail || e.Today == "" || !e.Moved {
		t.Errorf("%s under its own limits, %q under those of today, moved %v", e.Outcome, e.Today, e.Moved)
	}
	q, err := records.ParseQuery("is:moved")
	if err != nil || len(l.Find(q)) != 1 {
		t.Errorf("not found: %v", err)
	}
}

func TestBadSchoolFileIsListed(t *testing.T) {
	st := newStore(t)
	write(t, st, "school.toml", "format = 1\nrecheck_days = 0\n")
	l := scan(t, st)
	if l.Bad != 1 || names(l.Entries) != "school" || l.School.RecheckDays != 180 {
		t.Errorf("got %+v", l)
	}
}
