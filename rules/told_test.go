package rules_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

func TestBriefVerdicts(t *testing.T) {
	for want, c := range map[string]rules.Check{
		"FAIL -12 mm":  {Name: "hitch-top-reach", Verdict: rules.Fail, Margin: -12, U: 5},
		"FAIL -1.2 cm": {Name: "hitch-top-reach", Verdict: rules.Fail, Margin: -12, U: 5},
		"PASS 0.5 in":  {Name: "hitch-top-reach", Verdict: rules.Pass, Margin: 12, U: 5},
		"TIGHT 11 deg": {Name: "knee-bend-on-tether", At: "knee", Verdict: rules.Tight, Margin: 11.4, U: 2},
		"TIGHT 1.1 cm": {Name: "knee-bend-on-tether", At: "leg", Verdict: rules.Tight, Margin: 11.4, U: 2},
		"PASS 0.33 kN": {Name: "slip-force", Verdict: rules.Pass, Margin: 0.33, U: 0.1},
		"PASS 2":       {Name: "hitch-wraps", Verdict: rules.Pass, Margin: 2},
		"FAIL -1":      {Name: "two-load-paths", Verdict: rules.Fail, Margin: -1},
		"PASS 0.10":    {Name: "hitch-cord-grip", Verdict: rules.Pass, Margin: 0.0983, U: 0.02},
		"UNKNOWN":      {Name: "slip-drop", Verdict: rules.Unknown},
		"PASS 7 mm":    {Name: "slip-drop", At: "where it has no end", Verdict: rules.Pass, Margin: 7, U: 2},
	} {
		unit := "mm"
		for _, u := range []string{"cm", "in"} {
			if strings.HasSuffix(want, u) {
				unit = u
			}
		}
		if got := c.Brief(unit); got != want {
			t.Errorf("%s: %q, want %q", c.Name, got, want)
		}
	}
}

// A wait is told once for all checks that wait for it, in the order of the checks.
func TestMissingNames(t *testing.T) {
	checks := []rules.Check{
		{Missing: []string{"climber.thigh_mm", "rope.diameter_mm"}},
		{},
		{Missing: []string{"climber.mass_kg", "climber.thigh_mm"}},
	}
	want := []string{rules.InputName("climber.thigh_mm"), rules.InputName("rope.diameter_mm"), rules.InputName("climber.mass_kg")}
	if got := rules.MissingNames(checks); !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
	if got := rules.MissingNames(nil); got != nil {
		t.Errorf("nothing is missing, and told is %q", got)
	}
}

func TestMovedLimitsInWords(t *testing.T) {
	loop, pair := rules.LeastLoop, rules.MostPairDifference
	moved := map[rules.Limit]float64{loop: loop.Info().Default, pair: 25.4, rules.MostFlexion: 110, rules.MostCordRatio: 0.75}
	for unit, want := range map[string]string{
		"mm": "25.4 mm in place of 40 mm", "cm": "2.54 cm in place of 4 cm", "in": "1 in in place of 1 9/16 in",
	} {
		words := rules.MovedWords(moved, unit)
		if len(words) != 3 {
			t.Fatalf("%q, want a line for each of three", words)
		}
		if !slices.Contains(words, pair.String()+": "+want) {
			t.Errorf("in %s: %q, want %q", unit, words, want)
		}
		if !slices.Contains(words, rules.MostFlexion.String()+": 110 deg in place of 120 deg") || !slices.Contains(words, rules.MostCordRatio.String()+": 0.75 in place of 0.8") {
			t.Errorf("%q", words)
		}
	}
}

// The poses that can be told are those that an answer tells.
func TestPoseKinds(t *testing.T) {
	a := rules.Assess(goodFitting(), rules.DefaultLimits())
	told := a.Poses()
	kinds := rules.PoseKinds()
	if len(kinds) != len(told) {
		t.Fatalf("%d kinds, %d told of a fitting that reads all", len(kinds), len(told))
	}
	for i, k := range kinds {
		if k.Name != told[i].Name || k.Unit != told[i].Unit {
			t.Errorf("%s in %q, told is %s in %q", k.Name, k.Unit, told[i].Name, told[i].Unit)
		}
	}
}

// What the inputs add to an uncertainty, one by one, makes all of it.
func TestEffectsMakeTheUncertainty(t *testing.T) {
	a := rules.Assess(goodFitting(), rules.DefaultLimits())
	sum := func(of func(i int) float64) rules.Num {
		u2 := 0.0
		for i := range a.Model().Inputs {
			u2 += of(i) * of(i)
		}
		return rules.Num(u2)
	}
	for c := range rules.NumChecks {
		if u := a.Check(c).U; !same(sum(func(i int) float64 { return a.CheckEffect(i, c) }), u*u, 1e-9*max(1, float64(u*u))) {
			t.Errorf("%s: effects do not make %v", c, u)
		}
	}
	for _, p := range a.Poses() {
		if !same(sum(func(i int) float64 { return a.PoseEffect(i, p.Name) }), p.U*p.U, 1e-9*max(1, float64(p.U*p.U))) {
			t.Errorf("%s: effects do not make %v", p.Name, p.U)
		}
	}
}

// Every reading is the one that its topic explains; no other topic is of a reading.
func TestReadingOfATopic(t *testing.T) {
	readings := map[fit.Reading]bool{}
	for _, topic := range rules.Topics() {
		r, ok := topic.Reading()
		if ok != (topic.Kind == rules.ReadingTopic) {
			t.Errorf("%s: of a reading: %t", topic.Name, ok)
		}
		if ok && (readings[r] || !strings.EqualFold(topic.Title, r.Info().Name)) {
			t.Errorf("%s: explains %s", topic.Name, r.Info().Name)
		}
		readings[r] = readings[r] || ok
	}
	if len(readings) != int(fit.NumReadings) {
		t.Errorf("%d of %d readings are explained", len(readings), fit.NumReadings)
	}
	if r, ok := (rules.Topic{Kind: rules.ReadingTopic, Name: "no-such-reading"}).Reading(); ok {
		t.Errorf("no such reading is %v", r)
	}
}
