package advice

import (
	"math"
	"slices"
)

// bestFit is the plan with the most shoulds beside all musts, then the cheapest,
// then the one whose smallest ratio is largest, then the one that moves least.
func (h *chooser) bestFit() (plan, bool) {
	w := h.attainable()
	for lost := 0; lost <= len(w.shoulds); lost++ {
		best, found := plan{cost: math.MaxInt}, false
		for _, s := range h.sets {
			if s.cost(h.ps) > best.cost {
				break
			}
			if _, ok := h.meet(s); !ok {
				continue
			}
			each(len(w.shoulds), lost, func(dropped []int) {
				if !w.single(s, dropped) {
					return
				}
				demands := h.without(w.shoulds, dropped)
				q, ok := h.find(s, demands, false)
				if !ok {
					return
				}
				if p := h.largest(s, demands, q.best); !found || p.betterThan(&best) {
					best, found = p, true
				}
			})
		}
		if found {
			return best, true
		}
	}
	return plan{}, false
}

// betterThan ranks plans that meet as many shoulds as each other.
func (p *plan) betterThan(q *plan) bool {
	const tie = 1e-9
	switch {
	case p.cost != q.cost:
		return p.cost < q.cost
	case p.ratio > q.ratio+tie:
		return true
	}
	return p.ratio > q.ratio-tie && p.moved < q.moved
}

// ways remember which sets meet single shoulds beside the musts.
type ways struct {
	h       *chooser
	shoulds []*demand
	known   []map[set]bool // by should
}

// meet says whether the set, which meets the musts, meets should i beside them.
func (w *ways) meet(s set, i int) bool {
	ok, known := w.known[i][s]
	if !known {
		q, _ := w.h.meet(s)
		ok = w.shoulds[i].met(&q.best) || w.h.has(s, append(slices.Clone(w.h.musts), w.shoulds[i]))
		w.known[i][s] = ok
	}
	return ok
}

// single says whether the set meets every should but those dropped, one by one.
func (w *ways) single(s set, dropped []int) bool {
	for i := range w.shoulds {
		if len(dropped) > 0 && dropped[0] == i {
			dropped = dropped[1:]
		} else if !w.meet(s, i) {
			return false
		}
	}
	return true
}

// attainable are the shoulds that some set meets beside the musts.
func (h *chooser) attainable() *ways {
	w := &ways{h: h}
	for _, d := range h.shoulds {
		i := len(w.shoulds)
		w.shoulds, w.known = append(w.shoulds, d), append(w.known, map[set]bool{})
		if !slices.ContainsFunc(h.sets, func(s set) bool { _, ok := h.meet(s); return ok && w.meet(s, i) }) {
			w.shoulds, w.known = w.shoulds[:i], w.known[:i]
		}
	}
	return w
}

// largest is the plan of the set whose smallest ratio is largest, and of those
// the one that moves least; best meets the demands.
func (h *chooser) largest(s set, demands []*demand, best choice) plan {
	if s == 0 {
		return plan{ratio: math.Inf(1), demands: demands}
	}
	raised := func(r float64) []*demand {
		return changed(demands, func(d *demand) {
			if d.movedBy(s) {
				d.need = r
			}
		})
	}
	lo := h.smallest(s, &best, demands)
	hi := lo
	for step := 1.0; ; step *= 2 {
		q, ok := h.find(s, raised(lo+step), false)
		if !ok || math.IsInf(lo, 1) {
			hi = lo + step
			break
		}
		best = q.best
		lo = h.smallest(s, &best, demands)
	}
	for hi-lo > 1e-6*math.Max(1, lo) {
		mid := (lo + hi) / 2
		if q, ok := h.find(s, raised(mid), false); ok {
			best = q.best
			lo = h.smallest(s, &best, demands)
		} else {
			hi = mid
		}
	}
	p := plan{set: s, cost: s.cost(h.ps), c: best, ratio: lo, demands: demands}
	if q, ok := h.find(s, raised(lo-1e-9), true); ok {
		p.c, p.moved = q.best, q.moved
		p.ratio = h.smallest(s, &p.c, demands)
	}
	return p
}
