package tui

import (
	"fmt"
	"strconv"

	tea "github.com/charmbracelet/bubbletea"
)

// listScreen lets one of several sessions be chosen by its number.
type listScreen struct {
	title string
	list  []found
	typed string
	then  func(*Model, found) tea.Cmd
}

func (m *Model) choose(title string, list []found, then func(*Model, found) tea.Cmd) {
	if len(list) == 0 {
		m.first.problem = "there is none yet"
		return
	}
	m.list = listScreen{title: title, list: list, then: then}
	m.screen = onList
}

func (m *Model) listKey(msg tea.KeyMsg) tea.Cmd {
	switch name := msg.String(); {
	case name == "esc":
		m.screen = onFirst
	case name == "backspace" && m.list.typed != "":
		m.list.typed = m.list.typed[:len(m.list.typed)-1]
	case len(name) == 1 && name[0] >= '0' && name[0] <= '9' && len(m.list.typed) < 4:
		m.list.typed += name
	case name == "enter":
		n := 1
		if m.list.typed != "" {
			n, _ = strconv.Atoi(m.list.typed)
		}
		m.list.typed = ""
		if n >= 1 && n <= len(m.list.list) {
			return m.list.then(m, m.list.list[n-1])
		}
	}
	return nil
}

func (m *Model) listLines(height int) []string {
	lines := []string{m.theme.title.Render(m.list.title), ""}
	room := max(1, height-4)
	for i, e := range m.list.list {
		if i == room-1 && len(m.list.list) > room {
			lines = append(lines, fmt.Sprintf("and %d older ones", len(m.list.list)-i))
			break
		}
		lines = append(lines, fmt.Sprintf("%3d  %s  %s, %s", i+1, e.Started.Format("2006-01-02 15:04"), nameOr(e.Climber, "no name"), e.why()))
	}
	return append(lines, "", "Number: "+m.list.typed+"_")
}
