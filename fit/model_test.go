package fit_test

import (
	"math"
	"slices"
	"testing"

	"example.com/hangtape/fit"
)

// place is where the input with the key is among those of m.
func place(m *fit.Model, key string) int {
	return slices.IndexFunc(m.Inputs, func(in fit.Input) bool { return in.Key == key })
}

// The stature that was told counts where it was not measured, and only there.
func TestToldStatureGivesWayToAMeasuredOne(t *testing.T) {
	f := fitting(readings{fit.Hip: {1500}})
	f.StatureTold = fit.Some(1700)
	if in := input(fit.NewModel(f, fit.Options{}), "climber.stature_told_mm"); in.V != 1700 || in.U != 15 || in.Origin != fit.Estimated {
		t.Errorf("told alone: %+v", in)
	}
	f.Laid[fit.Stature] = []float64{1710}
	m := fit.NewModel(f, fit.Options{})
	if place(m, "climber.stature_told_mm") >= 0 || input(m, "climber.stature_mm").V != 1710 {
		t.Errorf("told and measured: %+v", m.Inputs)
	}
}

// Labels and told numbers come with the uncertainty that is taken for granted.
func TestUncertaintyOfWhatIsTold(t *testing.T) {
	f := fitting(everyLength())
	f.Mass, f.Rope = fit.Some(80), fit.Rope{Diameter: fit.Some(11), Elongation: fit.Some(3), LeastAbove: fit.Some(4000), DrillAbove: fit.Some(7000)}
	f.Kit.InsideWidth = fit.Some(40)
	m := fit.NewModel(f, fit.Options{})
	for key, want := range map[string]float64{
		"climber.mass_kg": 2, "rope.diameter_mm": 0.2, "rope.elongation_percent": 0.15, "rope.least_above_mm": 0, "rope.drill_above_mm": 0, "kit.garda.inside_width_mm": 0.5,
	} {
		near(t, key, input(m, key).U, want, 1e-12)
	}
	near(t, "mass", m.Mass(), 80, 0)
	near(t, "mass's uncertainty", m.MassU(), 2, 0)
	for p := range fit.NumPostures {
		if want := p.Info().U / 4; p.LeastU() != want {
			t.Errorf("%s may be given no surer than %g, want %g", p.Info().Key, p.LeastU(), want)
		}
	}
}

