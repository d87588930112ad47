package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/rules/advice"
	"example.com/hangtape/tui/flow"
)

// An adviser sees that the advice is worked out once for a draft, beside the
// drawing.
type adviser struct{ awaited, started int }

// advisedMsg is for the adviser: the advice on the draft of so many saves.
type advisedMsg struct {
	run, saves int
	answer     *advice.Answer
}

// advise starts working out the advice where it is asked for.
func (m *Model) advise() tea.Cmd {
	if !m.flow.Unadvised() || m.adviser.awaited != 0 {
		return nil
	}
	m.adviser.started++
	m.adviser.awaited = m.adviser.started
	s, run := m.flow, m.adviser.started
	return func() tea.Msg { return advisedMsg{run, s.Saves, s.Advise()} }
}

// advised takes the advice, unless the draft is another by now: then it is worked
// out again where it is still asked for.
func (m *Model) advised(msg advisedMsg) tea.Cmd {
	if msg.run != m.adviser.awaited {
		return nil
	}
	m.adviser.awaited = 0
	if msg.saves != m.flow.Saves {
		return m.advise()
	}
	return m.do(flow.Advised{Answer: msg.answer})
}

// sideBySide is the width from which a table stands in columns.
const sideBySide = 72

// adviceLines is what to change, as it is read in that width.
func (m *Model) adviceLines(width int) []string {
	t := adviceOf(&m.flow)
	const name, column = 26, 15
	var lines []string
	inColumns := width >= sideBySide
	if len(t.columns) > 0 && !inColumns {
		inColumns = name+column*len(t.columns) <= width
	}
	tabled := false
	for _, l := range t.lines {
		switch {
		case l.heading != "":
			if len(lines) > 0 {
				lines = append(lines, "")
			}
			for _, w := range m.theme.wrap(l.heading, width) {
				lines = append(lines, m.theme.title.Render(w))
			}
		case l.cells == nil:
			for _, w := range m.theme.wrap(clean(l.text), width-2) {
				lines = append(lines, "  "+w)
			}
		case inColumns || len(l.cells) == 1:
			if !tabled && len(t.columns) > 0 {
				lines = append(lines, row("", t.columns, name, column))
			}
			lines, tabled = append(lines, row(l.text, l.cells, name, column)), true
		default: // one under the other
			lines = append(lines, "  "+l.text)
			for i, c := range l.cells {
				lines = append(lines, fmt.Sprintf("    %-13s%s", t.columns[i], c))
			}
		}
	}
	return lines
}

func row(name string, cells []string, nameWidth, width int) string {
	line := pad("  "+name, nameWidth)
	for _, c := range cells {
		line += " " + pad(c, width-1)
	}
	return strings.TrimRight(line, " ")
}

// sayAdvice says the advice line by line.
func (p *plain) sayAdvice() {
	t := adviceOf(&p.flow)
	for _, l := range t.lines {
		switch {
		case l.heading != "":
			p.say("%s", l.heading)
		case len(l.cells) == 0:
			p.say("%s", l.text)
		case len(l.cells) == 1:
			p.say("%s: %s", l.text, l.cells[0])
		default:
			parts := make([]string, len(l.cells))
			for i, c := range l.cells {
				parts[i] = t.columns[i] + " " + c
			}
			p.say("%s: %s", l.text, strings.Join(parts, ", "))
		}
	}
}
