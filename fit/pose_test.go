package fit_test

import (
	"math"
	"testing"

	"example.com/hangtape/fit"
)

func TestRise(t *testing.T) {
	near(t, "a bridge of 1000 on rings 600 apart", fit.Rise(1000, 600), 400, 1e-12)
	near(t, "a bridge of 500 on rings 300 apart", fit.Rise(500, 300), 200, 1e-12)
	for _, l := range []float64{600, 599, 0} {
		if z := fit.Rise(l, 600); !math.IsNaN(z) {
			t.Errorf("a bridge of %g on rings 600 apart rises %g, want NaN", l, z)
		}
	}
}

// The poses worked out by hand from the kit's lengths, with nothing read in
// them. The Garda hitch at level: the shin hangs plumb from a level knee, and
// the foot loop closes the triangle to the rope. Standing: a knee bent by 60
// degrees, the hip 140 behind the rope.
func TestPosesFromLengths(t *testing.T) {
	f := fitting(everyLength())
	f.Posture[fit.KneeBend] = fit.Setting{V: 60, U: 8, Given: true}
	f.Posture[fit.BehindRope] = fit.Setting{V: 140, U: 20, Given: true}
	f.Mass, f.Rope.Elongation = fit.Some(80), fit.Some(2)
	f.Rope.LeastAbove, f.Rope.DrillAbove = fit.Some(3000), fit.Some(6000)
	_, s := stateOf(f)

	level := math.Sqrt(1040*1040-280*280) - 530
	taut := 10 + 200 + 150 + 110.0
	stand := math.Sqrt(440*440 + 530*530 + 440*530 - 140*140)
	gain := level - 1040 + stand
	near(t, "ylevel", s.YLevel, level, 1e-9)
	near(t, "ytaut", s.YTaut, taut, 1e-9)
	near(t, "over", s.Over, taut-level, 1e-9)
	near(t, "gain", s.Gain, gain, 1e-9)
	near(t, "net", s.Net, gain+math.Min(0, taut-level)-30, 1e-9)
	near(t, "slack", s.Slack, taut-level+gain, 1e-9)
	near(t, "ylow", s.YLow, level-gain, 1e-9)
	near(t, "hip to sole on the tether", s.LegDistance, math.Hypot(1040-taut, 160), 1e-9)
	// The law of cosines the other way round: the bend that the leg's span asks for.
	bend := s.Flexion * math.Pi / 180
	near(t, "span of the bent leg", math.Sqrt(440*440+530*530+2*440*530*math.Cos(bend)), s.LegDistance, 1e-9)

	// Two legs of 3 m share the load, each of them 100 kg per 2 %.
	weight := 80 * 9.80665 / 1000
	modulus := 100 * 9.80665 / 1000 / 0.02
	near(t, "peak force", s.PeakForce, weight+math.Sqrt(weight*weight+2*(2*modulus/3000)*s.Slack*weight), 1e-9)
	near(t, "sag", s.Sag, weight*6000/(2*modulus), 1e-9)
}

// The shin's angle and the side on which the knee comes up.
func TestKneeComesUpInFront(t *testing.T) {
	rs := everyLength()
	rs[fit.Tether] = []float64{260}
	f := fitting(rs)
	f.Posture[fit.ShinAngle] = fit.Setting{V: 10, U: 8, Given: true}
	_, s := stateOf(f)
	sin, cos := math.Sincos(10 * math.Pi / 180)
	garda := func(k float64) float64 {
		x := math.Sqrt(440*440-k*k) + 530*sin - 160
		return k - 530*cos + math.Sqrt(1040*1040-x*x)
	}
	near(t, "ylevel", s.YLevel, garda(0), 1e-9)
	if !(s.Over > 20) {
		t.Fatalf("over is %v: the test is not about a knee past level", s.Over)
	}
	near(t, "Garda hitch with the knee where the tether stops it", garda(s.KneeAtTaut), s.YTaut, 1e-9)
	near(t, "thigh past level", s.ThighPastLevel(), math.Asin(s.KneeAtTaut/440)*180/math.Pi, 1e-9)
}

