// Package advice says which piece of the kit to change, to what, and within
// which window.
//
// Two answers are given. The least change is the cheapest set of pieces with
// which every must that the kit's lengths can move passes; the best fit meets
// the most shoulds beside them. Both lie on the marks of a tape, and both are
// put through the full model before they are told. An answer is a setting, not a
// verdict: set, hang, read again.
//
// A WhatIf moves pieces by hand instead, and Sensitivities say how much margin a
// millimetre buys.
package advice

import (
	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// searchFactor is the factor of u in the guard that the search asks for: several
// musts end near their guards, and 98 % each makes about 95 % together.
const searchFactor = 2.05

// An adviser works on one fitting, or on several that are to share one kit.
type adviser struct {
	subjects []*subject
	chooser  *chooser
	own      []fit.Piece // that stay as each file has them, though they differ
	apart    []fit.Piece // whose bounds have no length in common, though they differ
}

// Advise says what to change in the fitting f of session id, under the limits l,
// with lengths on multiples of mark mm. f must have no Faults. It is pure and
// deterministic, and its search is capped: StoppedEarly says where it was.
func Advise(id string, f *fit.Fitting, l rules.Limits, mark float64) *Answer {
	sub := newSubject("", f, l, mark)
	ps := pieces(f, sub.assessed.Model(), mark)
	a := newAdviser([]*subject{sub}, &ps, 0)
	ans := &Answer{Format: 1, ID: id, Unknown: sub.unknown(), Estimated: a.estimated(sub), Now: checks(sub.assessed), OddBounds: oddBounds(f, sub.assessed.Model())}
	least, ok := a.chooser.settle(a.chooser.leastChange)
	if ok {
		ans.LeastChange = a.told(&least).alone()
		ans.Sooner = a.sooner(least.cost)
	} else {
		ans.LeastChange, ans.BestFit = none(), none()
		ans.Conflict = a.conflict()
	}
	if best, found := a.chooser.settle(a.chooser.bestFit); ok && found {
		ans.BestFit = a.told(&best).alone()
	}
	ans.StoppedEarly = a.chooser.stopped
	return ans
}

func newSubject(name string, f *fit.Fitting, l rules.Limits, mark float64) *subject {
	assessed := rules.Assess(f, l)
	spreads := assessed.Model().Today()
	return &subject{name: name, f: f, limits: l, mark: mark, spreads: &spreads, assessed: assessed}
}

// newAdviser sets out the demands of the subjects on the pieces that they share;
// those of forced have to be set.
func newAdviser(subjects []*subject, ps *[fit.NumPieces]*piece, forced set) *adviser {
	h := &chooser{ps: ps, sets: sets(ps, forced)}
	for _, sub := range subjects {
		musts, shoulds := demands(tabulate(sub, ps), searchFactor)
		h.musts, h.shoulds = append(h.musts, musts...), append(h.shoulds, shoulds...)
	}
	return &adviser{subjects: subjects, chooser: h}
}

// unknown names every must with a side or end that lacks a reading.
func (s *subject) unknown() []string {
	names := []string{}
	for c := range rules.NumChecks {
		if c.Info().Kind != rules.Must {
			continue
		}
		for _, e := range c.Ends() {
			if r := s.assessed.End(e); len(r.Missing) > 0 && r.Plain == rules.Unknown {
				names = append(names, c.String())
				break
			}
		}
	}
	return names
}

// estimated names the readings that a must in the search rests on an estimate
// for, with the lengths as they are.
func (a *adviser) estimated(s *subject) []string {
	keys := []string{}
	for _, d := range a.chooser.musts {
		if d.t.subject == s {
			keys = append(keys, s.assessed.Estimates(d.e)...)
		}
	}
	return fit.SortKeys(keys)
}
