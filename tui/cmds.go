package tui

import (
	"errors"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/fit"
	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/flow"
)

// A saver sees that saves happen one after the other, the last one last.
type saver struct {
	editor *sessions.Editor
	busy   bool
	done   int // the flow's count of changes that is on disk
}

func (s saver) idle(changes int) bool { return !s.busy && s.done >= changes }

// savedMsg is for the saver: a save of that many changes has ended.
type savedMsg struct {
	changes int
	err     error
}

// save writes the draft, unless a save runs: then the next one does.
func (m *Model) save() tea.Cmd {
	if m.saver.editor == nil || m.saver.busy || m.saver.done >= m.flow.Saves {
		return nil
	}
	m.saver.busy = true
	s, editor, n := m.flow.Session, m.saver.editor, m.flow.Saves
	return func() tea.Msg { return savedMsg{n, editor.Save(&s)} }
}

// keep makes the last good copy while nobody waits for it.
func (m *Model) keep() tea.Cmd {
	editor := m.saver.editor
	return func() tea.Msg { editor.Keep(); return nil }
}

func (m *Model) savedAs(msg savedMsg) tea.Cmd {
	m.saver.busy = false
	cmd := m.savedOrNot(msg)
	return tea.Batch(cmd, m.release(inTurn))
}

func (m *Model) savedOrNot(msg savedMsg) tea.Cmd {
	var changed *sessions.ChangedError
	switch {
	case errors.As(msg.err, &changed):
		m.problem, m.leaving, m.gone, m.screen = msg.err.Error(), false, changed.Gone, onConflict
		return nil
	case msg.err != nil:
		m.problem = "not saved: " + withoutFile(msg.err)
		if m.leaving {
			m.leaving = false
			m.problem += " (Ctrl-C again leaves without)"
		}
		return nil
	}
	m.saver.done, m.problem = msg.changes, ""
	if m.leaving && m.saver.idle(m.flow.Saves) {
		return tea.Quit
	}
	if m.next && m.saver.idle(m.flow.Saves) {
		m.next = false
		return m.startNext(&m.flow.Session)
	}
	if m.saver.idle(m.flow.Saves) {
		return m.keep()
	}
	return m.save()
}

// withoutFile is an error without the name of the session's file, which fills the
// line and is known.
func withoutFile(err error) string {
	if file := (*sessions.FileError)(nil); errors.As(err, &file) {
		return (&sessions.FileError{Faults: file.Faults}).Error()
	}
	if locked := (*sessions.LockedError)(nil); errors.As(err, &locked) {
		return locked.Words()
	}
	return err.Error()
}

// openedMsg is for the root: a session is ours to edit.
type openedMsg struct {
	editor  *sessions.Editor
	session *sessions.Session
	earlier *sessions.Session // that it follows, or nil
	from    *sessions.Session // whose kit a new one takes over, or nil
	demo    bool
	cord    *fit.CordModel // from the pieces of cord that were tied
	err     error
	folder  []*sessions.Session // what else the folder holds

	readOnly string   // why it cannot be changed; there is no editor then
	damaged  *damaged // what was found in place of a session; nothing is opened then
}

// startFrom makes a new session that follows the one at path.
func (m *Model) startFrom(path string) tea.Cmd {
	store := m.opts.Store
	return func() tea.Msg {
		f, err := store.Load(path)
		if err != nil {
			return openedMsg{err: err}
		}
		return m.startNew(f.Session)()
	}
}

// startNew makes a new session; with an earlier one it follows that, or where
// that is a re-check the fitting that it checked: a re-check holds no lengths,
// and small changes would add up from one to the next.
func (m *Model) startNew(earlier *sessions.Session) tea.Cmd {
	store := m.opts.Store
	return func() tea.Msg {
		if earlier != nil && earlier.Purpose == sessions.ReCheck && earlier.Follows != "" {
			if f, err := store.LoadID(earlier.Follows); err == nil {
				earlier = f.Session
			}
		}
		editor, s, err := store.New()
		if err == nil && earlier != nil {
			flow.Follow(s, earlier)
		}
		return openedMsg{editor: editor, session: s, earlier: earlier, cord: learntCord(store), err: err}
	}
}

// resume opens the session at path, with the one that it follows beside it. One
// that another program edits is opened for reading; of one that is damaged the
// last good copy is offered.
func (m *Model) resume(path string) tea.Cmd {
	store := m.opts.Store
	open := m.goOn(path)
	return func() tea.Msg {
		if good := store.LastGood(path); good != nil {
			return openedMsg{damaged: &damaged{path, good, toResume}}
		}
		return open()
	}
}

// goOn is resume with the file as it is.
func (m *Model) goOn(path string) tea.Cmd {
	store := m.opts.Store
	return func() tea.Msg {
		editor, s, err := store.Edit(path)
		opened := openedMsg{editor: editor, session: s}
		if locked := (*sessions.LockedError)(nil); errors.As(err, &locked) {
			var f *sessions.File
			if f, err = store.Load(path); err == nil {
				s = f.Session
				opened = openedMsg{session: s, readOnly: locked.Words()}
			}
		}
		if err != nil {
			return openedMsg{err: err}
		}
		if s.Follows != "" {
			if f, err := store.LoadID(s.Follows); err == nil {
				opened.earlier = f.Session
			}
		}
		opened.cord = learntCord(store)
		return opened.withFolder(store)
	}
}

// learntCord is what the pieces of cord of the folder teach. A file of them that
// cannot be read teaches nothing, so that what is cut is cut long; hangtape cut
// says what is wrong with it.
func learntCord(store *sessions.Store) *fit.CordModel {
	pieces, err := store.Pieces()
	if err != nil {
		pieces = nil
	}
	return fit.LearnCord(sessions.Cords(pieces))
}

// openDemo opens the first demo climber, written into the demo's folder where
// it is not there yet.
func (m *Model) openDemo() tea.Cmd {
	store := m.opts.Demo
	return func() tea.Msg {
		path, err := demoFile(store.Dir())
		if err != nil {
			return openedMsg{err: err}
		}
		editor, s, err := store.Edit(path)
		return openedMsg{editor: editor, session: s, demo: true, cord: learntCord(store), err: err}
	}
}

// tickMsg is for the hanging clock: a second has gone by.
type tickMsg struct{}

func tick() tea.Cmd {
	return tea.Tick(time.Second, func(time.Time) tea.Msg { return tickMsg{} })
}
