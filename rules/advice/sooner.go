package advice

import (
	"math"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// mostReadings is how many readings are worth taking before a piece is tied anew:
// judgement.
const mostReadings = 5

// sooner looks for a set cheaper than cost that would do once some readings have
// been taken three times afresh: the cheapest, and of those of one cost the one
// that takes the fewest readings. nil where there is none.
func (a *adviser) sooner(cost int) *Sooner {
	h := a.chooser
	candidates := a.subjects[0].assessed.Readable()
	var best *Sooner
	for _, s := range h.sets {
		c := s.cost(h.ps)
		if c >= cost || best != nil && c > best.Cost {
			break
		}
		most := mostReadings
		if best != nil {
			most = len(best.Readings) - 1
		}
		if keys := a.readingsFor(s, candidates, most); keys != nil {
			best = &Sooner{c, keys}
		}
	}
	return best
}

// readingsFor are the readings, at most most, chosen one after the other, each
// the one that lifts the set's smallest ratio most, with which the set passes.
func (a *adviser) readingsFor(s set, candidates []rules.Candidate, most int) []string {
	h := a.chooser
	if _, ok := h.find(s, exactly(h.musts), false); !ok {
		return nil
	}
	t := &trial{a: a, set: s, musts: h.musts, f: a.subjects[0].f}
	if !t.start() {
		return nil
	}
	var keys []string
	for len(keys) < most && len(candidates) > 0 {
		k := t.liftMost(candidates)
		if k < 0 {
			return nil
		}
		keys = append(keys, candidates[k].Key)
		if t.plan.ratio >= 1 {
			return keys
		}
		// the readings taken stay taken: what is left is asked again with them
		candidates = rules.Assess(t.f, a.subjects[0].limits).Readable()
	}
	return nil
}

// A trial follows one set while readings are taken.
type trial struct {
	a     *adviser
	set   set
	f     *fit.Fitting // with the readings taken so far
	musts []*demand    // as they stand with them
	plan  plan         // the set's best
	sums  []sum        // of the full model at the plan
}

// start finds the set's best as things stand.
func (t *trial) start() bool {
	p, ok := t.best(t.musts)
	if !ok {
		return false
	}
	t.plan, t.sums = p, t.full(t.f, &p)
	return true
}

// best is the plan of the set whose smallest ratio over the musts is largest,
// whether or not that is a pass; more than a pass is not looked for. False where
// the set cannot even bring all musts to 0.
func (t *trial) best(musts []*demand) (plan, bool) {
	h := t.a.chooser
	if t.set == 0 {
		return plan{ratio: smallestOf(musts, &choice{})}, true
	}
	fixed := math.Inf(1) // what the set cannot move
	for _, d := range musts {
		if !d.movedBy(t.set) {
			fixed = math.Min(fixed, d.ratio(&choice{}))
		}
	}
	moved := movedOnly(musts, t.set)
	reaching := func(ratio float64) (choice, bool) {
		q, ok := h.find(t.set, changed(moved, func(d *demand) { d.need = ratio }), false)
		return q.best, ok
	}
	of := func(c choice, ratio float64) plan {
		return plan{set: t.set, cost: t.set.cost(h.ps), c: c, ratio: math.Min(fixed, ratio)}
	}
	c, ok := reaching(0)
	if !ok {
		return plan{}, false
	}
	if all, ok := reaching(1); ok {
		return of(all, 1), true
	}
	lo, hi := 0.0, 1.0
	for hi-lo > 1e-3 {
		r := (lo + hi) / 2
		if further, ok := reaching(r); ok {
			c, lo = further, r
		} else {
			hi = r
		}
	}
	return of(c, lo), true
}

// movedOnly are the demands that a piece of s moves.
func movedOnly(demands []*demand, s set) []*demand {
	var list []*demand
	for _, d := range demands {
		if d.movedBy(s) {
			list = append(list, d)
		}
	}
	return list
}

// smallestOf is the smallest ratio of all the demands.
func smallestOf(demands []*demand, c *choice) float64 {
	least := math.Inf(1)
	for _, d := range demands {
		least = math.Min(least, d.ratio(c))
	}
	return least
}

// full puts a plan through the full model of f.
func (t *trial) full(f *fit.Fitting, p *plan) []sum {
	return t.a.subjects[0].sums(f, t.a.chooser.lengths(p))
}

// liftMost takes the reading that lifts the smallest ratio most, -1 where none
// lifts it.
func (t *trial) liftMost(candidates []rules.Candidate) int {
	best := -1
	var bestPlan plan
	var bestMusts []*demand
	var bestF *fit.Fitting
	for k, c := range candidates {
		f := c.Fitting()
		musts, helps := t.with(f)
		if !helps {
			continue
		}
		p, ok := t.best(musts)
		if ok && p.ratio > t.plan.ratio+1e-3 && (best < 0 || p.ratio > bestPlan.ratio+1e-3) {
			best, bestPlan, bestMusts, bestF = k, p, musts, f
		}
	}
	if best >= 0 {
		t.plan, t.musts, t.f = bestPlan, bestMusts, bestF
		t.sums = t.full(bestF, &bestPlan)
	}
	return best
}

// heldBack is the ratio below which a must may hold a set back once its lengths
// are chosen anew.
const heldBack = 1.2

// with are the musts as they would stand with the readings of f: what the full
// model gains at the plan counts for all lengths alike. helps says whether a
// must that holds the set back gains by it.
func (t *trial) with(f *fit.Fitting) (musts []*demand, helps bool) {
	now := t.full(f, &t.plan)
	musts = changed(t.musts, func(d *demand) {
		gain, before := now[d.e].minus(t.sums[d.e]), d.ratio(&t.plan.c)
		d.more = d.more.plus(gain)
		if before < heldBack && gain.variance < -1e-3*t.sums[d.e].variance {
			helps = true
		}
	})
	return musts, helps
}
