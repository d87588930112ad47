package tui

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/lipgloss"

	"example.com/hangtape/tui/flow"
	"example.com/hangtape/tui/sideview"
)

// view is a frame that was computed and only waits to be shown.
type view string

// View shows what Update computed.
func (m Model) View() string { return string(m.shown) }

// wide is the width from which verdicts stand beside the question.
const wide = 100

func (m *Model) mainWidth() int {
	if m.width >= wide {
		return m.width/2 - 1
	}
	return m.width
}

// bodyHeight is what the first and the last lines leave.
func (m *Model) bodyHeight() int { return max(1, m.height-2-len(m.status())) }

// layout computes the frame.
func (m *Model) layout() {
	m.longer = false
	if m.small() {
		m.shown = view(m.frame(m.theme.wrap(fmt.Sprintf("This window is %dx%d; %dx%d is the least. Make it larger: nothing is lost, and what is typed meanwhile is not taken.", m.width, m.height, leastWidth, leastHeight), max(1, m.width))))
		return
	}
	var body []string
	h := m.bodyHeight()
	switch m.screen {
	case onFirst:
		m.shown = view(m.frame(m.firstLines(m.width)))
		return
	case onList:
		body = m.listLines(m.width)
	case onAsk:
		body = m.askBody(h)
	case onStudents:
		body = m.studentsLines(m.width)
	case onSteps:
		body = m.stepsLines(m.width, h)
	case onHelp:
		body = m.helpLines(m.width, h)
	case onSide:
		body = m.sideBody(m.width, h)
	case onConflict:
		body = m.conflictLines(m.width)
	case onPast:
		body = m.pastLines(m.width)
	case onPage:
		body = m.pageLines(m.width, h)
	case onDamaged:
		body = m.scrolled(m.damagedLines(m.width), h)
	}
	body = body[:min(len(body), h)]
	for len(body) < h {
		body = append(body, "")
	}
	lines := append([]string{m.header()}, body...)
	lines = append(lines, m.status()...)
	m.shown = view(m.frame(append(lines, m.footer())))
}

// askBody is the question: its prose, its field, and the verdicts below or
// beside them. The field is always whole; prose scrolls where there is no room.
func (m *Model) askBody(h int) []string {
	width := m.mainWidth()
	a := m.flow.Ask()
	var read []string // in place of the prose, over the whole width
	switch a.Key {
	case flow.WhatIfKey:
		return m.whatIfLines(m.width, h)
	case "review":
		width = m.width
		read, _ = m.reviewLines(width)
	case flow.AdviceKey:
		width = m.width
		read = m.adviceLines(width)
	}
	title := m.theme.wrap(a.Title, width) // a question cut short is another question
	for i := range title {
		title[i] = m.theme.title.Render(title[i])
	}
	field := m.fieldLines(width)
	room := h - len(field) - len(title)
	var lines []string
	if read != nil {
		lines = append(m.scrolled(read, room), title...)
	} else {
		lines = append(title, m.scrolled(m.proseLines(width), room)...)
	}
	lines = append(lines, field...)
	switch {
	case read != nil:
	case m.width >= wide:
		return beside(lines, m.watchLines(m.width-width-2, h, max(sideview.Lowest, h*2/3)), width)
	case h >= deep && h-len(lines) > deep/2:
		lines = append(lines, "")
		lines = append(lines, m.watchLines(width, h-len(lines), h*2/5)...)
	case h-len(lines) > 2:
		lines = append(append(lines, ""), m.summaryLines(width, h-len(lines)-1)...)
	}
	return lines
}

// scrolled is the part of lines that fits into room, and how much more there is.
func (m *Model) scrolled(lines []string, room int) []string {
	room = max(1, room)
	m.longer, m.page = len(lines) > room, max(1, room-2)
	if !m.longer {
		m.scroll = 0
		return append([]string(nil), lines...)
	}
	room = max(1, room-1)
	m.scroll = max(0, min(m.scroll, len(lines)-room))
	out := append([]string(nil), lines[m.scroll:m.scroll+room]...)
	more := fmt.Sprintf("-- PgDn: %d more lines", len(lines)-m.scroll-room)
	if m.scroll+room == len(lines) {
		more = "-- the end; PgUp: back up"
	}
	return append(out, m.theme.key.Render(more))
}

// watchLines is what one looks at beside a question, or under it: the verdicts and
// the side view, beside each other where there is room, else one above the other,
// the side view with so many rows.
func (m *Model) watchLines(width, height, rows int) []string {
	v := sideOf(&m.flow, "")
	if half := (width - 2) / 2; half >= sideBeside {
		if drawing := m.sideLines(v, half, height); drawing != nil {
			return beside(drawing, m.summaryLines(width-half-2, height), half)
		}
		return m.summaryLines(width, height)
	}
	drawing := m.sideLines(v, width, rows)
	if drawing == nil {
		return m.summaryLines(width, height)
	}
	lines := m.summaryLines(width, height-rows-1)
	for len(lines) < height-rows {
		lines = append(lines, "")
	}
	return append(lines, drawing...)
}

// deep is the height from which a narrow window, such as an upright phone, has
// room for the side view under the question.
const deep = 40

// sideBeside is the width from which the side view stands beside the verdicts.
const sideBeside = 46

// beside puts right beside left, whose lines fill width.
func beside(left, right []string, width int) []string {
	var out []string
	for i := range max(len(left), len(right)) {
		l, r := "", ""
		if i < len(left) {
			l = left[i]
		}
		if i < len(right) {
			r = right[i]
		}
		out = append(out, pad(l, width+2)+r)
	}
	return out
}

// frame joins lines, none wider than the window and no more than fit.
func (m *Model) frame(lines []string) string {
	lines = lines[:min(len(lines), max(1, m.height))]
	for i, l := range lines {
		l = m.theme.signs(l)
		if lipgloss.Width(l) > m.width {
			l = cut(l, m.width)
		}
		lines[i] = l
	}
	return strings.Join(lines, "\n")
}
