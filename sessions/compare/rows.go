package compare

import (
	"math"

	"example.com/hangtape/rules"
)

// rounding is a difference that is the computer's arithmetic.
const rounding = 1e-6

func rowsOf(a, b *measured, shared []pair, names []string, of func(*measured, string) part) []Row {
	rows := []Row{}
	for _, name := range names {
		x, y := of(a, name), of(b, name)
		if !x.Value.Known() && !y.Value.Known() {
			continue
		}
		r := Row{Name: name, Unit: x.unit, A: x.Side, B: y.Side}
		if r.Unit == "" {
			r.Unit = y.unit
		}
		r.Delta, r.U = difference(x, y, shared)
		r.Shared = r.U == 0 && x.U > 0 && r.Delta == 0
		r.Changed = changed(r.Delta, r.U)
		rows = append(rows, r)
	}
	return rows
}

// difference is y less x with its standard uncertainty. An input that both
// share is fully correlated with itself: twice the product of what it adds to
// each side is taken off the sum of the variances (GUM 5.2.2).
func difference(x, y part, shared []pair) (delta, u rules.Num) {
	delta = y.Value - x.Value
	if !delta.Known() {
		return delta, delta
	}
	variance := float64(x.U*x.U + y.U*y.U)
	for _, p := range shared {
		if common := x.effect(p.a) * y.effect(p.b); !math.IsNaN(common) {
			variance -= 2 * common
		}
	}
	u = rules.Num(math.Sqrt(math.Max(0, variance)))
	if u < rounding {
		u = 0
	}
	if math.Abs(float64(delta)) < rounding {
		delta = 0
	}
	return delta, u
}

func changed(delta, u rules.Num) bool {
	return delta.Known() && u.Known() && math.Abs(float64(delta)) > rules.TwoSided*float64(u)
}

func checkRow(a, b *measured, shared []pair, id rules.CheckID) CheckRow {
	x, y := a.report.Checks[id], b.report.Checks[id]
	r := CheckRow{
		Name: x.Name, Kind: x.Kind, Unit: x.Unit, A: sideOf(x), B: sideOf(y),
		Delta: nothing.Value, U: nothing.U, VerdictChanged: x.Verdict != y.Verdict,
	}
	if !x.Margin.Known() {
		r.Unit = y.Unit
	}
	if x.Unit == y.Unit {
		effect := func(m *measured) func(int) float64 {
			return func(i int) float64 { return m.judged.CheckEffect(i, id) }
		}
		r.Delta, r.U = difference(
			part{Side{Value: x.Margin, U: x.U}, x.Unit, effect(a)},
			part{Side{Value: y.Margin, U: y.U}, y.Unit, effect(b)}, shared)
	}
	r.Changed = changed(r.Delta, r.U)
	return r
}

func sideOf(c rules.Check) CheckSide {
	return CheckSide{c.Verdict, c.At, c.Margin, c.U, c.Guard}
}

// A pair is one reading that is a base input of both sessions.
type pair struct{ a, b int }

// sharedInputs are the readings that both sessions have from the same one: a
// length that one kept from the other or both from a third, and all that is alike
// where both are stages of one session.
func sharedInputs(a, b *measured) []pair {
	var pairs []pair
	for i := range a.judged.Model().Inputs {
		in := &a.judged.Model().Inputs[i]
		j, both := b.byKey[in.Key]
		if !both || in.V != b.judged.Model().Inputs[j].V {
			continue
		}
		if id := a.readIn(in.Key); id != "" && id == b.readIn(in.Key) {
			pairs = append(pairs, pair{i, j})
		}
	}
	return pairs
}

// readIn is the id of the session in which an input was read.
func (m *measured) readIn(key string) string {
	for _, k := range m.file.Session.Fit.Kept {
		if k.Key == key {
			return k.Session
		}
	}
	return m.file.Session.ID
}
