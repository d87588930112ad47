package fit_test

import (
	"math"
	"testing"

	"example.com/hangtape/fit"
)

// Two ways of knowing one height, worked out by hand from what was read.
func TestDisagreementsByHand(t *testing.T) {
	f := fitting(everyReading())
	f.Posture[fit.LevelByEye] = fit.Setting{V: 10, U: 20, Given: true}
	of := func(f *fit.Fitting, o fit.Offset) float64 {
		m, s := stateOf(f)
		return m.Disagreement(o, m.Values(), s)
	}
	near(t, "knee", of(f, fit.KneeOffset), 4-10, 1e-9)
	near(t, "taut", of(f, fit.TautOffset), 476-(10+200+150+110), 1e-9)
	near(t, "bridge", of(f, fit.BridgeOffset), 560+15-(30+400), 1e-9)
	near(t, "level", of(f, fit.LevelOffset), 466-(4-530+math.Sqrt(1040*1040-math.Pow(math.Sqrt(440*440-16)-160, 2))), 1e-9)
	alone := fitting(everyReading())
	alone.Hangs[0].Heights[fit.GardaLevel] = nil
	near(t, "knee without its Garda hitch", of(alone, fit.KneeOffset), 4, 1e-9)
	f.Hangs[0].Heights[fit.ConnectorBottom] = nil
	if got := of(f, fit.BridgeOffset); !math.IsNaN(got) {
		t.Errorf("a connector that was not read disagrees by %g", got)
	}
	f.Hangs[0].Heights[fit.KneeLevel] = nil
	if got := of(f, fit.KneeOffset); !math.IsNaN(got) {
		t.Errorf("a knee that was not read disagrees by %g", got)
	}
}

// A leg that hangs from the saddle, a tilted shin, a tether as low as its bridge lets it.
func TestShapesThatTheReadingsDoNotFix(t *testing.T) {
	f := fitting(everyLength())
	m, _ := stateOf(f)
	sh := m.Shape(fit.Seated)
	below := 35 * math.Pi / 180
	near(t, "hanging knee ahead", sh.At[fit.MarkKnee].X, 440*math.Cos(below), 1e-9)
	near(t, "hanging knee", sh.At[fit.MarkKnee].Y, -440*math.Sin(below), 1e-9)
	near(t, "hanging sole ahead", sh.At[fit.MarkSole].X, 440*math.Cos(below), 1e-9)
	near(t, "hanging sole", sh.At[fit.MarkSole].Y, -440*math.Sin(below)-530, 1e-9)
	f.Posture[fit.ShinAngle] = fit.Setting{V: 20, U: 5, Given: true}
	f.Laid[fit.Tether] = []float64{1200}
	m, s := stateOf(f)
	sh, tilt := m.Shape(fit.ThighLevel), 20*math.Pi/180
	near(t, "sole ahead of the knee", sh.At[fit.MarkSole].X-sh.At[fit.MarkKnee].X, 530*math.Sin(tilt), 1e-9)
	near(t, "sole under the knee", sh.At[fit.MarkKnee].Y-sh.At[fit.MarkSole].Y, 530*math.Cos(tilt), 1e-9)
	near(t, "end of a long tether, standing", m.Shape(fit.Standing).At[fit.MarkTetherEnd].Y, s.Gain+10-200, 1e-9)
}

// A knee that was not read with the latest Garda hitch at level is no reading that
// could go stale.
func TestKneeWithoutItsGardaHitchIsNotStale(t *testing.T) {
	f := fitting(readings{fit.Hip: {1500}, fit.GardaLevel: {1966}, fit.KneeLevel: {1504}})
	f.Hangs = append(f.Hangs, fit.Hang{}, fit.Hang{})
	f.Hangs[1].Heights[fit.Hip], f.Hangs[1].Heights[fit.GardaLevel] = []float64{1500}, []float64{1966}
	f.Changes = []fit.Change{{Piece: fit.PieceFootLoop, To: 1000, AfterHang: 2}}
	for _, r := range f.Stale(3) {
		if r.Reading == fit.KneeLevel {
			t.Errorf("stale: %+v", r)
		}
	}
}
