package tui

import (
	"errors"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/tui/flow"
)

// inSession says whether a session is open.
func (m *Model) inSession() bool { return m.flow.Steps != nil }

// opened starts the flow on a session.
func (m *Model) opened(msg openedMsg) tea.Cmd {
	if msg.damaged != nil {
		m.showDamaged(msg.damaged)
		return nil
	}
	if msg.err != nil {
		m.first.problem, m.problem = msg.err.Error(), msg.err.Error()
		return nil
	}
	first := !m.inSession()
	var err error
	if msg.editor == nil || msg.editor != m.saver.editor { // else it was read anew
		err = m.setAside()
	}
	m.saver, m.problem, m.next, m.folder = saver{editor: msg.editor}, "", false, msg.folder
	if err != nil {
		m.problem = err.Error()
	}
	m.flow = flow.Start(*msg.session, m.opts.config(msg))
	cmd := m.settle()
	if first {
		return tea.Batch(cmd, tick())
	}
	return cmd
}

// wantsDown says whether a key on a screen over a question, where no words are
// typed, is to get down now. Where nobody hangs it is not.
func (m *Model) wantsDown(msg tea.KeyMsg) bool {
	return keyOf(msg, false) == keyDown && m.inSession() && m.flow.Hanging()
}

// getDown leads from any screen to the order of getting down.
func (m *Model) getDown() tea.Cmd {
	m.screen = onAsk
	return m.do(flow.DownNow{Now: m.now})
}

// do hands an event to the flow and saves what it changed.
func (m *Model) do(e flow.Event) tea.Cmd {
	at, field := m.flow.At, m.flow.Edit
	next := m.flow.Do(e)
	if m.mustWait(e, next.Saves) {
		return nil
	}
	m.flow = next
	cmds := []tea.Cmd{m.save(), m.advise(), m.keepPiece()}
	switch {
	case m.flow.Next == flow.Students:
		cmds = append(cmds, m.toStudents())
	case m.flow.Next == flow.NextStudent && m.saver.idle(m.flow.Saves):
		return m.startNext(&m.flow.Session)
	case m.flow.Next == flow.NextStudent:
		m.next = true
		return tea.Batch(cmds...)
	}
	if m.flow.Left {
		return tea.Batch(append(cmds, m.leave())...)
	}
	_, typed := e.(flow.Typed)
	still := typed || m.flow.Ask().Key == flow.WhatIfKey // its keys need no field
	if !still || m.flow.At != at || m.flow.Edit != field {
		cmds = append(cmds, m.newForm())
	}
	if m.flow.At != at {
		m.scroll = 0
	}
	return tea.Batch(cmds...)
}

// leave ends the program once all is saved, or at the second time of asking.
func (m *Model) leave() tea.Cmd {
	if m.saver.idle(m.flow.Saves) || m.saver.editor == nil || m.problem != "" {
		return tea.Quit
	}
	m.leaving = true
	return m.save()
}

// finish writes what has not reached the disk when the program ended, and gives
// the session back.
func (m Model) finish() error {
	_ = m.release(inHaste)
	err := giveBack(m.seats)
	if m.saver.editor == nil {
		return err
	}
	if m.saver.done < m.flow.Saves {
		err = errors.Join(err, m.saver.editor.Save(&m.flow.Session))
	}
	return errors.Join(err, m.saver.editor.Close())
}
