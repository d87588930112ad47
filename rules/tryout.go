package rules

import (
	"math"
	"slices"

	"example.com/hangtape/fit"
)

const (
	freshReadings = 3    // how often a reading on trial is taken
	guardTie      = 1e-9 // how close two guards are told as one
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
	place   [NumEnds]int // of an end in ends
	fresh   []float64    // by input: its u if it is read afresh, NaN where it cannot be
	untaken []Candidate  // room for those of one end
	trials  *fit.Trials
	renewed map[int]func(o int) fit.Uncertainty // by input
	taken   map[string][]fit.Uncertainty        // by key, then place
}

// A tried is what an end would come to if one reading were taken afresh.
type tried struct {
	key      string
	u, guard float64 // in the end's unit
}

func newTryout(a *Assessment) *tryout {
	t := &tryout{a: a, renewed: map[int]func(int) fit.Uncertainty{}, taken: map[string][]fit.Uncertainty{}}
	for c := range NumChecks {
		if e := a.worst(c, theVerdict); a.ends[e].unsettled() {
			t.place[e] = len(t.ends)
			t.ends = append(t.ends, e)
		}
	}
	if len(t.ends) > 0 {
		t.fresh = make([]float64, len(a.m.Inputs))
		t.untaken = make([]Candidate, 0, 12)
	}
	for i := range t.fresh {
		u, ok := a.m.FreshU(i, freshReadings)
		if t.fresh[i] = u; !ok {
			t.fresh[i] = nan
		}
	}
	return t
}

// best is the reading that shrinks the guard of e most; ties go to the order of
// the session file. only, where it is not nil, names those that may be taken.
func (t *tryout) best(e End, only []string) (tried, bool) {
	a := t.a
	best, found := tried{guard: math.Inf(1)}, false
	keep := func(key string, after fit.Uncertainty) {
		g := Guard(GuardFactor, after.U, after.Shift)
		if g < best.guard-guardTie || found && g < best.guard+guardTie && fit.CompareKeys(key, best.key) < 0 {
			best, found = tried{key, after.U, g}, true
		}
	}
	allowed := func(key string) bool { return only == nil || slices.Contains(only, key) }
	survey := a.restsOnSurvey(e)
	t.untaken = a.untaken(t.untaken[:0], e, survey)
	for k := range t.untaken {
		if c := &t.untaken[k]; allowed(c.Key) {
			keep(c.Key, t.take(c)[t.place[e]])
		}
	}
	for i, u := range t.fresh {
		in := &a.m.Inputs[i]
		if math.IsNaN(u) || only == nil && !(u < in.U) || !allowed(in.Key) {
			continue
		}
		switch least := t.leastGuard(i, e); {
		case survey && a.m.IsPartner(i):
			again := Candidate{Key: in.Key, fitting: func() *fit.Fitting { return a.f.Repeated(in, freshReadings) }}
			keep(in.Key, t.take(&again)[t.place[e]])
		case only == nil && least > WorthIt*a.ends[e].Guard || least > best.guard+guardTie:
		default:
			keep(in.Key, t.renew(i, u)(int(e)))
		}
	}
	return best, found
}

// leastGuard is the least that the guard of e can shrink to where input i, which
// says nothing of other parts of the body, is read afresh: it can at most take
// its own contribution away.
func (t *tryout) leastGuard(i int, e End) float64 {
	c, r := t.a.p.Contribution(i, int(e)), &t.a.ends[e]
	if c == 0 {
		return r.Guard
	}
	return GuardFactor * math.Sqrt(math.Max(0, r.U*r.U-c*c))
}

// renew tells by output what it comes to with input i read afresh, to u.
func (t *tryout) renew(i int, u float64) func(o int) fit.Uncertainty {
	if f, ok := t.renewed[i]; ok {
		return f
	}
	t.renewed[i] = t.a.p.With(i, u)
	return t.renewed[i]
}

// take computes what the margins of the ends come to with one reading more.
func (t *tryout) take(c *Candidate) []fit.Uncertainty {
	list, ok := t.taken[c.Key]
	if ok {
		return list
	}
	if c.fitting == nil {
		if t.trials == nil {
			places := make([]int, len(t.ends))
			for i, e := range t.ends {
				places[i] = int(e)
			}
			t.trials = t.a.m.Trials(t.a.p, places, t.margins)
		}
		list = t.trials.Take(c.taken)
	} else {
		spreads := t.a.m.Today()
		m := fit.NewModel(c.Fitting(), fit.Options{Spreads: &spreads})
		p := m.Propagate(len(t.ends), func(_ []float64, s *fit.State, out []float64) { t.margins(s, out) })
		list = make([]fit.Uncertainty, len(t.ends))
		for i := range list {
			list[i].U, list[i].Shift = p.U(i)
		}
	}
	t.taken[c.Key] = list
	return list
}

// margins fills out with the margins of the ends in state s.
func (t *tryout) margins(s *fit.State, out []float64) {
	for i, e := range t.ends {
		if s.Anew()&endInfo[e].stages != 0 {
			out[i] = e.margin(s, t.a.l)
		}
	}
}
