package tui

import (
	"bytes"
	"os"
	"strings"
	"testing"
	"testing/synctest"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/flow/flowtest"
)

// TestResumeAtTheOpenQuestion kills the wizard after a few answers: the next
// start asks what was open, whatever the school or an earlier session had told
// beforehand.
func TestResumeAtTheOpenQuestion(t *testing.T) {
	for name, c := range map[string]struct {
		keys string // from the first screen; \r is Enter
		at   string
	}{
		"nobody answered":        {"1", "session.purpose"},
		"a purpose":              {"12", "session.climber"},
		"a name":                 {"11Ash\r", "session.instructor"},
		"a place":                {"11Ash\r\rtree\r", "session.unit"},
		"another unit":           {"11Ash\r\rtree\r3", "tape.class"},
		"another class":          {"11Ash\r\rtree\r13", "tape.division_mm"},
		"a division":             {"11Ash\r\rtree\r122\r", "tape.hook"},
		"a piece that is there":  {"11Ash\r\r\r\r\r\r\r\r\r\r\r\r\r1", "kit.main_bridge.length_mm"},
		"a purpose of a re-tune": {"3\r3", "hang"},
		"what is new":            {"3\r2" + "21" + "31", "new.keep"},
		"what is kept":           {"3\r2" + "21" + "31" + "1", "kit.inspected_by"},
		"a short fitting":        {"15Ash\r", "session.instructor"},
	} {
		t.Run(name, func(t *testing.T) {
			synctest.Test(t, func(t *testing.T) {
				dir := t.TempDir()
				earlier := example(t, "1-good-kit.toml")
				earlier.Finished = earlier.Started.Add(time.Hour)
				earlier.Started = earlier.Started.AddDate(-1, 0, 0)
				writeSession(t, dir, earlier)
				d := sitAt(t, dir, 80, 24)
				d.burst(c.keys)
				open := d.m().flow.Slot(d.m().flow.Ask())
				d.kill()
				d2 := sitAt(t, dir, 80, 24)
				if c.keys == "1" { // no answer, no file
					d2.leave()
					return
				}
				d2.typed("2")
				if got := d2.m().flow.Slot(d2.m().flow.Ask()); got != c.at || open != c.at {
					t.Errorf("asked %s when it was killed, %s when it was resumed, want %s", open, got, c.at)
				}
				d2.leave()
			})
		})
	}
}

// TestHeldElsewhere opens a session that another program edits for reading:
// its review can be read, nothing is taken, and nothing is saved.
func TestHeldElsewhere(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		dir := t.TempDir()
		s := example(t, "2-one-must-fails.toml")
		path := writeSession(t, dir, s)
		other, _, err := openAt(t, dir, time.Now).Edit(path)
		if err != nil {
			t.Fatal(err)
		}
		defer other.Close()
		before, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		d := sitAt(t, dir, 80, 24)
		d.typed("2")
		view := d.model.View()
		for _, want := range []string{"READ ONLY", "edited by process", "All in all: FAIL", "And now?"} {
			if !strings.Contains(view, want) {
				t.Errorf("no %q in\n%s", want, view)
			}
		}
		d.goTo(d.place("climber.thigh_mm"))
		d.typed("430")
		d.press(tea.KeyEnter)
		if view := d.model.View(); !strings.Contains(view, "not taken") || !strings.Contains(view, "> 430") {
			t.Errorf("taken, or lost:\n%s", view)
		}
		d.leave()
		if after, err := os.ReadFile(path); err != nil || !bytes.Equal(before, after) {
			t.Errorf("the file was written: %v", err)
		}

		var out strings.Builder
		if err := RunPlain(Options{Store: d.store, Now: d.now, In: strings.NewReader("resume\n1\nverdicts\ngo 2\nquit\n"), Out: &out}); err != nil {
			t.Error(err)
		}
		if !strings.Contains(out.String(), "For reading only") || !strings.Contains(out.String(), "All in all: FAIL") {
			t.Errorf("line by line:\n%s", out.String())
		}
	})
}

// kill ends the wizard without a word, as a killed process does: its lock goes.
func (d *desk) kill() {
	d.t.Helper()
	if err := d.m().saver.editor.Close(); err != nil {
		d.t.Fatal(err)
	}
	time.Sleep(time.Minute) // fake: what blinks comes to an end
}

// burst types keys one after the other: \r is Enter, < takes a sign out, ^ is Up.
func (d *desk) burst(keys string) {
	for _, k := range keys {
		switch k {
		case '\r':
			d.press(tea.KeyEnter)
		case '<':
			d.press(tea.KeyBackspace)
		case '^':
			d.press(tea.KeyUp)
		default:
			d.typed(string(k))
		}
	}
}

func writeSession(t testing.TB, dir string, s *sessions.Session) string {
	t.Helper()
	path := dir + "/" + s.ID + ".toml"
	if err := os.WriteFile(path, sessions.Encode(s), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// example is one of the example sessions.
func example(t testing.TB, name string) *sessions.Session {
	t.Helper()
	s, ok := flowtest.Examples(t, exampleDir)[name]
	if !ok {
		t.Fatalf("no example %s", name)
	}
	return s
}
