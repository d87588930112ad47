package tui

import (
	"fmt"
	"strings"
	"time"

	"example.com/hangtape/tui/flow"
)

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
	name := nameOr(m.flow.Session.Climber, "new session")
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
			line = m.theme.refused.Render(line + ": time for a break, " + m.downKeys())
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

// footer is the keys that matter here, first how to get down where somebody hangs.
func (m *Model) footer() string {
	pairs := m.keysHere()
	asks := m.screen == onAsk && m.flow.Ask().Key != flow.WhatIfKey
	if (asks || m.screen == onStudents || m.screen == onDamaged) && m.inSession() && m.flow.Hanging() {
		pairs = append([]string{m.downKeys(), "down now"}, pairs...)
	}
	return m.theme.hints(m.width, pairs...)
}

// downKeys are the keys that get down from here: where words are typed d is one
// of their letters, but not over the list of steps.
func (m *Model) downKeys() string {
	if m.screen == onAsk && m.flow.Ask().Kind == flow.Text {
		return "Tab d"
	}
	return "d"
}

// keysHere are keys and what they do, in pairs, those that matter most first.
func (m *Model) keysHere() []string {
	switch m.screen {
	case onAsk:
		return m.askKeys()
	case onList:
		return []string{"Enter", "choose", "Up Down", "move", "Esc", "back", "text", "finds"}
	case onSteps:
		return []string{"number, Enter", "go there", "Esc", "back"}
	case onHelp:
		return []string{"PgDn PgUp", "scroll", "any other key", "back"}
	case onSide:
		return []string{"Up Down", "other poses", "any other key", "back"}
	case onPast:
		tab := "due"
		if m.past.byClimber {
			tab = "cords"
		}
		return []string{"Enter", "open", "Up Down", "move", "Tab", tab, "Esc", "back", "text", "finds"}
	case onPage:
		if m.pages[len(m.pages)-1].entry != nil {
			return []string{"PgDn PgUp", "scroll", "c", "compare", "h", "history", "Esc", "back"}
		}
		return []string{"PgDn PgUp", "scroll", "Esc", "back"}
	case onStudents:
		return []string{"1-9", "choose", "Esc", "back"}
	case onDamaged:
		if m.damaged.aside != "" {
			return []string{"Enter", "go on", "Esc", "back"}
		}
		return []string{"Esc", "back"}
	case onFirst, onConflict: // they tell their keys themselves
	}
	return nil
}

// askKeys are the keys of a question.
func (m *Model) askKeys() []string {
	a := m.flow.Ask()
	if a.Key == flow.WhatIfKey {
		return []string{"Arrows", "move", "Enter", "set", "Esc", "leave", "?", "help", "PgDn PgUp", "ten marks", "0", "put back"}
	}
	pairs := []string{"Enter", "take"}
	switch {
	case a.Kind == flow.Choice:
		pairs = []string{"1-9", "choose"}
	case strings.TrimSpace(m.flow.Text()) == "" && m.flow.Edit == a.Told(&m.flow.Draft):
		pairs = []string{"Enter", "go on"}
	}
	help, rest := "?", []string{"v", "side view"}
	if a.Kind == flow.Text { // a ? is text there
		help, rest = "F1", nil
	}
	pairs = append(pairs, "Esc", "back", help, "help", "Tab", "steps") // the first ones are always there
	if a.Kind != flow.Choice && m.flow.Edit > 0 {
		pairs = append(pairs, "Up", "correct")
	}
	return append(pairs, rest...)
}
