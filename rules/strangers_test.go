package rules_test

import (
	"math"
	"testing"

	"example.com/hangtape/rules"
)

// What no rule or pose is called says nothing, and does nothing.
func TestUnknownNamesSayNothing(t *testing.T) {
	c := rules.Check{Name: "no-such-check", Verdict: rules.Pass, Has: 1, Needs: 1}
	if s, m := rules.Sentence(c, "mm"), rules.MarginWords(c, "mm"); s != "" || m != "" {
		t.Errorf("said %q and %q of no check", s, m)
	}
	a := rules.Assess(goodFitting(), rules.DefaultLimits())
	for i := range a.Model().Inputs {
		if e := a.PoseEffect(i, "no-such-pose"); e != 0 {
			t.Errorf("input %d adds %v to no pose", i, e)
		}
	}
}

// A finding that was told without its numbers says the same in every unit.
func TestFindingWithoutNumbersSaysItsText(t *testing.T) {
	f := rules.Finding{Name: "outside-survey", Text: "stature 2100 mm is outside the body survey"}
	if got := f.In("in"); got != f.Text {
		t.Errorf("in inches it says %q", got)
	}
}

func TestUnknownLengthsAreADash(t *testing.T) {
	for _, got := range []string{
		rules.FormatBelow(math.NaN(), "mm"), rules.FormatLength(math.NaN(), "in"), rules.FormatValue(math.NaN(), 1, "kN"), rules.FormatPM(math.NaN(), 3, "cm"),
	} {
		if got != "-" {
			t.Errorf("unknown is told as %q", got)
		}
	}
}
