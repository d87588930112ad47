package fit_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/hangtape/fit"
)

// drawFitting is an invented fitting of one to three hangs, each reading taken
// or not, with labels, postures and changes.
func drawFitting(t *rapid.T) *fit.Fitting {
	yes := func(what string) bool { return rapid.IntRange(0, 3).Draw(t, what) > 0 }
	rs := everyReading()
	f := fitting(nil)
	f.Hangs = make([]fit.Hang, rapid.IntRange(1, 3).Draw(t, "hangs"))
	for r := range fit.NumReadings {
		list := rs[r]
		for n := rapid.IntRange(0, 2).Draw(t, "repeats"); n > 0; n-- {
			list = append(list, list[0]+rapid.Float64Range(-9, 9).Draw(t, "apart"))
		}
		if !r.IsHeight() {
			if yes(r.String()) {
				f.Laid[r] = list
			}
			continue
		}
		for h := range f.Hangs {
			if yes(r.String()) {
				f.Hangs[h].Heights[r] = list
			}
		}
	}
	if yes("labels") {
		labelled(f)
		f.Kit.Pieces[fit.PieceTether] = fit.PieceInfo{Strength: fit.Some(17), Strands: fit.Some(2)}
	}
	for _, p := range rapid.SliceOfN(rapid.IntRange(0, int(fit.NumPieces)-1), 0, 4).Draw(t, "changed pieces") {
		to := []float64{1050, 350, 340, 1000, 140, 520}[p] + rapid.Float64Range(-20, 20).Draw(t, "changed by")
		c := fit.Change{Piece: fit.Piece(p), To: to, AfterHang: rapid.IntRange(1, len(f.Hangs)).Draw(t, "after")}
		if !yes("set only") {
			c.Measured = []float64{to + 1}
		}
		f.Changes = append(f.Changes, c)
	}
	return f
}

// told is everything that is computed of a fitting: what the checks are made of,
// what stands for each reading, and what is held against the state.
const numTold = 21 + int(fit.NumReadings) + fit.NumOffsets + fit.NumLikely

func told(m *fit.Model, x []float64, s *fit.State, out []float64) {
	out = out[:0]
	for _, q := range drawn {
		out = append(out, q.of(s))
	}
	for r := range fit.NumReadings {
		out = append(out, s.Standing(r))
	}
	for o := range fit.NumOffsets {
		out = append(out, m.Disagreement(fit.Offset(o), x, s))
	}
	for l := range fit.NumLikely {
		out = append(out, m.Offset(fit.Likely(l), x, s))
	}
	_ = append(out, s.Net, s.SolesAboveGround, s.Sag, s.TetherStrands*s.TetherStrength, s.HitchStrength[0], s.HitchCord[1], s.HitchWraps[1])
}

// A step of an input computes only what the input may have a part in. A whole
// computation of each step, with the sums written out, has to come to the same.
func TestPropagationAgainstWholeSteps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := fit.NewModel(drawFitting(t), fit.Options{})
		n := numTold
		p := m.Propagate(n, func(x []float64, s *fit.State, out []float64) { told(m, x, s, out) })
		whole := wholeSteps(m, n)
		fresh, at := rapid.Float64Range(0.1, 3).Draw(t, "fresh u"), rapid.IntRange(1, len(m.Inputs)-1).Draw(t, "of")
		for m.Inputs[at].Hidden {
			at--
		}
		with := p.With(at, fresh)
		m.Inputs[at].U = fresh
		again := wholeSteps(m, n)
		for o := range n {
			u, shift := p.U(o)
			wu, wshift := whole.sum(m, o)
			same(t, "value", o, p.Values[o], whole.mid[o])
			same(t, "u", o, u, wu)
			same(t, "shift", o, shift, wshift)
			for i := range m.Inputs {
				want := whole.contr[i][o]
				if math.IsNaN(whole.mid[o]) {
					want = math.NaN()
				}
				same(t, m.Inputs[i].Key, o, p.Contribution(i, o), want)
			}
			renewed := with(o)
			wu, wshift = again.sum(m, o)
			same(t, "u with "+m.Inputs[at].Key, o, renewed.U, wu)
			same(t, "shift with "+m.Inputs[at].Key, o, renewed.Shift, wshift)
		}
	})
}

func same(t *rapid.T, what string, o int, got, want float64) {
	t.Helper()
	if math.IsNaN(got) && math.IsNaN(want) {
		return
	}
	if !(math.Abs(got-want) <= 1e-9*max(1, math.Abs(want))) {
		t.Fatalf("%s of output %d: %v, by whole steps %v", what, o, got, want)
	}
}

type steps struct {
	mid           []float64
	contr, shifts [][]float64 // by input, then output
}

func wholeSteps(m *fit.Model, n int) *steps {
	at := func(x []float64) []float64 {
		var s fit.State
		out := make([]float64, n)
		m.At(x, &s)
		told(m, x, &s, out)
		return out
	}
	w := &steps{mid: at(m.Values())}
	for i, in := range m.Inputs {
		contr, shifts := make([]float64, n), make([]float64, n)
		w.contr, w.shifts = append(w.contr, contr), append(w.shifts, shifts)
		if in.U == 0 || math.IsNaN(in.V) {
			continue
		}
		x := m.Values()
		x[i] = in.V + in.U
		hi := at(x)
		x[i] = in.V - in.U
		lo := at(x)
		for o, mid := range w.mid {
			contr[o], shifts[o] = (hi[o]-lo[o])/2, (hi[o]+lo[o])/2-mid
			if math.IsNaN(hi[o]) {
				contr[o], shifts[o] = mid-lo[o], 0
			} else if math.IsNaN(lo[o]) {
				contr[o], shifts[o] = hi[o]-mid, 0
			}
		}
	}
	return w
}

// sum is the standard uncertainty and the shift of output o.
func (w *steps) sum(m *fit.Model, o int) (u, shift float64) {
	if math.IsNaN(w.mid[o]) {
		return math.NaN(), math.NaN()
	}
	variance := 0.0
	for i := range w.contr {
		variance += w.contr[i][o] * w.contr[i][o]
		shift += w.shifts[i][o]
	}
	for _, b := range m.Blocks() {
		for j, row := range b.Corr {
			for k, r := range row {
				if j != k {
					variance += r * w.contr[b.Start+j][o] * w.contr[b.Start+k][o]
				}
			}
		}
	}
	return math.Sqrt(max(0, variance)), shift
}
