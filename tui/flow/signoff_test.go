package flow_test

import (
	"strings"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/flow"
	"example.com/hangtape/tui/flow/flowtest"
)

// A must that rests on a length nobody has measured keeps everybody from signing,
// note or no note: also where its margin alone would leave it tight.
func TestNobodySignsOnAPrediction(t *testing.T) {
	byMargin := 0 // tight whatever they rest on
	for _, to := range []float64{134, 140, 145, 160} {
		s := flowtest.Examples(t, examples)["1-good-kit.toml"].Clone()
		s.Purpose = sessions.FirstFitting
		s.Fit.Changes = []fit.Change{{Piece: fit.PieceTether, From: fit.Some(135), To: to, AfterHang: 1}}
		st := flow.Start(*s, flow.Config{Judge: (*sessions.Session).Judge})
		st.SignBy, st.SignNote = "demo instructor", "accepted"
		against := strings.Join(st.Against(), "\n")
		for _, c := range st.Report.Checks {
			if c.Verdict == rules.Tight && c.Blocks && c.Margin < c.Guard {
				byMargin++
			}
			if c.Kind == rules.Must && c.Blocks && !strings.Contains(against, c.Name) {
				t.Errorf("tether of %g mm: %s is %s, margin %.0f, guard %.0f, and rests on a prediction; against it: %q", to, c.Name, c.Verdict, float64(c.Margin), float64(c.Guard), against)
			}
		}
	}
	if byMargin == 0 {
		t.Error("no must is tight by its margin: this tries nothing")
	}
}
