package rules_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// Where an input, as uncertain as it is, takes a pose out of its domain both
// ways, what needs the pose is unknown and a finding says which input that is.
func TestPoseOnTheEdgeOfItsDomainIsUnknownWithWords(t *testing.T) {
	for _, c := range []struct {
		name  string
		put   func(f *fit.Fitting)
		key   string
		words string
		check string
	}{
		{"the knee farther from level than the thigh is long, up or down", func(f *fit.Fitting) {
			*list(f, fit.KneeLevel) = nil
			f.Posture[fit.LevelByEye] = fit.Setting{V: 0, U: 500, Given: true}
		}, "posture.level_by_eye_mm", "the knee above the hip when the thigh looks level", "garda-under-connector"},
		{"the leg just long enough when straight", func(f *fit.Fitting) {
			f.Posture[fit.KneeBend] = fit.Setting{V: 0, U: 8, Given: true}
			f.Posture[fit.BehindRope] = fit.Setting{V: 436 + 540 - 1, U: 5, Given: true}
		}, "posture.knee_bend_deg", "the knee bend when standing", "slip-drop"},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := goodFitting()
			c.put(f)
			r := judge(t, f, rules.DefaultLimits())
			if got := check(t, r, c.check); got.Verdict != rules.Unknown || got.U.Known() || len(got.Missing) > 0 {
				t.Errorf("%s is %s with u %v", c.check, got.Verdict, got.U)
			}
			i := slices.IndexFunc(r.Findings, func(f rules.Finding) bool { return f.Name == "out-of-domain" })
			if i < 0 {
				t.Fatalf("nothing says why: %+v", r.Findings)
			}
			if f := r.Findings[i]; !slices.Contains(f.Inputs, c.key) || !strings.Contains(f.Text, c.words) {
				t.Errorf("finding %q names %v, want %s", f.Text, f.Inputs, c.key)
			}
		})
	}
}
