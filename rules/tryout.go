package rules

import (
	"math"
	"slices"

	"example.com/hangtape/fit"
)

const (
	freshReadings = 3 // how often a reading on trial is taken
	guardTie      = 1e-9
)

// unsettled says whether a reading more may change the verdict of a known end.
func (r *EndResult) unsettled() bool {
	return r.Verdict == Tight || r.Verdict == Fail && -r.Margin < r.Guard
}

// A tryout takes readings on trial for the ends that decide a check and are not
// settled. What several checks ask for is worked out once.
type tryout struct {
	a       *Assessment
	ends    []End
	place   [NumEnds]int                           // of an end in ends
	renewed map[int]func(o int) (u, shift float64) // by input
	rebuilt map[string]*fit.Propagation            // by key
}

func newTryout(a *Assessment) *tryout {
	t := &tryout{a: a, renewed: map[int]func(int) (float64, float64){}, rebuilt: map[string]*fit.Propagation{}}
	for c := range NumChecks {
		if e := a.worst(c, theVerdict); a.ends[e].unsettled() {
			t.place[e] = len(t.ends)
			t.ends = append(t.ends, e)
		}
	}
	return t
}

// best is the reading that shrinks the guard of e most; ties go to the order of
// the session file. only, where it is not nil, names those that may be taken.
func (t *tryout) best(e End, only []string) (tried, bool) {
	best, found := tried{guard: math.Inf(1)}, false
	t.each(e, only, func(key string, u, shift float64) {
		g := Guard(GuardFactor, u, shift)
		if g < best.guard-guardTie || found && g < best.guard+guardTie && fit.CompareKeys(key, best.key) < 0 {
			best, found = tried{key, u, g}, true
		}
	})
	return best, found
}

// each takes every reading on trial that can matter to e.
func (t *tryout) each(e End, only []string, do func(key string, u, shift float64)) {
	allowed := func(key string) bool { return only == nil || slices.Contains(only, key) }
	a := t.a
	survey := a.restsOnSurvey(e)
	for i := range a.m.Inputs {
		in := &a.m.Inputs[i]
		u, ok := a.m.FreshU(i, freshReadings)
		if !ok || !allowed(in.Key) || only == nil && !(u < in.U) {
			continue
		}
		switch {
		case survey && a.m.IsPartner(i):
			if p := t.rebuild(in.Key, func() *fit.Fitting { return a.f.Repeated(in, freshReadings) }); p != nil {
				u, shift := p.U(t.place[e])
				do(in.Key, u, shift)
			}
		case only != nil || t.mayBeWorthIt(i, e):
			u, shift := t.renew(i, u)(int(e))
			do(in.Key, u, shift)
		}
	}
	for _, c := range a.untaken(e, survey) {
		if !allowed(c.Key) {
			continue
		}
		if p := t.rebuild(c.Key, c.Fitting); p != nil {
			u, shift := p.U(t.place[e])
			do(c.Key, u, shift)
		}
	}
}

// mayBeWorthIt says whether input i, read afresh, could shrink the guard of e by
// enough. It can at most take its own contribution away, and the rest of the
// guard's u stays: less than that no new reading leaves.
func (t *tryout) mayBeWorthIt(i int, e End) bool {
	c, r := t.a.p.Contribution(i, int(e)), &t.a.ends[e]
	return c != 0 && GuardFactor*math.Sqrt(math.Max(0, r.U*r.U-c*c)) <= worthIt*r.Guard
}

func (t *tryout) renew(i int, u float64) func(o int) (float64, float64) {
	if f, ok := t.renewed[i]; ok {
		return f
	}
	t.renewed[i] = t.a.p.With(i, u)
	return t.renewed[i]
}

// rebuild computes the margins of the ends anew for a fitting with one reading more.
func (t *tryout) rebuild(key string, f func() *fit.Fitting) *fit.Propagation {
	if p, ok := t.rebuilt[key]; ok {
		return p
	}
	spreads := t.a.m.Today()
	m := fit.NewModel(f(), fit.Options{Spreads: &spreads})
	p := m.Propagate(len(t.ends), func(_ []float64, s *fit.State, out []float64) {
		for i, e := range t.ends {
			out[i] = balanceOf(e, s, t.a.l).margin()
		}
	})
	t.rebuilt[key] = p
	return p
}
