package tui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/synctest"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/flow"
	"example.com/hangtape/tui/flow/flowtest"
)

// TestSignOff goes from the review to a signed file, or hears what stands against it.
func TestSignOff(t *testing.T) {
	good := flowtest.Examples(t, exampleDir)["1-good-kit.toml"]
	good.Purpose = sessions.FirstFitting
	failing := flowtest.Examples(t, exampleDir)["2-one-must-fails.toml"]
	predicted := good.Clone()
	predicted.Fit.Changes = []fit.Change{{Piece: fit.PieceTether, From: fit.Some(135), To: 134, AfterHang: 1}}
	for _, c := range []struct {
		name, note, by string
		s              *sessions.Session
		against        string // empty: it is signed
	}{
		{"all pass", "", "demo instructor", good, ""},
		{"nobody signs", "", "", good, "name to sign with"},
		{"a must fails", "never mind", "demo instructor", failing, "FAIL"},
		{"a must rests on a prediction", "never mind", "demo instructor", predicted, "predicted"},
	} {
		t.Run(c.name, func(t *testing.T) {
			synctest.Test(t, func(t *testing.T) {
				dir := t.TempDir()
				if err := os.WriteFile(filepath.Join(dir, c.s.ID+".toml"), sessions.Encode(c.s), 0o600); err != nil {
					t.Fatal(err)
				}
				d := sitAt(t, dir, 80, 24)
				d.typed("2")
				d.goTo(d.place("review"))
				d.typed("1")
				if d.m().flow.Step().ID == flow.DrillStep { // which no school asks for here
					d.press(tea.KeyEnter)
				}
				d.press(tea.KeyEnter)
				d.typed(c.note)
				d.press(tea.KeyEnter)
				d.typed(c.by)
				d.press(tea.KeyEnter)
				d.typed("1")
				view := d.model.View()
				d.leave()
				s := d.only()
				if c.against != "" {
					if s.SignOff != nil || !s.Finished.IsZero() || !strings.Contains(strings.Join(strings.Fields(view), " "), c.against) {
						t.Errorf("signed, or %q not said:\n%s", c.against, view)
					}
					return
				}
				if s.SignOff == nil || s.SignOff.By != c.by || s.SignOff.Outcome != rules.Pass || len(s.SignOff.Checks) != int(rules.NumChecks) || s.SignOff.Rules != s.RulesDigest() || s.Finished.IsZero() {
					t.Errorf("not signed: %+v\n%s", s.SignOff, view)
				}
			})
		})
	}
}
