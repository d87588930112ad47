package tui

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/synctest"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/fit"
	"example.com/hangtape/sessions"
)

// TestReCheck reads five heights against an earlier session and ends with what
// came out and a name, on disk; where something is not read it does not end.
func TestReCheck(t *testing.T) {
	for name, c := range map[string]struct {
		connector, taut float64 // by how much they have moved
		leave           fit.Reading
		shows, notes    string // "" of notes: it did not end
	}{
		"unchanged":  {5, -5, fit.NumReadings, "All in all: UNCHANGED", "unchanged, says instructor 5"},
		"changed":    {-60, 0, fit.NumReadings, "CHANGED: main connector's bottom above the hip point", "changed (main connector's bottom above the hip point by -6"},
		"not read":   {0, 0, fit.GardaTaut, "not said yet: not read: Garda hitch, tether taut", ""},
		"no knee":    {0, 0, fit.KneeLevel, "not said yet: not read: knee, thigh level", ""},
		"both moved": {60, 60, fit.NumReadings, "Perhaps the main bridge is set otherwise", "; Garda hitch above the hip point, tether taut by"},
	} {
		t.Run(name, func(t *testing.T) {
			synctest.Test(t, func(t *testing.T) {
				then := once(example(t, "2-one-must-fails.toml"))
				then.Started = then.Started.AddDate(0, -1, 0)
				d := begin(t, then, "3")
				d.press(tea.KeyEnter)
				d.typed("3" + "1") // a re-check, and the climber is up
				keys := 4
				for _, r := range []fit.Reading{fit.Hip, fit.ConnectorBottom, fit.GardaLevel, fit.KneeLevel, fit.GardaTaut} {
					if got := d.m().flow.Ask().Reading; got != r {
						t.Fatalf("asked for %v, want %v", got, r)
					}
					v := fit.Mean(then.Fit.Hangs[0].Heights[r]) + map[fit.Reading]float64{fit.ConnectorBottom: c.connector, fit.GardaTaut: c.taut}[r]
					if r != c.leave {
						text := fmt.Sprintf("%.0f", v)
						d.typed(text)
						keys += len(text)
					}
					for d.m().flow.Ask().Reading == r { // twice where it is questioned
						d.press(tea.KeyEnter)
						keys++
					}
				}
				d.typed("1") // down
				if view := strings.Join(strings.Fields(d.model.View()), " "); !strings.Contains(view, c.shows) || strings.Contains(view, "UNKNOWN hitch") {
					t.Errorf("review without %q:\n%s", c.shows, d.model.View())
				}
				d.typed("1")
				d.press(tea.KeyEnter) // the name that is offered
				d.typed("1")
				if keys += 4; keys > 36 {
					t.Errorf("%d keys to the end, at most 40", keys)
				}
				if c.notes == "" {
					if d.quit || !strings.Contains(d.model.View(), "not ended") {
						t.Errorf("ended:\n%s", d.model.View())
					}
					d.leave()
					return
				}
				d.leave()
				s := latest(t, d.store)
				if s.Finished.IsZero() || s.SignOff != nil || !strings.HasPrefix(s.Notes, "Re-check of ") || !strings.Contains(s.Notes, c.notes) || s.Follows != then.ID {
					t.Errorf("finished %v, signed %v, notes %q", s.Finished, s.SignOff, s.Notes)
				}

				d2 := sitAt(t, d.store.Dir(), 120, 40)
				d2.typed("3")
				if view := d2.model.View(); !strings.Contains(view, "re-check: "+strings.Split(c.notes, " ")[0]) && !strings.Contains(view, "re-check: changed") {
					t.Errorf("how it came out is not shown:\n%s", view)
				}
				d2.press(tea.KeyEnter) // from a re-check one comes to the fitting that it checked
				if got := d2.m().flow.Session.Follows; got != then.ID {
					t.Errorf("follows %s, want %s", got, then.ID)
				}
				d2.leave()
			})
		})
	}
}

// TestReCheckLineByLine does the same in lines.
func TestReCheckLineByLine(t *testing.T) {
	dir := t.TempDir()
	then := once(example(t, "2-one-must-fails.toml"))
	if err := os.WriteFile(filepath.Join(dir, then.ID+".toml"), sessions.Encode(then), 0o600); err != nil {
		t.Fatal(err)
	}
	in := "earlier\n1\n3\n1\n"
	for _, r := range []fit.Reading{fit.Hip, fit.ConnectorBottom, fit.GardaLevel, fit.KneeLevel, fit.GardaTaut} {
		in += fmt.Sprintf("%.0f\n", fit.Mean(then.Fit.Hangs[0].Heights[r]))
	}
	in += "1\n1\nB. Instructor\n1\n"
	now := func() time.Time { return then.Started.AddDate(0, 3, 0) }
	var out bytes.Buffer
	store := openAt(t, dir, now)
	if err := RunPlain(Options{Store: store, Now: now, In: strings.NewReader(in), Out: &out}); err != nil {
		t.Fatal(err)
	}
	if s := latest(t, store); !strings.HasSuffix(s.Notes, ": unchanged, says B.Instructor.") || s.Finished.IsZero() {
		t.Errorf("notes %q, finished %v\n%s", s.Notes, s.Finished, out.String())
	}
	if strings.Contains(out.String(), "UNKNOWN") || !strings.Contains(out.String(), "\nAll in all: UNCHANGED.\n") {
		t.Errorf("said:\n%s", out.String())
	}
}

// latest is the newest session of the folder.
func latest(t *testing.T, store *sessions.Store) *sessions.Session {
	t.Helper()
	return filesIn(t, store)[0].Session
}
