package tui

import (
	"fmt"
	"strconv"
	"strings"

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
	room := max(3, height-6) // for an entry of three lines and what stands under it
	for i, e := range m.list.list {
		if len(lines) >= room && len(m.list.list) > i+1 {
			lines = append(lines, fmt.Sprintf("and %d older ones", len(m.list.list)-i))
			break
		}
		when := fmt.Sprintf("%3d  %s  ", i+1, e.Started.Format("2006-01-02 15:04"))
		for j, l := range m.theme.wrap(clean(nameOr(e.Climber, "no name")+", "+e.why()), m.width-len(when)) {
			if j > 0 {
				when = strings.Repeat(" ", len(when))
			}
			lines = append(lines, when+l)
		}
	}
	return append(lines, "", "Number: "+m.list.typed+"_")
}
