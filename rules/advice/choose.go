package advice

import (
	"math"
	"slices"

	"example.com/hangtape/fit"
)

// A plan is a set of pieces with what each is set to.
type plan struct {
	set   set
	cost  int
	c     choice
	ratio float64 // the smallest one that the set moves; +Inf where it moves none
	moved float64 // mm in all

	demands []*demand // that it meets
}

// A chooser picks plans from the tables of one fitting or of several that share
// a kit.
type chooser struct {
	ps             *[fit.NumPieces]*piece
	sets           []set
	musts, shoulds []*demand
	stopped        bool

	met map[set]*search // what meets the musts, by set, as far as was asked
}

// find looks for a choice of the set that meets the demands, as find does.
func (h *chooser) find(s set, demands []*demand, least bool) (*search, bool) {
	q := find(h.ps, s, demands, least)
	h.stopped = h.stopped || q.stopped
	return q, q.found
}

// has says whether the set meets the demands.
func (h *chooser) has(s set, demands []*demand) bool {
	_, ok := h.find(s, demands, false)
	return ok
}

// meet looks for a choice of the set that meets the musts, once.
func (h *chooser) meet(s set) (*search, bool) {
	q := h.met[s]
	if q == nil {
		if q, _ = h.find(s, h.musts, false); h.met == nil {
			h.met = map[set]*search{}
		}
		h.met[s] = q
	}
	return q, q.found
}

// any says whether some set meets the demands; those with the most pieces, which
// are the likeliest, are asked first.
func (h *chooser) any(demands []*demand) bool {
	for i := len(h.sets) - 1; i >= 0; i-- {
		if h.has(h.sets[i], demands) {
			return true
		}
	}
	return false
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

// agree puts a plan through the full model and takes its ratio from there. Where that
// does not meet all that the plan is said to, the demands are set right at the plan.
func (h *chooser) agree(p *plan) bool {
	if p.set == 0 {
		return true
	}
	to, all := h.lengths(p), true
	full := map[*tables][]sum{}
	sums := func(t *tables) []sum {
		if full[t] == nil {
			full[t] = t.subject.sums(t.subject.f, to)
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
	for _, d := range slices.Concat(h.musts, h.shoulds) {
		d.more = d.more.plus(sums(d.t)[d.e].minus(d.at(&p.c)))
	}
	h.met = nil
	return false
}

// lengths are what a plan sets its pieces to.
func (h *chooser) lengths(p *plan) lengths {
	to := lengths{}
	for i, pc := range h.ps {
		if p.set.has(i) {
			to[pc.id] = pc.marks[p.c[i]-1]
		}
	}
	return to
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

// each calls do with every way to take k of n, ascending.
func each(n, k int, do func(taken []int)) {
	taken := make([]int, 0, k)
	var from func(i int)
	from = func(i int) {
		if len(taken) == k {
			do(taken)
			return
		}
		for ; i <= n-(k-len(taken)); i++ {
			taken = append(taken, i)
			from(i + 1)
			taken = taken[:len(taken)-1]
		}
	}
	from(0)
}
