package tui

import (
	"fmt"
	"math"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/advice"
	"example.com/hangtape/tui/flow"
)

// whatIfScreen is where one moves pieces on trial; what is on trial is the
// flow's.
type whatIfScreen struct {
	sure bool // it was asked whether to set the lengths
	page int  // of the verdicts

	titles map[string]string // of the poses, once they were looked up
}

// whatIfKey handles a key while pieces are moved on trial.
func (m *Model) whatIfKey(msg tea.KeyMsg) (tea.Cmd, bool) {
	s, v := &m.flow, &m.whatIf
	name, id := msg.String(), keyOf(msg, false)
	sure := v.sure
	v.sure = false
	p := s.OnTrial
	switch {
	case id == keyBack && sure:
	case id == keyBack:
		return m.do(flow.EndTrial{}), true
	case id == keyEnter && sure:
		return m.do(flow.Apply{To: s.Trial}), true
	case id == keyEnter:
		v.sure = len(s.Trial) > 0
	case id == keyShorter:
		return m.do(flow.TryMarks{Piece: p, Marks: -1}), true
	case id == keyLonger:
		return m.do(flow.TryMarks{Piece: p, Marks: +1}), true
	case id == keySkip:
		return m.do(flow.TryMarks{Piece: p, Marks: -10}), true
	case id == keyPageUp:
		return m.do(flow.TryMarks{Piece: p, Marks: +10}), true
	case id == keyOlder:
		return m.do(flow.TryPiece{Piece: max(0, p-1)}), true
	case id == keyNewer:
		return m.do(flow.TryPiece{Piece: min(fit.NumPieces-1, p+1)}), true
	case len(name) == 1 && name[0] >= '1' && name[0] <= '0'+byte(fit.NumPieces):
		return m.do(flow.TryPiece{Piece: fit.Piece(name[0] - '1')}), true
	case name == "0":
		return m.do(flow.TryBack{Piece: p}), true
	case id == keyMore:
		v.page++
	default:
		return nil, false
	}
	return nil, true
}

// whatIfLines is the trial: the pieces, where the one that is looked at may be,
// and what the model says of it all.
func (m *Model) whatIfLines(width, height int) []string {
	s := &m.flow
	w := s.WhatIf()
	before, after := s.AsItIs(), w.Frame(s.OnTrial)
	whole := width
	if m.width >= wide {
		width = m.width/2 - 1
	}
	lines := []string{m.theme.strong.Render(cut("What if. PREDICTED: nothing is changed.", width))}
	for p := range fit.NumPieces {
		lines = append(lines, m.pieceLine(w.Piece(p), p == s.OnTrial, width))
	}
	lines = append(lines, trialBar(&after, width)...)
	lines = append(lines, m.theme.wrap(flow.WindowWords(&after, string(s.Session.Unit)), width)...)
	switch {
	case m.whatIf.sure:
		lines = append(lines, m.theme.wrap("Set these lengths on the kit? Enter: yes. Esc: no.", width)...)
	case s.Said.Text != "":
		lines = append(lines, m.theme.wrap(clean(s.Said.Text), width)...)
	}
	room := height - len(lines)
	if width < whole {
		room = height
	}
	right := min(whole-2, width)
	rest := m.paged(append(m.trialChecks(before, after.Checks, right), m.trialPoses(after.Poses, right)...), room)
	if width < whole {
		return beside(lines, rest, width)
	}
	return append(lines, rest...)
}

// pieceLine is one piece with its length now and on trial, or why it is held.
func (m *Model) pieceLine(l advice.Length, chosen bool, width int) string {
	show := func(mm float64) string { return rules.FormatLength(mm, string(m.flow.Session.Unit)) }
	mark := " "
	if chosen {
		mark = ">"
	}
	line := fmt.Sprintf("%s %d %-17s %s", mark, l.Piece+1, rules.PieceName(l.Piece), show(l.From))
	switch {
	case l.Held != "":
		line += ", held: " + l.Held
	case l.Moved():
		line += " -> " + show(l.To)
	}
	if line = cut(line, width); chosen {
		line = m.theme.strong.Render(line)
	}
	return line
}

