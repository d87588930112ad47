package rules_test

import (
	"math"
	"path/filepath"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

// The two landmarks of a check are as far apart in its pose as the check says
// that it has, or what it has less what it needs where that is itself a height.
func TestSpansShowWhatTheChecksHave(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(examples, "*.toml"))
	if err != nil || len(files) == 0 {
		t.Fatal("no examples", err)
	}
	held := map[rules.CheckID]int{}
	for _, file := range files {
		s, err := sessions.ReadFile(file, nil)
		if err != nil {
			t.Fatal(err)
		}
		report, err := s.Judge()
		if err != nil {
			t.Fatal(err)
		}
		m := fit.NewModel(&s.Session.Fit, fit.Options{})
		for _, c := range report.Checks {
			id, ok := rules.CheckNamed(c.Name)
			if !ok {
				t.Fatalf("no check %q", c.Name)
			}
			span, ok := id.Span(c.At)
			if !ok || !c.Has.Known() || id == rules.KneeBendOnTether || id == rules.DrillGroundRoom {
				continue
			}
			sh := m.Shape(span.Pose)
			gap := sh.At[span.Upper].Y - sh.At[span.Lower].Y
			want := float64(c.Has)
			switch {
			case id == rules.GardaLowReach:
				want = float64(c.Margin)
			case id == rules.ConnectorAtFace && c.At == "below":
				want = -want
			}
			if math.Abs(gap-want) > 1e-6 {
				t.Errorf("%s: %s at %q: the drawing has %g, the check %g", filepath.Base(file), c.Name, c.At, gap, want)
			}
			held[id]++
		}
	}
	if len(held) < 9 {
		t.Errorf("only %d checks were held against the drawing: %v", len(held), held)
	}
}

// A check that no pose shows has no span, and every other one names two
// landmarks that differ.
func TestSpansNameTwoLandmarks(t *testing.T) {
	for id := range rules.NumChecks {
		for _, end := range id.Ends() {
			at := end.At()
			if span, ok := id.Span(at); ok && (span.Pose == fit.NoPose || span.Lower == span.Upper) {
				t.Errorf("%s at %q: %+v", id, at, span)
			}
		}
	}
}
