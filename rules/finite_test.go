package rules_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// No verdict comes from a number that is none: whatever is read, a check that is
// not unknown has finite numbers, and one that is unknown tells no margin.
func TestNoVerdictComesFromWhatIsNoNumber(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := drawFitting(t)
		odd := rapid.SampledFrom([]float64{1e-300, 1e-9, 1e-3, 0.3, 3, 1e3, 1e9, 1e150, 1e300})
		for _, r := range rapid.SliceOfN(rapid.IntRange(0, int(fit.NumReadings)-1), 0, 4).Draw(t, "odd readings") {
			by := odd.Draw(t, "by")
			for i := range *list(f, fit.Reading(r)) {
				(*list(f, fit.Reading(r)))[i] *= by
			}
		}
		if rapid.Bool().Draw(t, "odd rope") {
			f.Rope.LeastAbove = fit.Some(4000 * odd.Draw(t, "rope by"))
		}
		report, err := rules.Judge("", f, rules.DefaultLimits())
		if err != nil {
			t.Skip("cannot be")
		}
		for _, c := range report.Checks {
			for name, v := range map[string]rules.Num{"has": c.Has, "needs": c.Needs, "margin": c.Margin, "u": c.U, "shift": c.Shift, "guard": c.Guard} {
				switch x := float64(v); {
				case c.Verdict == rules.Unknown && name == "margin" && v.Known():
					t.Errorf("%s is unknown with a margin of %v", c.Name, x)
				case c.Verdict != rules.Unknown && (math.IsNaN(x) || math.IsInf(x, 0)):
					t.Errorf("%s at %q is told as %s with %s = %v", c.Name, c.At, c.Verdict, name, x)
				}
			}
		}
	})
}
