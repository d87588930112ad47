package tui

import (
	"fmt"
	"strings"
	"time"

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

// mostProblem is how many lines what went wrong may take.
const mostProblem = 4

// status is what went wrong, if anything did, and the clock: one line or more.
func (m *Model) status() []string {
	var lines []string
	if m.problem != "" {
		for _, l := range wrap(clean(m.problem), m.width) {
			lines = append(lines, m.theme.refused.Render(l))
		}
		lines = lines[:min(len(lines), mostProblem)]
	}
	clock := m.clock()
	switch {
	case len(lines) > 0 && clock == "":
	case len(lines) == 0 && clock == "" && m.waits():
		lines = append(lines, cut("Saving the answer before; what is typed waits for it.", m.width))
	default:
		lines = append(lines, clock)
	}
	return lines
}

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
	m.longer, m.page = len(lines) > room, room-2
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

// header says whose session it is and where in it one is. DEMO is never cut; the
// program's own name goes first where there is no room for all, then the end of
// the climber's.
func (m *Model) header() string {
	title := m.theme.title.Render("hangtape")
	if !m.inSession() {
		return title
	}
	var marks []string
	if m.flow.Demo {
		marks = append(marks, m.theme.demo.Render("DEMO"))
	}
	if m.flow.ReadOnly != "" {
		marks = append(marks, m.theme.demo.Render("READ ONLY"))
	}
	n, of := m.flow.Progress()
	right := fmt.Sprintf("%d/%d %s", n, of, m.flow.Step().Title)
	name := nameOr(clean(m.flow.Session.Climber), "new session")
	left := strings.Join(append(append([]string{title}, marks...), name), " ")
	if textWidth(left)+1+textWidth(right) > m.width {
		left = strings.Join(append(marks, name), " ")
	}
	if spare := max(0, textWidth(name)-fewestOfName); textWidth(left)+1+textWidth(right) > m.width+spare {
		left = strings.Join(marks, " ")
	}
	right = cut(right, m.width-textWidth(strings.Join(marks, " "))-1)
	return spread(left, right, m.width)
}

// fewestOfName is how much of a name still tells whose it is.
const fewestOfName = 6

// hanging is how long somebody has been hanging, and whether a break is due.
func (m *Model) hanging() (d time.Duration, due bool) {
	d = max(0, m.now.Sub(m.flow.HangingSince()))
	return d, d >= m.opts.breakAfter()
}

// clock is the hanging clock, in words.
func (m *Model) clock() string {
	var parts []string
	if m.inSession() && m.flow.Hanging() {
		d, due := m.hanging()
		line := "Hanging " + clockText(d)
		if due {
			line = m.theme.refused.Render(line + ": time for a break, d")
		}
		parts = append(parts, line)
	}
	for i := range m.seats {
		s := &m.seats[i].flow
		if d, ok := hangingFor(s, m.now); ok {
			line := fmt.Sprintf("%s hangs %s", nameOr(s.Session.Climber, "another"), clockText(d))
			if d >= m.opts.breakAfter() {
				line += ": time for a break, Ctrl-O"
			}
			parts = append(parts, m.theme.refused.Render(line))
		}
	}
	return cut(strings.Join(parts, "; "), m.width)
}

func clockText(d time.Duration) string {
	d = d.Round(time.Second)
	return fmt.Sprintf("%d:%02d", int(d.Minutes()), int(d.Seconds())%60)
}

// footer is the keys that matter here.
func (m *Model) footer() string {
	t := m.theme
	switch m.screen {
	case onAsk:
		if m.flow.Ask().Key == flow.WhatIfKey {
			return t.hints(m.width, "Arrows", "move", "Enter", "set", "Esc", "leave", "?", "help", "PgDn PgUp", "ten marks", "0", "put back")
		}
		pairs := []string{"Enter", "take"}
		switch a := m.flow.Ask(); {
		case a.Kind == flow.Choice:
			pairs = []string{"1-9", "choose"}
		case strings.TrimSpace(m.flow.Text()) == "" && m.flow.Edit == a.Told(&m.flow.Draft):
			pairs = []string{"Enter", "go on"}
		}
		help, rest := "?", []string{"v", "side view"}
		if m.flow.Ask().Kind == flow.Text { // a ? is text there
			help, rest = "F1", nil
		}
		pairs = append(pairs, "Esc", "back", help, "help", "Tab", "steps") // the first ones are always there
		if a := m.flow.Ask(); a.Kind != flow.Choice && m.flow.Edit > 0 {
			pairs = append(pairs, "Up", "correct")
		}
		pairs = append(pairs, rest...)
		if m.flow.Hanging() {
			pairs = append([]string{"d", "down now"}, pairs...)
		}
		return t.hints(m.width, pairs...)
	case onList:
		return t.hints(m.width, "Enter", "choose", "Up Down", "move", "Esc", "back", "text", "finds")
	case onSteps:
		return t.hints(m.width, "number, Enter", "go there", "Esc", "back")
	case onHelp:
		return t.hints(m.width, "PgDn PgUp", "scroll", "any other key", "back")
	case onSide:
		return t.hints(m.width, "Up Down", "other poses", "any other key", "back")
	case onPast:
		tab := "due"
		if m.past.byClimber {
			tab = "cords"
		}
		return t.hints(m.width, "Enter", "open", "Up Down", "move", "Tab", tab, "Esc", "back", "text", "finds")
	case onPage:
		if m.pages[len(m.pages)-1].entry != nil {
			return t.hints(m.width, "PgDn PgUp", "scroll", "c", "compare", "h", "history", "Esc", "back")
		}
		return t.hints(m.width, "PgDn PgUp", "scroll", "Esc", "back")
	case onStudents:
		pairs := []string{"1-9", "choose", "Esc", "back"}
		if m.flow.Hanging() {
			pairs = append([]string{"d", "down now"}, pairs...)
		}
		return t.hints(m.width, pairs...)
	case onFirst, onConflict:
	}
	return ""
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
