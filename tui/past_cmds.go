package tui

import (
	"path/filepath"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/compare"
	"example.com/hangtape/sessions/history"
	"example.com/hangtape/sessions/pages"
	"example.com/hangtape/sessions/records"
)

// listedMsg is for the screen of past fittings: the folder in short.
type listedMsg struct {
	gen    int
	list   *records.List
	people []person
	err    error
}

// A person is a climber of the folder, and whether due.
type person struct {
	history.Person
	climber *records.Climber
}

func listPast(gen int, store *sessions.Store, now time.Time) tea.Cmd {
	return func() tea.Msg {
		list, err := records.Scan(store)
		if err != nil {
			return listedMsg{gen: gen, err: err}
		}
		list.Ready()
		told, climbers := history.People(list, now)
		people := make([]person, len(told))
		for i := range told {
			people[i] = person{told[i], &climbers[i]}
		}
		return listedMsg{gen, list, people, nil}
	}
}

// pageMsg is for the page that was asked for: how it is written, in the unit of
// its people, or why it cannot be.
type pageMsg struct {
	gen   int
	unit  sessions.Unit
	write func(pages.Look) []string
	err   error
}

// loadPast reads a session of the list, called by its file's name without the
// folder, which all of them share.
func (m *Model) loadPast() func(*records.Entry) (*sessions.File, error) {
	store, school := m.opts.Store, m.past.list.School
	return func(e *records.Entry) (*sessions.File, error) {
		f, err := store.LoadFor(e.Path, school)
		if err == nil {
			f.Name = filepath.Base(f.Name)
		}
		return f, err
	}
}

// readSession reads one session to be shown.
func (m *Model) readSession(gen int, e *records.Entry) tea.Cmd {
	load, now := m.loadPast(), m.now
	return func() tea.Msg {
		f, err := load(e)
		if err != nil {
			return pageMsg{gen: gen, err: err}
		}
		return pageMsg{gen: gen, unit: f.Session.Unit, write: func(l pages.Look) []string {
			lines, err := pages.Show(f, now, l)
			if err != nil {
				lines = append(lines, "", err.Error())
			}
			return lines
		}}
	}
}

// readPair reads two sessions to be held side by side.
func (m *Model) readPair(gen int, a, b *records.Entry) tea.Cmd {
	load := m.loadPast()
	return func() tea.Msg {
		x, err := load(a)
		if err != nil {
			return pageMsg{gen: gen, err: err}
		}
		y, err := load(b)
		if err != nil {
			return pageMsg{gen: gen, err: err}
		}
		c, err := compare.Of(x, y)
		return pageMsg{gen: gen, unit: x.Session.Unit, err: err, write: func(l pages.Look) []string { return pages.Compare(c, l) }}
	}
}

// readCords looks up the cords of all kits.
func (m *Model) readCords(gen int) tea.Cmd {
	list, now := m.past.list, m.now
	return func() tea.Msg {
		cords := list.Cords()
		return pageMsg{gen: gen, unit: sessions.MM, write: func(l pages.Look) []string { return pages.CordList(cords, now, l) }}
	}
}

// readHistory reads all sessions of a climber.
func (m *Model) readHistory(gen int, c *records.Climber) tea.Cmd {
	store, list, now := m.opts.Store, m.past.list, m.now
	return func() tea.Msg {
		h, errs := history.Load(store, list, c, now)
		return pageMsg{gen: gen, unit: h.Unit, write: func(l pages.Look) []string {
			lines := pages.History(h, l)
			for _, err := range errs {
				lines = append(lines, "", err.Error())
			}
			return lines
		}}
	}
}
