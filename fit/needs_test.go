package fit_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/hangtape/fit"
)

// missing are the keys that m misses for q, in the order of the session file.
func missing(f *fit.Fitting, q fit.Quantity) string {
	keys := fit.SortKeys(slices.Clone(fit.NewModel(f, fit.Options{}).Missing(q)))
	return strings.Join(keys, " ")
}

// What is missing where nothing was read, nobody hung, and no label was told.
func TestAllIsMissingOfAnEmptyFitting(t *testing.T) {
	f := &fit.Fitting{}
	for q, want := range map[fit.Quantity]string{
		fit.NeedThigh:            "climber.thigh_mm",
		fit.NeedShin:             "climber.shin_mm",
		fit.NeedWaist:            "climber.waist_mm",
		fit.NeedNose:             "hangs.1.hip_mm hangs.1.nose_mm",
		fit.NeedWristUp:          "hangs.1.hip_mm hangs.1.wrist_up_mm",
		fit.NeedWristDown:        "hangs.1.hip_mm hangs.1.wrist_down_mm",
		fit.NeedConnectorTop:     "hangs.1.hip_mm hangs.1.connector_top_mm",
		fit.NeedConnectorBottom:  "hangs.1.hip_mm hangs.1.connector_bottom_mm",
		fit.NeedLoopLeft:         "hangs.1.connector_top_mm hangs.1.left_loop_top_mm",
		fit.NeedLoopRight:        "hangs.1.connector_top_mm hangs.1.right_loop_top_mm",
		fit.NeedHitchTopLeft:     "hangs.1.hip_mm hangs.1.left_hitch_top_mm",
		fit.NeedHitchTopRight:    "hangs.1.hip_mm hangs.1.right_hitch_top_mm",
		fit.NeedPair:             "hangs.1.left_hitch_top_mm hangs.1.right_hitch_top_mm",
		fit.NeedSolesAboveGround: "hangs.1.soles_mm hangs.1.ground_mm",
		fit.NeedYLevel:           "climber.thigh_mm climber.shin_mm kit.foot_loop.length_mm",
		fit.NeedYTaut: "hangs.1.hip_mm hangs.1.backup_rings_mm kit.garda.to_tether_mm kit.tether.length_mm " +
			"kit.backup_bridge.length_mm kit.backup_bridge.rings_mm",
		fit.NeedFootLoop:       "kit.foot_loop.length_mm",
		fit.NeedMass:           "climber.mass_kg",
		fit.NeedElongation:     "rope.elongation_percent",
		fit.NeedLeastAbove:     "rope.least_above_mm",
		fit.NeedDrillAbove:     "rope.drill_above_mm",
		fit.NeedRopeDiameter:   "rope.diameter_mm",
		fit.NeedInsideWidth:    "kit.garda.inside_width_mm",
		fit.NeedCordLeft:       "kit.hitch_left.cord_mm",
		fit.NeedCordRight:      "kit.hitch_right.cord_mm",
		fit.NeedWrapsLeft:      "kit.hitch_left.wraps",
		fit.NeedWrapsRight:     "kit.hitch_right.wraps",
		fit.NeedStrengthLeft:   "kit.hitch_left.cord_mm",
		fit.NeedStrengthRight:  "kit.hitch_right.cord_mm",
		fit.NeedTetherStrands:  "kit.tether.strands",
		fit.NeedTetherStrength: "kit.tether.cord_mm",
	} {
		if got := missing(f, q); got != want {
			t.Errorf("quantity %d: %q, want %q", q, got, want)
		}
	}
}

