package advice_test

import (
	"encoding/csv"
	"math"
	"math/rand/v2"
	"os"
	"strconv"
	"sync"
	"testing"

	"example.com/hangtape/fit"
)

// body is one person of the body survey, in mm: ANSUR II, 2012 (Gordon et al.
// 2014, NATICK/TR-15/007), public working databases.
type body struct {
	sex                           fit.Sex
	stature, crotch, thigh, shin  float64
	nose, full, down, waist, mass float64 // mass in kg
}

var bodies = sync.OnceValues(func() ([]body, error) {
	file, err := os.Open("../../testdata/survey/ansur2.csv")
	if err != nil {
		return nil, err
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		return nil, err
	}
	var list []body
	for _, row := range rows[1:] {
		v := map[string]float64{}
		for i, name := range rows[0] {
			v[name], _ = strconv.ParseFloat(row[i], 64)
		}
		b := body{sex: fit.Male, stature: v["stature"], crotch: v["crotchheight"], mass: v["weightkg"] / 10}
		if row[0] == "F" {
			b.sex = fit.Female
		}
		sit := v["sittingheight"] - (v["stature"] - v["trochanterionheight"]) // hip point above the seat
		b.thigh = v["trochanterionheight"] - v["kneeheightmidpatella"]
		b.shin = v["kneeheightmidpatella"]
		b.nose = v["eyeheightsitting"] - 45 - sit
		b.full = v["overheadfingertipreachsitting"] - v["handlength"] - sit
		b.down = v["wristheight"] - v["trochanterionheight"]
		b.waist = v["waistheightomphalion"]
		list = append(list, b)
	}
	return list, nil
})

// madeUp is session n of a series: a real body in a plausible kit, hung and read
// with scatter, with readings left out, pieces fixed, bounds near and far. The
// kit is invented. The same n is the same session.
func madeUp(t testing.TB, n int) *fit.Fitting {
	t.Helper()
	all, err := bodies()
	if err != nil {
		t.Fatal(err)
	}
	r := rand.New(rand.NewPCG(20120, uint64(n)))
	m := &maker{Rand: r, f: &fit.Fitting{Tape: fit.Tape{Class: fit.TapeClass(1 + r.IntN(3)), Division: 1, Hook: r.IntN(2) == 0}}}
	b := all[r.IntN(len(all))]
	m.told(&b)
	m.kit(&b)
	m.hang(&b)
	return m.f
}

type maker struct {
	*rand.Rand
	f *fit.Fitting

	main, backup, rings, loopL, loopR, foot, tether, garda, ahead float64
}

func (m *maker) normal(mean, sd float64) float64 { return mean + sd*m.NormFloat64() }

func (m *maker) chance(p float64) bool { return m.Float64() < p }

// takes is one to three readings of v, to the millimetre.
func (m *maker) takes(v, scatter float64) []float64 {
	var list []float64
	for range 1 + m.IntN(3) {
		list = append(list, math.Round(m.normal(v, scatter)))
	}
	return list
}

func (m *maker) told(b *body) {
	f := m.f
	if m.chance(0.7) {
		f.Sex = b.sex
	}
	f.Mass = fit.Some(math.Round(b.mass + 8))
	if m.chance(0.8) {
		f.Laid[fit.Stature] = m.takes(b.stature, 4)
	} else {
		f.StatureTold = fit.Some(math.Round(m.normal(b.stature, 15)))
	}
	for _, x := range []struct {
		r fit.Reading
		v float64
		p float64
	}{{fit.Thigh, b.thigh, 0.85}, {fit.Shin, b.shin + 25, 0.85}, {fit.Waist, b.waist + 25, 0.7}, {fit.Inseam, b.crotch, 0.2}} {
		if m.chance(x.p) {
			f.Laid[x.r] = m.takes(x.v, 6)
		}
	}
	f.Rope = fit.Rope{Diameter: fit.Some(11.4), Elongation: fit.Some(1.5 + 2*m.Float64()), LeastAbove: fit.Some(2000 + 500*float64(m.IntN(7))), DrillAbove: fit.Some(7000)}
	if m.chance(0.1) {
		f.Rope.LeastAbove = fit.Number{}
	}
}

