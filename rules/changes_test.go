package rules_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// steadyFitting is the good fitting with everything read six times to the
// millimetre, so that what is set on trial stands out in every u.
func steadyFitting() *fit.Fitting {
	f := goodFitting()
	for r := fit.Reading(0); r < fit.NumReadings; r++ {
		l := list(f, r)
		v := (*l)[0]
		*l = []float64{v - 1, v, v, v, v, v + 1}
	}
	return f
}

// hangAgain adds a hang that reads the hip and the heights as the last one did.
func hangAgain(f *fit.Fitting, heights ...fit.Reading) {
	last := &f.Hangs[len(f.Hangs)-1]
	var h fit.Hang
	for _, r := range append(heights, fit.Hip) {
		h.Heights[r] = slices.Clone(last.Heights[r])
	}
	f.Hangs = append(f.Hangs, h)
}

// Nobody leaves the ground on a length that was set and not seen: the reading of
// what it moved is asked for, whichever way the must comes to rest on it.
func TestNoMustPassesOnAChange(t *testing.T) {
	for _, c := range []struct {
		name   string
		change fit.Change
		again  []fit.Reading
		check  string
		lift   string
	}{
		{"main bridge under an old connector", fit.Change{Piece: fit.PieceMainBridge, To: 1098}, nil,
			"garda-release-room", "hangs.2.connector_bottom_mm"},
		{"loop read again, its hitch not", fit.Change{Piece: fit.PieceHitchRight, To: 314}, []fit.Reading{fit.ConnectorTop, fit.RightLoopTop},
			"hitch-top-reach", "hangs.3.right_hitch_top_mm"},
		{"loop and hitch not read again", fit.Change{Piece: fit.PieceHitchRight, To: 314}, nil,
			"hitch-top-reach", "hangs.2.right_hitch_top_mm"},
	} {
		f := steadyFitting()
		(*list(f, fit.RightHitchTop)) = []float64{2610, 2610, 2610}
		(*list(f, fit.LeftHitchTop)) = []float64{2585, 2585, 2585}
		f.Kit.Pieces[fit.PieceMainBridge].Change = fit.ReTie
		// So steady a hand that the bridge matters more than the old reading.
		f.Tape.Class = fit.ClassI
		c.change.AfterHang = 1
		f.Changes = []fit.Change{c.change}
		if c.again != nil {
			hangAgain(f, c.again...)
		}
		got := check(t, judge(t, f, rules.DefaultLimits()), c.check)
		if !(got.Margin > got.Guard) {
			t.Errorf("%s: %s: margin %v, guard %v: this test is about an ample margin", c.name, c.check, got.Margin, got.Guard)
		}
		if got.Verdict != rules.Tight || !slices.Contains(got.Missing, c.lift) {
			t.Errorf("%s: %s is %s, missing %v, want tight for want of %s", c.name, c.check, got.Verdict, got.Missing, c.lift)
		}
	}
}

// A main bridge on trial holds a must also where the old reading of what it
// carries is far below a tenth of the uncertainty: by eye level brings 20 mm.
func TestBridgeOnTrialOutweighsTheOldReading(t *testing.T) {
	f := steadyFitting()
	*list(f, fit.KneeLevel) = nil
	f.Kit.Pieces[fit.PieceMainBridge].Change = fit.ReTie
	f.Changes = []fit.Change{{Piece: fit.PieceMainBridge, To: 1128, AfterHang: 1}}
	got := check(t, judge(t, f, rules.DefaultLimits()), "garda-under-connector")
	if want := []string{"hangs.2.connector_bottom_mm"}; !(got.Margin > got.Guard) || got.Verdict != rules.Tight || !slices.Equal(got.Missing, want) {
		t.Errorf("garda-under-connector: margin %v, guard %v, %s, missing %v; want tight for want of %v", got.Margin, got.Guard, got.Verdict, got.Missing, want)
	}
}

// A length that a piece no longer has cannot be laid on again.
func TestNextIsNeverALengthThatWas(t *testing.T) {
	f := steadyFitting()
	*list(f, fit.Tether) = []float64{118}
	f.Changes = []fit.Change{{Piece: fit.PieceTether, To: 138, Measured: []float64{138, 138, 138}, AfterHang: 1}}
	limits := rules.DefaultLimits()
	room := check(t, judge(t, f, limits), "garda-release-room")
	r := judge(t, f, limits.With(map[rules.Limit]float64{rules.ReleaseRoom: float64(room.Has) - 1}))
	if c := check(t, r, "garda-release-room"); c.Verdict != rules.Tight {
		t.Fatalf("garda-release-room is %s, want tight", c.Verdict)
	}
	for _, n := range r.Next {
		if n.Reading == "kit.tether.length_mm" {
			t.Errorf("next for %s is the tether as it was", n.Check)
		}
	}
}

