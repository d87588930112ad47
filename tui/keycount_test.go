package tui

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/synctest"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/fit"
	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/flow/flowtest"
)

// once is s with each reading taken once.
func once(s *sessions.Session) *sessions.Session {
	s = s.Clone()
	for r := range fit.NumReadings {
		s.Fit.Laid[r] = s.Fit.Laid[r][:min(1, len(s.Fit.Laid[r]))]
		for h := range s.Fit.Hangs {
			s.Fit.Hangs[h].Heights[r] = s.Fit.Hangs[h].Heights[r][:min(1, len(s.Fit.Hangs[h].Heights[r]))]
		}
	}
	return s
}

// keys types want from where the wizard stands up to its review and counts.
func (d *desk) keys(want *sessions.Session) int {
	y := flowtest.New(want)
	n := 0
	for d.m().flow.Ask().Key != "review" {
		if n += d.answer(y); n > 1000 {
			d.t.Fatalf("stuck at %s", d.m().flow.Ask().Key)
		}
	}
	return n
}

// answer types one answer and counts its keys.
func (d *desk) answer(y *flowtest.Typist) int {
	text, option, isOption := y.Answer(&d.m().flow)
	if isOption {
		d.typed(fmt.Sprint(option + 1))
		return 1
	}
	text = strings.TrimSuffix(text, " mm") // that of the session need not be typed
	d.typed(text)
	d.press(tea.KeyEnter)
	return len(text) + 1
}

// TestFewKeys counts the key presses of a fitting whose people, tape and kit
// come from the file, and of a re-check, from the first screen to the review.
func TestFewKeys(t *testing.T) {
	want := once(flowtest.Examples(t, exampleDir)["2-one-must-fails.toml"])
	t.Run("first fitting", func(t *testing.T) {
		synctest.Test(t, func(t *testing.T) {
			have := want.Clone()
			have.Fit.Hangs = nil
			have.Fit.Mass, have.Fit.MassU = fit.Number{}, fit.Number{}
			for r := range fit.NumReadings {
				if table := r.Info().Table; table == "climber" || table == "rope" {
					have.Fit.Laid[r] = nil
				}
			}
			d := begin(t, have, "2")
			if n := d.keys(want) + 1; n > 220 {
				t.Errorf("%d keys, at most 220", n)
			}
			d.leave()
		})
	})
	t.Run("re-check", func(t *testing.T) {
		synctest.Test(t, func(t *testing.T) {
			again := want.Clone()
			again.Purpose = sessions.ReCheck
			d := begin(t, want, "3")
			d.press(tea.KeyEnter) // the latest one
			d.typed("3")          // a re-check
			if n := d.keys(again) + 3; n > 32 || len(d.m().flow.Session.Fit.Hangs) != 1 {
				t.Errorf("%d keys, at most 40", n)
			}
			d.leave()
		})
	})
}

// begin sits before a folder with one session in it and presses a key.
func begin(t *testing.T, have *sessions.Session, key string) *desk {
	t.Helper()
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, have.ID+".toml"), sessions.Encode(have), 0o600); err != nil {
		t.Fatal(err)
	}
	d := sitAt(t, dir, 80, 24)
	d.typed(key)
	return d
}
