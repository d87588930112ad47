package tui

import (
	"fmt"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/tui/flow"
)

// mostStudents is how many unfinished sessions of the folder are offered beside
// those that are open: with the next student, one digit chooses each.
const mostStudents = 8

// studentsScreen is the unfinished sessions of the folder that are not open.
type studentsScreen []found

// toStudents shows who else is there, once all is on disk.
func (m *Model) toStudents() tea.Cmd {
	if !m.saver.idle(m.flow.Saves) && m.saver.editor != nil {
		m.problem = "not all is saved yet: once more in a moment"
		return nil
	}
	m.screen, m.students, m.scroll = onStudents, nil, 0
	return m.look(forStudents)
}

// foundStudents takes the unfinished sessions that are not open here.
func (m *Model) foundStudents(list []found) {
	m.students = nil
	for _, e := range list {
		if len(m.seats)+len(m.students) < mostStudents && !m.isOpen(e.ID) {
			m.students = append(m.students, e)
		}
	}
}

func (m *Model) isOpen(id string) bool {
	for i := range m.seats {
		if m.seats[i].flow.Session.ID == id {
			return true
		}
	}
	return m.flow.Session.ID == id
}

func (m *Model) studentsKey(msg tea.KeyMsg) tea.Cmd {
	if id := keyOf(msg, false); id == keyBack || id == keyStudents {
		m.screen = onAsk
		return nil
	}
	if m.wantsDown(msg) {
		return m.getDown()
	}
	name := msg.String()
	if len(name) != 1 || name[0] < '1' || name[0] > '9' {
		return nil
	}
	n := int(name[0] - '1')
	switch {
	case n == 0 && m.flow.Demo: // its kit is invented
		return m.startNew(nil)
	case n == 0:
		return m.startNext(&m.flow.Session)
	case n-1 < len(m.seats):
		return m.sitDown(n - 1)
	case n-1-len(m.seats) < len(m.students):
		return m.resume(m.students[n-1-len(m.seats)].Path)
	}
	return nil
}

func (m *Model) studentsLines(width int) []string {
	t := m.theme
	lines := []string{t.title.Render("Students"), ""}
	next := "next student: same tape, rope and kit"
	if m.flow.Demo {
		next = "next student: a new fitting"
	}
	lines = append(lines, t.key.Render("1")+"  "+next)
	for i := range m.seats {
		s := &m.seats[i].flow
		line := fmt.Sprintf("%s, open at: %s", nameOr(s.Session.Climber, "no name yet"), s.Ask().Title)
		if d, ok := hangingFor(s, m.now); ok {
			line = fmt.Sprintf("%s HANGS, %s", nameOr(s.Session.Climber, "no name yet"), clockText(d))
		}
		lines = append(lines, m.numbered(i+2, line, width)...)
	}
	for i, e := range m.students {
		lines = append(lines, m.numbered(i+2+len(m.seats), fmt.Sprintf("%s, begun %s", nameOr(e.Climber, "no name"), minuteOf(e.Started)), width)...)
	}
	lines = append(lines, "")
	for _, l := range m.flow.KitSince() {
		lines = append(lines, m.theme.wrap(clean(l), width)...)
	}
	return append(lines, m.theme.wrap("The session that you leave stays open, with all that was typed. The kit's lengths count for the next student as kept.", width)...)
}

// numbered is a line that a digit chooses, whole.
func (m *Model) numbered(n int, line string, width int) []string {
	lines := m.theme.wrap(clean(line), width-3)
	for i := range lines {
		if i == 0 {
			lines[i] = m.theme.key.Render(fmt.Sprint(n)) + "  " + lines[i]
		} else {
			lines[i] = "   " + lines[i]
		}
	}
	return lines
}

// hangingFor is how long the climber of s has been hanging.
func hangingFor(s *flow.State, now time.Time) (time.Duration, bool) {
	if !s.Hanging() {
		return 0, false
	}
	return max(0, now.Sub(s.HangingSince())), true
}
