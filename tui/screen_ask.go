package tui

import (
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

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
		m.scroll += map[keyID]int{keySkip: 1, keyPageUp: -1}[id] * m.page
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
			return m.getDown()
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