// kit cuts a kit for the body, more or less well.
func (m *maker) kit(b *body) {
	f := m.f
	m.rings, m.garda = m.normal(360, 15), m.normal(110, 5)
	m.ahead = m.normal(150, 25)
	m.main = 2 * math.Hypot(m.rings/2, b.nose*0.9-30-100+m.normal(0, 35))
	m.loopL = m.normal(335, 25)
	m.loopR = m.loopL + m.normal(0, 12)
	m.tether = math.Max(90, m.normal(150, 30))
	m.backup = m.rings + math.Max(30, m.normal(220, 50))
	taut := 10 + math.Sqrt(m.backup*m.backup-m.rings*m.rings)/2 + m.tether + m.garda
	m.foot = math.Hypot(b.shin+25+taut-m.normal(10, 25), b.thigh-m.ahead)
	for _, x := range []struct {
		r fit.Reading
		v float64
	}{
		{fit.MainBridge, m.main}, {fit.MainBridgeRings, m.rings}, {fit.GardaToTether, m.garda}, {fit.FootLoop, m.foot},
		{fit.Tether, m.tether}, {fit.BackupBridge, m.backup}, {fit.BackupBridgeRings, m.rings},
	} {
		if !m.chance(0.02) {
			f.Laid[x.r] = m.takes(x.v, 2)
		}
	}
	if m.chance(0.6) {
		f.Laid[fit.Ahead] = m.takes(m.ahead, 6)
	}
	k := &f.Kit
	k.Garda, k.InsideWidth, k.OwnRings = true, fit.Some(38.1), fit.Yes
	now := [fit.NumPieces]float64{m.main, m.loopL, m.loopR, m.foot, m.tether, m.backup}
	for p := range k.Pieces {
		info := fit.PieceInfo{Present: true, Cord: fit.Some(8), Wraps: fit.Some(5), Strands: fit.Some(2), Strength: fit.Some(13.5)}
		if info.Change = fit.How(m.IntN(3)); info.Change == fit.Fixed && m.chance(0.3) {
			info.Change = fit.ReTie
		}
		room := 20 + 180*m.Float64()
		info.Bounded = !m.chance(0.05)
		info.Bounds = [2]float64{math.Max(50, math.Round(now[p]-room*m.Float64())), math.Round(now[p] + room)}
		k.Pieces[p] = info
	}
}

// hang reads the body in the kit: the poses as the model has them, with the
// scatter of people.
func (m *maker) hang(b *body) {
	var h fit.Hang
	hip := 1200 + 300*m.Float64()
	read := func(r fit.Reading, y, scatter, p float64) {
		if m.chance(p) {
			h.Heights[r] = m.takes(hip+y, scatter)
		}
	}
	rise := func(l float64) float64 { return math.Sqrt(math.Max(0, l*l-m.rings*m.rings)) / 2 }
	top := 30 + rise(m.main) + 100
	taut := 10 + rise(m.backup) + m.tether + m.garda
	level := math.Sqrt(m.foot*m.foot-(b.thigh-m.ahead)*(b.thigh-m.ahead)) - b.shin - 25
	wraps := m.normal(95, 8)
	read(fit.Hip, 0, 5, 0.98)
	read(fit.Nose, b.nose, 6, 0.85)
	read(fit.WristUp, b.nose+0.86*(b.full-b.nose), 8, 0.85)
	read(fit.WristDown, b.down, 6, 0.8)
	read(fit.ConnectorTop, top, 2, 0.98)
	read(fit.ConnectorBottom, top-110, 2, 0.97)
	read(fit.LeftLoopTop, top+m.loopL, 2, 0.97)
	read(fit.LeftHitchTop, top+m.loopL+wraps, 2, 0.98)
	read(fit.RightLoopTop, top+m.loopR, 2, 0.97)
	read(fit.RightHitchTop, top+m.loopR+wraps, 2, 0.98)
	read(fit.MainRings, 30, 2, 0.9)
	read(fit.BackupRings, 10, 2, 0.95)
	read(fit.Soles, -b.thigh-b.shin, 4, 0.9)
	read(fit.Ground, -b.thigh-b.shin-500, 4, 0.9)
	read(fit.GardaLevel, level+m.normal(0, 10), 4, 0.7)
	read(fit.KneeLevel, m.normal(0, 10), 5, 0.5)
	read(fit.GardaTaut, taut+m.normal(0, 6), 4, 0.7)
	m.f.Hangs = []fit.Hang{h}
}
