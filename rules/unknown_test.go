package rules_test

import (
	"testing"

	"pgregory.net/rapid"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// restsOn holds for each thing that nothing can be estimated for the checks
// that need it, with neither pose of the Garda hitch read: such a reading stands
// in for what does not change.
var restsOn = []struct {
	name  string
	leave func(*fit.Fitting)
	needs []string
}{
	{"hip", leaveOut(fit.Hip), []string{"hitch-top-reach", "connector-at-face", "garda-under-connector", "garda-release-room",
		"tether-lets-thigh-level", "tether-stops-knee", "knee-bend-on-tether", "slip-drop", "slip-force", "drill-ground-room", "tether-strength"}},
	{"connector top", leaveOut(fit.ConnectorTop), []string{"hitch-handhold", "connector-at-face"}},
	{"connector bottom", leaveOut(fit.ConnectorBottom), []string{"garda-under-connector", "garda-release-room"}},
	{"left loop top", leaveOut(fit.LeftLoopTop), []string{"hitch-handhold"}},
	{"right loop top", leaveOut(fit.RightLoopTop), []string{"hitch-handhold"}},
	{"left hitch top", leaveOut(fit.LeftHitchTop), []string{"hitch-top-reach", "hitch-pair-level"}},
	{"right hitch top", leaveOut(fit.RightHitchTop), []string{"hitch-top-reach", "hitch-pair-level"}},
	{"backup rings", leaveOut(fit.BackupRings), onTether},
	{"backup bridge", leaveOut(fit.BackupBridge), onTether},
	{"backup bridge rings", leaveOut(fit.BackupBridgeRings), onTether},
	{"tether", leaveOut(fit.Tether), onTether},
	{"Garda to tether", leaveOut(fit.GardaToTether), onTether},
	{"foot loop", leaveOut(fit.FootLoop), []string{"garda-low-reach", "foot-loop-at-waist", "garda-under-connector",
		"tether-lets-thigh-level", "tether-stops-knee", "knee-bend-on-tether", "slip-drop", "slip-force", "drill-ground-room", "tether-strength"}},
	{"soles", leaveOut(fit.Soles), []string{"drill-ground-room"}},
	{"ground", leaveOut(fit.Ground), []string{"drill-ground-room"}},
	{"mass", func(f *fit.Fitting) { f.Mass = fit.Number{} }, []string{"slip-force", "drill-ground-room", "hitch-cord-strength", "tether-strength"}},
	{"rope above", func(f *fit.Fitting) { f.Rope.LeastAbove = fit.Number{} }, []string{"slip-force", "tether-strength"}},
	{"rope above in the drill", func(f *fit.Fitting) { f.Rope.DrillAbove = fit.Number{} }, []string{"drill-ground-room"}},
	{"elongation", func(f *fit.Fitting) { f.Rope.Elongation = fit.Number{} }, []string{"slip-force", "drill-ground-room", "tether-strength"}},
	{"rope diameter", func(f *fit.Fitting) { f.Rope.Diameter = fit.Number{} }, []string{"garda-connector-size", "hitch-cord-grip", "hitch-cord-bite"}},
	{"inside width", func(f *fit.Fitting) { f.Kit.InsideWidth = fit.Number{} }, []string{"garda-connector-size"}},
	{"left cord and its label", func(f *fit.Fitting) {
		f.Kit.Pieces[fit.PieceHitchLeft].Cord = fit.Number{}
		f.Kit.Pieces[fit.PieceHitchLeft].Strength = fit.Number{}
	}, []string{"hitch-cord-grip", "hitch-cord-bite", "hitch-cord-strength"}},
	{"right wraps", func(f *fit.Fitting) { f.Kit.Pieces[fit.PieceHitchRight].Wraps = fit.Number{} }, []string{"hitch-wraps"}},
	{"tether strands", func(f *fit.Fitting) { f.Kit.Pieces[fit.PieceTether].Strands = fit.Number{} }, []string{"tether-strength"}},
	{"tether cord and its label", func(f *fit.Fitting) {
		f.Kit.Pieces[fit.PieceTether].Cord = fit.Number{}
		f.Kit.Pieces[fit.PieceTether].Strength = fit.Number{}
	}, []string{"tether-strength"}},
}

var onTether = []string{"garda-release-room", "tether-lets-thigh-level", "tether-stops-knee", "knee-bend-on-tether",
	"slip-drop", "slip-force", "drill-ground-room", "tether-strength"}

func leaveOut(r fit.Reading) func(*fit.Fitting) {
	return func(f *fit.Fitting) { *list(f, r) = nil }
}

// leaveOutOf leaves one thing out of f and holds what needs it to that: unknown,
// or a fail that stands on its other side or end alone; never a pass, and never
// in silence.
func leaveOutOf(t tester, f *fit.Fitting, which int) {
	t.Helper()
	c := restsOn[which]
	*list(f, fit.GardaLevel), *list(f, fit.KneeLevel), *list(f, fit.GardaTaut) = nil, nil, nil
	c.leave(f)
	r := judge(t, f, rules.DefaultLimits())
	for _, name := range c.needs {
		got := check(t, r, name)
		if got.Verdict != rules.Unknown && got.Verdict != rules.Fail {
			t.Errorf("%s is %s without the %s", name, got.Verdict, c.name)
		}
		if got.Verdict == rules.Unknown && (len(got.Missing) == 0 || got.Margin.Known()) {
			t.Errorf("%s is unknown without the %s, with margin %v, missing %v", name, c.name, got.Margin, got.Missing)
		}
	}
}

func TestLeavingOutAnInputIsNeverAPass(t *testing.T) {
	for which := range restsOn {
		leaveOutOf(t, goodFitting(), which)
	}
}

func TestLeavingOutMoreIsNeverAPass(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		leaveOutOf(t, drawFitting(t), rapid.IntRange(0, len(restsOn)-1).Draw(t, "left out"))
	})
}

