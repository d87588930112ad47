package tui

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/rules"
	"example.com/hangtape/sessions/records"
)

// listScreen lets one of several sessions be chosen: by its number, or by words
// that leave few, of which one is marked.
type listScreen struct {
	chooser
	title   string
	typed   string
	wrong   string // why what is typed finds nothing
	at, top int    // which of those shown is marked, and which is the first to be seen
	then    func(*Model, found) tea.Cmd
}

func (m *Model) choose(title string, in *records.List, list []found, then func(*Model, found) tea.Cmd) {
	if len(list) == 0 {
		m.first.problem = "there is none yet"
		return
	}
	m.list = listScreen{chooser: newChooser(in, list), title: title, then: then}
	m.screen = onList
}

// number is which one is typed, counted from 1; 0 where words are.
func (l *listScreen) number() int {
	n, err := strconv.Atoi(l.typed)
	if err != nil || n < 1 || n > len(l.all) {
		return 0
	}
	return n
}

// follow shows what is typed: all, with the number's marked, or those that match.
func (l *listScreen) follow() {
	l.at, l.top, l.wrong = 0, 0, ""
	if n := l.number(); n > 0 || l.typed == "" {
		l.shown, l.at = l.all, max(0, n-1)
		return
	}
	if err := l.find(l.typed); err != nil {
		l.wrong = err.Error()
	}
}

func (m *Model) listKey(msg tea.KeyMsg) tea.Cmd {
	l := &m.list
	typed := l.typed
	switch keyOf(msg, true) {
	case keyBack:
		if l.typed == "" {
			m.screen = onFirst
		}
		l.typed = ""
	case keyOlder:
		l.move(-1)
	case keyNewer:
		l.move(1)
	case keySkip:
		l.move(m.listRows())
	case keyPageUp:
		l.move(-m.listRows())
	case keyEnter:
		if l.wrong == "" && l.at < len(l.shown) {
			f := l.shown[l.at]
			l.typed = ""
			l.follow()
			return l.then(m, f)
		}
	default:
		l.typed = edited(l.typed, msg)
	}
	if l.typed != typed {
		l.follow()
	}
	return nil
}

func (l *listScreen) move(by int) { l.at = max(0, min(l.at+by, len(l.shown)-1)) }

// edited is a line of words after a key.
func edited(typed string, msg tea.KeyMsg) string {
	switch {
	case msg.Type == tea.KeyBackspace && typed != "":
		runes := []rune(typed)
		return string(runes[:len(runes)-1])
	case msg.Type == tea.KeyCtrlU:
		return ""
	case (msg.Type == tea.KeyRunes || msg.Type == tea.KeySpace) && len(typed) < 200:
		return typed + strings.Map(func(r rune) rune {
			if unicode.IsPrint(r) {
				return r
			}
			return -1
		}, string(msg.Runes))
	}
	return typed
}

// listHead is how many lines stand above the rows.
const listHead = 3

func (m *Model) listRows() int { return max(1, m.bodyHeight()-listHead) }

func (m *Model) listLines(width int) []string {
	l := &m.list
	prompt := findPrompt(l.typed, "number, or climber, place, date, kit …", width)
	lines := []string{m.theme.title.Render(cut(l.title, width)), prompt, ""}
	switch {
	case l.wrong != "":
		return append(lines[:2], wrap("Not searched: "+clean(l.wrong), width)...)
	case len(l.shown) < len(l.all):
		lines[2] = fmt.Sprintf("%d of %d", len(l.shown), len(l.all))
	default:
		lines[2] = rules.Count(len(l.all), "session", "sessions")
	}
	rows := m.listRows()
	for l.top = min(l.top, l.at); ; l.top++ {
		drawn, whole := m.listEntries(width, rows)
		if whole || l.top == l.at {
			return append(lines, drawn...)
		}
	}
}

// listEntries are the sessions from the first to be seen on, as far as there is
// room, and whether the marked one is among them with all that is said of it.
func (m *Model) listEntries(width, rows int) (drawn []string, whole bool) {
	l := &m.list
	for i := l.top; i < len(l.shown) && len(drawn) < rows; i++ {
		f, head, mark := l.shown[i], "", "  "
		if len(l.shown) == len(l.all) {
			head = fmt.Sprintf("%4d  ", i+1)
		}
		head += minuteOf(f.begun()) + "  "
		if i == l.at {
			mark = "> "
		}
		for _, text := range m.theme.wrap(clean(f.who("no name")+", "+f.why()), max(10, width-2-len(head))) {
			row := mark + head + text
			if i == l.at {
				row = m.theme.key.Render(row)
			}
			drawn = append(drawn, row)
			mark, head = "  ", strings.Repeat(" ", len(head))
		}
		whole = whole || i == l.at && len(drawn) <= rows
	}
	return drawn[:min(len(drawn), rows)], whole
}
