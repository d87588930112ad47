package advice_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize/convex/lp"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/advice"
)

// A linear programme is the full model made linear about an answer: margins by
// their slopes, guards as they are there.
type linear struct {
	w      *whole
	set    int
	at     []float64 // the answer, by free piece
	pieces []int     // of the set
	ends   []rules.End
	margin []float64 // by end, at the answer
	guard  []float64
	slope  [][]float64 // by end and piece of the set
}

// trust is how far from the answer a length is looked for, in mm.
const trust = 60.0

func (w *whole) linear(o advice.Outcome, keep func(e rules.End, ratio float64) bool) *linear {
	l := &linear{w: w}
	l.set, l.at, _ = w.setOf(o)
	for i := range w.free {
		if l.set&(1<<i) != 0 {
			l.pieces = append(l.pieces, i)
		}
	}
	r := w.ratios(l.set, l.at)
	m := w.margins(l.set, l.at)
	all := 1<<len(w.free) - 1
	for _, e := range append(w.ends(rules.Must, all), w.ends(rules.Should, all)...) {
		if !keep(e, r[e]) {
			continue
		}
		l.ends = append(l.ends, e)
		l.margin, l.guard = append(l.margin, m[e]), append(l.guard, m[e]/r[e])
		var slopes []float64
		for _, i := range l.pieces {
			at := append([]float64(nil), l.at...)
			at[i] += 0.5
			up := w.margins(l.set, at)
			at[i]--
			down := w.margins(l.set, at)
			slopes = append(slopes, up[e]-down[e])
		}
		l.slope = append(l.slope, slopes)
	}
	return l
}

// solve finds lengths by the simplex method: those that move least with every
// end at its guard at least, or else, with raise, those whose smallest ratio is
// largest. The variables are how far each piece goes up, then down, from where it
// is; the ratio, with raise; and one slack for each row.
func (l *linear) solve(raise bool) ([]float64, bool) {
	n := len(l.pieces)
	vars := 2 * n
	if raise {
		vars++
	}
	var rows [][]float64
	var rhs []float64
	row := func(b float64, by []float64, ratio float64) { // Σ by·move + ratio·r ≥ b
		r := make([]float64, vars)
		for k, v := range by {
			r[k], r[n+k] = v, -v
		}
		if raise {
			r[2*n] = ratio
		}
		rows, rhs = append(rows, r), append(rhs, b)
	}
	for j, e := range l.ends {
		b := -l.margin[j]
		for k, i := range l.pieces {
			b += l.slope[j][k] * (l.at[i] - l.w.free[i].from)
		}
		switch {
		case !raise:
			row(b+l.guard[j], l.slope[j], 0)
		case l.moves(e):
			row(b, l.slope[j], -l.guard[j])
		}
	}
	for k, i := range l.pieces {
		x := l.w.free[i]
		lo, hi := math.Max(x.marks[0], l.at[i]-trust), math.Min(x.marks[len(x.marks)-1], l.at[i]+trust)
		up, down := make([]float64, n), make([]float64, n)
		up[k], down[k] = 1, -1
		row(lo-x.from, up, 0)
		row(x.from-hi, down, 0)
	}
	a := mat.NewDense(len(rows), vars+len(rows), nil)
	for j, r := range rows {
		a.SetRow(j, append(r, make([]float64, len(rows))...))
		a.Set(j, vars+j, -1)
	}
	c := make([]float64, vars+len(rows))
	for k := range 2 * n {
		if c[k] = 1; raise {
			c[k] = 1e-6
		}
	}
	if raise {
		c[2*n] = -1
	}
	_, y, err := lp.Simplex(c, a, rhs, 1e-9, nil)
	if err != nil {
		return nil, false
	}
	at := append([]float64(nil), l.at...)
	for k, i := range l.pieces {
		at[i] = l.w.free[i].from + y[k] - y[n+k]
	}
	return at, true
}

