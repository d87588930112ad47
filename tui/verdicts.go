package tui

import (
	"fmt"
	"slices"

	"example.com/hangtape/rules"
	"example.com/hangtape/tui/flow"
)

// worstFirst are the checks as they are read: the verdicts from worst to best,
// musts before shoulds, else in the order of the table.
func worstFirst(checks []rules.Check) []rules.Check {
	out := slices.Clone(checks)
	slices.SortStableFunc(out, func(a, b rules.Check) int {
		if d := a.Verdict.Rank() - b.Verdict.Rank(); d != 0 {
			return d
		}
		return count(a.Kind == rules.Should) - count(b.Kind == rules.Should)
	})
	return out
}

func count(b bool) int {
	if b {
		return 1
	}
	return 0
}

// checkLines is one check: its verdict in a word, its name, its sentence.
func (m *Model) checkLines(c rules.Check, sentence string, width int) []string {
	lines := []string{m.theme.word(c.Verdict) + " " + cut(fmt.Sprintf("%s (%s)", c.Name, c.Kind.Word()), width-8)}
	for _, l := range m.theme.wrap(sentence, width-2) {
		lines = append(lines, "  "+l)
	}
	return lines
}

// summaryLines is what the rules say so far, in at most height lines. What is not
// known is no news while readings are still to come.
func (m *Model) summaryLines(width, height int) []string {
	if m.flow.IsHeld() {
		return m.heldSummary(width, height)
	}
	r := m.flow.Report
	if m.flow.Wrong != nil {
		return m.theme.wrap("Cannot be: "+m.flow.Wrong.Error(), width)
	}
	if r == nil || len(r.Checks) == 0 {
		return nil
	}
	checks := worstFirst(r.Checks)
	for i := range checks {
		if m.flow.TooSoon(checks[i].Name) {
			checks[i].Verdict = rules.Unknown
		}
	}
	lines := m.theme.wrap("So far: "+rules.Tally(checks), width)
	for _, f := range r.Findings {
		lines = append(lines, m.theme.wrap(f.In(string(m.flow.Session.Unit)), width)...)
	}
	for _, n := range r.Next {
		if m.flow.Step().Phase == flow.Aloft && !m.flow.TakenEnough(n.Reading) {
			lines = append(lines, m.theme.wrap("Next: "+rules.ToDo(n.Reading), width)...)
			break
		}
	}
	telling := []rules.Verdict{rules.Fail, rules.Tight}
	if m.flow.Step().Phase == flow.Close {
		telling = append(telling, rules.Unknown)
	}
	for _, v := range telling {
		for _, c := range checks {
			if c.Verdict == v && len(lines) < height {
				lines = append(lines, m.checkLines(c, rules.Sentence(c, string(m.flow.Session.Unit)), width)...)
			}
		}
	}
	return lines[:min(len(lines), height)]
}

// reviewLines is everything that the rules say, and what the verdicts mean. looked
// is the line of the check that is looked at, which bears a mark once somebody
// chose one.
func (m *Model) reviewLines(width int) (lines []string, looked int) {
	for _, l := range reviewOf(&m.flow) {
		if l.check == nil {
			lines = append(lines, m.theme.wrap(clean(l.text), width)...)
			continue
		}
		of := m.checkLines(*l.check, l.text, width)
		if l.check.Name == m.looked {
			looked, of[0] = len(lines), m.theme.strong.Render("> ")+of[0]
		}
		lines = append(lines, of...)
	}
	return lines, looked
}

// heldSummary is how a re-check stands so far, in at most height lines.
func (m *Model) heldSummary(width, height int) []string {
	var lines []string
	if m.flow.Ask().Tells != nil { // which tells the same
		return nil
	}
	for _, l := range m.flow.Held() {
		lines = append(lines, m.theme.wrap(l, width)...)
	}
	return lines[:min(len(lines), height)]
}
