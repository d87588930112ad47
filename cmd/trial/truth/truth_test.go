package truth

import (
	"fmt"
	"go/parser"
	"go/token"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// limits as a school would have them; invented for the tests, near common ones.
var limits = Limits{
	LeastLoop: 305, MostPairDifference: 40, FaceBelow: 70, FaceAbove: 70, WaistBelow: 150, WaistAbove: 75,
	ConnectorClearance: 25, ReleaseRoom: 40, LeastOver: -20, MostOver: 50, MostFlexion: 120, MostDrop: 600, PeakForce: 6,
	LeastWidthRatio: 3.2, LeastCordRatio: 0.6, MostCordRatio: 0.8, LeastWraps: 3, LeastHitchRatio: 10, LeastStrengthRatio: 2, KnotEfficiency: 0.5,
}

func survey(t testing.TB) []Body {
	t.Helper()
	f, err := os.Open("../../../testdata/survey/ansur2.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	bodies, err := ReadBodies(f)
	if err != nil {
		t.Fatal(err)
	}
	return bodies
}

// The truth must not lean on what it judges: the standard library is all that it
// may import.
func TestImportsOnlyTheStandardLibrary(t *testing.T) {
	files, err := filepath.Glob("*.go")
	if err != nil || len(files) == 0 {
		t.Fatal("no files", err)
	}
	for _, name := range files {
		f, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ImportsOnly)
		if err != nil {
			t.Fatal(err)
		}
		for _, spec := range f.Imports {
			path := strings.Trim(spec.Path.Value, `"`)
			if first, _, _ := strings.Cut(path, "/"); strings.Contains(first, ".") {
				t.Errorf("%s imports %s", name, path)
			}
		}
	}
}

func TestReadBodies(t *testing.T) {
	bodies := survey(t)
	men := 0
	for _, b := range bodies {
		if b.Sex == "M" {
			men++
		}
	}
	if len(bodies) != 6068 || men != 4082 {
		t.Errorf("%d bodies, %d men; the survey has 6,068 and 4,082", len(bodies), men)
	}
	if b := bodies[0]; b.Thigh != 919-502 || b.Mass != 81.5 || b.Neck+b.Eye != 802-(928-(1776-919)) {
		t.Errorf("first row read as %+v", b)
	}
	for _, bad := range []string{"", "sex,stature\nM,1700\n", "sex,stature,trochanterionheight,kneeheightmidpatella\nM,x,1,1\n"} {
		if _, err := ReadBodies(strings.NewReader(bad)); err == nil {
			t.Errorf("no error for %q", bad)
		}
	}
}

// plain is a world without anything that closed forms leave out.
func plain() World {
	w := World{Mass: 80, Thigh: 400, Shin: 500, Ahead: 100, GardaToTether: 100, BehindRope: 60}
	w.MainRings, w.BackupRings = Point{100, 20}, Point{100, 10}
	w.MainGap, w.BackupGap = 600, 360
	w.Gear = Gear{Elongation: Size{True: 10}, Strands: 2, Tether: 15}
	return w
}

// Right triangles with whole sides, worked by hand.
func TestPosesOfAPlainWorld(t *testing.T) {
	w := plain()
	k := Kit{LeastAbove: 3000, DrillAbove: 3000}
	k.Lengths = [NumPieces]float64{MainBridge: 1000, LeftLoop: 300, RightLoop: 300, FootLoop: 500, Tether: 130, BackupBridge: 600}
	p := w.Poses(k)
	near := func(name string, got, want float64) {
		t.Helper()
		if !(math.Abs(got-want) < 1e-4) {
			t.Errorf("%s: %.6f, want %.6f", name, got, want)
		}
	}
	near("bridge 1000 on rings 600 apart rises 400", p.ConnectorBottom, 420)
	near("bridge 600 on rings 360 apart rises 240", p.Taut, 10+240+130+100)
	near("foot 300 ahead of the rope on a loop of 500", p.Level, -500+400)
	near("straight legs of 900, hip 60 behind the foot", p.Gain, -100-500+math.Sqrt(900*900-60*60))
	near("slack", p.Slack, p.Taut-(p.Level-p.Gain))

	w.Thigh, w.Shin, w.Ahead = 300, 400, 0
	k = k.With(FootLoop, 980) // hip to foot 500: a right angle at the knee
	near("knee of a 300, 400, 500 triangle", w.Poses(k).Flexion/deg, 90)
}

// Worked set of R. Foote, "Fall Factor Math" (1995), 80 kg, the printed kilograms
// force (seen in a public copy): fall factor, stretch under 80 kg, force.
func TestPeakForceAgainstPublishedSet(t *testing.T) {
	w := plain()
	for _, row := range [][3]float64{{1, 8, 488}, {1, 4, 651}, {2, 8, 651}, {2, 4, 884}, {2, 2, 1214}, {2, 1, 1682}, {2, 0.5, 2344}} {
		w.Gear.Elongation.True = row[1] * 100 / 80
		const rope = 1000 // of a single strand; two legs twice as long are as stiff
		if got := w.peakForce(row[0]*rope, 2*rope) / gravity; math.Abs(got-row[2]) > 0.5 {
			t.Errorf("fall factor %g, stretch %g %%: %.1f kg, want %g", row[0], row[1], got, row[2])
		}
	}
	if got, want := w.peakForce(0, 3000), 2*w.Mass*gravity; math.Abs(got-want) > 1e-9 {
		t.Errorf("a load let go without drop: %g, want %g", got, want)
	}
}

// At scale 1 the spread about the tool's default is what the tool assumes, to a
// quarter, and twice as wide a world is wider. Defaults and spreads are those of
// the tool's table of postures, copied here because nothing of it is imported.
func TestSpreadsAtScaleOne(t *testing.T) {
	bodies := survey(t)
	rms := func(scale, about float64, of func(*World) float64) float64 {
		sum := 0.0
		for _, b := range bodies {
			w := Draw(NewDice(7, b.Row, 0, scale), b)
			sum += (of(&w) - about) * (of(&w) - about)
		}
		return math.Sqrt(sum / float64(len(bodies)))
	}
	for _, q := range []struct {
		name     string
		about, u float64
		of       func(*World) float64
	}{
		{"shin angle", 0, 8, func(w *World) float64 { return w.ShinAngle / deg }},
		{"knee bend", 15, 8, func(w *World) float64 { return w.KneeBend / deg }},
		{"behind the rope", 60, 20, func(w *World) float64 { return w.BehindRope }},
		{"ahead", 150, 40, func(w *World) float64 { return w.Ahead }},
		{"set", 30, 15, func(w *World) float64 { return w.HitchSet }},
		{"sole", 25, 5, func(w *World) float64 { return w.Sole }},
		{"eye above nose", 45, 5, func(w *World) float64 { return w.EyeAboveNose }},
		{"level by eye", 0, 20, func(w *World) float64 { return w.EyeLevel }},
		{"comfortable reach", 0.86, 0.05, func(w *World) float64 {
			b := w.Body
			full := (b.Shoulder + b.UpperArm + b.Forearm + b.Lift) * math.Cos(8*deg)
			return (w.WristUp[Right].Y - w.Nose.Y) / (full - w.Nose.Y)
		}},
	} {
		one, two := rms(1, q.about, q.of), rms(2, q.about, q.of)
		if one < 0.75*q.u || one > 1.25*q.u || two < 1.2*one {
			t.Errorf("%s: %.3g about %g at scale 1, %.3g at scale 2; assumed %g", q.name, one, q.about, two, q.u)
		}
	}
}

func TestBestKitBeatsRandomKits(t *testing.T) {
	bodies := survey(t)
	for row := 0; row < len(bodies); row += 40 {
		d := NewDice(3, row, 0, 1)
		w := Draw(d, bodies[row])
		_, best := w.BestKit(SchoolBounds, &limits)
		if best > wideEnough {
			continue
		}
		for range 4000 {
			k := Kit{LeastAbove: 3000, DrillAbove: 7000}
			for p, b := range SchoolBounds {
				k.Lengths[p] = b[0] + d.Float64()*(b[1]-b[0])
			}
			if m := w.Margins(k, &limits); m.worst(&searchScale) > best+1 {
				t.Errorf("row %d: a random kit has %.1f mm, the search found %.1f", row, m.worst(&searchScale), best)
				break
			}
		}
	}
}

func ExampleWorld_Margins() {
	w := plain()
	k := Kit{LeastAbove: 3000, DrillAbove: 3000}
	k.Lengths = [NumPieces]float64{MainBridge: 1000, LeftLoop: 300, RightLoop: 300, FootLoop: 500, Tether: 130, BackupBridge: 600}
	m := w.Margins(k, &limits)
	fmt.Printf("%s %.1f mm\n", Ends[ReleaseRoom].Check, m[ReleaseRoom])
	// Output: garda-release-room -100.0 mm
}
