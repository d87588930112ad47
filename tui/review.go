package tui

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"example.com/hangtape/fit"
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
	if s.IsHeld() {
		return heldLines(s)
	}
	r, unit := s.Report, string(s.Session.Unit)
	say := func(format string, args ...any) reviewLine { return reviewLine{text: fmt.Sprintf(format, args...)} }
	out := []reviewLine{say("All in all: %s%s. %s.", r.Outcome.Loud(), s.DrillBut(), rules.Tally(r.Checks)), say("%s", rules.BriefCaution)}
	if seen := s.DrillSeen(); len(seen) > 0 {
		out = append(out, say("Ground drill. %s.", strings.Join(seen, ". ")))
	}
	if s.Short() {
		out = append(out, say("%s", s.StillWanted()))
	}
	for _, l := range s.KitSince() {
		out = append(out, say("%s", l))
	}
	for _, round := range s.Rounds {
		out = append(out, roundLines(&round, unit)...)
		out = append(out, cordLines(s, &round)...)
	}
	for _, f := range r.Findings {
		out = append(out, say("%s", f.In(unit)))
	}
	for _, c := range worstFirst(r.Checks) {
		out = append(out, reviewLine{&c, rules.Sentence(c, unit)})
	}
	for _, n := range r.Next {
		often := ""
		if s.TakenEnough(n.Reading) {
			often = flow.TakenOften
		}
		out = append(out, say("Next for %s: %s%s.", n.Check, rules.ToDo(n.Reading), often))
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

// cordLines tell how much cord to cut for what a change ties anew, until somebody
// has laid a tape on it or hung on it.
func cordLines(s *flow.State, r *flow.Round) []reviewLine {
	var out []reviewLine
	for _, c := range r.Changes {
		if r.Hung || len(c.Measured) > 0 || s.Session.Fit.Kit.Pieces[c.Piece].Change != fit.ReTie {
			continue
		}
		if words := s.CordFor(c.Piece, c.To); words != "" {
			out = append(out, reviewLine{text: "To tie it: " + words + "."})
		}
	}
	return out
}

// roundLines tells a change: what it was, and which verdicts are others since.
func roundLines(r *flow.Round, unit string) []reviewLine {
	var set []string
	for _, c := range r.Changes {
		words := rules.PieceName(c.Piece)
		if c.From.Known {
			words += " from " + rules.FormatLength(c.From.V, unit)
		}
		words += " to " + rules.FormatLength(c.To, unit)
		if len(c.Measured) > 0 {
			words += ", laid on again " + rules.FormatLength(fit.Mean(c.Measured), unit)
		}
		set = append(set, words)
	}
	head := fmt.Sprintf("Changed after hang %d: %s.", r.AfterHang, strings.Join(set, "; "))
	switch {
	case !r.Hung:
		head += " PREDICTED until somebody hangs on it and reads again."
	case len(r.Stale) > 0:
		names := make([]string, len(r.Stale))
		for i, st := range r.Stale {
			names[i] = st.Reading.String()
		}
		head += " Still PREDICTED, since nobody has read it again: " + strings.Join(names, "; ") + "."
	}
	out := []reviewLine{{text: head}}
	for i := range r.After.Checks {
		if b, a := &r.Before.Checks[i], &r.After.Checks[i]; b.Verdict != a.Verdict {
			out = append(out, reviewLine{text: fmt.Sprintf("%s: before %s, after %s", a.Name, b.Brief(unit), a.Brief(unit))})
		}
	}
	if len(out) == 1 {
		out = append(out, reviewLine{text: "No verdict is another than before."})
	}
	return out
}
