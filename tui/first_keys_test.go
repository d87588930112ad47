package tui

import (
	"testing"
	"testing/synctest"

	tea "github.com/charmbracelet/bubbletea"
)

// What the first screen does not show does nothing there: a letter that is typed
// too early neither starts a session nor leaves.
func TestFirstScreenTakesOnlyTheKeysThatItShows(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := sit(t, 80, 24)
		before := d.model.View()
		d.typed("nrepqNREPQ v?")
		if d.quit || d.m().screen != onFirst || d.model.View() != before {
			t.Errorf("left: %v; %s", d.quit, d.model.View())
		}
		d.press(tea.KeyEsc)
		if !d.quit {
			t.Error("Esc did not leave")
		}
	})
}
