package fit_test

import (
	"fmt"
	"math"
	"slices"
	"testing"
	"time"

	"example.com/hangtape/fit"
)

// read sets a list of the first hang or of the laid lengths.
func read(r fit.Reading, values ...float64) func(*fit.Fitting) {
	return func(f *fit.Fitting) {
		if r.IsHeight() {
			f.Hangs[0].Heights[r] = values
			return
		}
		f.Laid[r] = values
	}
}

func change(c fit.Change) func(*fit.Fitting) {
	return func(f *fit.Fitting) { f.Changes = []fit.Change{c} }
}

func posture(p fit.Posture, v, u float64) func(*fit.Fitting) {
	return func(f *fit.Fitting) { f.Posture[p] = fit.Setting{V: v, U: u, Given: true} }
}

// TestFaults: what cannot be is told with its keys, once, and in the unit that
// whoever asks writes lengths in; its nearest neighbour that can be is not.
func TestFaults(t *testing.T) {
	inches := func(mm float64) string { return fmt.Sprintf("%.4g in", mm/25.4) }
	quarter := fit.ShinAngle.LeastU()
	for name, c := range map[string]struct {
		wrong func(*fit.Fitting)
		keys  []string
		text  string
		told  string             // in inches, where it differs
		right func(*fit.Fitting) // the nearest that can be; nil where there is none
	}{
		"laid length of 0": {read(fit.Thigh, 440, 0), []string{"climber.thigh_mm"},
			"thigh is 0 mm; a laid length is above 0, and what was not taken is left out",
			"thigh is 0 in; a laid length is above 0, and what was not taken is left out", read(fit.Thigh, 440, 1)},
		"rope behind the hip": {nil, nil, "", "", read(fit.Ahead, -20)},
		"told stature of 0": {func(f *fit.Fitting) { f.StatureTold = fit.Some(0) }, []string{"climber.stature_told_mm"},
			"stature is 0 mm; a length is above 0", "stature is 0 in; a length is above 0", func(f *fit.Fitting) { f.StatureTold = fit.Some(1) }},
		"no mass": {func(f *fit.Fitting) { f.Mass = fit.Some(0) }, []string{"climber.mass_kg"},
			"is 0; a mass is above 0, and what was not taken is left out", "", func(f *fit.Fitting) { f.Mass = fit.Some(0.1) }},
		"bridge as long as its rings are apart": {read(fit.MainBridge, 610, 590), []string{"kit.main_bridge.length_mm", "kit.main_bridge.rings_mm"},
			"a bridge of 600 mm does not reach across rings 600 mm apart", "a bridge of 23.62 in does not reach across rings 23.62 in apart", read(fit.MainBridge, 601)},
		"backup bridge": {read(fit.BackupBridge, 254), []string{"kit.backup_bridge.length_mm", "kit.backup_bridge.rings_mm"},
			"a bridge of 254 mm does not reach across rings 300 mm apart", "a bridge of 10 in does not reach across rings 11.81 in apart", read(fit.BackupBridge, 301)},
		"connector upside down": {read(fit.ConnectorBottom, 2170), []string{"hangs.1.connector_bottom_mm", "hangs.1.connector_top_mm"},
			"2170 mm and 2170 mm: the connector's bottom must be below its top", "85.43 in and 85.43 in: the connector's bottom must be below its top", read(fit.ConnectorBottom, 2169)},
		"left loop": {read(fit.LeftLoopTop, 2169), []string{"hangs.1.connector_top_mm", "hangs.1.left_loop_top_mm"},
			"2170 mm and 2169 mm: the left loop's top must be above the connector's top", "85.43 in and 85.39 in: the left loop's top must be above the connector's top", read(fit.LeftLoopTop, 2171)},
		"right loop": {read(fit.RightLoopTop, 2170), []string{"hangs.1.connector_top_mm", "hangs.1.right_loop_top_mm"},
			"2170 mm and 2170 mm: the right loop's top must be above the connector's top", "85.43 in and 85.43 in: the right loop's top must be above the connector's top", read(fit.RightLoopTop, 2171)},
		"left hitch": {read(fit.LeftHitchTop, 2500), []string{"hangs.1.left_loop_top_mm", "hangs.1.left_hitch_top_mm"},
			"2500 mm and 2500 mm: the left hitch's top must be above its loop's top", "98.43 in and 98.43 in: the left hitch's top must be above its loop's top", read(fit.LeftHitchTop, 2501)},
		"right hitch": {read(fit.RightHitchTop, 2480), []string{"hangs.1.right_loop_top_mm", "hangs.1.right_hitch_top_mm"},
			"2490 mm and 2480 mm: the right hitch's top must be above its loop's top", "98.03 in and 97.64 in: the right hitch's top must be above its loop's top", read(fit.RightHitchTop, 2491)},
		"soles in the ground": {read(fit.Ground, 763), []string{"hangs.1.ground_mm", "hangs.1.soles_mm"},
			"763 mm and 762 mm: the soles are below the ground", "30.04 in and 30 in: the soles are below the ground", read(fit.Ground, 762)},
		"nose below the hip": {read(fit.Nose, 1499), []string{"hangs.1.hip_mm", "hangs.1.nose_mm"},
			"1500 mm and 1499 mm: the nose is below the hip: is the tape the right way up?", "59.06 in and 59.02 in: the nose is below the hip: is the tape the right way up?", read(fit.Nose, 1500)},
		"change before any hang": {change(fit.Change{Piece: fit.PieceTether, To: 120}), []string{"changes.1.after_hang"},
			"is 0; accepted is the number of a hang, 1 to 1", "", change(fit.Change{Piece: fit.PieceTether, To: 120, AfterHang: 1})},
		"change after a hang to come": {change(fit.Change{Piece: fit.PieceTether, To: 120, AfterHang: 2}), []string{"changes.1.after_hang"},
			"is 2; accepted is the number of a hang, 1 to 1", "", nil},
		"changed to nothing": {change(fit.Change{Piece: fit.PieceTether, AfterHang: 1}), []string{"changes.1.to_mm"},
			"is 0 mm; a length is above 0", "is 0 in; a length is above 0", nil},
		"laid on again as nothing": {change(fit.Change{Piece: fit.PieceTether, To: 120, Measured: []float64{120, -1}, AfterHang: 1}), []string{"changes.1.measured_mm"},
			"is -1 mm; a length is above 0", "is -0.03937 in; a length is above 0", change(fit.Change{Piece: fit.PieceTether, To: 120, Measured: []float64{1}, AfterHang: 1})},
		"changed to less than its rings": {change(fit.Change{Piece: fit.PieceMainBridge, To: 600, AfterHang: 1}), []string{"changes.1.to_mm", "kit.main_bridge.rings_mm"},
			"a bridge of 600 mm does not reach across rings 600 mm apart", "a bridge of 23.62 in does not reach across rings 23.62 in apart", change(fit.Change{Piece: fit.PieceMainBridge, To: 601, AfterHang: 1})},
		"kept height": {func(f *fit.Fitting) { f.Kept = []fit.Kept{{Key: "hangs.1.nose_mm"}} }, []string{"kept.1.key"},
			`is "hangs.1.nose_mm"; accepted is a length under climber or kit: heights are always read anew`, "",
			func(f *fit.Fitting) { f.Kept = []fit.Kept{{Key: "climber.thigh_mm"}} }},
		"posture surer than a quarter": {posture(fit.ShinAngle, 3, quarter-0.01), []string{"posture.shin_angle_deg"},
			fmt.Sprintf("is 3 ± %g; accepted is a value with a standard uncertainty of at least %g, a quarter of the default's", quarter-0.01, quarter), "", posture(fit.ShinAngle, 3, quarter)},
		"posture that is no number": {posture(fit.ShinAngle, math.NaN(), 5), []string{"posture.shin_angle_deg"},
			fmt.Sprintf("is NaN ± 5; accepted is a value with a standard uncertainty of at least %g, a quarter of the default's", quarter), "", nil},
		"posture without end": {posture(fit.ShinAngle, math.Inf(1), 5), []string{"posture.shin_angle_deg"},
			fmt.Sprintf("is +Inf ± 5; accepted is a value with a standard uncertainty of at least %g, a quarter of the default's", quarter), "", nil},
		"uncertainty without end": {posture(fit.ShinAngle, 3, math.Inf(1)), []string{"posture.shin_angle_deg"},
			fmt.Sprintf("is 3 ± +Inf; accepted is a value with a standard uncertainty of at least %g, a quarter of the default's", quarter), "", nil},
	} {
		t.Run(name, func(t *testing.T) {
			if c.right != nil {
				f := fitting(everyReading())
				c.right(f)
				if got := f.Faults(); len(got) > 0 {
					t.Errorf("what can be: %v", got)
				}
			}
			if c.wrong == nil {
				return
			}
			f := fitting(everyReading())
			c.wrong(f)
			got := f.Faults()
			if len(got) != 1 || !slices.Equal(got[0].Keys, c.keys) || got[0].Text != c.text {
				t.Fatalf("got %v\nwant %v: %s", got, c.keys, c.text)
			}
			if c.told == "" {
				c.told = c.text
			}
			if told := got[0].Told(inches); told != c.told {
				t.Errorf("told %q\nwant %q", told, c.told)
			}
		})
	}
}

