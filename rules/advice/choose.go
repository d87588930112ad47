package advice

import (
	"math"

	"example.com/hangtape/fit"
)

// A plan is a set of pieces with what each is set to.
type plan struct {
	set   set
	cost  int
	c     choice
	ratio float64 // the smallest one that the set moves; +Inf where it moves none

	demands []*demand // that it meets
}

// A chooser picks plans from the tables of one fitting or of several that share
// a kit.
type chooser struct {
	ps             *[fit.NumPieces]*piece
	sets           []set
	musts, shoulds []*demand
	stopped        bool
}

func (h *chooser) find(s set, demands []*demand, least bool) (*search, bool) {
	q := find(h.ps, s, demands, least)
	h.stopped = h.stopped || q.stopped
	return q, q.found
}

// mostSettling is how often a plan is looked for anew.
const mostSettling = 10

// settle picks a plan until the full model agrees with the tables on all that it
// is said to meet: where it does not, the tables are set right at that plan.
func (h *chooser) settle(pick func() (plan, bool)) (plan, bool) {
	for range mostSettling {
		p, ok := pick()
		if !ok || h.agree(&p) {
			return p, ok
		}
	}
	h.stopped = true
	return plan{}, false
}

// agree puts a plan through the full model and takes its ratio from there.
func (h *chooser) agree(p *plan) bool {
	if p.set == 0 {
		return true
	}
	to, all := h.lengths(p), true
	full := map[*tables][]sum{}
	sums := func(t *tables) []sum {
		if full[t] == nil {
			full[t] = sumsOf(t.subject.changed(to).Propagate(numOutputs, outputs(&t.subject.limits)))
		}
		return full[t]
	}
	p.ratio = math.Inf(1)
	for _, d := range p.demands {
		if !d.movedBy(p.set) {
			continue
		}
		r := ratio(sums(d.t)[d.e], d.factor)
		p.ratio = math.Min(p.ratio, r)
		all = all && r >= 1
	}
	if all {
		return true
	}
	for _, d := range append(append([]*demand(nil), h.musts...), h.shoulds...) {
		gain := sums(d.t)[d.e].minus(d.at(&p.c))
		d.more = sum{d.more.margin + gain.margin, d.more.variance + gain.variance, d.more.shift + gain.shift}
	}
	return false
}

// leastChange is the cheapest plan that brings every must to its ratio; of those
// of one cost the one that first loses the fewest shoulds that pass now, then
// moves least in all.
func (h *chooser) leastChange() (plan, bool) {
	passing := h.passing(&choice{})
	for from := 0; from < len(h.sets); {
		to, cost := from, h.sets[from].cost(h.ps)
		for to < len(h.sets) && h.sets[to].cost(h.ps) == cost {
			to++
		}
		var able []set
		for _, s := range h.sets[from:to] {
			if _, ok := h.find(s, h.musts, false); ok {
				able = append(able, s)
			}
		}
		if len(able) > 0 {
			return h.losingFewest(able, passing), true
		}
		from = to
	}
	return plan{}, false
}

// passing are the shoulds that are met by a choice.
func (h *chooser) passing(c *choice) []*demand {
	var list []*demand
	for _, d := range h.shoulds {
		if d.met(c) {
			list = append(list, d)
		}
	}
	return list
}

// losingFewest is the plan over sets that meets the musts, and as many of the
// shoulds as can be, and moves least.
func (h *chooser) losingFewest(sets []set, shoulds []*demand) plan {
	for lost := 0; ; lost++ {
		best, found, moved := plan{}, false, math.Inf(1)
		each(len(shoulds), lost, func(dropped []int) bool {
			demands := h.without(shoulds, dropped)
			for _, s := range sets {
				if q, ok := h.find(s, demands, true); ok && q.moved < moved-1e-9 {
					best, found, moved = plan{set: s, cost: s.cost(h.ps), c: q.best, demands: h.musts}, true, q.moved
				}
			}
			return true
		})
		if found {
			best.ratio = h.smallest(best.set, &best.c, h.musts)
			return best
		}
		if lost == len(shoulds) { // cannot be: the sets meet the musts
			return best
		}
	}
}

