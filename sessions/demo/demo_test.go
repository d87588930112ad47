package demo_test

import (
	"testing"

	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/demo"
)

// The demo sessions show what their names say.
func TestDemoSessionsShowWhatTheySay(t *testing.T) {
	want := map[string]rules.Verdict{
		"a-good-kit.toml":          rules.Pass,
		"b-short-bridge.toml":      rules.Fail,
		"c-on-the-ground.toml":     rules.Unknown,
		"d-half-a-year-later.toml": rules.Tight,
	}
	for _, f := range demo.Files() {
		s, err := sessions.Decode(f.Name, f.Data)
		if err != nil {
			t.Fatal(err)
		}
		report, err := s.Judge()
		if err != nil {
			t.Fatal(err)
		}
		if report.Outcome != want[f.Name] || len(report.Findings) > 0 {
			t.Errorf("%s: %s with findings %v, want %s without", f.Name, report.Outcome, report.Findings, want[f.Name])
		}
		delete(want, f.Name)
	}
	if len(want) > 0 {
		t.Errorf("not among the demo sessions: %v", want)
	}
}
