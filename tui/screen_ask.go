package tui

import (
	"fmt"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/flow"
)

// askKey handles a key on a question.
func (m *Model) askKey(msg tea.KeyMsg) tea.Cmd {
	ask := m.flow.Ask()
	id := keyOf(msg, ask.Kind == flow.Text)
	if ask.Key == flow.WhatIfKey {
		if cmd, ok := m.whatIfKey(msg); ok {
			return cmd
		}
	}
	if ask.Kind == flow.Choice {
		if cmd, ok := m.choiceKey(msg, id); ok {
			return cmd
		}
	}
	if (id == keySkip || id == keyPageUp) && (m.longer || scrolls(ask)) {
		m.scroll += map[keyID]int{keySkip: 1, keyPageUp: -1}[id] * max(1, m.page)
		return nil
	}
	switch id {
	case keyEnter:
		return m.do(flow.Enter{Now: m.now})
	case keyBack:
		return m.do(flow.Back{})
	case keySteps:
		m.screen, m.steps = onSteps, stepsScreen{step: -1}
		m.scroll = 0
		return nil
	case keyHelp:
		m.screen = onHelp
		m.help = m.helpOf(ask)
		m.scroll = 0
		return nil
	case keySide:
		return m.openSide()
	case keyOlder:
		return m.do(flow.Older{})
	case keyNewer:
		return m.do(flow.Newer{})
	case keySkip:
		return m.do(flow.SkipStep{})
	case keyStudents:
		return m.toStudents()
	case keyWanted:
		return m.do(flow.ToWanted{})
	case keyDown:
		if m.flow.Hanging() {
			return m.do(flow.DownNow{Now: m.now})
		}
	case keyKeep:
		if ask.Keepable() && len(m.flow.EarlierOf(ask)) > 0 && m.flow.Text() == "" { // else it is the k of kg
			return m.do(flow.Keep{})
		}
	case noKey, keyPageUp, keyShorter, keyLonger, keyMore, keyLeave, keySuspend:
	}
	if m.form.text == nil {
		return nil
	}
	var start tea.Cmd
	if (m.flow.Said.Kind == flow.Doubted || m.form.old) && msg.Type == tea.KeyRunes { // another in its place
		m.form, start = newInput(m.form.gen+1, "", m.mainWidth())
	}
	m.form.old = false
	cmd := tea.Batch(start, m.form.update(msg))
	if *m.form.text != m.flow.Text() {
		return tea.Batch(cmd, m.do(flow.Typed{Text: *m.form.text}))
	}
	return cmd
}

// choiceKey handles the keys that choose: a digit takes that option at once,
// the arrows move the mark.
func (m *Model) choiceKey(msg tea.KeyMsg, id keyID) (tea.Cmd, bool) {
	name := msg.String()
	switch {
	case len(name) == 1 && name[0] >= '1' && name[0] <= '9':
		return m.do(flow.Pick{Option: int(name[0] - '1'), Now: m.now}), true
	case id == keyOlder, id == keyNewer:
		return m.form.update(msg), true
	case id == keyEnter && m.flow.WentOn():
		return m.do(flow.Enter{Now: m.now}), true
	case id == keyEnter:
		return m.do(flow.Pick{Option: *m.form.option, Now: m.now}), true
	case (id == keyShorter || id == keyLonger) && m.flow.Ask().Key == "review":
		m.lookAt(map[keyID]int{keyShorter: -1, keyLonger: +1}[id])
		return nil, true
	}
	return nil, false
}

// scrolls says whether a question often has more to read than fits beside it: there
// no key that turns pages leads elsewhere.
func scrolls(a flow.Ask) bool {
	return a.Key == "review" || a.Key == "down" || a.Key == flow.AdviceKey || strings.HasPrefix(a.Key, "drill.")
}

// newForm builds the field of the question that is asked now.
func (m *Model) newForm() tea.Cmd {
	if m.screen != onAsk && m.screen != onSteps && m.screen != onHelp && m.screen != onSide {
		return nil
	}
	m.prose = proseOf(&m.flow, m.flow.Ask())
	gen := m.form.gen + 1
	var cmd tea.Cmd
	width := m.mainWidth()
	if options := m.flow.Options(); options != nil {
		labels := make([]string, len(options))
		for i, o := range options {
			labels[i] = cut(fmt.Sprintf("%d %s", i+1, o.Word), width-3)
		}
		m.form, cmd = newSelect(gen, labels, m.flow.Marked(), width, len(labels))
		return cmd
	}
	m.form, cmd = newInput(gen, m.flow.Text(), width)
	m.form.old = m.correcting()
	return cmd
}

// correcting says whether the field holds a number that was taken before, as it is.
func (m *Model) correcting() bool {
	s, a := &m.flow, m.flow.Ask()
	return a.Kind != flow.Text && s.Edit < a.Told(&s.Draft) && s.Text() == a.Exact(&s.Draft, s.Edit, s.Session.Unit)
}

// proseLines are what is asked and how it is read. Where there is no room for
// all of it, it scrolls above the field.
func (m *Model) proseLines(width int) []string {
	if m.flow.Ask().Key == flow.ForceKey {
		if lines := m.forceLines(width); lines != nil {
			return lines
		}
	}
	var lines []string
	for _, p := range m.prose {
		lines = append(lines, m.theme.wrap(p, width)...)
	}
	return lines
}

