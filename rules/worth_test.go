package rules_test

import (
	"slices"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// TestWanted asks for what can still turn a verdict and for nothing else.
func TestWanted(t *testing.T) {
	next := rules.Next{Check: "c", Reading: "hangs.1.hip_mm", UNow: 10, UThen: 6, GuardThen: 10} // the margin moves by up to 1.645·8
	never := func(string) bool { return false }
	for name, c := range map[string]struct {
		check rules.Check
		spent func(string) bool
		want  []string
	}{
		"unknown":                  {rules.Check{Verdict: rules.Unknown, Missing: []string{"climber.thigh_mm"}}, never, []string{"hangs.1.hip_mm", "climber.thigh_mm"}},
		"tight, may fail":          {rules.Check{Verdict: rules.Tight, Margin: 8}, never, []string{"hangs.1.hip_mm"}},
		"fail, may be tight":       {rules.Check{Verdict: rules.Fail, Margin: -5}, never, []string{"hangs.1.hip_mm"}},
		"fail, whatever is read":   {rules.Check{Verdict: rules.Fail, Margin: -14}, never, nil},
		"read often enough":        {rules.Check{Verdict: rules.Tight, Margin: 8}, func(string) bool { return true }, nil},
		"a should among the musts": {rules.Check{Verdict: rules.Tight, Margin: 8, Kind: rules.Should}, never, nil},
	} {
		c.check.Name = "c"
		if c.check.Kind == "" {
			c.check.Kind = rules.Must
		}
		r := &rules.Report{Checks: []rules.Check{c.check}, Next: []rules.Next{next}}
		var got []string
		for _, w := range r.Wanted(rules.Must, c.spent) {
			got = append(got, w.Reading)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
}

// TestWantedLeadsToAnEnd reads what is wanted, musts first, until nothing is: no
// must is unknown then, and not everything was read.
func TestWantedLeadsToAnEnd(t *testing.T) {
	whole := goodFitting()
	f := goodFitting()
	f.Laid, f.Hangs = [fit.NumReadings][]float64{}, make([]fit.Hang, 1)
	f.Laid[fit.Stature] = whole.Laid[fit.Stature]
	asked := map[string]int{}
	for range 200 {
		r, err := rules.Judge("", f, rules.DefaultLimits())
		if err != nil {
			t.Fatal(err)
		}
		w := r.Wanted(rules.Must, func(key string) bool { return asked[key] >= 2 })
		if len(w) == 0 {
			for _, c := range r.Checks {
				if c.Kind == rules.Must && c.Verdict == rules.Unknown {
					t.Errorf("%s is unknown and nothing is asked for: %v", c.Name, c.Missing)
				}
			}
			if len(asked) >= int(fit.NumReadings) {
				t.Errorf("everything was read: %v", asked)
			}
			return
		}
		key := w[0].Reading
		asked[key]++
		for r := range fit.NumReadings {
			if key == fit.LaidKey(r) || r.IsHeight() && key == fit.HeightKey(0, r) {
				*list(f, r) = append(*list(f, r), (*list(whole, r))[0]+float64(asked[key]))
			}
		}
	}
	t.Fatal("no end")
}
