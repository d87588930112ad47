package tui

import (
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/tui/flow"
)

// held are the keys that wait until the answer before them is on disk, so that at
// most one answer is lost with the program, however slow the disk is. What is
// typed meanwhile shows; what would be the next answer waits, and all after it.
type held struct {
	keys     []tea.KeyMsg
	pressed  tea.KeyMsg // that is being handled
	pressing bool
	hasty    bool // nothing waits
}

// How keys that waited are handled.
const (
	inTurn  = false
	inHaste = true
)

// waits says whether a key has to wait behind others.
func (m *Model) waits() bool { return len(m.held.keys) > 0 && m.screen != onConflict }

// behind lets a key wait behind others. To get down waits for nothing: then the
// others do not either.
func (m *Model) behind(msg tea.KeyMsg) tea.Cmd {
	if keyOf(msg, m.flow.Ask().Kind == flow.Text) == keyDown && m.flow.Hanging() {
		return tea.Batch(m.release(inHaste), m.key(msg))
	}
	m.held.keys = append(slices.Clone(m.held.keys), msg)
	return nil
}

// mustWait says that the key that is handled leads to a change that cannot be
// saved yet, and lets it wait.
func (m *Model) mustWait(e flow.Event, changes int) bool {
	_, down := e.(flow.DownNow)
	if down || !m.held.pressing || m.held.hasty || !m.saver.busy || changes <= m.flow.Saves {
		return false
	}
	m.held.keys = append(slices.Clone(m.held.keys), m.held.pressed)
	return true
}

// release handles the keys that waited, until one has to wait again.
func (m *Model) release(hasty bool) tea.Cmd {
	if m.screen == onConflict && !hasty {
		return nil
	}
	keys := m.held.keys
	m.held.keys = nil
	var cmds []tea.Cmd
	for i, k := range keys {
		m.held.hasty = hasty
		cmds = append(cmds, m.key(k))
		if len(m.held.keys) > 0 {
			m.held.keys = append(m.held.keys, keys[i+1:]...)
			break
		}
	}
	m.held.hasty = false
	return tea.Batch(cmds...)
}