// What a reading anew would do, for each kind of input.
func TestWhatCanBeReadAfresh(t *testing.T) {
	f := fitting(everyReading())
	f.Mass = fit.Some(80)
	f.Hangs = append(f.Hangs, fit.Hang{})
	for _, r := range []fit.Reading{fit.Hip, fit.WristDown, fit.GardaTaut} {
		f.Hangs[1].Heights[r] = f.Hangs[0].Heights[r]
	}
	f.Changes = []fit.Change{
		{Piece: fit.PieceTether, To: 170, Measured: []float64{171}, AfterHang: 1},
		{Piece: fit.PieceFootLoop, To: 1000, AfterHang: 2},
		{Piece: fit.PieceTether, To: 180, Measured: []float64{181}, AfterHang: 2},
	}
	m := fit.NewModel(f, fit.Options{})
	for key, want := range map[string]bool{
		"climber.thigh_mm":       true,
		"hangs.2.hip_mm":         true,
		"hangs.1.nose_mm":        true,
		"changes.3.measured_mm":  true,
		"hangs.1.hip_mm":         false, // of an earlier hang
		"hangs.1.garda_level_mm": false, // moved since
		"changes.1.measured_mm":  false, // that the tether no longer has
		"kit.tether.length_mm":   false, // nor this
		"climber.mass_kg":        false, // no reading
		"posture.lean_deg":       false,
	} {
		i := place(m, key)
		if i < 0 {
			t.Errorf("%s is no input", key)
			continue
		}
		u, ok := m.FreshU(i, 3)
		if ok != want || ok && !(u > 0 && u < m.Inputs[i].U) {
			t.Errorf("%s afresh: %g (now %g) %t, want %t", key, u, m.Inputs[i].U, ok, want)
		}
	}
	for key, want := range map[string]bool{
		"kit.tether.length_mm": true, "changes.1.measured_mm": true, "kit.foot_loop.length_mm": true,
		"changes.2.to_mm": false, "changes.3.measured_mm": false, "kit.main_bridge.length_mm": false, "climber.thigh_mm": false,
	} {
		if got := m.Superseded(place(m, key)); got != want {
			t.Errorf("%s is a length that a piece no longer has: %t", key, got)
		}
	}
	if m.Superseded(0) { // hitches that were never set have no length of their own
		t.Error("what is unknown is a length that a piece no longer has")
	}
	for key, want := range map[string]bool{
		"climber.thigh_mm": true, "climber.shin_mm": true, "climber.waist_mm": true, "hangs.2.wrist_down_mm": true, "hangs.2.hip_mm": true,
		"hangs.1.hip_mm": false, "hangs.1.nose_mm": false, "kit.foot_loop.length_mm": false,
	} {
		if got := m.IsPartner(place(m, key)); got != want {
			t.Errorf("%s says something of the other parts: %t", key, got)
		}
	}
	for p, want := range map[fit.Piece]string{
		fit.PieceTether: "changes.3.measured_mm", fit.PieceFootLoop: "changes.2.to_mm", fit.PieceMainBridge: "kit.main_bridge.length_mm",
		fit.PieceHitchLeft: "kit.hitch_left.length_mm",
	} {
		if got := m.PieceKey(p); got != want {
			t.Errorf("%s has its length from %s, want %s", p.Key(), got, want)
		}
	}
	if got := m.FootLoopAtLevel(); got != "kit.foot_loop.length_mm" {
		t.Errorf("at level the foot loop had its length from %s", got)
	}
	again := input(m, "changes.3.measured_mm")
	if got := f.Repeated(&again, 2).Changes[2].Measured; !slices.Equal(got, []float64{181, 181}) {
		t.Errorf("laid on again: %v", got)
	}
}

// Without the hanging wrist the hip says nothing of the body.
func TestHipAloneIsNoPartner(t *testing.T) {
	m := fit.NewModel(fitting(readings{fit.Hip: {1500}, fit.Nose: {2200}}), fit.Options{})
	if i := place(m, "hangs.1.hip_mm"); m.IsPartner(i) {
		t.Error("the hip says something of the body")
	}
	if v := m.HipValue(0); v != 1500 {
		t.Errorf("the hip was read at %g", v)
	}
	for _, h := range []int{1, 7} {
		if v := m.HipValue(h); !math.IsNaN(v) {
			t.Errorf("the hip of hang %d, which nobody hung, was read at %g", h, v)
		}
	}
	if got := m.ReadAbove(m.Values(), fit.Nose, fit.Hip); got != 700 {
		t.Errorf("the nose was read %g above the hip", got)
	}
	for _, r := range [][2]fit.Reading{{fit.Nose, fit.Soles}, {fit.Soles, fit.Nose}} {
		if got := m.ReadAbove(m.Values(), r[0], r[1]); !math.IsNaN(got) {
			t.Errorf("%v was read %g above %v", r[0], got, r[1])
		}
	}
}

