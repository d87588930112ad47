package rules_test

import (
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// TestFindingsAreToldInTheUnitThatPeopleReadIn: Text, which programs read, stays
// in mm.
func TestFindingsAreToldInTheUnitThatPeopleReadIn(t *testing.T) {
	f := goodFitting()
	f.Laid[fit.MainBridge] = []float64{365}
	f.Laid[fit.MainBridgeRings] = []float64{360}
	f.Laid[fit.Thigh] = []float64{400, 450.8}
	told := map[string]map[string]string{
		"repeats-disagree": {
			"mm": "two readings of thigh lie 51 mm apart: read it again",
			"cm": "two readings of thigh lie 5.1 cm apart: read it again",
			"in": "two readings of thigh lie 2.0 in apart: read it again",
		},
		"bridge-nearly-straight": {
			"mm": "a bridge of 365 mm on rings 360 mm apart is nearly straight: a little more or less of it moves its middle far",
			"cm": "a bridge of 36.5 cm on rings 36 cm apart is nearly straight: a little more or less of it moves its middle far",
			"in": "a bridge of 14.3701 in on rings 14.1732 in apart is nearly straight: a little more or less of it moves its middle far",
		},
	}
	for _, found := range judge(t, f, rules.DefaultLimits()).Findings {
		for unit, want := range told[found.Name] {
			if got := found.In(unit); got != want {
				t.Errorf("%s in %s: %q\nwant %q", found.Name, unit, got, want)
			}
		}
		if found.Text != found.In("mm") {
			t.Errorf("%s: text is %q", found.Name, found.Text)
		}
		delete(told, found.Name)
	}
	for name := range told {
		t.Errorf("%s was not found", name)
	}
}
