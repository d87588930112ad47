package tui

import (
	"fmt"
	"slices"
	"strings"

	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/flow"
)

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
