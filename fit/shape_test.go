package fit_test

import (
	"math"
	"testing"

	"example.com/hangtape/fit"
)

// shapes are the side views of f in all poses.
func shapes(f *fit.Fitting) map[fit.Pose]fit.Shape {
	m, _ := stateOf(f)
	out := map[fit.Pose]fit.Shape{}
	for _, p := range []fit.Pose{fit.Seated, fit.ThighLevel, fit.TetherTaut, fit.Standing, fit.OnTether} {
		out[p] = m.Shape(p)
	}
	return out
}

func apart(sh fit.Shape, a, b fit.Landmark) float64 {
	return math.Hypot(sh.At[a].X-sh.At[b].X, sh.At[a].Y-sh.At[b].Y)
}

// kneeBend is how far the drawn leg is bent, in degrees.
func kneeBend(sh fit.Shape) float64 {
	t, s, d := apart(sh, fit.MarkHip, fit.MarkKnee), apart(sh, fit.MarkKnee, fit.MarkSole), apart(sh, fit.MarkHip, fit.MarkSole)
	return 180 - math.Acos((t*t+s*s-d*d)/(2*t*s))*180/math.Pi
}

// The lengths of climber and kit are in the drawing as they were laid on, and
// the angles as the poses have them.
func TestShapesKeepTheLengths(t *testing.T) {
	f := fitting(everyLength())
	_, s := stateOf(f)
	for p, sh := range shapes(f) {
		near(t, "thigh", apart(sh, fit.MarkHip, fit.MarkKnee), 440, 1e-9)
		near(t, "shin", apart(sh, fit.MarkKnee, fit.MarkSole), 530, 1e-9)
		near(t, "Garda hitch to tether", apart(sh, fit.MarkGardaTop, fit.MarkGardaTie), 110, 1e-9)
		near(t, "foot loop", apart(sh, fit.MarkGardaTop, fit.MarkLoopEnd), 1040, 1e-9)
		near(t, "connector", apart(sh, fit.MarkConnectorTop, fit.MarkConnectorBottom), 110, 1e-9)
		if reach := apart(sh, fit.MarkTetherEnd, fit.MarkGardaTie); reach > 150+1e-9 {
			t.Errorf("pose %d: a tether of 150 spans %g", p, reach)
		}
	}
	all := shapes(f)
	near(t, "knee with the thigh level", all[fit.ThighLevel].At[fit.MarkKnee].Y, 0, 1e-9)
	near(t, "tether when taut", apart(all[fit.TetherTaut], fit.MarkTetherEnd, fit.MarkGardaTie), 150, 1e-9)
	near(t, "backup bridge when taut", all[fit.TetherTaut].At[fit.MarkTetherEnd].Y-all[fit.TetherTaut].At[fit.MarkBackupRings].Y, 200, 1e-9)
	near(t, "past level", all[fit.TetherTaut].At[fit.MarkGardaTop].Y-all[fit.TetherTaut].At[fit.MarkGardaLevel].Y, s.Over, 1e-9)
	near(t, "knee bend standing", kneeBend(all[fit.Standing]), 15, 1e-9)
	near(t, "hip behind the rope", 160-all[fit.Standing].At[fit.MarkHip].X, 60, 1e-9)
	near(t, "hip stood up", all[fit.Standing].At[fit.MarkHip].Y, s.Gain, 1e-9)
	near(t, "hitches slid up", all[fit.Standing].At[fit.MarkLeftHitch].Y-all[fit.Seated].At[fit.MarkLeftHitch].Y, s.Gain, 1e-9)
	near(t, "knee bend on the tether", kneeBend(all[fit.OnTether]), s.Flexion, 1e-9)
	near(t, "Garda hitch after a stand", all[fit.Seated].At[fit.MarkGardaTop].Y, s.YLow, 1e-9)
}

// The heights that were read are where they were read.
func TestShapesKeepTheHeights(t *testing.T) {
	rs := everyReading()
	f := fitting(rs)
	all := shapes(f)
	for r := range fit.NumReadings {
		pose := r.Info().Pose
		from, to, ok := r.Landmarks()
		if pose == fit.NoPose || r == fit.GardaLevel || r == fit.KneeLevel || !ok {
			continue // read with the knee where it was, drawn with it level
		}
		if from != to {
			t.Errorf("%s: a height from %d to %d", r, from, to)
		}
		near(t, r.String(), all[pose].At[from].Y, rs[r][0]-rs[fit.Hip][0], 1e-9)
	}
	if c := all[fit.TetherTaut]; len(c.Clashes()) != 0 {
		t.Errorf("clashes %v", c.Clashes())
	}
}