// proseOf is a question in words, a paragraph each.
func proseOf(s *flow.State, a flow.Ask) []string {
	what, why := a.Words()
	prose := []string{s.WhyPicked(a), what, why}
	if a.Key == "down" {
		for i, l := range rules.GettingDown() {
			prose = append(prose, fmt.Sprintf("%d. %s", i+1, l))
		}
	}
	if a.Kind == flow.Choice { // it scrolls there, so that the options stay
		prose = append(prose, s.CordToCut(a)...)
	}
	if a.Tells != nil {
		prose = append(prose, a.Tells(&s.Draft)...)
	}
	if accepts := a.Accepts(s.Session.Unit); accepts != "" {
		prose = append(prose, "Accepted: "+accepts)
	}
	return slices.DeleteFunc(prose, func(p string) bool { return p == "" })
}

// fieldLines are what is known beside the field, the field, and what the wizard
// answers. They are always whole.
func (m *Model) fieldLines(width int) []string {
	t, s, a := m.theme, &m.flow, m.flow.Ask()
	var lines []string
	for _, l := range besideOf(&m.flow, a) {
		lines = append(lines, m.theme.wrap(clean(l), width)...)
	}
	if n := a.Told(&s.Draft); a.Kind != flow.Choice && s.Edit < n {
		how := "typing replaces it"
		if a.Kind == flow.Text {
			how = "it may be edited"
		}
		lines = append(lines, m.theme.wrap(fmt.Sprintf("Correcting value %d of %d: %s; emptied (Ctrl-U), it is taken out.", s.Edit+1, n, how), width)...)
	}
	for _, l := range m.form.lines() {
		lines = append(lines, cut(l, width))
	}
	if echo := m.echo(a); echo != "" {
		lines = append(lines, m.aloud(echo, width)...)
	} else if s.Said.Echo != "" && a.Kind == flow.Reading {
		lines = append(lines, m.aloud(s.Said.Echo, width)...)
	}
	if m.flow.Step().ID == "sign-off" && !s.ReChecking() {
		for _, against := range s.Against() {
			lines = append(lines, m.theme.wrap(clean("Against it: "+against), width)...)
		}
	}
	if s.Said.Text != "" {
		said := m.theme.wrap(clean(s.Said.Text), width)
		if s.Said.Kind == flow.Refused || s.Said.Kind == flow.Doubted {
			for i := range said {
				said[i] = t.refused.Render(said[i])
			}
		}
		lines = append(lines, said...)
	}
	return lines
}

// besideOf is what stands beside the field and never in it: what was taken, the
// earlier session's readings, the estimate.
func besideOf(s *flow.State, a flow.Ask) []string {
	out := s.Why(a)
	if a.Kind != flow.Choice {
		out = append(out, s.CordToCut(a)...)
	}
	if values := a.Values(&s.Draft, s.Session.Unit); len(values) > 0 {
		is := "Now: " // nobody may have answered: a default, or what an earlier session said
		if a.Kind == flow.Reading {
			is = "Taken: "
		}
		out = append(out, is+strings.Join(values, ", "))
	}
	shown := func(values []float64) string {
		var out []string
		for _, v := range values {
			out = append(out, a.Show(v, s.Session.Unit))
		}
		return strings.Join(out, ", ")
	}
	if n, before := s.HangBefore(a); n > 0 {
		out = append(out, fmt.Sprintf("In hang %d: %s", n, shown(before)))
	}
	if old := s.EarlierOf(a); len(old) > 0 {
		line := fmt.Sprintf("On %s: %s", s.Earlier.Started.Format("2006-01-02"), shown(old))
		switch why := s.StaleBy(a); {
		case why != "":
			line += " (stale: " + why + ")"
		case a.Keepable():
			line += " (keep: k)"
		}
		out = append(out, line)
	}
	if in, ok := s.EstimateOf(a); ok {
		out = append(out, fmt.Sprintf("Estimate: %s", rules.FormatPM(float64(in.Value), float64(in.U), lengthUnit(in.Unit, s.Session.Unit))))
	}
	return out
}

// lengthUnit is the unit that a value in unit is shown in.
func lengthUnit(unit string, read sessions.Unit) string {
	if rules.IsLength(unit) {
		return string(read)
	}
	return unit
}

// echo says back what the text in the field would be taken as.
func (m *Model) echo(a flow.Ask) string {
	s := &m.flow
	text := strings.TrimSpace(s.Text())
	if text == "" || a.Kind == flow.Text || a.Kind == flow.Choice || s.Said.Kind == flow.Refused {
		return ""
	}
	said, err := a.Understood(text, s.Session.Unit, m.now)
	if err != nil {
		return ""
	}
	return said
}

// aloud is what was understood, large enough to read out.
func (m *Model) aloud(echo string, width int) []string {
	value, other, _ := strings.Cut(echo, " = ")
	lines := large(value, width)
	if lines == nil {
		return m.theme.wrap("= "+echo, width)
	}
	for i := range lines {
		lines[i] = m.theme.strong.Render(lines[i])
	}
	if other != "" {
		lines = append(lines, m.theme.wrap("= "+other, width)...)
	}
	return lines
}