// What is missing where some was read: what the survey can say needs no reading,
// what one hang read both of needs no hip, and what is set anew needs what it
// changed from.
func TestMissingBesideWhatWasRead(t *testing.T) {
	const nothing = ""
	hip := func(f *fit.Fitting) { f.Hangs[0].Heights[fit.Hip] = nil }
	change := func(p fit.Piece, to float64) func(*fit.Fitting) {
		return func(f *fit.Fitting) { f.Changes = append(f.Changes, fit.Change{Piece: p, To: to, AfterHang: 1}) }
	}
	without := func(rs ...fit.Reading) func(*fit.Fitting) {
		return func(f *fit.Fitting) {
			for _, r := range rs {
				f.Laid[r] = nil
				f.Hangs[0].Heights[r] = nil
			}
		}
	}
	second := func(rs ...fit.Reading) func(*fit.Fitting) { // read in a second hang, and in no other
		return func(f *fit.Fitting) {
			f.Hangs = append(f.Hangs, fit.Hang{})
			for _, r := range rs {
				f.Hangs[1].Heights[r], f.Hangs[0].Heights[r] = f.Hangs[0].Heights[r], nil
			}
		}
	}
	for name, c := range map[string]struct {
		q    fit.Quantity
		want string
		puts []func(*fit.Fitting)
	}{
		"all was read":                              {fit.NeedYTaut, nothing, nil},
		"a thigh from the survey":                   {fit.NeedThigh, nothing, []func(*fit.Fitting){without(fit.Thigh)}},
		"a thigh without stature":                   {fit.NeedThigh, "climber.thigh_mm", []func(*fit.Fitting){without(fit.Thigh, fit.Stature)}},
		"a nose from the survey":                    {fit.NeedNose, nothing, []func(*fit.Fitting){without(fit.Nose)}},
		"a nose without its hip":                    {fit.NeedNose, "hangs.1.hip_mm", []func(*fit.Fitting){hip}},
		"a wrist without its hip":                   {fit.NeedWristUp, "hangs.1.hip_mm", []func(*fit.Fitting){hip}},
		"a wrist from the survey":                   {fit.NeedWristUp, nothing, []func(*fit.Fitting){without(fit.WristUp)}},
		"a wrist from a nose without its hip":       {fit.NeedWristUp, "hangs.1.hip_mm", []func(*fit.Fitting){without(fit.WristUp), hip}},
		"a hanging wrist without its hip":           {fit.NeedWristDown, "hangs.1.hip_mm", []func(*fit.Fitting){hip}},
		"a connector in a hang with its hip":        {fit.NeedConnectorTop, "hangs.1.connector_top_mm", []func(*fit.Fitting){without(fit.ConnectorTop)}},
		"a connector in a hang without hip":         {fit.NeedConnectorTop, "hangs.2.hip_mm hangs.2.connector_top_mm", []func(*fit.Fitting){without(fit.ConnectorTop), second(fit.Soles)}},
		"soles and ground of one hang, no hip":      {fit.NeedSolesAboveGround, nothing, []func(*fit.Fitting){hip}},
		"soles alone in the only hang":              {fit.NeedSolesAboveGround, "hangs.1.ground_mm", []func(*fit.Fitting){without(fit.Ground), hip}},
		"ground alone in the only hang":             {fit.NeedSolesAboveGround, "hangs.1.soles_mm", []func(*fit.Fitting){without(fit.Soles), hip}},
		"soles and ground of two hangs":             {fit.NeedSolesAboveGround, "hangs.2.hip_mm", []func(*fit.Fitting){second(fit.Ground)}},
		"soles of the second hang, ground of none":  {fit.NeedSolesAboveGround, "hangs.2.ground_mm", []func(*fit.Fitting){second(fit.Soles), without(fit.Ground)}},
		"soles of the first hang of two, no ground": {fit.NeedSolesAboveGround, "hangs.2.hip_mm hangs.2.ground_mm", []func(*fit.Fitting){second(), without(fit.Ground)}},
		"both of the first hang, no hip there":      {fit.NeedSolesAboveGround, nothing, []func(*fit.Fitting){second(), hip}},
		"Garda hitch at level without its hip":      {fit.NeedYLevel, "hangs.1.hip_mm", []func(*fit.Fitting){hip}},
		"foot loop set anew, its old length told":   {fit.NeedYLevel, nothing, []func(*fit.Fitting){change(fit.PieceFootLoop, 1000)}},
		"foot loop set anew, its old length unsaid": {fit.NeedYLevel, "kit.foot_loop.length_mm", []func(*fit.Fitting){change(fit.PieceFootLoop, 1000), without(fit.FootLoop)}},
		"foot loop set anew, not read at level":     {fit.NeedYLevel, nothing, []func(*fit.Fitting){change(fit.PieceFootLoop, 1000), without(fit.FootLoop, fit.GardaLevel)}},
		"taut pose read needs no lengths":           {fit.NeedYTaut, nothing, []func(*fit.Fitting){without(fit.Tether, fit.BackupBridge, fit.BackupBridgeRings, fit.BackupRings, fit.GardaToTether)}},
		"taut pose read without its hip":            {fit.NeedYTaut, "hangs.1.hip_mm", []func(*fit.Fitting){hip}},
		"tether set anew, its old length unsaid":    {fit.NeedYTaut, "kit.tether.length_mm", []func(*fit.Fitting){change(fit.PieceTether, 200), without(fit.Tether, fit.BackupBridge)}},
		"backup bridge set anew, nothing told of it": {fit.NeedYTaut, "kit.backup_bridge.length_mm kit.backup_bridge.rings_mm",
			[]func(*fit.Fitting){change(fit.PieceBackupBridge, 520), without(fit.BackupBridge, fit.BackupBridgeRings, fit.Tether)}},
		"connector on a bridge set anew": {fit.NeedConnectorTop, "kit.main_bridge.length_mm kit.main_bridge.rings_mm",
			[]func(*fit.Fitting){change(fit.PieceMainBridge, 900), without(fit.MainBridge, fit.MainBridgeRings)}},
		"loop under a bridge set anew":          {fit.NeedLoopLeft, nothing, []func(*fit.Fitting){change(fit.PieceMainBridge, 900), without(fit.MainBridge)}},
		"loop tied anew":                        {fit.NeedLoopLeft, nothing, []func(*fit.Fitting){change(fit.PieceHitchLeft, 300), without(fit.LeftLoopTop)}},
		"hitch tied anew, wraps read":           {fit.NeedHitchTopLeft, nothing, []func(*fit.Fitting){change(fit.PieceHitchLeft, 300)}},
		"hitch tied anew, wraps not read":       {fit.NeedHitchTopLeft, "hangs.2.left_hitch_top_mm", []func(*fit.Fitting){change(fit.PieceHitchLeft, 300), without(fit.LeftLoopTop)}},
		"pair of hitches that stand on one":     {fit.NeedPair, nothing, []func(*fit.Fitting){change(fit.PieceHitchLeft, 300), change(fit.PieceHitchRight, 300), without(fit.ConnectorTop, fit.Hip)}},
		"strength by the cord's diameter":       {fit.NeedStrengthLeft, nothing, []func(*fit.Fitting){func(f *fit.Fitting) { f.Kit.Pieces[fit.PieceHitchLeft].Cord = fit.Some(8) }}},
		"strength of a cord that EN 564 lacks":  {fit.NeedStrengthRight, "kit.hitch_right.strength_kn", []func(*fit.Fitting){func(f *fit.Fitting) { f.Kit.Pieces[fit.PieceHitchRight].Cord = fit.Some(9.5) }}},
		"strength told, cord not":               {fit.NeedTetherStrength, nothing, []func(*fit.Fitting){func(f *fit.Fitting) { f.Kit.Pieces[fit.PieceTether].Strength = fit.Some(15) }}},
		"labels of the left are none of others": {fit.NeedWrapsRight, "kit.hitch_right.wraps", []func(*fit.Fitting){func(f *fit.Fitting) { f.Kit.Pieces[fit.PieceHitchLeft].Wraps = fit.Some(5) }}},
	} {
		f := fitting(everyReading())
		for _, put := range c.puts {
			put(f)
		}
		if got := missing(f, c.q); got != c.want {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
}

// Keys are told in the order of the session file, hang by hang.
func TestKeysInTheOrderOfTheFile(t *testing.T) {
	want := []string{
		"climber.stature_mm", "climber.mass_kg", "hangs.1.hip_mm", "hangs.1.nose_mm", "hangs.2.hip_mm", "hangs.5.hip_mm", "hangs.10.hip_mm",
		"rope.diameter_mm", "rope.ahead_mm", "posture.lean_deg", "kit.main_bridge.length_mm", "kit.backup_bridge.own_rings",
		"changes.1.to_mm", "changes.1.measured_mm", "changes.2.to_mm", "changes.12.to_mm",
	}
	got := slices.Clone(want)
	slices.Reverse(got)
	if got = fit.SortKeys(append(got, want[3])); !slices.Equal(got, want) {
		t.Errorf("%q\nwant %q", got, want)
	}
	for h, want := range map[int]string{0: "hangs.1.hip_mm", 3: "hangs.4.hip_mm", 4: "hangs.5.hip_mm", 41: "hangs.42.hip_mm"} {
		if got := fit.HeightKey(h, fit.Hip); got != want {
			t.Errorf("hang %d: %s, want %s", h, got, want)
		}
	}
}

func TestNoQuantityLacksNothing(t *testing.T) {
	m := fit.NewModel(&fit.Fitting{}, fit.Options{})
	if keys := m.Missing(fit.Quantity(-1)); keys != nil {
		t.Errorf("%v", keys)
	}
}
