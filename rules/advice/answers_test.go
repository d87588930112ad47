package advice_test

import (
	"encoding/json"
	"math"
	"slices"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/advice"
)

// eachAnswer goes through made-up sessions, each with both of its answers.
func eachAnswer(t *testing.T, mark float64, do func(t *testing.T, n int, f *fit.Fitting, a *advice.Answer, o advice.Outcome)) {
	t.Helper()
	sessions := 30
	if *long {
		sessions = 500
	}
	answers := 0
	for n := range sessions {
		f := madeUp(t, n)
		if n%2 == 0 {
			f = widely(t, n)
		}
		a := advice.Advise("", f, rules.DefaultLimits(), mark)
		if a.StoppedEarly {
			t.Errorf("session %d: the search was stopped early", n)
		}
		if (a.Conflict == nil) != a.LeastChange.Feasible || a.LeastChange.Feasible != a.BestFit.Feasible {
			t.Errorf("session %d: neither an answer nor a conflict", n)
		}
		for _, o := range []advice.Outcome{a.LeastChange, a.BestFit} {
			if o.Feasible {
				answers++
				do(t, n, f, a, o)
			}
		}
	}
	if answers < sessions/2 {
		t.Errorf("only %d answers in %d sessions", answers, sessions)
	}
}

// applied is f as the answer leaves it.
func applied(f *fit.Fitting, o advice.Outcome) *fit.Fitting {
	to := map[fit.Piece]float64{}
	rope := f.Rope.LeastAbove
	for _, c := range o.Changes {
		for p := range fit.NumPieces {
			if c.Piece == p.Key() {
				to[p] = c.To
			}
		}
		if c.Piece == "rope_above" {
			rope = fit.Some(c.To)
		}
	}
	g := f.Changed(to)
	g.Rope.LeastAbove = rope
	return g
}

// Applied and judged by the full model, every must that the lengths move passes
// with the guard that advice asks for, and all that is told is what is judged.
func TestAnswersHoldWhenApplied(t *testing.T) {
	eachAnswer(t, rules.MarkMetric, func(t *testing.T, n int, f *fit.Fitting, a *advice.Answer, o advice.Outcome) {
		g, limits := applied(f, o), rules.DefaultLimits()
		judged := rules.Assess(g, limits)
		w := newWhole(f, limits, rules.MarkMetric)
		for _, e := range w.ends(rules.Must, 1<<len(w.free)-1) {
			r := judged.End(e)
			if ratio := rules.Ratio(r.Margin, rules.Guard(asked, r.U, r.Shift)); !(ratio >= 1) {
				t.Errorf("session %d: %s %s has the ratio %g", n, e.Check(), e.At(), ratio)
			}
		}
		report, err := rules.Judge("", g, limits)
		if err != nil {
			t.Fatal(err)
		}
		for c, want := range report.Checks {
			got := o.Checks[c]
			capped := want.Verdict == rules.Tight && got.Verdict == rules.Pass
			if got.Name != want.Name || got.Verdict != want.Verdict && !capped {
				t.Errorf("session %d: %s told %s, judged %s", n, got.Name, got.Verdict, want.Verdict)
			}
			if !capped && (!same1(got.Margin, want.Margin) || !same1(got.U, want.U) || !same1(got.Guard, want.Guard)) {
				t.Errorf("session %d: %s told %v ± %v (%v), judged %v ± %v (%v)", n, got.Name, got.Margin, got.U, got.Guard, want.Margin, want.U, want.Guard)
			}
		}
	})
}

func same1(a, b rules.Num) bool { return a == b || !a.Known() && !b.Known() }

// What is fixed stays, lengths lie on marks within bounds, costs add up, in
// metric and in inches.
func TestAnswersKeepToTheKit(t *testing.T) {
	for _, mark := range []float64{rules.MarkMetric, rules.MarkInch} {
		eachAnswer(t, mark, func(t *testing.T, n int, f *fit.Fitting, a *advice.Answer, o advice.Outcome) {
			w := newWhole(f, rules.DefaultLimits(), mark)
			set, _, _ := w.setOf(o)
			pieces := 0
			for _, c := range o.Changes {
				if c.Piece == "rope_above" {
					ropeIsLeast(t, n, f, o)
					continue
				}
				pieces++
				ok := slices.ContainsFunc(w.free, func(x free) bool {
					return x.Key() == c.Piece && math.Abs(x.from-float64(c.From)) < 1e-9 &&
						slices.ContainsFunc(x.marks, func(v float64) bool { return math.Abs(v-c.To) < 1e-9 })
				})
				if !ok {
					t.Errorf("session %d: %s from %g to %g is not among its marks", n, c.Piece, float64(c.From), c.To)
				}
			}
			if o.Cost != w.cost(set) || o.Ratio.Known() && pieces == 0 {
				t.Errorf("session %d: cost %d for %d, ratio %v", n, o.Cost, w.cost(set), o.Ratio)
			}
		})
	}
}

