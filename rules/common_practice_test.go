package rules_test

import (
	"math"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// What the trade says of a climber of middling size is common practice and has
// no published source. The model, knowing nothing but the stature, has to land
// there.
const (
	inch           = 25.4
	middlingHeight = 1750
)

// middlingBody is what the model expects of a climber of middling stature,
// heights above the hip.
func middlingBody(t *testing.T) (body struct{ nose, wristUp, wristDown, thigh, shin, waist float64 }) {
	t.Helper()
	f := &fit.Fitting{Tape: fit.Tape{Class: fit.ClassII, Division: 1}, Hangs: make([]fit.Hang, 1)}
	f.Laid[fit.Stature] = []float64{middlingHeight}
	f.Hangs[0].Heights[fit.Hip] = []float64{0}
	inputs := map[string]float64{}
	for _, in := range judge(t, f, rules.DefaultLimits()).Inputs {
		inputs[in.Name] = float64(in.Value)
	}
	body.nose, body.wristUp, body.wristDown = inputs["hangs.1.nose_mm"], inputs["hangs.1.wrist_up_mm"], inputs["hangs.1.wrist_down_mm"]
	body.thigh, body.shin, body.waist = inputs["climber.thigh_mm"], inputs["climber.shin_mm"], inputs["climber.waist_mm"]
	return body
}

func TestRaisedWristIsAbout16InchesAboveTheNose(t *testing.T) {
	b := middlingBody(t)
	if got := b.wristUp - b.nose; math.Abs(got-16*inch) > inch {
		t.Errorf("raised wrist %.0f mm above the nose, common practice about %.0f", got, 16*inch)
	}
}

// A kit tied by the trade's own figures: the connector at the nose, loops of a
// foot with 4 in of wraps, the foot loop as long as the belt is high, a hand below
// the navel, the tether stopping the thigh between level and an inch past.
func TestKitByCommonPracticeFitsTheMiddlingBody(t *testing.T) {
	b := middlingBody(t)
	const hip, connector, ahead = 1500, 112, 150
	f := goodFitting()
	set := func(r fit.Reading, v float64) { *list(f, r) = []float64{v} }
	set(fit.Stature, middlingHeight)
	*list(f, fit.Inseam) = nil
	set(fit.Thigh, b.thigh)
	set(fit.Shin, b.shin)
	set(fit.Waist, b.waist)
	set(fit.Hip, hip)
	set(fit.Nose, hip+b.nose)
	set(fit.WristUp, hip+b.wristUp)
	set(fit.WristDown, hip+b.wristDown)
	set(fit.ConnectorTop, hip+b.nose-inch) // so that a hand over the wraps still reaches
	set(fit.ConnectorBottom, hip+b.nose-inch-connector)
	for _, r := range []fit.Reading{fit.LeftLoopTop, fit.RightLoopTop} {
		set(r, hip+b.nose-inch+12.5*inch)
		set(r+1, hip+b.nose-inch+16.5*inch)
	}
	set(fit.MainRings, hip+27)
	rise := b.nose - inch - connector + 15 - 27
	set(fit.MainBridge, 2*math.Hypot(rise, 364.0/2))
	set(fit.MainBridgeRings, 364)
	set(fit.Ahead, ahead)
	set(fit.Soles, hip-b.shin-b.thigh*0.6)

	loop := b.waist - 4*inch
	set(fit.FootLoop, loop)
	level := math.Sqrt(loop*loop-(b.thigh-ahead)*(b.thigh-ahead)) - b.shin
	set(fit.GardaLevel, hip+level)
	set(fit.KneeLevel, hip)
	for _, past := range []float64{0, 0.5 * inch, inch} {
		set(fit.GardaTaut, hip+level+past)
		set(fit.BackupRings, hip+4)
		set(fit.Tether, level+past-4-math.Sqrt(578*578-360*360)/2-106)
		r := judge(t, f, rules.DefaultLimits())
		for _, name := range []string{"hitch-handhold", "hitch-pair-level", "connector-at-face", "garda-low-reach", "foot-loop-at-waist",
			"knee-bend-on-tether", "slip-drop"} {
			if c := check(t, r, name); c.Verdict != rules.Pass {
				t.Errorf("%.0f mm past level: %s is %s, margin %.1f, guard %.1f", past, name, c.Verdict, c.Margin, c.Guard)
			}
		}
		for _, name := range []string{"tether-lets-thigh-level", "tether-stops-knee"} {
			if c := check(t, r, name); c.Verdict == rules.Fail || past == 0.5*inch && c.Verdict != rules.Pass {
				t.Errorf("%.0f mm past level: %s is %s, margin %.1f, guard %.1f", past, name, c.Verdict, c.Margin, c.Guard)
			}
		}
		// A kit of round figures may come out tight here, and never fails by
		// more than the last inch.
		for _, name := range []string{"hitch-top-reach", "garda-under-connector", "garda-release-room"} {
			if c := check(t, r, name); !(c.Margin > -inch) {
				t.Errorf("%.0f mm past level: %s is %s, margin %.1f", past, name, c.Verdict, c.Margin)
			}
		}
	}
}

func TestConnectorsOf38MillimetresTakeRopeUpTo11(t *testing.T) {
	for _, c := range []struct {
		rope float64
		want rules.Verdict
	}{{10, rules.Pass}, {11, rules.Pass}, {11.4, rules.Pass}, {13, rules.Fail}} {
		f := goodFitting()
		f.Kit.InsideWidth = fit.Some(1.5 * inch)
		f.Rope.Diameter = fit.Some(c.rope)
		if got := check(t, judge(t, f, rules.DefaultLimits()), "garda-connector-size"); got.Verdict != c.want {
			t.Errorf("rope of %g mm: %s, margin %.2f, guard %.2f, want %s", c.rope, got.Verdict, got.Margin, got.Guard, c.want)
		}
	}
}
