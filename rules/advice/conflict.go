package advice

import (
	"math"
	"slices"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

var nan = rules.Num(math.NaN())

// The causes of a conflict.
const (
	causeGeometry    = "geometry"
	causeUncertainty = "uncertainty"
)

// conflict says why no set can pass.
func (a *adviser) conflict() *Conflict {
	h := a.chooser
	exact := exactly(h.musts)
	if !h.any(exact) {
		c := &Conflict{Cause: causeGeometry, Checks: h.irreducible(exact), Bounds: a.freed(), Next: []string{}, Pieces: []string{}}
		c.Text = a.geometryText(c)
		return c
	}
	c := &Conflict{Cause: causeUncertainty, Checks: h.irreducible(h.musts), Bounds: []string{}, Next: a.helpful(exact), Pieces: []string{}}
	if len(c.Next) == 0 {
		c.Pieces = a.loose(c.Checks)
	}
	c.Text = a.uncertaintyText(c)
	return c
}

// irreducible are the checks that cannot be met together: without any one of
// them the rest can. They are dropped in the order of the table.
func (h *chooser) irreducible(musts []*demand) []string {
	left := musts
	names := []string{}
	for c := range rules.NumChecks {
		rest := slices.DeleteFunc(slices.Clone(left), func(d *demand) bool { return d.e.Check() == c })
		switch {
		case len(rest) == len(left):
		case h.any(rest):
			names = append(names, c.String())
		default:
			left = rest
		}
	}
	return names
}

// freed names the bounds of single pieces without which all musts would pass.
func (a *adviser) freed() []string {
	keys := []string{}
	for _, i := range a.chooser.inFileOrder() {
		pc := a.chooser.ps[i]
		ps := *a.chooser.ps
		free := *pc
		free.setBounds(leastFreed, mostFreed, a.subject.assessed.State(), a.subject.mark)
		ps[i] = &free
		h := &chooser{ps: &ps, sets: a.chooser.sets}
		h.musts, _ = demands(tabulate(a.subject, &ps), searchFactor)
		if h.any(h.musts) {
			keys = append(keys, boundsKey(pc.id))
		}
	}
	return keys
}

func boundsKey(p fit.Piece) string { return "kit." + p.Key() + ".bounds_mm" }

// inFileOrder are the places of the pieces that may change, in the order of the
// session file.
func (h *chooser) inFileOrder() []int {
	var places []int
	for i, pc := range h.ps {
		if pc != nil {
			places = append(places, i)
		}
	}
	slices.SortFunc(places, func(a, b int) int { return int(h.ps[a].id) - int(h.ps[b].id) })
	return places
}

// helpful are the readings that help the musts that fall short at lengths which
// would pass if nothing were uncertain.
func (a *adviser) helpful(exact []*demand) []string {
	h := a.chooser
	keys := []string{}
	for i := len(h.sets) - 1; i >= 0; i-- {
		q, ok := h.find(h.sets[i], exact, false)
		if !ok {
			continue
		}
		p := plan{set: h.sets[i], c: q.best}
		t := &trial{a: a, set: p.set, f: a.subject.f, musts: h.musts, plan: p}
		t.sums = t.full(t.f, &p)
		guard := func(s sum) float64 {
			return rules.Guard(searchFactor, math.Sqrt(math.Max(0, s.variance)), s.shift)
		}
		candidates := a.subject.assessed.Readable()
		after := make([][]sum, len(candidates))
		for k, c := range candidates {
			after[k] = t.full(c.Fitting(), &p)
		}
		for _, d := range h.musts {
			now := t.sums[d.e]
			if ratio(now, searchFactor) >= 1 {
				continue
			}
			best, least := -1, worthIt*guard(now)
			for k := range candidates {
				if g := guard(after[k][d.e]); g <= least {
					best, least = k, g
				}
			}
			if best >= 0 {
				keys = append(keys, candidates[best].Key)
			}
		}
		break
	}
	return fit.SortKeys(keys)
}

// worthIt is the share to which a reading has to shrink a guard.
const worthIt = 0.95

// loose names the pieces whose setting spread is the limit: those that would do
// if they were set exactly, or else those that bring more than a tenth of the
// standard uncertainty of a must in conflict.
func (a *adviser) loose(checks []string) []string {
	h := a.chooser
	alone, part := []string{}, []string{}
	for _, i := range h.inFileOrder() {
		pc := h.ps[i]
		spread := pc.how.SettingSpread()
		exact := changed(h.musts, func(d *demand) { d.more.variance -= d.t.settingVariance(i, d.output, spread) })
		if h.any(exact) {
			alone = append(alone, pc.id.Key())
		}
		for _, d := range h.musts {
			if slices.Contains(checks, d.e.Check().String()) && d.t.settingVariance(i, d.output, spread) > 0.01*d.t.base[d.e].variance {
				part = append(part, pc.id.Key())
				break
			}
		}
	}
	if len(alone) > 0 {
		return alone
	}
	return slices.Compact(part)
}

// settingVariance is what the spread of setting the piece at place i brings to
// the variance of an output, at the reference.
func (t *tables) settingVariance(i, o int, spread float64) float64 {
	tm := t.terms[i][o]
	if tm == nil || len(tm.options) < 3 {
		return 0
	}
	n := len(tm.options)
	marks := float64(n - 2)
	slope := (tm.options[n-1].margin - tm.options[1].margin) / marks / t.mark
	return slope * slope * spread * spread
}
