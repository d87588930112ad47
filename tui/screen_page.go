package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/pages"
	"example.com/hangtape/sessions/records"
)

// A page is a long text over the past fittings: a session, two side by side, a
// climber's history. Pages lie over each other; Esc takes the top one away.
type page struct {
	gen     int
	title   string
	entry   *records.Entry // the session that is shown, where it is one
	problem string
	unit    sessions.Unit
	write   func(pages.Look) []string // nil while it is read

	lines  []string // as written for width
	width  int
	scroll int
}

// mostPageWidth is a line that is still read well.
const mostPageWidth = 100

// turnTo lays p on top and returns its generation, for the message that brings
// what it shows.
func (m *Model) turnTo(p page) int {
	m.pageGen++
	p.gen = m.pageGen
	m.pages = append(m.pages, p)
	m.screen = onPage
	return p.gen
}

// pageRead takes what a page shows; one that was left meanwhile is dropped.
func (m *Model) pageRead(msg pageMsg) {
	for i := range m.pages {
		if p := &m.pages[i]; p.gen == msg.gen {
			p.unit, p.write, p.width = msg.unit, msg.write, 0
			if msg.err != nil {
				p.write, p.problem = nil, msg.err.Error()
			}
		}
	}
}

func (m *Model) pageKey(msg tea.KeyMsg) tea.Cmd {
	p := &m.pages[len(m.pages)-1]
	switch keyOf(msg, false) {
	case keyNewer:
		p.scroll++
	case keyOlder:
		p.scroll--
	case keySkip, keyEnter:
		p.scroll += max(1, m.bodyHeight()-3)
	case keyPageUp:
		p.scroll -= max(1, m.bodyHeight()-3)
	case keyBack:
		m.pages = m.pages[:len(m.pages)-1]
		if len(m.pages) == 0 {
			m.screen = onPast
		}
	case keyCompare:
		if p.entry != nil {
			m.past.with = p.entry
			m.past.find()
			m.pages, m.screen = nil, onPast
		}
	case keyHistory:
		if p.entry == nil {
			return nil
		}
		if c := m.past.climberOf(p.entry); c != nil {
			return m.readHistory(m.turnTo(page{title: nameOr(c.Name, "no name") + ", all sessions"}), c)
		}
	default:
	}
	return nil
}

// pageLines is the part of the top page that fits into height.
func (m *Model) pageLines(width, height int) []string {
	p := &m.pages[len(m.pages)-1]
	if p.write != nil && p.width != width {
		p.lines = p.write(pages.Look{Width: min(width, mostPageWidth), Unit: string(p.unit), ASCII: m.theme.ascii, Clean: clean, Signs: m.theme.signs})
		p.width = width
	}
	lines := p.lines
	switch {
	case p.problem != "":
		lines = m.theme.wrap(clean(p.problem), width)
	case p.write == nil:
		lines = []string{"reading …"}
	}
	m.scroll = p.scroll
	out := append([]string{m.theme.title.Render(cut(p.title, width))}, m.scrolled(lines, height-1)...)
	p.scroll = m.scroll
	return out
}