// without are the musts and the shoulds but for those dropped.
func (h *chooser) without(shoulds []*demand, dropped []int) []*demand {
	demands := append([]*demand(nil), h.musts...)
	for i, d := range shoulds {
		if len(dropped) > 0 && dropped[0] == i {
			dropped = dropped[1:]
			continue
		}
		demands = append(demands, d)
	}
	return demands
}

// bestFit is the plan with the most shoulds beside all musts, then the cheapest,
// then the one whose smallest ratio is largest, then the one that moves least.
func (h *chooser) bestFit() (plan, bool) {
	able := h.attainable()
	for lost := 0; lost <= len(able); lost++ {
		best, found := plan{ratio: math.Inf(-1)}, false
		var bestMoved float64
		cheapest := math.MaxInt
		each(len(able), lost, func(dropped []int) bool {
			demands := h.without(able, dropped)
			if !h.possible(demands) {
				return true
			}
			for _, s := range h.sets {
				cost := s.cost(h.ps)
				if cost > cheapest {
					break
				}
				if _, ok := h.find(s, demands, false); !ok {
					continue
				}
				p, moved := h.largest(s, demands)
				if cost < cheapest || p.ratio > best.ratio+1e-9 || p.ratio > best.ratio-1e-9 && moved < bestMoved {
					best, bestMoved, found, cheapest = p, moved, true, cost
				}
			}
			return true
		})
		if found {
			return best, true
		}
	}
	return plan{}, false
}

// attainable are the shoulds that some set meets beside the musts.
func (h *chooser) attainable() []*demand {
	var list []*demand
	for _, d := range h.shoulds {
		demands := append(append([]*demand(nil), h.musts...), d)
		for _, s := range h.sets {
			if _, ok := h.find(s, demands, false); ok {
				list = append(list, d)
				break
			}
		}
	}
	return list
}

// possible says whether the demands could be met if nothing were uncertain, as
// they must be if they can be met at all.
func (h *chooser) possible(demands []*demand) bool { return h.any(exactly(demands)) }

// any says whether some set meets the demands; those with the most pieces, which
// are the likeliest, are asked first.
func (h *chooser) any(demands []*demand) bool {
	for i := len(h.sets) - 1; i >= 0; i-- {
		if _, ok := h.find(h.sets[i], demands, false); ok {
			return true
		}
	}
	return false
}

// exactly are the demands if nothing were uncertain.
func exactly(demands []*demand) []*demand {
	return changed(demands, func(d *demand) { d.exact = true })
}

// changed are copies of the demands, each changed by do.
func changed(demands []*demand, do func(d *demand)) []*demand {
	list := make([]*demand, len(demands))
	for i, d := range demands {
		c := *d
		do(&c)
		list[i] = &c
	}
	return list
}

// largest is the plan of the set whose smallest ratio is largest, and of those
// the one that moves least.
func (h *chooser) largest(s set, demands []*demand) (plan, float64) {
	if s == 0 {
		return plan{ratio: math.Inf(1)}, 0
	}
	raised := func(r float64) []*demand {
		return changed(demands, func(d *demand) {
			if d.movedBy(s) {
				d.need = r
			}
		})
	}
	q, _ := h.find(s, demands, false)
	best := q.best
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
	q, ok := h.find(s, raised(lo-1e-9), true)
	if ok {
		p.c = q.best
		p.ratio = h.smallest(s, &p.c, demands)
	}
	return p, q.moved
}

// smallest is the smallest ratio of the demands that the set moves.
func (h *chooser) smallest(s set, c *choice, demands []*demand) float64 {
	least := math.Inf(1)
	for _, d := range demands {
		if d.movedBy(s) {
			least = math.Min(least, d.ratio(c))
		}
	}
	return least
}

// each calls do with every way to take k of n, ascending, until it says stop.
func each(n, k int, do func(taken []int) bool) {
	taken := make([]int, 0, k)
	var from func(i int) bool
	from = func(i int) bool {
		if len(taken) == k {
			return do(taken)
		}
		for ; i <= n-(k-len(taken)); i++ {
			taken = append(taken, i)
			if !from(i + 1) {
				return false
			}
			taken = taken[:len(taken)-1]
		}
		return true
	}
	from(0)
}
