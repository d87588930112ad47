package drill_test

import (
	"math"
	"strings"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/drill"
)

// A tether that the main connector stops short of taut cannot be loaded in the
// drill: it is refused, the more surely the longer the tether is.
func TestRefusedWhereTheTetherCannotComeTaut(t *testing.T) {
	told := map[rules.Verdict]bool{}
	for more := 0.0; more <= 400; more += 5 {
		f, l, _ := example(t, "1-good-kit")
		changed := f.Changed(map[fit.Piece]float64{fit.PieceTether: f.Laid[fit.Tether][0] + more})
		for _, r := range drill.New(changed, l, rules.Assess(changed, l)).Refused {
			if s := r.In("mm"); strings.Contains(s, "slack") && strings.Contains(s, "may be") {
				told[r.Verdict] = true
			}
		}
	}
	if !told[rules.Tight] || !told[rules.Fail] {
		t.Errorf("refused over slack: %v, want tight where it may be too much and fail where it is", told)
	}
}

func TestClimbByMovesThatClimbNothing(t *testing.T) {
	for _, c := range []struct {
		net, u float64
		want   string
	}{
		{-10, 5, ": a move climbs nothing"},
		{math.NaN(), math.NaN(), "what a move climbs is not known"},
		{100, 80, "a move may climb nothing"},
		{300, 10, "(10 to 11)"},
	} {
		r := drill.Rehearsal{Net: drill.Expectation{Value: c.net, U: c.u}}
		if got := r.Climb(3000, "mm").In("mm"); !strings.Contains(got, c.want) {
			t.Errorf("%g ± %g mm a move: %q, want %q in it", c.net, c.u, got, c.want)
		}
	}
}

func TestStepsAreFoundByName(t *testing.T) {
	for _, s := range drill.Steps() {
		if got, ok := drill.StepNamed(s.Name); !ok || got.Name != s.Name {
			t.Errorf("%s is found as %s", s.Name, got.Name)
		}
	}
	if s, ok := drill.StepNamed("jump"); ok {
		t.Errorf("jump is found as %s", s.Name)
	}
}