// What would have to be read in place of what a change predicts.
func TestDoubtsOfWhatIsPredicted(t *testing.T) {
	for _, c := range []struct {
		piece fit.Piece
		taut  bool // whether the taut pose was read
		key   string
		want  []string
	}{
		{fit.PieceMainBridge, true, "changes.1.to_mm", nil},
		{fit.PieceMainBridge, true, "hangs.1.connector_top_mm", []string{"hangs.2.connector_top_mm"}},
		{fit.PieceHitchLeft, true, "changes.1.to_mm", []string{"hangs.2.left_hitch_top_mm"}},
		{fit.PieceHitchRight, true, "changes.1.to_mm", []string{"hangs.2.right_hitch_top_mm"}},
		{fit.PieceHitchLeft, true, "hangs.1.left_loop_top_mm", []string{"hangs.2.left_hitch_top_mm"}},
		{fit.PieceFootLoop, true, "changes.1.to_mm", []string{"changes.1.measured_mm"}},
		{fit.PieceFootLoop, true, "hangs.1.garda_level_mm", []string{"hangs.2.garda_level_mm"}},
		{fit.PieceTether, true, "changes.1.to_mm", []string{"hangs.2.garda_taut_mm"}},
		{fit.PieceTether, false, "changes.1.to_mm", []string{"changes.1.measured_mm"}},
		{fit.PieceBackupBridge, true, "changes.1.to_mm", []string{"hangs.2.garda_taut_mm"}},
		{fit.PieceBackupBridge, false, "changes.1.to_mm", []string{"changes.1.measured_mm"}},
	} {
		f := fitting(everyReading())
		if !c.taut {
			f.Hangs[0].Heights[fit.GardaTaut] = nil
		}
		f.Changes = []fit.Change{{Piece: c.piece, To: 700, AfterHang: 1}}
		m := fit.NewModel(f, fit.Options{})
		i := place(m, c.key)
		if i < 0 {
			t.Errorf("%s set: %s is no input", c.piece.Key(), c.key)
		} else if got := m.Doubts(i); !slices.Equal(got, c.want) {
			t.Errorf("%s set: %s is doubted for want of %v, want %v", c.piece.Key(), c.key, got, c.want)
		}
	}
	// a foot loop set twice: at level it had the first of the lengths that were set
	f := fitting(everyReading())
	f.Hangs = append(f.Hangs, f.Hangs[0])
	f.Changes = []fit.Change{{Piece: fit.PieceFootLoop, To: 1000, AfterHang: 1}, {Piece: fit.PieceFootLoop, To: 1010, AfterHang: 2}}
	m := fit.NewModel(f, fit.Options{})
	if got := m.Doubts(place(m, "changes.1.to_mm")); !slices.Equal(got, []string{"hangs.3.garda_level_mm"}) {
		t.Errorf("a loop set twice is doubted for want of %v", got)
	}
	if got := m.FootLoopAtLevel(); got != "changes.1.to_mm" {
		t.Errorf("at level the foot loop had its length from %s", got)
	}
}

// A height is known with what stands for it by the model, in the pose in which it is read.
func TestWhatStandsForAReading(t *testing.T) {
	_, s := stateOf(fitting(everyReading()))
	for r, want := range map[fit.Reading]float64{
		fit.Thigh: 440, fit.Shin: 530, fit.Waist: 1110, fit.Nose: 718, fit.WristUp: 1140, fit.WristDown: -88,
		fit.ConnectorTop: 670, fit.ConnectorBottom: 560, fit.LeftLoopTop: 1000, fit.RightLoopTop: 990,
		fit.LeftHitchTop: 1100, fit.RightHitchTop: 1080, fit.KneeLevel: 4, fit.GardaTaut: 476, fit.MainRings: 30, fit.BackupRings: 10,
	} {
		near(t, r.Info().Name, s.Standing(r), want, 1e-9)
	}
	if got := s.Standing(fit.Ground); !math.IsNaN(got) {
		t.Errorf("the ground has %g standing for it", got)
	}
}

// The poses of a fitting that was read whole, by the lengths alone.
func TestLegAndLoopToSpare(t *testing.T) {
	f := fitting(everyReading())
	_, s := stateOf(f)
	const thigh, shin, ahead, loop = 440.0, 530.0, 160.0, 1040.0
	span := math.Sqrt(thigh*thigh + shin*shin + 2*thigh*shin*math.Cos(15*math.Pi/180))
	near(t, "reach of the leg", s.LegReach, thigh+shin, 1e-9)
	near(t, "leg to spare", s.LegToSpare, span-60, 1e-9)
	near(t, "loop to spare", s.LoopToSpare, loop-(thigh-ahead), 1e-9) // it is less with the knee level than 4 mm above
	near(t, "distance on the tether", s.LegDistance, math.Hypot(loop-476, ahead), 1e-9)
	tilt := 20 * math.Pi / 180
	f.Posture[fit.ShinAngle] = fit.Setting{V: 20, U: 5, Given: true}
	_, s = stateOf(f)
	near(t, "loop to spare, the shin forward", s.LoopToSpare, loop-(thigh+shin*math.Sin(tilt)-ahead), 1e-9)
}

