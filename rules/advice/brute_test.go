package advice_test

import (
	"math"
	"testing"

	"example.com/hangtape/rules"
	"example.com/hangtape/rules/advice"
)

// near1 is how near to 1 a ratio lies where either way is right: tables between
// their marks, and an answer's rounding.
const near1 = 2e-3

// A found plan is the best of all, tried one by one.
type found struct {
	ok      bool
	cost    int
	shoulds int // that pass
	ratio   float64
	moved   float64
}

// bruteForce tries every choice of marks of every set on the full model: for the
// least change, with the shoulds counted that pass now and would still, and for
// the best fit. sure asks for a little more than a pass.
func (w *whole) bruteForce(sure float64) (least, best found) {
	all := 1<<len(w.free) - 1
	musts, shoulds := w.ends(rules.Must, all), w.ends(rules.Should, all)
	at := make([]float64, len(w.free))
	for set := 0; set <= all; set++ {
		cost := w.cost(set)
		own := append(w.ends(rules.Must, set), w.ends(rules.Should, set)...)
		var try func(i int, moved float64)
		try = func(i int, moved float64) {
			for ; i < len(w.free) && set&(1<<i) == 0; i++ {
			}
			if i < len(w.free) {
				for _, v := range w.free[i].marks {
					at[i] = v
					try(i+1, moved+math.Abs(v-w.free[i].from))
				}
				return
			}
			r := w.ratios(set, at)
			for _, e := range musts {
				if !(r[e] >= 1+sure) {
					return
				}
			}
			l := found{ok: true, cost: cost, moved: moved}
			b := found{ok: true, cost: cost, moved: moved, ratio: math.Inf(1)}
			for _, e := range shoulds {
				if r[e] >= 1+sure {
					b.shoulds++
					if w.now[e] >= 1 {
						l.shoulds++
					}
				}
			}
			for _, e := range own {
				if e.Check().Info().Kind == rules.Must || r[e] >= 1+sure {
					b.ratio = math.Min(b.ratio, r[e])
				}
			}
			if l.cheaper(&least) {
				least = l
			}
			if b.fitter(&best) {
				best = b
			}
		}
		try(0, 0)
	}
	return least, best
}

func (f *found) cheaper(than *found) bool {
	switch {
	case !than.ok:
		return true
	case f.cost != than.cost:
		return f.cost < than.cost
	case f.shoulds != than.shoulds:
		return f.shoulds > than.shoulds
	}
	return f.moved < than.moved
}

func (f *found) fitter(than *found) bool {
	switch {
	case !than.ok:
		return true
	case f.shoulds != than.shoulds:
		return f.shoulds > than.shoulds
	case f.cost != than.cost:
		return f.cost < than.cost
	case math.Abs(f.ratio-than.ratio) > 1e-9:
		return f.ratio > than.ratio
	}
	return f.moved < than.moved
}

// told is what the full model says of an answer.
func (w *whole) told(o advice.Outcome) (least, best found) {
	set, at, moved := w.setOf(o)
	r := w.ratios(set, at)
	f := found{ok: o.Feasible, cost: w.cost(set), moved: moved, ratio: math.Inf(1)}
	least, best = f, f
	all := 1<<len(w.free) - 1
	for _, e := range w.ends(rules.Should, all) {
		if r[e] >= 1-near1 {
			best.shoulds++
			if w.now[e] >= 1 {
				least.shoulds++
			}
		}
	}
	for _, e := range w.ends(rules.Must, set) {
		best.ratio = math.Min(best.ratio, r[e])
	}
	for _, e := range w.ends(rules.Should, set) {
		if r[e] >= 1-near1 {
			best.ratio = math.Min(best.ratio, r[e])
		}
	}
	return least, best
}

// No choice of marks, tried one by one on the full model, is cheaper, keeps more
// shoulds, moves less or has a larger smallest ratio than the answer.
func TestNothingBetterByBruteForce(t *testing.T) {
	sessions := 20
	if *long {
		sessions = 500
	}
	changes := 0
	for n := range sessions {
		f := madeUpWith(t, n)
		w := newWhole(f, rules.DefaultLimits(), rules.MarkMetric)
		ans := advice.Advise("", f, rules.DefaultLimits(), rules.MarkMetric)
		least, best := w.bruteForce(near1)
		if !ans.LeastChange.Feasible {
			if least.ok {
				t.Errorf("session %d: no answer, but %+v passes", n, least)
			}
			continue
		}
		if ans.LeastChange.Cost > 0 {
			changes++
		}
		told, _ := w.told(ans.LeastChange)
		if least.ok && (least.cheaper(&told) && (least.cost < told.cost || least.shoulds > told.shoulds || least.moved < told.moved-1e-6)) {
			t.Errorf("session %d: least change is %+v, better is %+v", n, told, least)
		}
		_, told = w.told(ans.BestFit)
		worse := best.shoulds > told.shoulds ||
			best.shoulds == told.shoulds && (best.cost < told.cost ||
				best.cost == told.cost && (best.ratio > told.ratio+near1*math.Max(1, told.ratio) ||
					math.Abs(best.ratio-told.ratio) < 1e-9 && best.moved < told.moved-1e-6))
		if best.ok && worse {
			t.Errorf("session %d: best fit is %+v, better is %+v", n, told, best)
		}
	}
	if changes < sessions/4 {
		t.Errorf("only %d of %d sessions have something to change", changes, sessions)
	}
}
