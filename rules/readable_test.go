package rules_test

import (
	"math"
	"slices"
	"testing"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// keysOf are the keys of the readings that can be taken afresh.
func keysOf(f *fit.Fitting) (keys []string) {
	for _, c := range rules.Assess(f, rules.DefaultLimits()).Readable() {
		keys = append(keys, c.Key)
	}
	return keys
}

// What can be taken three times afresh: whatever was read less often, and what
// was not read and stands in a check all the same.
func TestReadableReadings(t *testing.T) {
	all := keysOf(goodFitting())
	if !slices.IsSortedFunc(all, fit.CompareKeys) || len(slices.Compact(slices.Clone(all))) != len(all) {
		t.Errorf("not in order, or twice: %q", all)
	}
	for _, key := range []string{"climber.thigh_mm", "hangs.1.hip_mm", "hangs.1.nose_mm", "kit.tether.length_mm", "hangs.1.garda_level_mm"} {
		if !slices.Contains(all, key) {
			t.Errorf("%s, which was read once, cannot be read: %q", key, all)
		}
	}
	for name, c := range map[string]struct {
		edit func(*fit.Fitting)
		key  string
		want bool
	}{
		"read three times":              {func(f *fit.Fitting) { *list(f, fit.Nose) = []float64{2217, 2218, 2219} }, "hangs.1.nose_mm", false},
		"read twice":                    {func(f *fit.Fitting) { *list(f, fit.Nose) = []float64{2217, 2219} }, "hangs.1.nose_mm", true},
		"estimated thigh":               {leaveOut(fit.Thigh), "climber.thigh_mm", true},
		"estimated nose":                {leaveOut(fit.Nose), "hangs.1.nose_mm", true},
		"Garda hitch at level not read": {leaveOut(fit.GardaLevel), "hangs.1.garda_level_mm", true},
		"Garda hitch taut not read":     {leaveOut(fit.GardaTaut), "hangs.1.garda_taut_mm", true},
		"knee at level not read":        {leaveOut(fit.KneeLevel), "hangs.1.knee_level_mm", true},
		"rope ahead not read":           {leaveOut(fit.Ahead), "rope.ahead_mm", true},
		"what no check rests on":        {leaveOut(fit.Inseam), "climber.inseam_mm", false},
		"after a change":                {func(f *fit.Fitting) { f.Changes = []fit.Change{{Piece: fit.PieceTether, To: 150, AfterHang: 1}} }, "changes.1.measured_mm", true},
		"what a change left behind":     {func(f *fit.Fitting) { f.Changes = []fit.Change{{Piece: fit.PieceTether, To: 150, AfterHang: 1}} }, "kit.tether.length_mm", false},
		"what a change has moved":       {func(f *fit.Fitting) { f.Changes = []fit.Change{{Piece: fit.PieceTether, To: 150, AfterHang: 1}} }, "hangs.2.garda_taut_mm", true},
	} {
		f := goodFitting()
		c.edit(f)
		if got := slices.Contains(keysOf(f), c.key); got != c.want {
			t.Errorf("%s: %s can be read: %t", name, c.key, got)
		}
	}
}

// A reading on trial at the present value makes the checks hardly less sure, and leaves them about
// where they are.
func TestReadableReadingsMakeSurer(t *testing.T) {
	for name, f := range map[string]*fit.Fitting{"all read": goodFitting(), "some estimated": leftOut(fit.Thigh, fit.Nose, fit.GardaLevel, fit.Ahead)} {
		a := rules.Assess(f, rules.DefaultLimits())
		for _, c := range a.Readable() {
			now := rules.Assess(c.Fitting(), rules.DefaultLimits())
			for e := range rules.NumEnds {
				was, is := a.End(e), now.End(e)
				if was.Plain == rules.Unknown {
					continue
				}
				if is.U > 1.01*was.U+1e-9 || math.Abs(is.Margin-was.Margin) > 5 {
					t.Errorf("%s: with %s %s is %g ± %g, before it %g ± %g", name, c.Key, e.Check(), is.Margin, is.U, was.Margin, was.U)
				}
			}
		}
	}
}

// leftOut is the good fitting without some readings.
func leftOut(rs ...fit.Reading) *fit.Fitting {
	f := goodFitting()
	for _, r := range rs {
		*list(f, r) = nil
	}
	return f
}

// What an estimate of the body stands for is named for the checks that rest on it,
// and so is a length that was kept for too long.
func TestEstimatesThatChecksRestOn(t *testing.T) {
	end := func(c rules.CheckID) rules.End { return c.Ends()[0] }
	old := goodFitting()
	old.Started = time.Date(2026, 4, 18, 9, 0, 0, 0, time.UTC)
	for _, key := range []string{"climber.thigh_mm", "climber.shin_mm", "climber.waist_mm", "kit.foot_loop.length_mm"} {
		old.Kept = append(old.Kept, fit.Kept{Key: key, Taken: old.Started.AddDate(-3, 0, 0)})
	}
	for _, c := range []struct {
		name string
		f    *fit.Fitting
		e    rules.End
		want []string
	}{
		{"all read", goodFitting(), end(rules.KneeBendOnTether), nil},
		{"leg not read", leftOut(fit.Thigh, fit.Shin), end(rules.KneeBendOnTether), []string{"climber.thigh_mm", "climber.shin_mm"}},
		{"leg not read, where it has no part", leftOut(fit.Thigh, fit.Shin), end(rules.HitchTopReach), nil},
		{"wrist not read", leftOut(fit.WristUp), end(rules.HitchTopReach), []string{"hangs.1.wrist_up_mm"}},
		{"waist not read", leftOut(fit.Waist), end(rules.FootLoopAtWaist), []string{"climber.waist_mm"}},
		{"leg kept too long", old, end(rules.KneeBendOnTether), []string{"climber.thigh_mm", "climber.shin_mm"}},
		{"waist kept too long, and the loop", old, end(rules.FootLoopAtWaist), []string{"climber.waist_mm"}},
		{"nothing known", &fit.Fitting{}, end(rules.KneeBendOnTether), nil},
	} {
		if got := rules.Assess(c.f, rules.DefaultLimits()).Estimates(c.e); !slices.Equal(got, c.want) {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

func TestRatioOfMarginToGuard(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct{ margin, guard, want float64 }{
		{6, 4, 1.5}, {-6, 4, -1.5}, {0, 4, 0}, {6, 0, inf}, {0, 0, inf}, {-6, 0, -inf}, {nan, 4, nan}, {6, nan, nan},
	} {
		if got := rules.Ratio(c.margin, c.guard); got != c.want && !(math.IsNaN(got) && math.IsNaN(c.want)) {
			t.Errorf("%g over %g is %g, want %g", c.margin, c.guard, got, c.want)
		}
	}
}

// A reading may turn a tight verdict either way and a fail up to tight, as far as
// the margin moves with what the uncertainty loses.
func TestWhichReadingCanTurnAVerdict(t *testing.T) {
	const moves = rules.GuardFactor * 8 // from 10 to 6: √(10² − 6²)
	for name, c := range map[string]struct {
		verdict rules.Verdict
		margin  float64
		want    bool
	}{
		"fail, just in reach":        {rules.Fail, -moves + 0.01, true},
		"fail, just out of reach":    {rules.Fail, -moves - 0.01, false},
		"tight, may fail":            {rules.Tight, moves - 0.01, true},
		"tight, neither":             {rules.Tight, moves + 0.01, false},
		"tight, may pass":            {rules.Tight, 40 - moves + 0.01, true},
		"tight, just short of sure":  {rules.Tight, 40 - moves - 0.01, false},
		"unknown, whatever is there": {rules.Unknown, 0, true},
	} {
		r := &rules.Report{
			Checks: []rules.Check{{Name: "c", Kind: rules.Must, Verdict: c.verdict, Margin: rules.Num(c.margin)}},
			Next:   []rules.Next{{Check: "c", Reading: "climber.thigh_mm", UNow: 10, UThen: 6, GuardThen: 40}},
		}
		if got := len(r.Wanted(rules.Must, func(string) bool { return false })) == 1; got != c.want {
			t.Errorf("%s: can turn it: %t", name, got)
		}
	}
}