// ropeIsLeast holds the told rope above: with it slip-force passes, with a step
// less it does not, nor with what there is.
func ropeIsLeast(t *testing.T, n int, f *fit.Fitting, o advice.Outcome) {
	t.Helper()
	g := applied(f, o)
	passes := func(rope fit.Number) bool {
		h := *g
		h.Rope.LeastAbove = rope
		return rules.Assess(&h, rules.DefaultLimits()).End(rules.SlipForce.Ends()[0]).Plain == rules.Pass
	}
	rope := g.Rope.LeastAbove
	if !passes(rope) || passes(fit.Some(rope.V-100)) || passes(f.Rope.LeastAbove) || math.Mod(rope.V, 100) != 0 {
		t.Errorf("session %d: %g mm of rope above is not the least", n, rope.V)
	}
}

// Just inside a window all that passes at the answer still passes; just outside
// something does not, or a bound is reached.
func TestWindows(t *testing.T) {
	eachAnswer(t, rules.MarkMetric, func(t *testing.T, n int, f *fit.Fitting, a *advice.Answer, o advice.Outcome) {
		if n%4 != 0 && !*long {
			return
		}
		g := applied(f, o)
		limits := rules.DefaultLimits()
		at := rules.Assess(g, limits)
		for _, c := range o.Changes {
			if c.Window == nil {
				continue
			}
			holds := func(v float64) bool {
				h := *g
				h.Changes = slices.Clone(g.Changes)
				for i := range h.Changes {
					if h.Changes[i].Piece.Key() == c.Piece {
						h.Changes[i].To = v
					}
				}
				there := rules.Assess(&h, limits)
				for e := range rules.NumEnds {
					if at.End(e).Plain == rules.Pass && there.End(e).Plain != rules.Pass {
						return false
					}
				}
				return true
			}
			w := newWhole(f, limits, rules.MarkMetric)
			i := slices.IndexFunc(w.free, func(x free) bool { return x.Key() == c.Piece })
			b := f.Kit.Pieces[w.free[i].Piece].Bounds
			for k, out := range [2]float64{-0.2, 0.2} {
				edge := c.Window[k]
				if !holds(edge) || edge < b[0]-1e-6 || edge > b[1]+1e-6 || (c.To-edge)*out > 0 {
					t.Errorf("session %d: %s at %g mm: %g is no edge of its window %v", n, c.Piece, c.To, edge, *c.Window)
				}
				if v := edge + out; v > b[0] && v < b[1] && holds(v) {
					t.Errorf("session %d: %s at %g mm: %g lies outside its window %v and holds", n, c.Piece, c.To, v, *c.Window)
				}
			}
		}
	})
}

// The same session gets the same answer, to the last digit.
func TestAnswersAreDeterministic(t *testing.T) {
	eachAnswer(t, rules.MarkMetric, func(t *testing.T, n int, f *fit.Fitting, a *advice.Answer, o advice.Outcome) {
		if n%5 != 0 {
			return
		}
		first, err := json.Marshal(a)
		if err != nil {
			t.Fatal(err)
		}
		again, _ := json.Marshal(advice.Advise("", f, rules.DefaultLimits(), rules.MarkMetric))
		if string(first) != string(again) {
			t.Errorf("session %d:\n%s\n%s", n, first, again)
		}
	})
}

// Where readings would do sooner, the cheaper change does once they are taken
// three times as they are.
func TestSoonerWouldDo(t *testing.T) {
	seen := 0
	eachAnswer(t, rules.MarkMetric, func(t *testing.T, n int, f *fit.Fitting, a *advice.Answer, o advice.Outcome) {
		if a.Sooner == nil || o.Cost != a.LeastChange.Cost {
			return
		}
		seen++
		if a.Sooner.Cost >= a.LeastChange.Cost || len(a.Sooner.Readings) < 1 || len(a.Sooner.Readings) > 5 {
			t.Errorf("session %d: %+v in place of cost %d", n, *a.Sooner, a.LeastChange.Cost)
		}
		g := f
		for _, key := range a.Sooner.Readings {
			list := rules.Assess(g, rules.DefaultLimits()).Readable()
			i := slices.IndexFunc(list, func(c rules.Candidate) bool { return c.Key == key })
			if i < 0 {
				t.Errorf("session %d: %s cannot be read", n, key)
				return
			}
			g = list[i].Fitting()
		}
		if b := advice.Advise("", g, rules.DefaultLimits(), rules.MarkMetric); !b.LeastChange.Feasible || b.LeastChange.Cost > a.Sooner.Cost {
			t.Errorf("session %d: after %v cost %d, told %d", n, a.Sooner.Readings, b.LeastChange.Cost, a.Sooner.Cost)
		}
	})
	if seen == 0 {
		t.Error("no session has anything to read sooner")
	}
}