// trialBar draws the bounds of a piece with the run in which its musts pass and
// the place where it is.
func trialBar(f *advice.Frame, width int) []string {
	n := &f.Piece
	if n.Held != "" || width < 12 {
		return nil
	}
	cells := []rune(strings.Repeat("-", width-2))
	lo, hi := math.Min(n.Bounds[0], n.To), math.Max(n.Bounds[1], n.To)
	at := func(mm float64) int {
		if hi <= lo {
			return 0
		}
		return int(math.Round((mm - lo) / (hi - lo) * float64(len(cells)-1)))
	}
	if f.Passes != nil {
		for i := at(f.Passes[0]); i <= at(f.Passes[1]); i++ {
			cells[max(0, min(i, len(cells)-1))] = '='
		}
	}
	if n.From >= lo && n.From <= hi {
		cells[at(n.From)] = '|'
	}
	cells[at(n.To)] = '#'
	return []string{"[" + string(cells) + "]"}
}

// trialChecks are the verdicts on trial: the one that one came from, those that
// turned, then from worst to best.
func (m *Model) trialChecks(before, after []rules.Check, width int) []string {
	unit := string(m.flow.Session.Unit)
	was := map[string]*rules.Check{}
	for i := range before {
		was[before[i].Name] = &before[i]
	}
	first := func(c rules.Check) int {
		switch {
		case c.Name == m.looked:
			return 0
		case c.Verdict != was[c.Name].Verdict:
			return 1
		}
		return 2
	}
	list := worstFirst(after)
	slices.SortStableFunc(list, func(a, b rules.Check) int { return first(a) - first(b) })
	out := make([]string, 0, len(list))
	for i := range list {
		c := &list[i]
		line := c.Name + ": " + c.Brief(unit)
		if b := was[c.Name].Brief(unit); b != c.Brief(unit) {
			line += ", was " + b
		}
		out = append(out, m.theme.hung(line, width)...)
	}
	return out
}

// hung is a line that goes on further in where it is too long for the width.
func (t theme) hung(line string, width int) []string {
	lines := t.wrap(line, width-2)
	for i := 1; i < len(lines); i++ {
		lines[i] = "  " + lines[i]
	}
	return lines
}

// trialPoses are the poses on trial.
func (m *Model) trialPoses(poses []rules.Value, width int) []string {
	var out []string
	for _, v := range poses {
		if strings.HasSuffix(v.Name, "_model") {
			continue
		}
		out = append(out, m.theme.hung(m.whatIf.title(v.Name)+": "+rules.FormatPM(float64(v.Value), float64(v.U), lengthUnit(v.Unit, m.flow.Session.Unit)), width)...)
	}
	return out
}

// title is a pose in words.
func (v *whatIfScreen) title(name string) string {
	if title, ok := v.titles[name]; ok {
		return title
	}
	if v.titles == nil {
		v.titles = map[string]string{}
	}
	v.titles[name] = name
	if topic, ok := rules.Explain(name); ok {
		v.titles[name] = topic.Title
	}
	return v.titles[name]
}

// paged is the page of lines that is shown in room, and how to see the others.
func (m *Model) paged(lines []string, room int) []string {
	if len(lines) <= room {
		m.whatIf.page = 0
		return lines
	}
	room = max(1, room-1)
	pages := (len(lines) + room - 1) / room
	m.whatIf.page %= pages
	from := m.whatIf.page * room
	out := slices.Clone(lines[from:min(len(lines), from+room)])
	return append(out, m.theme.key.Render(fmt.Sprintf("-- Space: page %d of %d", m.whatIf.page+1, pages)))
}
