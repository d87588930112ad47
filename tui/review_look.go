package tui

import (
	"slices"

	"example.com/hangtape/rules"
	"example.com/hangtape/rules/advice"
	"example.com/hangtape/tui/flow"
)

// lookedAt is the check that is looked at in the review, by its place among the
// verdicts from worst to best.
func (m *Model) lookedAt() (int, []rules.Check) {
	if m.flow.Report == nil {
		return 0, nil
	}
	list := worstFirst(m.flow.Report.Checks)
	return max(0, slices.IndexFunc(list, func(c rules.Check) bool { return c.Name == m.looked })), list
}

// lookAt looks at another check, or at the first where none was looked at yet,
// and scrolls to it.
func (m *Model) lookAt(by int) {
	i, list := m.lookedAt()
	if len(list) == 0 {
		return
	}
	if m.looked == "" {
		by = 0 // first the one that is at the top
	}
	m.looked = list[max(0, min(len(list)-1, i+by))].Name
	_, m.scroll = m.reviewLines(m.width)
}

// aboutCheck explains a check and says what a longer piece does to the margin of
// its margin.
func aboutCheck(s *flow.State, c rules.Check) []string {
	topic, ok := rules.Explain(c.Name)
	if !ok {
		return nil
	}
	unit := string(s.Session.Unit)
	out := append([]string{rules.Sentence(c, unit), topic.What}, explained(topic)...)
	if s.Wrong != nil || c.Verdict == rules.Unknown {
		return out
	}
	id, _ := rules.CheckNamed(c.Name)
	f := s.Session.Fit
	a := rules.Assess(&f, s.Session.RulesFor())
	slopes := advice.Sensitivities(&f, s.Session.RulesFor()).Of(a.Deciding(id))
	if len(slopes) == 0 {
		return append(out, "No length of the kit that is known moves it.")
	}
	out = append(out, "What a longer piece does to its margin:")
	for _, sl := range slopes {
		out = append(out, sl.Words(id.UnitAt(c.At), string(s.Session.Unit)))
	}
	return out
}
