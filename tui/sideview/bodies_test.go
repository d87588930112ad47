package sideview

import (
	"encoding/csv"
	"math"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"

	"example.com/hangtape/fit"
)

// poses are all poses that are drawn.
var poses = []fit.Pose{fit.Seated, fit.ThighLevel, fit.TetherTaut, fit.Standing, fit.OnTether}

// bodies are n climbers from the survey, evenly through the file, each hanging in
// a kit such as might be tied for them. The kits are invented and drawn with a
// seed of their own; some collide, some reach too far.
func bodies(t testing.TB, n int) []*fit.Fitting {
	t.Helper()
	file, err := os.Open("../../testdata/survey/ansur2.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	at := map[string]int{}
	for i, name := range rows[0] {
		at[name] = i
	}
	r := rand.New(rand.NewPCG(7, 11))
	out := make([]*fit.Fitting, n)
	for i := range out {
		row := rows[1+i*(len(rows)-1)/n]
		out[i] = hung(func(name string) float64 {
			v, err := strconv.ParseFloat(row[at[name]], 64)
			if err != nil {
				t.Fatal(err)
			}
			return v
		}, r)
	}
	return out
}

// hung is the climber of a row of the survey, with the body's lengths formed as
// the estimates form them.
func hung(mm func(string) float64, r *rand.Rand) *fit.Fitting {
	hs := mm("sittingheight") - (mm("stature") - mm("trochanterionheight"))
	thigh := mm("trochanterionheight") - mm("kneeheightmidpatella")
	shin := mm("kneeheightmidpatella") + 25
	nose := mm("eyeheightsitting") - 45 - hs
	full := mm("overheadfingertipreachsitting") - mm("handlength") - hs
	wrist := nose + 0.86*(full-nose)
	f := &fit.Fitting{Tape: fit.Tape{Class: fit.ClassII, Division: 1, Hook: true}, Mass: fit.Some(mm("weightkg") / 10)}
	f.Rope = fit.Rope{Diameter: fit.Some(11.4), Elongation: fit.Some(2.1), LeastAbove: fit.Some(3000), DrillAbove: fit.Some(7000)}
	around := func(v, spread float64) float64 { return math.Round(v + spread*(2*r.Float64()-1)) }

	laid := map[fit.Reading]float64{
		fit.Stature: mm("stature"), fit.Thigh: thigh, fit.Shin: shin, fit.Waist: mm("waistheightomphalion") + 25,
		fit.Ahead: around(150, 40), fit.MainBridge: around(1100, 100), fit.MainBridgeRings: 360, fit.GardaToTether: around(112, 10),
		fit.FootLoop: around(mm("waistheightomphalion")-40, 60), fit.Tether: around(140, 40), fit.BackupBridge: around(600, 60), fit.BackupBridgeRings: 360,
	}
	for reading, v := range laid {
		f.Laid[reading] = []float64{v}
	}
	hip := around(1200, 300)
	top := nose + around(0, 60)
	heights := map[fit.Reading]float64{
		fit.Hip: 0, fit.Nose: nose, fit.WristUp: wrist, fit.WristDown: mm("wristheight") - mm("trochanterionheight"),
		fit.ConnectorTop: top, fit.ConnectorBottom: top - around(110, 8),
		fit.MainRings: around(30, 15), fit.BackupRings: around(0, 15),
		fit.Soles: -shin - around(250, 60), fit.Ground: -shin - 850,
	}
	for _, side := range [][2]fit.Reading{{fit.LeftLoopTop, fit.LeftHitchTop}, {fit.RightLoopTop, fit.RightHitchTop}} {
		heights[side[1]] = wrist - around(20, 40)
		heights[side[0]] = heights[side[1]] - around(100, 15)
	}
	h := fit.Hang{}
	for reading, v := range heights {
		h.Heights[reading] = []float64{v + hip}
	}
	f.Hangs = []fit.Hang{h}
	for p := range f.Kit.Pieces {
		f.Kit.Pieces[p].Present = true
	}
	f.Kit.Garda = true
	return f
}

// stateOf is what follows from f.
func stateOf(t testing.TB, f *fit.Fitting) *fit.State {
	t.Helper()
	if faults := f.Faults(); len(faults) > 0 {
		t.Fatalf("a body that cannot be: %v", faults)
	}
	m := fit.NewModel(f, fit.Options{})
	s := new(fit.State)
	m.At(m.Values(), s)
	return s
}
