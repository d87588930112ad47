package rules_test

import (
	"math"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// recheckOf is a re-check of a fitting that reads by so much more than it did.
func recheckOf(f *fit.Fitting, by map[fit.Reading]float64) *fit.Fitting {
	now := &fit.Fitting{Tape: f.Tape, Hangs: make([]fit.Hang, 1)}
	for _, r := range []fit.Reading{fit.Hip, fit.ConnectorBottom, fit.GardaLevel, fit.KneeLevel, fit.GardaTaut} {
		*list(now, r) = []float64{(*list(f, r))[0] + by[r] + 700} // the tape hangs elsewhere
	}
	return now
}

// TestRecheck moves one height at a time: a change is told where it is more than
// twice the standard uncertainty of the difference, and of that height alone.
func TestRecheck(t *testing.T) {
	for name, c := range map[string]struct {
		by      map[fit.Reading]float64
		changed [3]bool
	}{
		"nothing":                      {nil, [3]bool{}},
		"a little":                     {map[fit.Reading]float64{fit.ConnectorBottom: 20, fit.GardaLevel: 20, fit.GardaTaut: -20}, [3]bool{}},
		"the connector":                {map[fit.Reading]float64{fit.ConnectorBottom: 30}, [3]bool{true, false, false}},
		"the Garda hitch at level":     {map[fit.Reading]float64{fit.GardaLevel: -35}, [3]bool{false, true, false}},
		"the thigh held higher":        {map[fit.Reading]float64{fit.GardaLevel: 30, fit.KneeLevel: 30}, [3]bool{}},
		"the tether":                   {map[fit.Reading]float64{fit.GardaTaut: 35}, [3]bool{false, false, true}},
		"sits higher in the same hang": {map[fit.Reading]float64{fit.Hip: 40}, [3]bool{true, false, true}},
	} {
		then := goodFitting()
		for i, d := range rules.Recheck(then, recheckOf(then, c.by)) {
			if d.Changed() != c.changed[i] || !d.Known() || d.Missing != "" {
				t.Errorf("%s: %s: %+v", name, d.Name, d)
			}
		}
	}
}

// TestRecheckUncertainty works the uncertainty out by hand: landing on the marks
// (8 mm body, 3 mm hardware, 5 mm Garda hitch), the tape's division of 1 mm and
// its class II errors, in both sessions alike.
func TestRecheckUncertainty(t *testing.T) {
	then := goodFitting()
	for i, d := range rules.Recheck(then, recheckOf(then, nil)) {
		marks := [3][2]float64{{3, 8}, {5, 8}, {5, 8}}[i]
		u2 := 0.0
		for _, v := range marks {
			u2 += v*v + 1.0/12
		}
		want := math.Sqrt(2 * u2)
		if d.U < want || d.U > want+0.1 { // and a little for the tape's errors
			t.Errorf("%s: u %v, want %v and a little", d.Name, d.U, want)
		}
	}
}

// TestRecheckAfterAChange holds a re-check against what the model makes of a
// piece that was changed after the last hang.
func TestRecheckAfterAChange(t *testing.T) {
	then := goodFitting()
	longer := (*list(then, fit.Tether))[0] + 60
	now := recheckOf(then, map[fit.Reading]float64{fit.GardaTaut: 60})
	if d := rules.Recheck(then, now)[2]; !d.Changed() {
		t.Errorf("60 mm higher and unchanged: %+v", d)
	}
	then.Changes = []fit.Change{{Piece: fit.PieceTether, To: longer, AfterHang: 1}}
	if d := rules.Recheck(then, now)[2]; d.Changed() || !d.Known() {
		t.Errorf("where the tether was set 60 mm longer: %+v", d)
	}
}

// TestRecheckUnread names what is still to be read.
func TestRecheckUnread(t *testing.T) {
	then := goodFitting()
	now := recheckOf(then, nil)
	*list(now, fit.KneeLevel) = nil
	for i, d := range rules.Recheck(then, now) {
		if want := [3]string{"", "hangs.1.knee_level_mm", ""}[i]; d.Missing != want || d.Known() != (want == "") || d.Changed() {
			t.Errorf("%s: %+v, want %q missing", d.Name, d, want)
		}
	}
	if d := rules.Recheck(then, &fit.Fitting{Tape: then.Tape}); d[0].Missing != "hangs.1.connector_bottom_mm" || d[0].Changed() {
		t.Errorf("nobody hung: %+v", d[0])
	}
}

// What was changed after it was read counts as the model has it: a re-check of
// the kit as it was set finds nothing, one of the kit as it was before finds that.
func TestRecheckOfAKitThatWasSetAfterItsHang(t *testing.T) {
	then := goodFitting()
	*list(then, fit.KneeLevel) = []float64{1520} // level with the hip
	set := copyOf(then)
	set.Changes = []fit.Change{
		{Piece: fit.PieceMainBridge, To: 1000, AfterHang: 1},
		{Piece: fit.PieceFootLoop, To: 1112, AfterHang: 1},
		{Piece: fit.PieceTether, To: 218, AfterHang: 1},
	}
	a := rules.Assess(set, rules.DefaultLimits())
	by := map[fit.Reading]float64{}
	for r, y := range map[fit.Reading]float64{fit.ConnectorBottom: a.State().ConnectorBottom, fit.GardaLevel: a.State().YLevel, fit.GardaTaut: a.State().YTaut} {
		by[r] = 1520 + y - (*list(then, r))[0]
	}
	for _, d := range rules.Recheck(set, recheckOf(then, by)) {
		if d.Changed() || !d.Known() {
			t.Errorf("%s: %+v, want no change", d.Name, d)
		}
	}
	for _, d := range rules.Recheck(set, recheckOf(then, nil)) {
		if !d.Changed() {
			t.Errorf("%s: %+v, want a change", d.Name, d)
		}
	}
}

// A re-check in which nobody hung misses the hang's own readings.
func TestRecheckWithoutAHangMissesItsReadings(t *testing.T) {
	for _, d := range rules.Recheck(goodFitting(), &fit.Fitting{}) {
		if d.Known() || d.Missing == "" {
			t.Errorf("%s: %+v", d.Name, d)
		}
	}
}
