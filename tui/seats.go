package tui

import (
	"errors"
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/flow"
)

// A seat is a session that is open beside the one on the screen: its lock is
// ours, its answers are on disk, and what was typed is kept.
type seat struct {
	editor *sessions.Editor
	flow   flow.State
	saves  int // of its flow that are on disk
}

// kitOf puts the sessions that may share the kit of s into it: those that are
// open here as they are now, the others as the folder has them.
func kitOf(s *flow.State, seats []seat, folder []*sessions.Session) {
	s.Others = nil
	for i := range seats {
		s.Others = append(s.Others, &seats[i].flow.Session)
	}
	for _, f := range folder {
		open := slices.ContainsFunc(seats, func(o seat) bool { return o.flow.Session.ID == f.ID })
		if !open && f.ID != s.Session.ID {
			s.Others = append(s.Others, f)
		}
	}
}

// setAside keeps the session on the screen open beside the one to come; one that
// is finished or only read is given back.
func (m *Model) setAside() error {
	ed := m.saver.editor
	m.saver.editor = nil
	switch {
	case ed == nil:
		return nil
	case !m.flow.Session.Finished.IsZero() || m.flow.Demo || untouched(&m.flow):
		return ed.Close()
	}
	m.seats = append(slices.Clone(m.seats), seat{ed, m.flow, m.saver.done})
	return nil
}

// untouched says that nothing was answered or typed yet.
func untouched(s *flow.State) bool {
	return s.Saves == 0 && len(s.Texts) == 0 && s.Session.Climber == ""
}

// sitDown goes to a session that is open beside this one.
func (m *Model) sitDown(i int) tea.Cmd {
	to := m.seats[i]
	m.seats = slices.Delete(slices.Clone(m.seats), i, i+1)
	err := m.setAside()
	m.flow, m.saver, m.problem = to.flow, saver{editor: to.editor, done: to.saves}, ""
	if err != nil {
		m.problem = err.Error()
	}
	return m.settle()
}

// settle shows the question of the session that was come to.
func (m *Model) settle() tea.Cmd {
	kitOf(&m.flow, m.seats, m.folder)
	m.scroll = 0
	m.adviser.awaited, m.whatIf, m.looked = 0, whatIfScreen{}, ""
	m.screen = onAsk
	return m.newForm()
}

// giveBack closes the sessions that are open beside the one on the screen.
func giveBack(seats []seat) error {
	var all error
	for i := range seats {
		if s := &seats[i]; s.saves < s.flow.Saves {
			all = errors.Join(all, s.editor.Save(&s.flow.Session))
		}
		all = errors.Join(all, seats[i].editor.Close())
	}
	return all
}

// startNext makes the session of the next student on the kit of s.
func (m *Model) startNext(s *sessions.Session) tea.Cmd {
	store, e := m.opts.Store, s.Clone()
	return func() tea.Msg {
		editor, s, err := store.New()
		if err == nil {
			flow.Carry(s, e)
		}
		return openedMsg{editor: editor, session: s, from: e, err: err}.withFolder(store)
	}
}

// withFolder adds what the folder holds, for whether the kit has changed.
func (o openedMsg) withFolder(store *sessions.Store) openedMsg {
	if o.err == nil {
		o.folder = onTheKit(o.session, store)
	}
	return o
}

// carriedFrom is the session whose kit the opened one has taken over without
// following it; nil for none, or one that is gone.
func (o openedMsg) carriedFrom() *sessions.Session {
	if o.from != nil {
		return o.from
	}
	if o.session.Follows != "" || len(o.session.Fit.Kept) == 0 {
		return nil
	}
	for _, f := range o.folder {
		if f.ID == o.session.Fit.Kept[0].Session {
			return f
		}
	}
	return nil
}
