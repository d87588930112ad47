package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/rules"
)

// firstScreen is what was found for the first screen.
type firstScreen struct {
	looked     bool // whether the folder was looked through
	unfinished []found
	problem    string
}

func (m *Model) firstKey(msg tea.KeyMsg) tea.Cmd {
	m.first.problem = ""
	switch id, name := keyOf(msg, false), msg.String(); {
	case id == keyEnter:
		return m.openDemo()
	case id == keyBack:
		return m.leave()
	case name == "1":
		return m.startNew(nil)
	case name == "2":
		if len(m.first.unfinished) == 1 {
			return m.resume(m.first.unfinished[0].Path)
		}
		return m.look(forResume)
	case name == "3":
		return m.look(forFollow)
	case name == "4":
		return m.openPast()
	}
	return nil
}

// found routes the sessions of the folder to who asked for them.
func (m *Model) found(msg foundMsg) {
	switch msg.why {
	case forFirst:
		m.first.looked, m.first.unfinished = true, msg.list
	case forResume:
		m.choose("Go on with which session?", msg.in, msg.list, func(m *Model, f found) tea.Cmd { return m.resume(f.Path) })
	case forStudents:
		m.foundStudents(msg.list)
	case forFollow:
		m.choose("Start from which earlier session?", msg.in, msg.list, func(m *Model, f found) tea.Cmd { return m.startFrom(f.Path) })
	}
	if m.first.problem == "" {
		m.first.problem = msg.unread()
	}
	if msg.err != nil {
		m.first.problem = msg.err.Error()
	}
}

func (m *Model) firstLines(width int) []string {
	t := m.theme
	lines := []string{t.title.Render("hangtape") + " fits a climber's two-leg ascent kit"}
	lines = append(lines, "by tape, at the base of the tree.", "")
	keys := [][2]string{{"Enter", "look around: the demo climber"}, {"1", "new fitting"}}
	if n := len(m.first.unfinished); n > 0 {
		s := m.first.unfinished[0]
		who, begun := s.who("no name yet"), minuteOf(s.begun())
		what := fmt.Sprintf("resume %s, %s", who, begun)
		switch {
		case n > 1:
			what = fmt.Sprintf("resume one of %d unfinished", n)
		case s.Good != nil:
			what = fmt.Sprintf("resume damaged: %s, %s", who, begun)
		}
		keys = append(keys, [2]string{"2", what})
	} else if m.first.looked {
		keys = append(keys, [2]string{"2", "resume (nothing unfinished)"})
	} else {
		keys = append(keys, [2]string{"2", "resume (reading the folder …)"})
	}
	keys = append(keys, [2]string{"3", "re-tune or re-check"}, [2]string{"4", "past fittings: find, compare, history"}, [2]string{"Esc", "leave"})
	for _, k := range keys {
		lines = append(lines, t.key.Render(pad(k[0], 7))+cut(k[1], width-7))
	}
	lines = append(lines, "")
	lines = append(lines, m.theme.wrap("Files: "+clean(m.opts.Store.Dir()), width)...)
	lines = append(lines, "")
	if m.first.problem != "" {
		lines = append(lines, m.theme.wrap(clean(m.first.problem), width)...)
	}
	return append(lines, m.theme.wrap(rules.ShortCaution, width)...)
}

// nameOr is a name as it is shown, or other where there is none.
func nameOr(name, other string) string {
	if strings.TrimSpace(name) == "" {
		return other
	}
	return clean(name)
}
