package rules_test

import (
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

func TestMarginsInWords(t *testing.T) {
	for want, c := range map[string]rules.Check{
		"just met":                  {Name: "slip-drop", Unit: "mm", Verdict: rules.Pass, U: 4},
		"12 ± 4 mm to spare":        {Name: "slip-drop", Unit: "mm", Verdict: rules.Pass, Margin: 12, U: 4},
		"0.3 ± 4.0 mm to spare":     {Name: "slip-drop", Unit: "mm", Verdict: rules.Tight, Margin: 0.3, U: 4},
		"1 ± 4 mm to spare":         {Name: "slip-drop", Unit: "mm", Verdict: rules.Tight, Margin: 1, U: 4},
		"0.003 ± 4.000 mm to spare": {Name: "slip-drop", Unit: "mm", Verdict: rules.Tight, Margin: 0.003, U: 4},
		"not known":                 {Name: "slip-drop", Unit: "mm", Verdict: rules.Unknown},
		"2 to spare":                {Name: "hitch-wraps", Verdict: rules.Pass, Margin: 2},
	} {
		if got := rules.MarginWords(c, "mm"); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// What would make a tight verdict sure: a larger margin, a reading, or else that
// it rests on an estimate.
func TestWhatTightSentencesAskFor(t *testing.T) {
	base := rules.Check{Name: "slip-drop", At: "above", Unit: "mm", Verdict: rules.Tight, Has: 550, Needs: 600, Margin: 50, U: 10, Guard: 50}
	for want, edit := range map[string]func(*rules.Check){
		"(50 ± 10 mm to spare; 51 mm would make it sure)":            func(c *rules.Check) { c.Guard = 51 },
		"(50 ± 10 mm to spare; to be sure, read the thigh)":          func(c *rules.Check) { c.Missing = []string{"climber.thigh_mm"} },
		"(50 ± 10 mm to spare, but it rests on an estimate)":         func(*rules.Check) {},
		"(50 ± 10 mm to spare; to be sure, tell the climber's mass)": func(c *rules.Check) { c.Missing = []string{"climber.mass_kg"} },
		"(50 ± 10 mm to spare)":                                      func(c *rules.Check) { c.Verdict = rules.Pass },
	} {
		c := base
		edit(&c)
		got := rules.Sentence(c, "mm")
		if n := len(got) - len(want); n < 0 || got[n:] != want {
			t.Errorf("%q, want %q at its end", got, want)
		}
	}
	base.Verdict, base.Margin = rules.Pass, 0
	if got := rules.Sentence(base, "mm"); got[len(got)-1] == ')' {
		t.Errorf("just met, and told: %q", got)
	}
}

func TestNumbersAsProgramsReadThem(t *testing.T) {
	for want, v := range map[string]float64{"0": math.Copysign(0, -1), "-1.5": -1.5, "null": math.Inf(-1)} {
		if got, err := json.Marshal(rules.Num(v)); err != nil || string(got) != want {
			t.Errorf("%s, %v, want %s", got, err, want)
		}
	}
}

func TestRopeAboveIsToldNeverShorter(t *testing.T) {
	for want, c := range map[string]struct {
		mm   float64
		unit string
	}{"10.0 ft": {3048, "in"}, "10.1 ft": {3050, "in"}, "3.0 m": {3000, "mm"}, "3.1 m": {3001, "cm"}} {
		if got := rules.FormatBelow(c.mm, c.unit); got != want {
			t.Errorf("%g mm: %q, want %q", c.mm, got, want)
		}
	}
}

func TestNumbersOfHangsBeginAtOne(t *testing.T) {
	for _, key := range []string{"hangs.0.hip_mm", "hangs.-1.hip_mm", "changes.0.to_mm", ".hip_mm"} {
		if got := rules.InputName(key); got != key {
			t.Errorf("%s is called %q", key, got)
		}
	}
}

// Where readings are likely in two units, the one that more of them are likely in
// is named.
func TestUnitThatMostReadingsAreLikelyIn(t *testing.T) {
	for want, c := range map[string]struct{ nose, wrist, waist float64 }{
		"inches":      {27.48, 44.1, 111},
		"centimetres": {69.8, 112, 43.7},
	} {
		f := goodFitting()
		set(fit.Nose, 1520+c.nose)(f)
		set(fit.WristUp, 1520+c.wrist)(f)
		set(fit.Waist, c.waist)(f)
		keys, named := []string{"hangs.1.hip_mm", "hangs.1.nose_mm", "hangs.1.wrist_up_mm"}, false
		for _, x := range judge(t, f, rules.DefaultLimits()).Findings {
			if x.Name != "units" {
				continue
			}
			if named = true; !slices.Equal(x.Inputs, keys) || !strings.Contains(x.Text, want) {
				t.Errorf("%s: %q of %q", want, x.Text, x.Inputs)
			}
		}
		if !named {
			t.Errorf("%s: no unit is named", want)
		}
	}
}

// A length that was kept is questioned like one that was read.
func TestKeptReadingsAreDoubtedToo(t *testing.T) {
	f := goodFitting()
	f.Started = time.Date(2026, 4, 18, 9, 0, 0, 0, time.UTC)
	set(fit.GardaTaut, 2100)(f)
	inputs := func() []string {
		for _, x := range judge(t, f, rules.DefaultLimits()).Findings {
			if x.Name == "readings-disagree" && slices.Contains(x.Inputs, "hangs.1.garda_taut_mm") {
				return x.Inputs
			}
		}
		return nil
	}
	read := inputs()
	if len(read) != 2 {
		t.Fatalf("doubted: %q", read)
	}
	for _, key := range read {
		if key != "hangs.1.garda_taut_mm" {
			f.Kept = append(f.Kept, fit.Kept{Key: key, Taken: f.Started})
		}
	}
	if kept := inputs(); !slices.Equal(kept, read) {
		t.Errorf("doubted once it is kept: %q, before it %q", kept, read)
	}
}

// A bare report is the report without its sentences.
func TestBareReportIsTheReportWithoutSentences(t *testing.T) {
	a := rules.Assess(goodFitting(), rules.DefaultLimits())
	whole, bare := a.Report("id"), a.Bare("id")
	for i, c := range bare.Checks {
		w := whole.Checks[i]
		if c.Name != w.Name || c.Verdict != w.Verdict || !same(c.Margin, w.Margin, 0) || !same(c.Guard, w.Guard, 0) {
			t.Errorf("%+v, want %+v", c, w)
		}
	}
	if len(bare.Checks) != len(whole.Checks) || bare.Outcome != whole.Outcome || bare.ID != "id" {
		t.Errorf("%d checks, %s, of %q", len(bare.Checks), bare.Outcome, bare.ID)
	}
}