// A knee counts only in the hang of its Garda hitch, so on its own it lifts no
// must off a moved foot loop.
func TestKneeToComeComesWithItsGardaHitch(t *testing.T) {
	f := steadyFitting()
	f.Changes = []fit.Change{{Piece: fit.PieceFootLoop, To: 1016, Measured: []float64{1016, 1016, 1016}, AfterHang: 1}}
	r := judge(t, f, rules.DefaultLimits())
	c := check(t, r, "tether-lets-thigh-level")
	if !slices.Contains(c.Missing, "hangs.2.knee_level_mm") || !slices.Contains(c.Missing, "hangs.2.garda_level_mm") {
		t.Fatalf("%s, missing %v: this test is about both", c.Verdict, c.Missing)
	}
	for _, n := range r.Next {
		if n.Check == c.Name && n.Reading != "hangs.2.garda_level_mm" {
			t.Errorf("next for %s is %s, want the Garda hitch first", n.Check, n.Reading)
		}
	}
}

// What is unknown says what would settle it, and nothing that would not.
func TestMissingOfHitchesOverTwoHangs(t *testing.T) {
	without := func(h *fit.Hang, rs ...fit.Reading) {
		for _, r := range rs {
			h.Heights[r] = nil
		}
	}
	for _, c := range []struct {
		name, check, missing string
		change               func(f *fit.Fitting)
	}{
		{"one hitch of a hang without a hip", "hitch-pair-level", "hangs.1.left_hitch_top_mm", func(f *fit.Fitting) {
			without(&f.Hangs[0], fit.Hip, fit.LeftHitchTop)
		}},
		{"loop over a bridge of unknown length", "hitch-handhold", "kit.main_bridge.length_mm", func(f *fit.Fitting) {
			hangAgain(f, fit.ConnectorTop)
			f.Laid[fit.MainBridge] = nil
			f.Changes = []fit.Change{{Piece: fit.PieceMainBridge, To: 1098, AfterHang: 1}}
		}},
		{"wraps of two hangs, one without its hip", "hitch-pair-level", "hangs.2.hip_mm", func(f *fit.Fitting) {
			hangAgain(f, fit.RightHitchTop)
			without(&f.Hangs[1], fit.Hip)
			hangAgain(f)
			f.Hangs[2].Heights = f.Hangs[0].Heights
			without(&f.Hangs[2], fit.RightLoopTop, fit.RightHitchTop)
			without(&f.Hangs[0], fit.RightHitchTop)
			f.Changes = []fit.Change{{Piece: fit.PieceHitchRight, To: 330, AfterHang: 2}}
		}},
	} {
		f := goodFitting()
		c.change(f)
		got := check(t, judge(t, f, rules.DefaultLimits()), c.check)
		if missing := strings.Join(got.Missing, " "); got.Verdict != rules.Unknown || missing != c.missing {
			t.Errorf("%s: %s is %s, missing %s, want unknown for want of %s", c.name, c.check, got.Verdict, missing, c.missing)
		}
	}
}

// A loop top that was read again is listed as it was read, also where its older
// reading tells how the moved hitch was wrapped.
func TestReadingsBehindAMovedHitchAreListedAsRead(t *testing.T) {
	f := goodFitting()
	f.Changes = []fit.Change{{Piece: fit.PieceHitchRight, To: 314, AfterHang: 1}}
	hangAgain(f, fit.ConnectorTop)
	*list(f, fit.RightLoopTop) = []float64{2484}
	want := map[string]float64{"hangs.1.right_loop_top_mm": 2494, "hangs.2.right_loop_top_mm": 2484}
	for _, in := range judge(t, f, rules.DefaultLimits()).Inputs {
		v, ok := want[in.Name]
		if ok && (float64(in.Value) != v || in.Origin != "measured") {
			t.Errorf("%s: %v, %s, want %v as measured", in.Name, in.Value, in.Origin, v)
		}
		delete(want, in.Name)
	}
	if len(want) > 0 {
		t.Errorf("not listed: %v", want)
	}
}

// Lengths that no pose can be made of are named as they were in that pose, and
// nothing that was not read.
func TestOutOfDomainNamesTheFootLoopOfThePose(t *testing.T) {
	f := goodFitting()
	*list(f, fit.KneeLevel) = nil
	*list(f, fit.FootLoop) = []float64{200}
	f.Changes = []fit.Change{{Piece: fit.PieceFootLoop, To: 1012, AfterHang: 1}}
	want := []string{"kit.foot_loop.length_mm", "climber.thigh_mm", "climber.shin_mm", "rope.ahead_mm"}
	for _, found := range judge(t, f, rules.DefaultLimits()).Findings {
		if found.Name == "out-of-domain" {
			if !slices.Equal(found.Inputs, want) {
				t.Errorf("names %v, want %v", found.Inputs, want)
			}
			return
		}
	}
	t.Error("no finding out-of-domain")
}