// What nobody has read is not in the picture, and no line goes there.
func TestShapesLeaveOutWhatIsUnknown(t *testing.T) {
	for p, sh := range shapes(&fit.Fitting{Tape: fit.Tape{Class: fit.ClassII, Division: 1}}) {
		for k := range sh.At {
			switch fit.Landmark(k) {
			case fit.MarkHip, fit.MarkRope, fit.MarkRopeTop, fit.MarkRopeEnd:
			default:
				if sh.At[k].Known() {
					t.Errorf("pose %d: landmark %d is at %v", p, k, sh.At[k])
				}
			}
		}
		if len(sh.Lines) != 1 {
			t.Errorf("pose %d: lines %v, want the rope alone", p, sh.Lines)
		}
	}
	for _, r := range []fit.Reading{fit.Nose, fit.Tether, fit.ConnectorBottom} {
		rs := everyReading()
		delete(rs, r)
		delete(rs, fit.GardaTaut)
		sh := shapes(fitting(rs))[fit.TetherTaut]
		for _, l := range sh.Lines {
			if !sh.At[l.From].Known() || !sh.At[l.To].Known() {
				t.Errorf("without %s: a line from %v to %v", r, sh.At[l.From], sh.At[l.To])
			}
		}
	}
}

// From stature alone the body is drawn, and marked as estimated; a reading takes
// its own mark off.
func TestShapesMarkWhatIsEstimated(t *testing.T) {
	rs := everyReading()
	for _, r := range []fit.Reading{fit.Thigh, fit.Shin, fit.Nose, fit.WristUp, fit.WristDown, fit.Soles, fit.GardaLevel, fit.KneeLevel} {
		delete(rs, r)
	}
	told := func(pose fit.Pose, k fit.Landmark) bool { return shapes(fitting(rs))[pose].Estimated[k] }
	for _, c := range []struct {
		pose fit.Pose
		mark fit.Landmark
		want bool
	}{
		{fit.Seated, fit.MarkNose, true},
		{fit.Seated, fit.MarkWristUp, true},
		{fit.Seated, fit.MarkWristDown, true},
		{fit.Seated, fit.MarkKnee, true},
		{fit.Seated, fit.MarkConnectorTop, false},
		{fit.ThighLevel, fit.MarkGardaTop, true},
		{fit.TetherTaut, fit.MarkGardaTop, false},
		{fit.Standing, fit.MarkHip, true},
	} {
		if got := told(c.pose, c.mark); got != c.want {
			t.Errorf("pose %d, landmark %d: estimated is %v", c.pose, c.mark, got)
		}
	}
	rs[fit.Nose] = []float64{2218}
	if told(fit.Seated, fit.MarkNose) {
		t.Error("a nose that was read counts as estimated")
	}
}

// A landmark that is asked for before anything is known has a place all the
// same, marked; nothing else comes with it.
func TestShapesPlaceWhatIsAskedFor(t *testing.T) {
	m := fit.NewModel(&fit.Fitting{Tape: fit.Tape{Class: fit.ClassII, Division: 1}}, fit.Options{})
	for r := range fit.NumReadings {
		from, to, ok := r.Landmarks()
		if !ok {
			continue
		}
		for _, p := range []fit.Pose{fit.Seated, fit.ThighLevel, fit.TetherTaut} {
			if pose := r.Info().Pose; pose != fit.NoPose && pose != p {
				continue
			}
			bare, sh := m.Shape(p), m.Shape(p, from, to)
			for k := range sh.At {
				k := fit.Landmark(k)
				switch asked := k == from || k == to; {
				case asked && !sh.At[k].Known():
					t.Errorf("%s in pose %d: landmark %d has no place", r, p, k)
				case asked && !bare.At[k].Known() && !sh.Estimated[k]:
					t.Errorf("%s in pose %d: landmark %d is not marked", r, p, k)
				case !asked && sh.At[k].Known() != bare.At[k].Known():
					t.Errorf("%s in pose %d: landmark %d came with it", r, p, k)
				}
			}
		}
	}
}

func TestClashes(t *testing.T) {
	rs := everyReading()
	rs[fit.GardaTaut] = []float64{2075} // the connector's bottom is at 2060
	rs[fit.Soles], rs[fit.Ground] = []float64{762}, []float64{560}
	all := shapes(fitting(rs))
	taut := all[fit.TetherTaut]
	if got := taut.Clashes(); len(got) != 1 || got[0].Lower != fit.MarkGardaTop || math.Abs(got[0].Depth-15) > 1e-9 {
		t.Errorf("clashes %v, want the Garda hitch 15 into the connector", got)
	}
	level := all[fit.ThighLevel]
	if got := level.Clashes(); len(got) != 0 {
		t.Errorf("clashes %v with the thigh level, want none", got)
	}
	seated := all[fit.Seated]
	loop := seated.At[fit.MarkLoopEnd].Y - (560 - 1500)
	if got := seated.Clashes(); (len(got) == 1) != (loop < 0) {
		t.Errorf("clashes %v with the foot loop %g above the ground", got, loop)
	}
}

func BenchmarkShape(b *testing.B) {
	m, _ := stateOf(fitting(everyReading()))
	for b.Loop() {
		m.Shape(fit.ThighLevel)
	}
}
