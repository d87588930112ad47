package tui

import (
	"fmt"
	"io"
	"strings"
	"testing"
	"testing/synctest"
	"time"

	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/flow"
	"example.com/hangtape/tui/flow/flowtest"
)

// A walker answers a session of its own kind: what the typist answers, but for
// choices that it makes itself.
type walker struct {
	*flowtest.Typist
	picks map[string][]int // options by the key of the question, one for each time that it is asked
}

func (w *walker) answer(s *flow.State) (text string, option int, isOption bool) {
	if list := w.picks[s.Ask().Key]; len(list) > 0 {
		w.picks[s.Ask().Key] = list[1:]
		return "", list[0], true
	}
	return w.Answer(s)
}

// TestBothModes walks each kind of session through the full screen and line by
// line, with the same answers, and finds the same file.
func TestBothModes(t *testing.T) {
	for name, c := range map[string]struct {
		start string // on the first screen, and what is typed there line by line
		lines string
		picks map[string][]int
	}{
		"re-tune":        {"3\r", "earlier\n1\n", map[string][]int{"session.purpose": {1}, "new.climber": {1, 0}, "new.kit": {7, 7, 1, 0}, "new.keep": {0}}},
		"each asked for": {"3\r", "earlier\n1\n", map[string][]int{"session.purpose": {1}, "new.climber": {0}, "new.kit": {0}, "new.keep": {1}}},
		"re-check":       {"3\r", "earlier\n1\n", map[string][]int{"session.purpose": {2}, "review": {0}}},
		"short":          {"1", "new\n", map[string][]int{"session.purpose": {4}}},
	} {
		t.Run(name, func(t *testing.T) {
			earlier := example(t, "2-one-must-fails.toml")
			want := once(earlier)
			earlier.Started = earlier.Started.AddDate(0, -1, 0)
			at := want.Started.Add(time.Hour)
			picks := func() map[string][]int {
				out := map[string][]int{}
				for k, v := range c.picks {
					out[k] = v
				}
				return out
			}
			var full, lines *sessions.Session
			synctest.Test(t, func(t *testing.T) {
				dir := t.TempDir()
				writeSession(t, dir, earlier)
				d := sitAt(t, dir, 80, 24)
				d.clock = at
				d.burst(c.start)
				w := walker{flowtest.New(want), picks()}
				for n := 0; !d.quit; n++ {
					if n > 1000 {
						t.Fatalf("stuck at %s: %s", d.m().flow.Ask().Key, d.m().flow.Said.Text)
					}
					text, option, isOption := w.answer(&d.m().flow)
					if isOption {
						d.typed(fmt.Sprint(option + 1))
						continue
					}
					d.burst(text + "\r")
				}
				if err := d.m().finish(); err != nil {
					t.Fatal(err)
				}
				time.Sleep(time.Minute)
				full = latest(t, d.store)
			})
			dir := t.TempDir()
			writeSession(t, dir, earlier)
			now := func() time.Time { return at }
			store := openAt(t, dir, now)
			p := newPlain(Options{Store: store, Now: now, In: strings.NewReader(c.lines), Out: io.Discard})
			if !p.start() {
				t.Fatal("no session")
			}
			w := walker{flowtest.New(want), picks()}
			for n := 0; !p.flow.Left; n++ {
				if n > 1000 {
					t.Fatalf("stuck at %s: %s", p.flow.Ask().Key, p.flow.Said.Text)
				}
				text, option, isOption := w.answer(&p.flow)
				if isOption {
					text = fmt.Sprint(option + 1)
				}
				p.answer(text)
			}
			if err := p.editor.Close(); err != nil || p.unsaved != nil {
				t.Fatal(err, p.unsaved)
			}
			lines = latest(t, store)
			lines.ID = full.ID
			if f, l := string(sessions.Encode(full)), string(sessions.Encode(lines)); f != l || full.ID == earlier.ID || len(full.Fit.Hangs) != 1 {
				t.Errorf("full screen:\n%s\nline by line:\n%s", f, l)
			}
		})
	}
}