// Where a pose was read, the reading is what counts, put level by the knee's
// own height; and what it differs from the lengths is kept.
func TestReadPosesStandForThemselves(t *testing.T) {
	rs := everyLength()
	rs[fit.GardaLevel], rs[fit.KneeLevel], rs[fit.GardaTaut] = []float64{1980}, []float64{1512}, []float64{2010}
	_, s := stateOf(fitting(rs))
	garda := func(k float64) float64 {
		x := math.Sqrt(440*440-k*k) - 160
		return k - 530 + math.Sqrt(1040*1040-x*x)
	}
	near(t, "ylevel", s.YLevel, 480+garda(0)-garda(12), 1e-9)
	near(t, "its offset", s.Delta, 480-garda(12), 1e-9)
	near(t, "ytaut", s.YTaut, 510, 1e-9)
	near(t, "its offset", s.Tau, 510-470, 1e-9)
}

// What changed since a pose was read moves it by what the lengths say, and the
// offset stays. A re-tied hitch keeps its wraps.
func TestChangesMoveWhatWasRead(t *testing.T) {
	rs := everyLength()
	rs[fit.GardaLevel], rs[fit.KneeLevel], rs[fit.GardaTaut] = []float64{1980}, []float64{1500}, []float64{2010}
	f := fitting(rs)
	_, before := stateOf(f)
	f.Changes = []fit.Change{
		{Piece: fit.PieceTether, To: 140, AfterHang: 1},
		{Piece: fit.PieceBackupBridge, To: 340, AfterHang: 1},
		{Piece: fit.PieceFootLoop, To: 1000, AfterHang: 1},
		{Piece: fit.PieceMainBridge, To: 1040, AfterHang: 1},
		{Piece: fit.PieceHitchLeft, To: 300, AfterHang: 1},
	}
	m, after := stateOf(f)
	near(t, "ytaut", after.YTaut, before.YTaut-10+fit.Rise(340, 300)-fit.Rise(500, 300), 1e-9)
	near(t, "ylevel", after.YLevel, before.YLevel+math.Sqrt(1000*1000-280*280)-math.Sqrt(1040*1040-280*280), 1e-9)
	lift := fit.Rise(1040, 600) - fit.Rise(1000, 600)
	near(t, "connector top", after.ConnectorTop, 670+lift, 1e-9)
	near(t, "connector bottom", after.ConnectorBottom, 560+lift, 1e-9)
	near(t, "left loop", after.Loop[0], 300, 1e-9)
	near(t, "left hitch top, its wraps kept", after.HitchTop[0], 670+lift+300+100, 1e-9)
	near(t, "right hitch top", after.HitchTop[1], 1080+lift, 1e-9)
	for _, key := range []string{"hangs.1.connector_top_mm", "hangs.1.left_hitch_top_mm", "hangs.1.garda_level_mm", "hangs.1.garda_taut_mm", "changes.1.to_mm"} {
		if got := input(m, key).Origin; got != fit.Predicted {
			t.Errorf("%s is %v, want predicted", key, got)
		}
	}
}

// Each side is its own.
func TestSides(t *testing.T) {
	_, s := stateOf(fitting(everyLength()))
	near(t, "left loop", s.Loop[0], 330, 1e-9)
	near(t, "right loop", s.Loop[1], 320, 1e-9)
	near(t, "left hitch top", s.HitchTop[0], 1100, 1e-9)
	near(t, "right hitch top", s.HitchTop[1], 1080, 1e-9)
	near(t, "left above right", s.PairDifference, 20, 1e-9)
}

// Past the domain nothing has a value: a foot loop that does not reach the rope,
// a hip further behind the rope than the leg is long.
func TestOutOfTheDomainIsUnknown(t *testing.T) {
	rs := everyLength()
	rs[fit.FootLoop] = []float64{280}
	_, s := stateOf(fitting(rs))
	for name, v := range map[string]float64{"ylevel": s.YLevel, "over": s.Over, "gain": s.Gain, "slack": s.Slack, "ylow": s.YLow} {
		if !math.IsNaN(v) {
			t.Errorf("%s is %v with a foot loop that does not reach", name, v)
		}
	}
	f := fitting(everyLength())
	f.Posture[fit.BehindRope] = fit.Setting{V: 2000, U: 20, Given: true}
	if _, s = stateOf(f); !math.IsNaN(s.Gain) || math.IsNaN(s.YLevel) {
		t.Errorf("hip 2 m behind the rope: gain %v, ylevel %v, want only the gain unknown", s.Gain, s.YLevel)
	}
}
