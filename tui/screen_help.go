package tui

import (
	tea "github.com/charmbracelet/bubbletea"
)

// helpScreen is the help over a question.
type helpScreen struct {
	from   screenID
	scroll int
}

func (m *Model) helpKey(msg tea.KeyMsg) tea.Cmd {
	switch id := keyOf(msg, false); id {
	case keySkip, keyNewer:
		m.help.scroll++
	case keyPageUp, keyOlder:
		m.help.scroll = max(0, m.help.scroll-1)
	default:
		m.screen = m.help.from
	}
	return nil
}

func (m *Model) helpLines(width, height int) []string {
	a := m.flow.Ask()
	lines := []string{m.theme.title.Render(cut(a.Title, width))}
	lines = append(lines, m.proseLines(width)...)
	lines = append(lines, "", m.theme.title.Render("Keys"))
	for _, b := range bindings() {
		text := wrap(b.does, width-8)
		for i, l := range text {
			label := ""
			if i == 0 {
				label = b.label
			}
			lines = append(lines, m.theme.key.Render(pad(label, 8))+l)
		}
	}
	last := max(0, len(lines)-height)
	m.help.scroll = min(m.help.scroll, last)
	return lines[m.help.scroll:]
}
