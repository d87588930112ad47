// Package advice says which piece of the kit to change, to what, and within
// which window.
//
// Two answers are given. The least change is the cheapest set of pieces with
// which every must that the kit's lengths can move passes; the best fit meets
// the most shoulds beside them. Both lie on the marks of a tape, and both are
// put through the full model before they are told. An answer is a setting, not a
// verdict: set, hang, read again.
package advice

import (
	"slices"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// searchFactor is the factor of u in the guard that the search asks for: several
// musts end near their guards, and 98 % each makes about 95 % together.
const searchFactor = 2.05

// The steps of a tape's marks that a length is set to, in mm.
const (
	MarkMetric = 5.0
	MarkInch   = 25.4 / 4
)

// An adviser works on one fitting.
type adviser struct {
	subject *subject
	chooser *chooser
}

// Advise says what to change in the fitting f of session id, under the limits l,
// with lengths on multiples of mark mm. f must have no Faults. It is pure and
// deterministic, and its search is capped: StoppedEarly says where it was.
func Advise(id string, f *fit.Fitting, l rules.Limits, mark float64) *Answer {
	a := newAdviser(f, l, mark)
	ans := &Answer{Format: 1, ID: id, Unknown: a.unknown(), Estimated: a.estimated()}
	least, ok := a.chooser.settle(a.chooser.leastChange)
	if !ok {
		ans.LeastChange, ans.BestFit = none(), none()
		ans.Conflict = a.conflict()
		ans.StoppedEarly = a.chooser.stopped
		return ans
	}
	ans.LeastChange = a.told(least, least.ratio)
	ans.Sooner = a.sooner(least.cost)
	if best, ok := a.chooser.settle(a.chooser.bestFit); ok {
		ans.BestFit = a.told(best, best.ratio)
	}
	ans.StoppedEarly = a.chooser.stopped
	return ans
}

func none() Outcome { return Outcome{Ratio: nan, Changes: []Change{}, Checks: []Check{}} }

func newAdviser(f *fit.Fitting, l rules.Limits, mark float64) *adviser {
	assessed := rules.Assess(f, l)
	spreads := assessed.Model().Today()
	sub := &subject{f: f, limits: l, mark: mark, spreads: &spreads, assessed: assessed}
	ps := pieces(f, assessed.Model(), mark)
	h := &chooser{ps: &ps, sets: sets(&ps)}
	h.musts, h.shoulds = demands(tabulate(sub, &ps), searchFactor)
	return &adviser{subject: sub, chooser: h}
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

// unknown names every must with a side or end that lacks a reading.
func (a *adviser) unknown() []string {
	names := []string{}
	for c := range rules.NumChecks {
		if c.Info().Kind != rules.Must {
			continue
		}
		for _, e := range c.Ends() {
			if len(a.subject.assessed.End(e).Missing) > 0 && a.subject.assessed.End(e).Plain == rules.Unknown {
				names = append(names, c.String())
				break
			}
		}
	}
	return names
}

// estimated names the readings that a must in the search rests on an estimate
// for, with the lengths as they are.
func (a *adviser) estimated() []string {
	var keys []string
	for _, d := range a.chooser.musts {
		keys = append(keys, a.subject.assessed.Estimates(d.e)...)
	}
	return fit.SortKeys(append([]string{}, keys...))
}

// sortChanges puts the changes in the order of the session file.
func sortChanges(list []Change) {
	place := func(c Change) int {
		for p := range fit.NumPieces {
			if p.Key() == c.Piece {
				return int(p)
			}
		}
		return int(fit.NumPieces)
	}
	slices.SortFunc(list, func(a, b Change) int { return place(a) - place(b) })
}
