package rules_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// TestFindingsByHand: each finding at the value where it begins, and not one
// step before; no verdict changes by what only looks odd.
func TestFindingsByHand(t *testing.T) {
	mass := func(kg float64) func(*fit.Fitting) { return func(f *fit.Fitting) { f.Mass = fit.Some(kg) } }
	above := func(mm float64) func(*fit.Fitting) { return func(f *fit.Fitting) { f.Rope.LeastAbove = fit.Some(mm) } }
	drill := func(mm float64) func(*fit.Fitting) { return func(f *fit.Fitting) { f.Rope.DrillAbove = fit.Some(mm) } }
	behind := func(mm float64) func(*fit.Fitting) {
		return func(f *fit.Fitting) { f.Posture[fit.BehindRope] = fit.Setting{V: mm, U: 50, Given: true} }
	}
	many := func(r fit.Reading, values ...float64) func(*fit.Fitting) {
		return func(f *fit.Fitting) { *list(f, r) = values }
	}
	both := func(a, b func(*fit.Fitting)) func(*fit.Fitting) { return func(f *fit.Fitting) { a(f); b(f) } }
	for name, c := range map[string]struct {
		finding string
		edit    func(*fit.Fitting)
		text    string // part of it; empty where there is none
		keys    []string
	}{
		"heavy":                      {"heavy", mass(161), "161 kg is heavy; 161 lb is 73.0 kg: was it pounds?", []string{"climber.mass_kg"}},
		"not heavy":                  {"heavy", mass(160), "", nil},
		"no rope above":              {"units", above(4), "4 mm of rope above is next to none", []string{"rope.least_above_mm"}},
		"rope above, drill":          {"units", drill(99.5), "99.5 mm of rope above", []string{"rope.drill_above_mm"}},
		"some rope above":            {"units", above(100), "", nil},
		"thigh in inches":            {"units", set(fit.Thigh, 17.2), "far from the 426 mm that the other readings make likely, 437 mm is not: was it inches?", []string{"climber.thigh_mm"}},
		"nose in centimetres":        {"units", set(fit.Nose, 1520+69.8), "was it centimetres?", []string{"hangs.1.hip_mm", "hangs.1.nose_mm"}},
		"nose and wrist in inches":   {"units", both(set(fit.Nose, 1520+27.48), set(fit.WristUp, 1520+44.1)), "was it inches?", []string{"hangs.1.hip_mm", "hangs.1.nose_mm", "hangs.1.wrist_up_mm"}},
		"an unlikely thigh":          {"units", set(fit.Thigh, 300), "", nil},
		"main bridge nearly tight":   {"bridge-nearly-straight", set(fit.MainBridge, 374), "374 mm on rings 364 mm", []string{"kit.main_bridge.length_mm", "kit.main_bridge.rings_mm"}},
		"main bridge with slack":     {"bridge-nearly-straight", set(fit.MainBridge, 375), "", nil},
		"backup nearly tight":        {"bridge-nearly-straight", set(fit.BackupBridge, 370), "370 mm on rings 360 mm", []string{"kit.backup_bridge.length_mm", "kit.backup_bridge.rings_mm"}},
		"soles above the hip":        {"odd-reading", set(fit.Soles, 1521), "boot soles were read above the hip", []string{"hangs.1.hip_mm", "hangs.1.soles_mm"}},
		"soles at the hip":           {"odd-reading", set(fit.Soles, 1520), "", nil},
		"rope behind":                {"odd-reading", set(fit.Ahead, -1), "behind the hip point", []string{"rope.ahead_mm"}},
		"rope through the hip":       {"odd-reading", set(fit.Ahead, 0), "", nil},
		"leg too short":              {"out-of-domain", behind(990), "too short to stand so far from", []string{"climber.thigh_mm", "climber.shin_mm", "posture.behind_rope_mm"}},
		"foot loop too short":        {"out-of-domain", set(fit.FootLoop, 100), "does not reach from the foot to the rope", []string{"kit.foot_loop.length_mm", "climber.thigh_mm", "climber.shin_mm", "rope.ahead_mm"}},
		"small":                      {"outside-survey", set(fit.Stature, 1399), "1399 mm is outside the body survey (1400 mm to 2000 mm)", []string{"climber.stature_mm"}},
		"as small as the survey":     {"outside-survey", set(fit.Stature, 1400), "", nil},
		"tall":                       {"outside-survey", set(fit.Stature, 2001), "2001 mm is outside", []string{"climber.stature_mm"}},
		"as tall as the survey":      {"outside-survey", set(fit.Stature, 2000), "", nil},
		"told and tall":              {"outside-survey", func(f *fit.Fitting) { f.Laid[fit.Stature], f.StatureTold = nil, fit.Some(2100) }, "2100 mm", []string{"climber.stature_told_mm"}},
		"five alike":                 {"identical-repeats", many(fit.Thigh, 436, 436, 436, 436, 436), "5 readings of thigh are all the same", []string{"climber.thigh_mm"}},
		"four alike":                 {"identical-repeats", many(fit.Thigh, 436, 436, 436, 436), "", nil},
		"five, one other":            {"identical-repeats", many(fit.Thigh, 436, 436, 436, 436, 437), "", nil},
		"repeats 30 mm apart":        {"repeats-disagree", many(fit.Nose, 2203, 2218, 2233), "two readings of nose, hang 1 lie 30 mm apart", []string{"hangs.1.nose_mm"}},
		"repeats less than 30 mm":    {"repeats-disagree", many(fit.Nose, 2204, 2233), "", nil},
		"foot loop not at its level": {"readings-disagree", set(fit.GardaLevel, 2050), " mm off", nil},
	} {
		t.Run(name, func(t *testing.T) {
			f := goodFitting()
			c.edit(f)
			for _, found := range judge(t, f, rules.DefaultLimits()).Findings {
				if found.Name != c.finding {
					continue
				}
				if c.text == "" || !strings.Contains(found.Text, c.text) {
					t.Errorf("got %q, want %q in it", found.Text, c.text)
				}
				if c.keys != nil && !slices.Equal(found.Inputs, c.keys) {
					t.Errorf("names %v, want %v", found.Inputs, c.keys)
				}
				return
			}
			if c.text != "" {
				t.Errorf("%s was not found", c.finding)
			}
		})
	}
}