// onMarks calls do with the marks on either side of the lengths, in every
// combination.
func (l *linear) onMarks(at []float64, do func(at []float64)) {
	for corner := range 1 << len(l.pieces) {
		near := append([]float64(nil), at...)
		for k, i := range l.pieces {
			x := l.w.free[i]
			mark := math.Floor(at[i]/l.w.mark + 1e-9)
			if corner&(1<<k) != 0 {
				mark++
			}
			near[i] = math.Min(math.Max(mark*l.w.mark, x.marks[0]), x.marks[len(x.marks)-1])
		}
		do(near)
	}
}

// propose hands on what the simplex method finds, on marks, with the full model's
// ratios.
func (l *linear) propose(raise bool, do func(r [rules.NumEnds]float64, at []float64)) {
	if at, ok := l.solve(raise); ok {
		l.onMarks(at, func(at []float64) { do(l.w.ratios(l.set, at), at) })
	}
}

// moves says whether the set moves e.
func (l *linear) moves(e rules.End) bool {
	for _, i := range l.pieces {
		if l.w.moved[e][l.w.free[i].Piece] {
			return true
		}
	}
	return false
}

// smallest is the smallest ratio of the ends, all or those that the set moves.
func (l *linear) smallest(r [rules.NumEnds]float64, moved bool) float64 {
	least := math.Inf(1)
	for _, e := range l.ends {
		if !moved || l.moves(e) {
			least = math.Min(least, r[e])
		}
	}
	return least
}

// widely is a made-up session in which every piece may change.
func widely(t testing.TB, session int) *fit.Fitting {
	t.Helper()
	f := madeUp(t, session)
	s := rules.Assess(f, rules.DefaultLimits()).State()
	now := [fit.NumPieces]float64{s.MainBridge, s.Loop[0], s.Loop[1], s.FootLoop, s.Tether, s.BackupBridge}
	for p := range f.Kit.Pieces {
		info := &f.Kit.Pieces[p]
		info.Change, info.Bounded = fit.How(1+(session+p)%2), true
		info.Bounds = [2]float64{math.Max(50, now[p]-150), now[p] + 150}
	}
	return f
}

// The simplex method, on the model made linear, proposes lengths for the sets
// that the answers change; none that the full model lets pass moves less than the
// least change, or has a larger smallest ratio than the best fit.
func TestNothingBetterBySimplex(t *testing.T) {
	sessions := 60
	if *long {
		sessions = 500
	}
	least, best := 0, 0 // proposals that the full model lets pass
	for n := range sessions {
		f := widely(t, n)
		limits := rules.DefaultLimits()
		ans := advice.Advise("", f, limits, rules.MarkMetric)
		if ans.Conflict != nil {
			continue
		}
		w := newWhole(f, limits, rules.MarkMetric)
		if set, _, moved := w.setOf(ans.LeastChange); set != 0 {
			l := w.linear(ans.LeastChange, func(e rules.End, ratio float64) bool {
				return e.Check().Info().Kind == rules.Must || w.now[e] >= 1 && ratio >= 1
			})
			l.propose(false, func(r [rules.NumEnds]float64, at []float64) {
				if l.smallest(r, false) < 1+near1 {
					return
				}
				least++
				far := 0.0
				for _, i := range l.pieces {
					far += math.Abs(at[i] - w.free[i].from)
				}
				if far < moved-1e-6 {
					t.Errorf("session %d: least change moves %.1f mm, %v does with %.1f mm", n, moved, at, far)
				}
			})
		}
		if set, at, _ := w.setOf(ans.BestFit); set != 0 {
			l := w.linear(ans.BestFit, func(e rules.End, ratio float64) bool { return ratio >= 1 })
			ratio := l.smallest(w.ratios(set, at), true)
			l.propose(true, func(r [rules.NumEnds]float64, at []float64) {
				if l.smallest(r, false) < 1+near1 {
					return
				}
				best++
				if got := l.smallest(r, true); got > ratio+near1*math.Max(1, ratio) {
					t.Errorf("session %d: best fit has the ratio %.4f, %v has %.4f", n, ratio, at, got)
				}
			})
		}
	}
	if least < sessions/3 || best < sessions {
		t.Errorf("simplex proposed what passes %d and %d times in %d sessions", least, best, sessions)
	}
}
