package advice

import "math"

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
			if _, ok := h.meet(s); ok {
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
	first, _ := h.meet(sets[0]) // stands where the search is stopped early
	best, found := plan{set: sets[0], c: first.best, moved: math.Inf(1), demands: h.musts}, false
	for lost := 0; lost <= len(shoulds) && !found; lost++ {
		each(len(shoulds), lost, func(dropped []int) {
			demands := h.without(shoulds, dropped)
			for _, s := range sets {
				if q, ok := h.find(s, demands, true); ok && q.moved < best.moved-1e-9 {
					best.set, best.c, best.moved, found = s, q.best, q.moved, true
				}
			}
		})
	}
	best.cost, best.ratio = best.set.cost(h.ps), h.smallest(best.set, &best.c, h.musts)
	return best
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
