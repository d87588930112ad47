package tally

import (
	"strings"
	"testing"

	"example.com/hangtape/cmd/trial/runs"
	"example.com/hangtape/cmd/trial/truth"
	"example.com/hangtape/rules"
)

func TestVerdicts(t *testing.T) {
	var j runs.Judged
	for e := range truth.Ends {
		j.True[e] = 10
		j.Told[e] = runs.Told{Margin: 12, U: 4, Verdict: rules.Pass}
	}
	j.True[truth.ReachRight] = -1                     // told a pass, truly fails
	j.Told[truth.UnderConnector].Verdict = rules.Fail // told a fail, truly holds
	j.Told[truth.DropBelow].Verdict = rules.Tight
	var v Verdicts
	v.add(&j)
	for name, got := range map[string]Share{
		"false pass of the reach":          v.FalsePass[rules.HitchTopReach],
		"it lies within one u":             v.ByBand[rules.HitchTopReach][0],
		"false fail under the connector":   v.FalseFail[rules.GardaUnderConnector],
		"tight by one end of two":          v.Tight[rules.SlipDrop],
		"told passes that lie over 2·u in": {1 - v.ByBand[rules.GardaReleaseRoom][2].K, v.ByBand[rules.GardaReleaseRoom][2].N},
	} {
		if got != (Share{1, 1}) {
			t.Errorf("%s: %v", name, got)
		}
	}
	if s := v.FalsePass[rules.SlipDrop]; s.N != 0 {
		t.Errorf("a tight check is no told pass: %v", s)
	}
}

func TestFigureWorse(t *testing.T) {
	golden := Figure{Value: 0.5, Spread: 0.1, More: true}
	for _, c := range []struct {
		value float64
		more  bool
		want  bool
	}{{0.39, true, true}, {0.41, true, false}, {0.9, true, false}, {0.61, false, true}, {0.1, false, false}} {
		golden.More = c.more
		if got := (Figure{Value: c.value, More: c.more}).Worse(golden); got != c.want {
			t.Errorf("%g where more is better is %v: worse %v", c.value, c.more, got)
		}
	}
}

func TestTableBothWays(t *testing.T) {
	table := Table{Title: "T", Head: []string{"a", "b"}}
	table.Add("x", Share{1, 4})
	var text, markdown strings.Builder
	if err := table.Text(&text); err != nil {
		t.Fatal(err)
	}
	if err := table.Markdown(&markdown); err != nil {
		t.Fatal(err)
	}
	if want := "T\n  a  b\n  x  25.0 %\n\n"; text.String() != want {
		t.Errorf("%q, want %q", text.String(), want)
	}
	if want := "### T\n\n| a | b |\n| --- | --- |\n| x | 25.0 % |\n\n"; markdown.String() != want {
		t.Errorf("%q, want %q", markdown.String(), want)
	}
}
