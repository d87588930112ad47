package fit_test

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/hangtape/fit"
)

// With the rope behind the hip and the thigh hanging, the foot loop runs to the
// rope from far in front and the Garda hitch is lower than the foot is long
// under it: the knee is still the one further forward.
func TestKneeIsInFrontOfALoopThatRunsFlat(t *testing.T) {
	const thigh, shin, ahead, loop = 500.0, 450.0, -250.0, 600.0
	const k = -400.0
	x := math.Sqrt(thigh*thigh - k*k)
	garda := k - shin + math.Sqrt(loop*loop-(x-ahead)*(x-ahead))
	rs := everyLength()
	rs[fit.Thigh], rs[fit.Shin], rs[fit.Ahead], rs[fit.FootLoop] = []float64{thigh}, []float64{shin}, []float64{ahead}, []float64{loop}
	rs[fit.GardaTaut] = []float64{1500 + garda}
	_, s := stateOf(fitting(rs))
	near(t, "knee", s.KneeAtTaut, k, 1e-6)
}

// Readings whose squares are no numbers any more say nothing of the other parts
// of the body.
func TestReadingsBeyondNumbersSharpenNothing(t *testing.T) {
	rs := readings{fit.Stature: {1765}}
	_, alone := stateOf(fitting(rs))
	rs[fit.Thigh], rs[fit.Waist] = []float64{1e200}, []float64{1e200}
	_, s := stateOf(fitting(rs))
	if math.IsNaN(s.Shin) || s.Shin != alone.Shin {
		t.Errorf("shin %v, by the stature alone %v", s.Shin, alone.Shin)
	}
}

// A leg that hangs straight is drawn so, and no longer than it is.
func TestLegThatDoesNotReachIsDrawnStraight(t *testing.T) {
	rs := everyLength()
	rs[fit.FootLoop] = []float64{1600}
	f := fitting(rs)
	_, s := stateOf(f)
	if s.LegDistance < s.LegReach {
		t.Fatalf("the leg reaches: %v of %v", s.LegDistance, s.LegReach)
	}
	sh := shapes(f)[fit.OnTether]
	near(t, "thigh", apart(sh, fit.MarkHip, fit.MarkKnee)/apart(sh, fit.MarkHip, fit.MarkSole), 440.0/970, 1e-9)
	near(t, "knee on the line", apart(sh, fit.MarkHip, fit.MarkKnee)+apart(sh, fit.MarkKnee, fit.MarkSole), apart(sh, fit.MarkHip, fit.MarkSole), 1e-9)
}

func TestHeadHoldsWhatLiesInIt(t *testing.T) {
	head := shapes(fitting(everyReading()))[fit.Seated].Head
	for _, c := range []struct {
		dx, dy float64
		in     bool
	}{{0, 0, true}, {0.9, 0, true}, {0, -0.9, true}, {0.8, 0.8, false}, {1.1, 0, false}} {
		p := fit.Point{X: head.Centre.X + c.dx*head.RX, Y: head.Centre.Y + c.dy*head.RY}
		if head.Holds(p) != c.in {
			t.Errorf("%g, %g half axes off its middle: %v", c.dx, c.dy, !c.in)
		}
	}
}

// The tenth hang comes after the ninth, and not after the first.
func TestKeysOfHangsAreOrderedByNumber(t *testing.T) {
	keys := fit.SortKeys([]string{fit.HeightKey(9, fit.Hip), fit.HeightKey(8, fit.Nose), fit.HeightKey(0, fit.Nose), fit.HeightKey(8, fit.Hip), fit.HeightKey(10, fit.Hip), fit.HeightKey(9, fit.Hip)})
	want := []string{"hangs.1.nose_mm", "hangs.9.hip_mm", "hangs.9.nose_mm", "hangs.10.hip_mm", "hangs.11.hip_mm"}
	if !slices.Equal(keys, want) {
		t.Errorf("%v, want %v", keys, want)
	}
}

// The loop of a hitch that was tied anew is known from its tape, without a height.
func TestLoopTiedAnewNeedsNoHeight(t *testing.T) {
	rs := everyLength()
	delete(rs, fit.LeftLoopTop)
	f := fitting(rs)
	m := fit.NewModel(f, fit.Options{})
	if got := m.Missing(fit.NeedLoopLeft); !slices.Equal(got, []string{"hangs.1.left_loop_top_mm"}) {
		t.Errorf("missing %v", got)
	}
	f.Changes = []fit.Change{{Piece: fit.PieceHitchLeft, To: 320, Measured: []float64{321}, AfterHang: 1}}
	m = fit.NewModel(f, fit.Options{})
	if got := m.Missing(fit.NeedLoopLeft); len(got) != 0 {
		t.Errorf("missing %v", got)
	}
}

// A length that was set is read again as itself.
func TestSetLengthIsLaidOnAgain(t *testing.T) {
	f := fitting(everyLength())
	f.Changes = []fit.Change{{Piece: fit.PieceTether, To: 170, AfterHang: 1}}
	m := fit.NewModel(f, fit.Options{})
	in := input(m, fit.ChangeKey(0, false))
	again := f.Repeated(&in, 3)
	if got := again.Changes[0].Measured; !slices.Equal(got, []float64{170, 170, 170}) || len(f.Changes[0].Measured) != 0 {
		t.Errorf("laid on as %v, before it %v", got, f.Changes[0].Measured)
	}
}

// Only what is predicted is in doubt until it is read.
func TestWhatIsNotPredictedIsNotDoubted(t *testing.T) {
	f := fitting(everyLength())
	f.Mass = fit.Some(80)
	m := fit.NewModel(f, fit.Options{})
	for i := range m.Inputs {
		if m.Inputs[i].Key == "climber.mass_kg" && m.Doubts(i) != nil {
			t.Errorf("the mass is doubted for want of %v", m.Doubts(i))
		}
	}
}

// A cord that cannot be says which quantity, what was found and what is accepted.
func TestCordThatCannotBeSaysWhy(t *testing.T) {
	c := tether()
	c.Diameter = 80
	var e *fit.CordError
	if err := c.Check(); !errors.As(err, &e) || e.Name != "cord" || !strings.Contains(err.Error(), "cord: 80 mm cannot be; accepted: ") {
		t.Errorf("%v", c.Check())
	}
}

func TestKnotsAreFoundByTheirKeys(t *testing.T) {
	for k := range fit.NumKnots {
		if got, ok := fit.KnotByKey(k.Info().Key); !ok || got != k || got.String() != k.Info().Name {
			t.Errorf("%s is found as %v", k, got)
		}
	}
	if k, ok := fit.KnotByKey("granny"); ok {
		t.Errorf("granny is found as %v", k)
	}
	if s := fit.NumKnots.String(); s != "no such knot" {
		t.Error(s)
	}
}
