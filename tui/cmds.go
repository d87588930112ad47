package tui

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/sessions"
)

// A saver sees that saves happen one after the other, the last one last.
type saver struct {
	busy bool
	sent int // the flow's count of changes that is being written
	done int // and that is on disk
}

func (s saver) idle(changes int) bool { return !s.busy && s.done >= changes }

// savedMsg is for the saver: a save of that many changes has ended.
type savedMsg struct {
	changes int
	err     error
}

// save writes the draft, unless a save runs: then the next one does.
func (m *Model) save() tea.Cmd {
	if m.store == nil || m.saver.busy || m.saver.done >= m.flow.Saves {
		return nil
	}
	m.saver.busy, m.saver.sent = true, m.flow.Saves
	s, in, n := m.flow.Session, m.store, m.flow.Saves
	return func() tea.Msg { return savedMsg{n, in.Save(s)} }
}

func (m *Model) savedAs(msg savedMsg) tea.Cmd {
	m.saver.busy = false
	if msg.err != nil {
		m.problem, m.leaving = "not saved: "+msg.err.Error(), false
		return nil
	}
	m.saver.done, m.problem = msg.changes, ""
	if m.leaving && m.saver.idle(m.flow.Saves) {
		return tea.Quit
	}
	return m.save()
}

// purpose says what a list of sessions was looked up for.
type purpose int

const (
	forFirst  purpose = iota // what the first screen offers
	forResume                // which unfinished one to go on with
	forFollow                // which earlier one to start from
	forDemo                  // the demo climbers
)

// foundMsg is for whoever asked: the sessions of a folder.
type foundMsg struct {
	why  purpose
	list []sessions.Session
	err  error
}

func (m *Model) look(in Store, why purpose) tea.Cmd {
	return func() tea.Msg {
		list, err := in.List()
		return foundMsg{why, list, err}
	}
}

// tickMsg is for the hanging clock: a second has gone by.
type tickMsg struct{}

func tickAfterASecond() tea.Cmd {
	return tea.Tick(time.Second, func(time.Time) tea.Msg { return tickMsg{} })
}

func (m *Model) tick() tea.Cmd {
	if m.store == nil {
		return nil
	}
	return tickAfterASecond()
}
