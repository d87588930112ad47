package rules_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// goodFitting is an invented fitting with everything read once and every must
// well met.
func goodFitting() *fit.Fitting {
	f := &fit.Fitting{
		Tape:  fit.Tape{Class: fit.ClassII, Division: 1, Hook: true},
		Sex:   fit.Unsaid,
		Mass:  fit.Some(80),
		MassU: fit.Some(1),
		Hangs: make([]fit.Hang, 1),
		Rope: fit.Rope{
			Diameter:   fit.Some(11.4),
			Elongation: fit.Some(2.2),
			LeastAbove: fit.Some(4000),
			DrillAbove: fit.Some(7000),
		},
	}
	f.Kit.Garda = true
	f.Kit.InsideWidth = fit.Some(41)
	f.Kit.OwnRings = fit.Yes
	hitch := fit.PieceInfo{Cord: fit.Some(8), Wraps: fit.Some(5), Strength: fit.Some(13.5),
		Change: fit.ReTie, Bounds: [2]float64{200, 600}, Bounded: true}
	f.Kit.Pieces = [fit.NumPieces]fit.PieceInfo{
		fit.PieceMainBridge:   {Change: fit.Slides, Bounds: [2]float64{700, 1600}, Bounded: true},
		fit.PieceHitchLeft:    hitch,
		fit.PieceHitchRight:   hitch,
		fit.PieceFootLoop:     {Change: fit.ReTie, Bounds: [2]float64{700, 1400}, Bounded: true},
		fit.PieceTether:       {Cord: fit.Some(8), Strength: fit.Some(17), Strands: fit.Some(2), Change: fit.ReTie, Bounds: [2]float64{80, 400}, Bounded: true},
		fit.PieceBackupBridge: {Change: fit.Slides, Bounds: [2]float64{400, 900}, Bounded: true},
	}
	for p := range f.Kit.Pieces {
		f.Kit.Pieces[p].Present = true
	}
	for r, v := range map[fit.Reading]float64{
		fit.Stature: 1765, fit.Inseam: 845, fit.Thigh: 436, fit.Shin: 540, fit.Waist: 1110,
		fit.Hip: 1520, fit.Nose: 2218, fit.WristUp: 2640, fit.WristDown: 1412,
		fit.ConnectorTop: 2170, fit.ConnectorBottom: 2058,
		fit.LeftLoopTop: 2500, fit.LeftHitchTop: 2600, fit.RightLoopTop: 2494, fit.RightHitchTop: 2590,
		fit.MainRings: 1547, fit.BackupRings: 1524, fit.Soles: 762, fit.Ground: 260,
		fit.GardaLevel: 1966, fit.KneeLevel: 1524, fit.GardaTaut: 1976,
		fit.Ahead: 190, fit.MainBridge: 1088, fit.MainBridgeRings: 364, fit.GardaToTether: 106,
		fit.FootLoop: 1012, fit.Tether: 118, fit.BackupBridge: 578, fit.BackupBridgeRings: 360,
	} {
		*list(f, r) = []float64{v}
	}
	for r := range fit.NumReadings {
		if l := list(f, r); *l == nil { // one that nothing rests on yet
			*l = []float64{1700}
		}
	}
	return f
}

// list is where f keeps the readings r, in the latest hang for a height.
func list(f *fit.Fitting, r fit.Reading) *[]float64 {
	if r.IsHeight() {
		return &f.Hangs[len(f.Hangs)-1].Heights[r]
	}
	return &f.Laid[r]
}

// drawFitting is a good fitting with every reading moved a little, repeated or
// left out, but for those to keep: all verdicts turn up.
func drawFitting(t *rapid.T, keep ...fit.Reading) *fit.Fitting {
	f := goodFitting()
	n := int(fit.NumReadings)
	f.Sex = rapid.SampledFrom([]fit.Sex{fit.Unsaid, fit.Male, fit.Female}).Draw(t, "sex")
	times := rapid.SliceOfN(rapid.SampledFrom([]int{1, 1, 1, 1, 2, 3, 0}), n, n).Draw(t, "times read")
	moved := rapid.SliceOfN(rapid.IntRange(-20, 20), n, n).Draw(t, "moved by")
	apart := rapid.SliceOfN(rapid.IntRange(-6, 6), 3*n, 3*n).Draw(t, "repeats apart by")
	for _, r := range keep {
		times[r] = max(1, times[r])
	}
	for r := fit.Reading(0); r < fit.NumReadings; r++ {
		l := list(f, r)
		mid := (*l)[0] + float64(moved[r])
		*l = nil
		for i := range times[r] {
			*l = append(*l, mid+float64(apart[3*int(r)+i]))
		}
	}
	f.Rope.LeastAbove = fit.Some(float64(rapid.IntRange(1500, 6000).Draw(t, "rope above")))
	f.Mass = fit.Some(float64(rapid.IntRange(55, 110).Draw(t, "mass")))
	return f
}

// copyOf is a deep copy of f as far as tests change it.
func copyOf(f *fit.Fitting) *fit.Fitting {
	c := *f
	clone := func(lists *[fit.NumReadings][]float64) {
		for r, l := range lists {
			lists[r] = append([]float64(nil), l...)
		}
	}
	clone(&c.Laid)
	c.Hangs = append([]fit.Hang(nil), f.Hangs...)
	for i := range c.Hangs {
		clone(&c.Hangs[i].Heights)
	}
	c.Changes = append([]fit.Change(nil), f.Changes...)
	c.Kept = append([]fit.Kept(nil), f.Kept...)
	return &c
}

// tester is what *testing.T and *rapid.T share.
type tester interface {
	Helper()
	Fatalf(format string, args ...any)
	Errorf(format string, args ...any)
}

// judge is the report on f under the limits l.
func judge(t tester, f *fit.Fitting, l rules.Limits) *rules.Report {
	t.Helper()
	r, err := rules.Judge("", f, l)
	if err != nil {
		t.Fatalf("a fitting that can be: %v", err)
	}
	return r
}

// check is the check with that name.
func check(t tester, r *rules.Report, name string) rules.Check {
	t.Helper()
	for _, c := range r.Checks {
		if c.Name == name {
			return c
		}
	}
	t.Fatalf("no check %s", name)
	return rules.Check{}
}

// pose is the value of a pose, NaN where it is unknown.
func pose(t tester, r *rules.Report, name string) float64 {
	t.Helper()
	for _, p := range r.Poses {
		if p.Name == name {
			return float64(p.Value)
		}
	}
	return math.NaN()
}

// same says whether two numbers are both unknown or closer than within,
// relative to their size where that is above 1.
func same(a, b rules.Num, within float64) bool {
	x, y := float64(a), float64(b)
	if math.IsNaN(x) || math.IsNaN(y) {
		return math.IsNaN(x) && math.IsNaN(y)
	}
	return x == y || math.Abs(x-y) <= within*max(1, math.Abs(x))
}

func TestGoodFittingPassesEveryMust(t *testing.T) {
	r := judge(t, goodFitting(), rules.DefaultLimits())
	for _, c := range r.Checks {
		if c.Verdict != rules.Pass {
			say := t.Errorf
			if c.Kind == rules.Should {
				say = t.Logf
			}
			say("%s at %q: %s, margin %.4g, guard %.4g, missing %v", c.Name, c.At, c.Verdict, c.Margin, c.Guard, c.Missing)
		}
	}
	for _, f := range r.Findings {
		t.Errorf("finding %s: %s", f.Name, f.Text)
	}
}