// An empty session passes nothing.
func TestNothingReadPassesNothing(t *testing.T) {
	r := judge(t, &fit.Fitting{Tape: fit.Tape{Class: fit.ClassII, Division: 1}}, rules.DefaultLimits())
	for _, c := range r.Checks {
		if c.Verdict == rules.Pass || c.Verdict == rules.Tight {
			t.Errorf("%s is %s with nothing read", c.Name, c.Verdict)
		}
	}
	if r.Outcome == rules.Pass || r.Outcome == rules.Tight {
		t.Errorf("the outcome is %s with nothing read", r.Outcome)
	}
}

// Less sure is never better: a larger uncertainty of one input that shares
// nothing with another turns no check from tight, its margin inside its guard,
// to pass. An uncertainty that weighs a reading against the survey, as the
// sole's does, also moves the estimates: a margin that moves with them is
// another margin.
func TestWideningAnUncertaintyNeverPasses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := drawFitting(t)
		wide := copyOf(f)
		switch p := rapid.IntRange(-2, int(fit.NumPostures)-1).Draw(t, "posture"); p {
		case -2: // the mass
			wide.MassU = fit.Some(f.MassU.V * rapid.Float64Range(1, 6).Draw(t, "wider"))
		case -1: // every reading's division
			wide.Tape.Division *= rapid.Float64Range(1, 10).Draw(t, "wider")
		default:
			i := fit.Posture(p).Info()
			wide.Posture[p] = fit.Setting{V: i.V, U: i.U * rapid.Float64Range(1, 2).Draw(t, "wider"), Given: true}
		}
		before, after := judge(t, f, rules.DefaultLimits()), judge(t, wide, rules.DefaultLimits())
		for i, c := range before.Checks {
			d := after.Checks[i]
			if c.Verdict == rules.Tight && c.Margin < c.Guard && d.Verdict == rules.Pass && c.At == d.At && same(c.Margin, d.Margin, 1e-9) {
				t.Errorf("%s was tight with margin %v and guard %v, shift %v, u %v, and passes with margin %v and guard %v, shift %v, u %v",
					c.Name, c.Margin, c.Guard, c.Shift, c.U, d.Margin, d.Guard, d.Shift, d.U)
			}
		}
	})
}
