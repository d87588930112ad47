package tui

import (
	"strings"
	"testing"
	"testing/synctest"
	"time"

	tea "github.com/charmbracelet/bubbletea"
)

// slowly types keys while the disk does not answer: what the program asks it to
// do is returned.
func (d *desk) slowly(keys string) (waiting []tea.Cmd) {
	for _, k := range keys {
		msg := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{k}}
		if k == '\r' {
			msg = tea.KeyMsg{Type: tea.KeyEnter}
		}
		var c tea.Cmd
		d.model, c = d.model.Update(msg)
		waiting = append(waiting, c)
	}
	return waiting
}

// TestNextAnswerWaitsForTheDisk types ahead while an answer is being saved: at
// most that one is not on disk yet, what is typed shows, and all comes in its
// order once the disk has answered.
func TestNextAnswerWaitsForTheDisk(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := sit(t, 80, 24)
		d.typed("1")
		cmds := d.slowly("1Ash\rBea\rtree\r2")
		s := &d.m().flow
		if s.Session.Climber != "" || s.Ask().Key != "session.climber" || s.Text() != "Ash" {
			t.Errorf("climber %q, at %s with %q: the answer after one that is not saved was taken", s.Session.Climber, s.Ask().Key, s.Text())
		}
		if view := d.model.View(); !strings.Contains(view, "> Ash") || !strings.Contains(view, "Saving the answer before") {
			t.Errorf("not shown:\n%s", view)
		}
		for _, c := range cmds {
			d.run(c)
		}
		got := d.only()
		if got.Climber != "Ash" || got.Instructor != "Bea" || got.Place != "tree" || got.Unit != "cm" {
			t.Errorf("kept %q %q %q %q", got.Climber, got.Instructor, got.Place, got.Unit)
		}
		d.leave()
	})
}

// TestWhatWaitedIsSavedAtTheEnd ends the program while keys wait.
func TestWhatWaitedIsSavedAtTheEnd(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := sit(t, 80, 24)
		d.typed("1")
		d.slowly("1Ash\rBea\r")
		if err := d.m().finish(); err != nil {
			t.Error(err)
		}
		if got := d.only(); got.Climber != "Ash" || got.Instructor != "Bea" {
			t.Errorf("kept %q %q", got.Climber, got.Instructor)
		}
		time.Sleep(time.Minute)
	})
}

// TestDownNowWaitsForNothing gets somebody down while the disk does not answer.
func TestDownNowWaitsForNothing(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := sit(t, 80, 24)
		d.press(tea.KeyEnter) // the demo
		d.hang()
		cmds := d.slowly("520\r1210\rd")
		s := &d.m().flow
		if s.Hanging() || !strings.Contains(d.model.View(), "on the ground") {
			t.Errorf("still hanging: %v\n%s", s.Hanging(), d.model.View())
		}
		for _, c := range cmds {
			d.run(c)
		}
		d.leave()
	})
}
