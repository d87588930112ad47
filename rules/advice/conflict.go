package advice

import (
	"slices"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// The causes of a conflict.
const (
	causeGeometry    = "geometry"
	causeUncertainty = "uncertainty"
)

// conflict says why no set can pass.
func (a *adviser) conflict() *Conflict {
	h := a.chooser
	c := &Conflict{Cause: causeGeometry, Bounds: []string{}, Next: []string{}, Pieces: []string{}}
	exact := exactly(h.musts)
	switch {
	case len(a.apart) > 0:
		c.Checks = []string{}
		for _, p := range a.apart {
			c.Bounds = append(c.Bounds, boundsKey(p))
		}
	case !h.any(exact):
		c.Checks = h.irreducible(exact)
		c.Bounds = a.freed(c.Checks)
		c.Easing = a.easing()
	default:
		c.Cause, c.Checks = causeUncertainty, h.irreducible(h.musts)
		if c.Next = a.helpful(exact); len(c.Next) == 0 {
			c.Pieces = a.loose(c.Checks)
		}
	}
	c.Text = c.Words("mm")
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

// freed names the bounds, by their keys in the session file, of single pieces
// without which all musts would pass: only one that has a part in the checks in
// conflict can be such.
func (a *adviser) freed(checks []string) []string {
	h := a.chooser
	keys := []string{}
	for _, i := range h.inFileOrder() {
		hasPart := func(d *demand) bool {
			return slices.Contains(checks, d.e.Check().String()) && d.signs[i] != 0
		}
		if !slices.ContainsFunc(h.musts, hasPart) {
			continue
		}
		ps := *h.ps
		free := *ps[i]
		free.lo, free.hi = leastFreed, mostFreed
		for _, sub := range a.subjects {
			b := clipped(free.id, [2]float64{free.lo, free.hi}, sub.assessed.State())
			free.lo, free.hi = b[0], b[1]
		}
		free.layOut(a.subjects[0].mark)
		ps[i] = &free
		wide := chooser{ps: &ps, sets: h.sets}
		for _, t := range h.tables() {
			musts, _ := demands(t.freed(i, &ps), searchFactor)
			wide.musts = append(wide.musts, musts...)
		}
		if wide.any(wide.musts) {
			keys = append(keys, boundsKey(free.id))
		}
	}
	return keys
}

// tables are those that the musts stand on, one for each subject.
func (h *chooser) tables() []*tables {
	var list []*tables
	for _, d := range h.musts {
		if !slices.Contains(list, d.t) {
			list = append(list, d.t)
		}
	}
	return list
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

// helpful are the keys of the readings that help most those musts that fall short
// at lengths which would pass if nothing were uncertain: of the sets, the one with
// the most pieces is taken.
func (a *adviser) helpful(exact []*demand) []string {
	h := a.chooser
	var p plan
	for _, s := range slices.Backward(h.sets) {
		if q, ok := h.find(s, exact, false); ok {
			p = plan{set: s, c: q.best}
			break
		}
	}
	to := h.lengths(&p)
	keys := []string{}
	for _, sub := range a.subjects {
		now := sub.sums(sub.f, to)
		candidates := sub.assessed.Readable()
		after := make([][]sum, len(candidates))
		for k, c := range candidates {
			after[k] = sub.sums(c.Fitting(), to)
		}
		for _, d := range h.musts {
			if d.t.subject != sub || ratio(now[d.e], searchFactor) >= 1 {
				continue
			}
			best, guard := -1, rules.WorthIt*now[d.e].guard(searchFactor)
			for k := range candidates {
				if g := after[k][d.e].guard(searchFactor); g <= guard {
					best, guard = k, g
				}
			}
			if best >= 0 {
				keys = append(keys, candidates[best].Key)
			}
		}
	}
	return fit.SortKeys(keys)
}

// weighty is the share of a must's variance from which on a setting spread counts,
// a tenth of its standard uncertainty: judgement.
const weighty = 0.01

// loose names the pieces whose setting spread is the limit: those that would do
// if they were set exactly, or else those that bring a weighty part to a must in
// conflict.
func (a *adviser) loose(checks []string) []string {
	h := a.chooser
	alone, part := []string{}, []string{}
	for _, i := range h.inFileOrder() {
		pc := h.ps[i]
		spread := pc.how.SettingSpread()
		exact := changed(h.musts, func(d *demand) { d.more.variance -= d.settingVariance(i, spread) })
		if h.any(exact) {
			alone = append(alone, pc.id.Key())
		}
		for _, d := range h.musts {
			if slices.Contains(checks, d.e.Check().String()) && d.settingVariance(i, spread) > weighty*d.t.base[d.e].variance {
				part = append(part, pc.id.Key())
				break
			}
		}
	}
	if len(alone) > 0 {
		return alone
	}
	return part
}

// settingVariance is what the spread of setting the piece at place i brings to
// the variance of the end, at the reference.
func (d *demand) settingVariance(i int, spread float64) float64 {
	tm := d.t.terms[i][d.output]
	if tm == nil || len(tm.options) < 3 {
		return 0
	}
	// The first option leaves the piece as it is; the others are its marks.
	last := len(tm.options) - 1
	slope := (tm.options[last].margin - tm.options[1].margin) / float64(last-1) / d.t.mark
	variance := slope * slope * spread * spread
	if d.curve != nil {
		return d.curve.brings(d.t.base[d.output].margin, variance).variance
	}
	return variance
}