func TestAFaultSaysItsKeysFirst(t *testing.T) {
	f := fit.Fault{Keys: []string{"a", "b"}, Text: "cannot be"}
	if got := f.Error(); got != "a, b: cannot be" {
		t.Errorf("got %q", got)
	}
	if got := f.Told(nil); got != "cannot be" {
		t.Errorf("a fault without lengths is told as %q", got)
	}
}

// TestCanKeep: lengths of body, kit and cords; nothing of one hang.
func TestCanKeep(t *testing.T) {
	for key, want := range map[string]bool{
		"climber.thigh_mm": true, "kit.main_bridge.length_mm": true, "kit.garda.inside_width_mm": true,
		"kit.hitch_left.cord_mm": true, "kit.hitch_right.cord_mm": true, "kit.tether.cord_mm": true,
		"rope.ahead_mm": false, "hangs.1.hip_mm": false, "hangs.1.nose_mm": false, "climber.mass_kg": false, "": false,
	} {
		if fit.CanKeep(key) != want {
			t.Errorf("%q: want %v", key, want)
		}
	}
}

// TestAKeptLengthAges: after the school's recheck days, or without a date, it is
// an estimate.
func TestAKeptLengthAges(t *testing.T) {
	started := time.Date(2026, 4, 18, 9, 0, 0, 0, time.UTC)
	for name, c := range map[string]struct {
		days  int
		taken time.Time
		want  fit.Origin
	}{
		"by default 180 days":    {0, started.AddDate(0, 0, -180), fit.KeptOver},
		"a day more":             {0, started.AddDate(0, 0, -181), fit.Estimated},
		"the school's own":       {30, started.AddDate(0, 0, -30), fit.KeptOver},
		"the school's, and more": {30, started.AddDate(0, 0, -31), fit.Estimated},
		"no date":                {0, time.Time{}, fit.Estimated},
	} {
		f := fitting(everyReading())
		f.Started, f.RecheckDays = started, c.days
		f.Kept = []fit.Kept{{Key: "climber.thigh_mm", Taken: c.taken}}
		m := fit.NewModel(f, fit.Options{})
		if got := input(m, "climber.thigh_mm").Origin; got != c.want {
			t.Errorf("%s: %s, want %s", name, got, c.want)
		}
		if got := input(m, "climber.shin_mm").Origin; got != fit.Measured {
			t.Errorf("%s: the shin, which was read, is %s", name, got)
		}
	}
}
