package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/internal/fault"
)

// guarded is the wizard as the library runs it. The library restores the
// terminal after a panic and prints what it was and every call on the way, which
// may hold a climber's name and measures; so a panic goes on with its place alone,
// and only once the calls that led to it are over.
type guarded struct{ wizard }

// A wizard is what Run runs.
type wizard interface {
	tea.Model
	finish() error // saves what is not on disk yet
}

func (g guarded) Init() tea.Cmd {
	var cmd tea.Cmd
	guard(func() { cmd = g.wizard.Init() })
	return guardCmd(cmd)
}

func (g guarded) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	var cmd tea.Cmd
	guard(func() {
		var m tea.Model
		m, cmd = g.wizard.Update(msg)
		g.wizard = m.(wizard)
	})
	return g, guardCmd(cmd)
}

func (g guarded) View() (s string) {
	guard(func() { s = g.wizard.View() })
	return s
}

func guardCmd(c tea.Cmd) tea.Cmd {
	if c == nil {
		return nil
	}
	return func() (msg tea.Msg) {
		guard(func() { msg, _ = eachCmd(c(), guardCmd) })
		return msg
	}
}

// guard runs f; where that panics, guard does, with the place of it.
func guard(f func()) {
	if place := fault.In(f); place != "" {
		panic("a fault of the program's own, at " + place) //nolint:forbidigo // goes on with a panic that there was
	}
}
