package tui

import (
	"fmt"
	"strconv"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/tui/flow"
)

// stepsScreen shows all steps, or the questions of one, and goes to any.
type stepsScreen struct {
	step  int // whose questions are shown; -1 while the steps are
	typed string
}

// entry is a line that can be gone to.
type entry struct {
	text  string
	place flow.Place
	step  int
}

func (m *Model) stepsKey(msg tea.KeyMsg) tea.Cmd {
	v := &m.steps
	switch id, name := keyOf(msg, false), msg.String(); {
	case id == keyBack && v.step >= 0:
		*v = stepsScreen{step: -1}
	case id == keyBack, id == keySteps:
		m.screen = onAsk
	case m.wantsDown(msg):
		return m.getDown()
	case id == keySkip, id == keyNewer:
		m.scroll += max(1, m.bodyHeight()-5)
	case id == keyPageUp, id == keyOlder:
		m.scroll -= max(1, m.bodyHeight()-5)
	case name == "backspace" && v.typed != "":
		v.typed = v.typed[:len(v.typed)-1]
	case len(name) == 1 && name[0] >= '0' && name[0] <= '9' && len(v.typed) < 2:
		v.typed += name
	case id == keyEnter:
		n, err := strconv.Atoi(v.typed)
		v.typed = ""
		list := m.entries()
		switch {
		case err != nil: // nothing typed: back to where one was
			m.screen = onAsk
		case n < 1 || n > len(list):
		case v.step < 0 && m.asksOf(list[n-1].step) > 1:
			*v = stepsScreen{step: list[n-1].step}
		default:
			m.screen = onAsk
			return m.do(flow.GoTo{Place: list[n-1].place})
		}
	}
	return nil
}

// entries are the steps that have a question now, or the questions of one.
func (m *Model) entries() []entry {
	var out []entry
	for _, g := range m.flow.Asked() {
		if m.steps.step < 0 {
			text := g.Title
			if g.Of > 0 {
				text += fmt.Sprintf("  %d/%d", g.Told, g.Of)
			}
			out = append(out, entry{text, g.Places[0], g.Step})
			continue
		}
		if g.Step != m.steps.step {
			continue
		}
		for _, p := range g.Places {
			a := m.flow.Steps[p.Step].Asks[p.Ask]
			out = append(out, entry{clean(a.ToldAs(&m.flow.Draft, m.flow.Session.Unit)), p, g.Step})
		}
	}
	return out
}

func (m *Model) asksOf(step int) int {
	for _, g := range m.flow.Asked() {
		if g.Step == step {
			return len(g.Places)
		}
	}
	return 0
}

func (m *Model) stepsLines(width, height int) []string {
	title := "All steps"
	if m.steps.step >= 0 {
		title = m.flow.Steps[m.steps.step].Title
	}
	var list []string
	for i, e := range m.entries() {
		for j, l := range m.theme.wrap(e.text, width-3) { // whole: what was taken stands at its end
			if j == 0 {
				list = append(list, fmt.Sprintf("%2d %s", i+1, l))
			} else {
				list = append(list, "   "+l)
			}
		}
	}
	lines := append([]string{m.theme.title.Render(title)}, m.scrolled(list, height-2)...)
	return append(lines, fmt.Sprintf("Number, 1 to %d: %s_", len(m.entries()), m.steps.typed))
}
