package tui

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/rules"
	"example.com/hangtape/tui/flow"
	"example.com/hangtape/tui/sideview"
)

// helpScreen is the help over a question, a paragraph each; an empty one before
// a heading.
type helpScreen []string

// helpOf is what helps with a question: its explanation, and that of the check
// that complains most.
func (m *Model) helpOf(a flow.Ask) helpScreen {
	help := helpScreen{a.Title}
	help = append(help, m.prose...)
	help = append(help, m.flow.CordGoes(a)...)
	if topic, ok := rules.Explain(a.Topic); ok {
		help = append(help, explained(topic)...)
	}
	if i, list := m.lookedAt(); a.Key == "review" && m.looked != "" {
		about := append(helpScreen{list[i].Verdict.Loud() + " " + list[i].Name}, aboutCheck(&m.flow, list[i])...)
		return append(append(about, ""), help...)
	} else if len(list) > 0 {
		for _, c := range list {
			if (c.Verdict == rules.Fail || c.Verdict == rules.Tight) && !m.flow.TooSoon(c.Name) {
				help = append(help, "", "Complains: "+c.Verdict.Loud()+" "+c.Name)
				return append(help, aboutCheck(&m.flow, c)...)
			}
		}
	}
	return help
}

// whereLines is the drawing of where the tape goes for the question: on this
// climber and kit as far as they are known, else on invented ones; nil where there
// is nothing to show.
func (m *Model) whereLines(width, height int) []string {
	a := m.flow.Ask()
	if a.Kind != flow.Reading || sideview.Tape(a.Reading) == "" {
		return nil
	}
	rows := max(sideview.Lowest, min(height-2, mostWhere))
	v := sideOf(&m.flow, "")
	v.check = nil
	if d, ok := m.draw(v, width, rows); ok && len(d.Cells) >= fewestMarks {
		return m.theme.paint(d)
	}
	d, _ := sideview.Where(sideview.Options{Width: width, Height: rows, ASCII: m.theme.ascii, Unit: string(m.flow.Session.Unit), Reading: a.Reading})
	return m.theme.paint(d)
}

// mostWhere is as high as a drawing need be within a text.
const mostWhere = 24

func explained(t rules.Topic) []string {
	var out []string
	for _, p := range []string{t.Why, t.How, t.Do} {
		for l := range strings.Lines(p) {
			out = append(out, strings.TrimRight(l, "\n"))
		}
	}
	return out
}

func (m *Model) helpKey(msg tea.KeyMsg) tea.Cmd {
	if m.wantsDown(msg) {
		return m.getDown()
	}
	switch keyOf(msg, false) {
	case keySkip, keyNewer:
		m.scroll += max(1, m.bodyHeight()-3)
	case keyPageUp, keyOlder:
		m.scroll -= max(1, m.bodyHeight()-3)
	default:
		m.screen, m.scroll = onAsk, 0
	}
	return nil
}

func (m *Model) helpLines(width, height int) []string {
	var lines []string
	heading := true
	for _, p := range m.help {
		if p == "" {
			lines, heading = append(lines, ""), true
			continue
		}
		for _, l := range m.theme.wrap(p, width) {
			if heading {
				l = m.theme.title.Render(l)
			}
			lines = append(lines, l)
		}
		heading = false
	}
	if where := m.whereLines(width, height); where != nil {
		lines = append(append(lines, "", m.theme.title.Render("Where the tape goes")), where...)
	}
	lines = append(lines, "", m.theme.title.Render("Keys"))
	for _, b := range bindings() {
		for i, l := range m.theme.wrap(b.does, width-8) {
			label := ""
			if i == 0 {
				label = b.label
			}
			lines = append(lines, m.theme.key.Render(pad(label, 8))+l)
		}
	}
	return m.scrolled(lines, height)
}
