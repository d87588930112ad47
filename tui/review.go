package tui

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"example.com/hangtape/rules"
	"example.com/hangtape/tui/flow"
)

// A line of the review: a check, or words alone.
type reviewLine struct {
	check *rules.Check
	text  string
}

// reviewOf is everything that the rules say of a session, the worst first, and
// what the verdicts do not cover.
func reviewOf(s *flow.State) []reviewLine {
	if s.Wrong != nil {
		return []reviewLine{{text: "The rules cannot run: " + s.Wrong.Error()}}
	}
	if s.ReChecking() {
		return heldLines(s)
	}
	r, unit := s.Report, string(s.Session.Unit)
	say := func(format string, args ...any) reviewLine { return reviewLine{text: fmt.Sprintf(format, args...)} }
	out := []reviewLine{say("All in all: %s. %s.", strings.ToUpper(string(r.Outcome)), rules.Tally(r.Checks))}
	for _, f := range r.Findings {
		out = append(out, say("%s", f.In(unit)))
	}
	for _, c := range worstFirst(r.Checks) {
		out = append(out, reviewLine{&c, rules.Sentence(c, unit)})
	}
	for _, n := range r.Next {
		out = append(out, say("Next for %s: read %s.", n.Check, rules.InputName(n.Reading)))
	}
	for _, l := range slices.Sorted(maps.Keys(s.Session.Limits)) {
		out = append(out, say("Limit moved by the school: %s is %s.", l, rules.FormatValue(s.Session.Limits[l], 0, lengthUnit(l.Info().Unit, s.Session.Unit))))
	}
	for _, c := range append(rules.VerdictCautions(), rules.ShortCaution) {
		out = append(out, say("%s", c))
	}
	return out
}

// heldLines is the review of a re-check: what has changed, and no verdicts.
func heldLines(s *flow.State) []reviewLine {
	var out []reviewLine
	for _, l := range append(s.Held(), rules.ShortCaution) {
		out = append(out, reviewLine{text: l})
	}
	return out
}
