package rules_test

import (
	"math"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// set is a change of one reading of the good fitting.
func set(r fit.Reading, v float64) func(*fit.Fitting) {
	return func(f *fit.Fitting) { *list(f, r) = []float64{v} }
}

// Every side and end of every check, worked out by hand from the good fitting's
// own numbers with one thing changed so that this end decides.
func TestEndsByHand(t *testing.T) {
	const (
		thigh, shin, ahead, loop = 436.0, 540.0, 190.0, 1012.0
		knee, level, taut        = 4.0, 446.0, 456.0 // above the hip
	)
	garda := func(k float64) float64 {
		x := math.Sqrt(thigh*thigh-k*k) - ahead
		return k - shin + math.Sqrt(loop*loop-x*x)
	}
	ylevel := level + garda(0) - garda(knee)
	over := taut - ylevel
	stand := math.Sqrt(thigh*thigh + shin*shin + 2*thigh*shin*math.Cos(15*math.Pi/180) - 60*60)
	gain := ylevel - loop + stand
	slack := over + gain
	distance := math.Hypot(loop-taut, ahead)
	flexion := 180 - math.Acos((thigh*thigh+shin*shin-distance*distance)/(2*thigh*shin))*180/math.Pi
	weight, modulus := 80*9.80665/1000, 100*9.80665/1000/0.022
	peak := func(length, drop float64) float64 {
		return weight + math.Sqrt(weight*weight+2*(2*modulus/length)*drop*weight)
	}
	stretch := func(drop float64) float64 { return (peak(7000, drop) - weight) * 7000 / (2 * modulus) }

	for _, c := range []struct {
		check, at string
		change    func(*fit.Fitting)
		margin    float64
	}{
		{"hitch-top-reach", "left", nil, 2640 - 2600},
		{"hitch-top-reach", "right", set(fit.RightHitchTop, 2650), -10},
		{"hitch-handhold", "right", nil, 2494 - 2170 - 305},
		{"hitch-handhold", "left", set(fit.LeftLoopTop, 2460), 2460 - 2170 - 305},
		{"hitch-pair-level", "left", nil, 40 - 10},
		{"hitch-pair-level", "right", set(fit.RightHitchTop, 2650), 40 - 50},
		{"connector-at-face", "below", nil, 2170 - (2218 - 70)},
		{"connector-at-face", "above", set(fit.ConnectorTop, 2300), 2218 + 70 - 2300},
		{"garda-low-reach", "", nil, ylevel - gain - (1412 - 1520)},
		{"foot-loop-at-waist", "below", nil, 1012 - (1110 - 150)},
		{"foot-loop-at-waist", "above", set(fit.Waist, 930), 930 + 75 - 1012},
		{"garda-under-connector", "", nil, 538 - ylevel - 25},
		{"garda-release-room", "", nil, 538 - taut - 40},
		{"tether-lets-thigh-level", "", nil, over + 20},
		{"tether-stops-knee", "", nil, 50 - over},
		{"knee-bend-on-tether", "knee", nil, 120 - flexion},
		{"knee-bend-on-tether", "leg", set(fit.GardaTaut, 1520-100), thigh + shin - math.Hypot(loop+100, ahead)},
		{"slip-drop", "above", nil, 600 - slack},
		{"slip-drop", "below", set(fit.GardaTaut, 1976-420), slack - 420},
		{"slip-force", "", nil, 6 - peak(4000, slack)},
		{"drill-ground-room", "level", nil, 502 + gain - 30 - slack - stretch(slack)},
		{"drill-ground-room", "short", func(f *fit.Fitting) {
			set(fit.GardaTaut, 1946)(f)
			set(fit.Soles, 507)(f)
		}, 247 + gain - 30 - (slack - 30) - stretch(slack-30) + over - 30},
		{"garda-connector-size", "", nil, 41 - 3.2*11.4},
		{"hitch-cord-grip", "left", nil, 0.8 - 8/11.4},
		{"hitch-cord-grip", "right", func(f *fit.Fitting) { f.Kit.Pieces[fit.PieceHitchRight].Cord = fit.Some(10) }, 0.8 - 10/11.4},
		{"hitch-cord-bite", "right", func(f *fit.Fitting) { f.Kit.Pieces[fit.PieceHitchRight].Cord = fit.Some(6) }, 6/11.4 - 0.6},
		{"hitch-wraps", "right", func(f *fit.Fitting) { f.Kit.Pieces[fit.PieceHitchRight].Wraps = fit.Some(2) }, 2 - 3},
		{"hitch-cord-strength", "left", nil, 2*13.5*0.5 - 10*weight},
		{"hitch-cord-strength", "right", func(f *fit.Fitting) { f.Kit.Pieces[fit.PieceHitchRight].Strength = fit.Number{} }, 2*12.8*0.5 - 10*weight},
		{"tether-strength", "limit", func(f *fit.Fitting) { f.Kit.Pieces[fit.PieceTether].Strength = fit.Some(11) }, 2*11*0.5 - 2*6},
		{"tether-strength", "force", nil, 2*17*0.5 - 2*peak(4000, slack)},
		{"two-load-paths", "", nil, 0},
		{"two-load-paths", "", func(f *fit.Fitting) { f.Kit.OwnRings = fit.No }, -1},
	} {
		f := goodFitting()
		if c.change != nil {
			c.change(f)
		}
		got := check(t, judge(t, f, rules.DefaultLimits()), c.check)
		if got.At != c.at || !same(got.Margin, rules.Num(c.margin), 1e-9) {
			t.Errorf("%s: margin %v at %q, want %v at %q", c.check, got.Margin, got.At, c.margin, c.at)
		}
	}
}