// With an offset between model and reading at level, the knee at taut comes up by
// as much as the Garda hitch lies above where it was read at level.
func TestKneeAtTautCountsFromTheReadLevel(t *testing.T) {
	rs := everyReading()
	delete(rs, fit.KneeLevel)
	f := fitting(rs)
	_, s := stateOf(f)
	if math.Abs(s.Delta) < 5 {
		t.Fatalf("model and reading agree within %g mm", s.Delta)
	}
	rs[fit.GardaTaut] = rs[fit.GardaLevel]
	_, s = stateOf(fitting(rs))
	near(t, "knee where the tether is taut at level", s.KneeAtTaut, 0, 1e-6)
}

// What the survey says of the nose goes by stature and inseam where both were read.
func TestInseamCountsInTheEstimate(t *testing.T) {
	f := fitting(readings{fit.Stature: {1720}, fit.Inseam: {790}})
	f.Sex = fit.Male
	m, s := stateOf(f)
	reg := fit.SurveyRegression(fit.Male, true)
	for part, got := range map[fit.BodyPart]float64{fit.PartThigh: s.Thigh, fit.PartShin: s.Shin - 25, fit.PartWaist: s.Waist - 25, fit.PartDown: s.WristDown} {
		b := reg.Beta[part]
		near(t, "by stature and inseam", got, b[0]+1720*b[1]+790*b[2], 1e-9)
	}
	blocks := m.Blocks()
	if len(blocks) != 1 || len(blocks[0].Corr) != int(fit.NumBodyParts) {
		t.Fatalf("correlated: %+v", blocks)
	}
	for i, row := range blocks[0].Corr { // of what the survey leaves open, its own correlations
		for j, got := range row {
			want := reg.Cov[i][j] / math.Sqrt(reg.Cov[i][i]*reg.Cov[j][j])
			near(t, "correlation", got, want, 1e-12)
		}
	}
}

// Where only the step down stays in the domain, it tells the uncertainty alone.
func TestPropagateWhereTheStepUpLeavesTheDomain(t *testing.T) {
	p := fit.Propagate(func(x, out []float64) { out[0] = math.Sqrt(1 - x[0]) }, []float64{0.99}, []float64{0.02}, nil, 1)
	u, shift := p.U(0)
	near(t, "u", u, math.Sqrt(0.03)-math.Sqrt(0.01), 1e-12)
	near(t, "shift", shift, 0, 0)
	near(t, "with its sign", p.Contribution(0, 0), math.Sqrt(0.01)-math.Sqrt(0.03), 1e-12)
}

func TestRelevantInputs(t *testing.T) {
	p := fit.Propagate(func(x, out []float64) { out[0], out[1] = x[0], 2*x[0]-x[2] }, []float64{1, 2, 3, 4}, []float64{1, 1, 1, 0}, nil, 2)
	if got := p.Relevant(); !slices.Equal(got, []bool{true, false, true, false}) {
		t.Errorf("%v", got)
	}
}

// A hang counts whatever it read, to its last height, and where it did not read
// the hip its lowest mark stands in for the tape's errors.
func TestHangsCountToTheirLastHeight(t *testing.T) {
	f := fitting(readings{fit.Nose: {1500}, fit.GardaTaut: {1000}})
	m := fit.NewModel(f, fit.Options{})
	near(t, "nose, from the lowest mark", input(m, "hangs.1.nose_mm").L, 500, 1e-9)
	f.Hangs = append(f.Hangs, fit.Hang{})
	f.Hangs[1].Heights[fit.GardaTaut] = []float64{1010}
	m = fit.NewModel(f, fit.Options{})
	if in := input(m, "hangs.2.garda_taut_mm"); in.V != 1010 {
		t.Errorf("a hang that read the taut pose alone: %+v", in)
	}
}
