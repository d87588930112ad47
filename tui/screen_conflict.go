package tui

import (
	tea "github.com/charmbracelet/bubbletea"
)

// conflictKey chooses between the draft and a file that another program has
// changed meanwhile.
func (m *Model) conflictKey(msg tea.KeyMsg) tea.Cmd {
	editor := m.saver.editor
	switch msg.String() {
	case "1":
		m.screen = onAsk
		s, n := m.flow.Session, m.flow.Saves
		m.saver.busy = true
		return func() tea.Msg {
			if err := editor.Overwrite(); err != nil {
				return savedMsg{n, err}
			}
			return savedMsg{n, editor.Save(&s)}
		}
	case "2":
		if m.gone {
			return nil
		}
		m.held = held{} // of answers that are given up
		demo, earlier := m.flow.Demo, m.flow.Earlier
		return func() tea.Msg {
			s, err := editor.Reload()
			return openedMsg{editor: editor, session: s, earlier: earlier, demo: demo, err: err}
		}
	}
	return nil
}

func (m *Model) conflictLines(width int) []string {
	if m.gone {
		lines := []string{m.theme.title.Render("The file is gone")}
		lines = append(lines, m.theme.wrap("Another program has removed this session's file since it was read. Nothing of yours is lost.", width)...)
		return append(lines, "", "1  write it again with what is here")
	}
	lines := []string{m.theme.title.Render("The file has changed")}
	lines = append(lines, m.theme.wrap("Another program has written to this session's file since it was read. Nothing of yours is lost and nothing was written over.", width)...)
	return append(lines, "", "1  keep what is here, over the file", "2  take what is in the file")
}
