package advice_test

import (
	"encoding/json"
	"fmt"
	"slices"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/advice"
)

func sharers(t testing.TB, sessions ...int) []advice.Sharer {
	t.Helper()
	var list []advice.Sharer
	for _, n := range sessions {
		list = append(list, advice.Sharer{File: fmt.Sprint(n), Fitting: widely(t, n), Limits: rules.DefaultLimits()})
	}
	return list
}

// A kit for one is what one is told alone.
func TestOneSharesWithOneself(t *testing.T) {
	for n := range 20 {
		s := sharers(t, n)
		alone := advice.Advise("", s[0].Fitting, s[0].Limits, rules.MarkMetric)
		both := advice.AdviseTogether(s, rules.MarkMetric)
		for _, o := range []struct {
			alone advice.Outcome
			both  advice.SharedOutcome
		}{{alone.LeastChange, both.LeastChange}, {alone.BestFit, both.BestFit}} {
			got, _ := json.Marshal(o.both.Changes)
			want, _ := json.Marshal(o.alone.Changes)
			if string(got) != string(want) || o.both.Feasible != o.alone.Feasible || o.both.Cost != o.alone.Cost {
				t.Errorf("session %d: %s, alone %s", n, got, want)
			}
		}
	}
}

// A shared answer, applied to each, is what each one's full model says; and who
// cannot share could, but for any one of them.
func TestSharedAnswersHoldForEach(t *testing.T) {
	answers, conflicts := 0, 0
	for n := range 12 {
		list := sharers(t, n, n+1, n+2)[:2+n%2]
		a := advice.AdviseTogether(list, rules.MarkMetric)
		if a.StoppedEarly {
			t.Errorf("session %d: the search was stopped early", n)
		}
		if a.Conflict != nil {
			conflicts++
			leftOut(t, list, a.Conflict.Files)
			continue
		}
		answers++
		for _, o := range []advice.SharedOutcome{a.LeastChange, a.BestFit} {
			for k, s := range list {
				g := *s.Fitting
				for _, c := range o.Changes {
					for p := range fit.NumPieces {
						if c.Piece == p.Key() && c.How == "re-tie" {
							g.Kit.Pieces[p].Change = fit.ReTie
						}
					}
				}
				alone := advice.Outcome{Changes: slices.Clone(o.Changes)}
				for i, c := range alone.Changes {
					if l := s.Fitting.Rope.LeastAbove; c.Piece == "rope_above" && l.Known && l.V > c.To {
						alone.Changes[i].To = l.V
					}
				}
				g2 := applied(&g, alone)
				for c, want := range rules.Assess(g2, s.Limits).PlainChecks() {
					if got := o.Checks[k][c]; got.Verdict != want.Verdict || !same1(got.Margin, want.Margin) || !same1(got.Guard, want.Guard) {
						t.Errorf("session %d, climber %d: %s told %s %v, judged %s %v", n, k, got.Name, got.Verdict, got.Margin, want.Verdict, want.Margin)
					}
				}
			}
		}
	}
	if answers < 2 || conflicts < 2 {
		t.Errorf("%d answers and %d conflicts: too few", answers, conflicts)
	}
}

// leftOut holds a group that cannot share to being irreducible.
func leftOut(t *testing.T, list []advice.Sharer, files []string) {
	t.Helper()
	group := slices.DeleteFunc(slices.Clone(list), func(s advice.Sharer) bool { return !slices.Contains(files, s.File) })
	if advice.AdviseTogether(group, rules.MarkMetric).Conflict == nil {
		t.Errorf("%v are said not to share, and can", files)
	}
	for i := range group {
		if rest := slices.Delete(slices.Clone(group), i, i+1); len(rest) > 0 && advice.AdviseTogether(rest, rules.MarkMetric).Conflict != nil {
			t.Errorf("%v without %s cannot share either", files, group[i].File)
		}
	}
}
