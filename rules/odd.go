package rules

import (
	"math"

	"example.com/hangtape/fit"
)

// Beyond these a value is more likely a slip than true; judgement.
const (
	heavyKg        = 160 // more than this, of a climber with clothes and kit: pounds typed as kilograms
	shortRopeMM    = 100 // less than this, of rope above: metres typed as millimetres
	straightBridge = 10  // mm or less that a bridge is longer than its rings are apart
)

// poundsPerKg is from the pound of 0.45359237 kg (1959).
const poundsPerKg = 2.20462

// odd are values that can be true but look like a slip; no verdict changes.
func (a *Assessment) odd() []Finding {
	var list []Finding
	if m := a.f.Mass; m.Known && m.V > heavyKg {
		list = append(list, finding("heavy", []string{"climber.mass_kg"}, "%.4g kg is heavy; %.4g lb is %.1f kg: was it pounds?", m.V, m.V, m.V/poundsPerKg))
	}
	for _, r := range []struct {
		key string
		v   fit.Number
	}{{"rope.least_above_mm", a.f.Rope.LeastAbove}, {"rope.drill_above_mm", a.f.Rope.DrillAbove}} {
		if r.v.Known && r.v.V < shortRopeMM {
			list = append(list, finding("units", []string{r.key}, "%v of rope above is next to none: was it metres?", typed(r.v.V)))
		}
	}
	for _, b := range []struct {
		piece         fit.Piece
		length, rings float64
		ringsKey      string
	}{
		{fit.PieceMainBridge, a.s.MainBridge, a.s.MainBridgeRings, fit.LaidKey(fit.MainBridgeRings)},
		{fit.PieceBackupBridge, a.s.BackupBridge, a.s.BackupBridgeRings, fit.LaidKey(fit.BackupBridgeRings)},
	} {
		if b.length-b.rings <= straightBridge { // false where one is unknown
			list = append(list, finding("bridge-nearly-straight", []string{a.m.PieceKey(b.piece), b.ringsKey},
				"a bridge of %v on rings %v apart is nearly straight: a little more or less of it moves its middle far", typed(b.length), typed(b.rings)))
		}
	}
	if a.s.Soles > 0 {
		h := a.m.HangOf(fit.Soles)
		list = append(list, finding("odd-reading", []string{fit.HeightKey(h, fit.Hip), fit.HeightKey(h, fit.Soles)}, "the boot soles were read above the hip"))
	}
	if a.m.Read(fit.Ahead) && a.s.Ahead < 0 {
		list = append(list, finding("odd-reading", []string{fit.LaidKey(fit.Ahead)}, "the rope was read behind the hip point"))
	}
	return append(list, a.otherUnits()...)
}

// units are what a number without a unit may have meant.
var units = []struct {
	name string
	mm   float64
}{{"centimetres", 10}, {"inches", MMPerInch}, {"feet", mmPerFoot}, {"metres", 1000}}

// otherUnits are the readings of the body that are unlikely in mm and likely in
// another unit: in the one that most of them are likely in.
func (a *Assessment) otherUnits() []Finding {
	var best []Finding
	for _, unit := range units {
		var f Finding
		for k, l := range a.outputs.likely {
			i := a.inputOf(l.Reading())
			if i < 0 || a.m.Inputs[i].Origin == fit.Estimated {
				continue
			}
			in := &a.m.Inputs[i]
			has, keys := in.V, []string{in.Key}
			if hip := a.inputOf(fit.Hip); in.Reading.IsHeight() && hip >= 0 {
				has -= a.m.Inputs[hip].V
				keys = []string{a.m.Inputs[hip].Key, in.Key}
			}
			o := a.outputs.atLikely() + k
			off := a.p.Values[o]
			u, _ := a.p.U(o)
			switch near := unlikelyFactor * u; {
			case !(math.Abs(off) > near && math.Abs(has*unit.mm-(has-off)) <= near): // false where one is unknown
			case f.Name == "":
				f = finding("units", keys, "%v: %v is far from the %v that the other readings make likely, %v is not: was it "+unit.name+"?",
					in.Reading, length(has), length(has-off), length(has*unit.mm))
			default:
				f.Inputs = append(f.Inputs, in.Key)
			}
		}
		if f.Name != "" && (best == nil || len(f.Inputs) > len(best[0].Inputs)) {
			best = []Finding{f}
		}
	}
	return best
}
