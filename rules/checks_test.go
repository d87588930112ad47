package rules

import (
	"slices"
	"testing"
)

func TestEveryCheckIsDescribed(t *testing.T) {
	names := map[string]bool{}
	for c := range NumChecks {
		info := c.Info()
		for field, v := range map[string]string{"Name": info.Name, "Group": info.Group, "Title": info.Title, "What": info.What, "Why": info.Why,
			"Measured": info.Measured, "Do": info.Do, "Source": info.Source, "Kind": string(info.Kind)} {
			if v == "" {
				t.Errorf("check %d (%s): no %s", c, info.Name, field)
			}
		}
		if names[info.Name] {
			t.Errorf("two checks are named %s", info.Name)
		}
		names[info.Name] = true
		if got, ok := CheckNamed(info.Name); !ok || got != c {
			t.Errorf("CheckNamed(%q) = %v, %v", info.Name, got, ok)
		}
		if !slices.IsSorted(info.Limits) || !slices.IsSorted(info.Readings) {
			t.Errorf("%s: limits or readings out of order", info.Name)
		}
	}
}

// Every limit serves a check, but saddle-force, which is only told.
func TestEveryLimitServesACheck(t *testing.T) {
	used := map[Limit]bool{SaddleForce: true}
	for c := range NumChecks {
		for _, l := range c.Info().Limits {
			used[l] = true
		}
	}
	for l := range NumLimits {
		if !used[l] {
			t.Errorf("no check is held against %s", l)
		}
	}
}
