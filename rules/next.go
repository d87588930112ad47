package rules

import (
	"math"
	"slices"

	"example.com/hangtape/fit"
)

const (
	freshReadings = 3    // how often a reading worth taking is taken
	worthIt       = 0.95 // a guard that shrinks to this share is worth a reading
	guardTie      = 1e-9
)

// next names for every check that is not settled the reading that would settle
// it or shrink its guard most.
func (a *Assessment) next() []Next {
	t := tryout{a: a}
	list := []Next{}
	for c := range NumChecks {
		e := a.worst(c, theVerdict)
		r := &a.ends[e]
		name := c.Info().Name
		switch {
		case r.Verdict == Unknown:
			if len(r.Missing) > 0 {
				list = append(list, Next{name, a.firstMissing(c, r.Missing), Num(nan), Num(nan), Num(nan)})
			}
		case r.capped():
			if b, ok := t.best(e, r.Missing); ok {
				list = append(list, Next{name, b.key, Num(r.U), Num(b.u), Num(b.guard)})
			}
		case r.Verdict == Tight || r.Verdict == Fail && -r.Margin < r.Guard:
			if b, ok := t.best(e, nil); ok && b.guard <= worthIt*r.Guard {
				list = append(list, Next{name, b.key, Num(r.U), Num(b.u), Num(b.guard)})
			}
		}
	}
	return list
}

// firstMissing is the reading to take first for an unknown check: for the reach
// the wrist, for the connector the nose, where they are what is missing.
func (a *Assessment) firstMissing(c CheckID, missing []string) string {
	prefer := map[CheckID]fit.Reading{HitchTopReach: fit.WristUp, ConnectorAtFace: fit.Nose}
	if r, ok := prefer[c]; ok && !a.m.Read(r) {
		for _, k := range missing {
			if k == a.keyOf(r) {
				return k
			}
		}
	}
	return missing[0]
}

// A tried is what an end would come to if one reading were taken afresh.
type tried struct {
	key      string
	u, guard float64
}

// A tryout takes readings on trial. What several checks ask for is worked out
// once.
type tryout struct {
	a       *Assessment
	renewed map[int]func(o int) (u, shift float64) // by input
	rebuilt map[string]*fit.Propagation            // by key
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
	allowed := func(key string) bool {
		if only == nil {
			return true
		}
		for _, k := range only {
			if k == key {
				return true
			}
		}
		return false
	}
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
				u, shift := p.U(int(e))
				do(in.Key, u, shift)
			}
		case only != nil || a.p.Contribution(i, int(e)) != 0:
			u, shift := t.renew(i, u)(int(e))
			do(in.Key, u, shift)
		}
	}
	for _, c := range a.untaken(e, survey) {
		if !allowed(c.Key) {
			continue
		}
		if p := t.rebuild(c.Key, c.Fitting); p != nil {
			u, shift := p.U(int(e))
			do(c.Key, u, shift)
		}
	}
}

func (t *tryout) renew(i int, u float64) func(o int) (float64, float64) {
	if f, ok := t.renewed[i]; ok {
		return f
	}
	if t.renewed == nil {
		t.renewed = map[int]func(int) (float64, float64){}
	}
	t.renewed[i] = t.a.p.With(i, u)
	return t.renewed[i]
}

// rebuild computes the margins anew for a fitting with one reading more.
func (t *tryout) rebuild(key string, f func() *fit.Fitting) *fit.Propagation {
	if p, ok := t.rebuilt[key]; ok {
		return p
	}
	if t.rebuilt == nil {
		t.rebuilt = map[string]*fit.Propagation{}
	}
	spreads := t.a.m.Today()
	m := fit.NewModel(f(), fit.Options{Spreads: &spreads})
	p := m.Propagate(int(NumEnds), func(_ []float64, s *fit.State, out []float64) { Margins(s, t.a.l, out) })
	t.rebuilt[key] = p
	return p
}

// Readable are the readings that can be taken three times afresh: those taken
// less often that still have something to win, and those not taken so far, at
// the model's present value. Each comes with the fitting as it would be then.
func (a *Assessment) Readable() []Candidate {
	var list []Candidate
	for i := range a.m.Inputs {
		in := &a.m.Inputs[i]
		if u, ok := a.m.FreshU(i, freshReadings); ok && u < in.U {
			list = append(list, Candidate{in.Key, func() *fit.Fitting { return a.f.Repeated(in, freshReadings) }})
		}
	}
	seen := map[string]bool{}
	for _, e := range []End{reachLeft, faceBelow, gardaLow, waistBelow, underConnector, releaseRoom, bendKnee, dropAbove} {
		if a.ends[e].Plain == Unknown {
			continue
		}
		for _, c := range a.untaken(e, a.restsOnSurvey(e)) {
			if !seen[c.Key] {
				seen[c.Key] = true
				list = append(list, c)
			}
		}
	}
	slices.SortStableFunc(list, func(x, y Candidate) int { return fit.CompareKeys(x.Key, y.Key) })
	return list
}

// restsOnSurvey says whether an estimate of the body has any part in e.
func (a *Assessment) restsOnSurvey(e End) bool {
	for part := range fit.NumBodyParts {
		if i, ok := a.m.Residual(part); ok && a.p.Contribution(i, int(e)) != 0 {
			return true
		}
	}
	return false
}

// A Candidate is a reading that could be taken three times afresh, with the
// fitting as it would be then.
type Candidate struct {
	Key     string
	Fitting func() *fit.Fitting
}

// untaken are the readings of the body and of the poses, not taken so far or
// moved since by a change, that can matter to e, at the model's present value.
func (a *Assessment) untaken(e End, survey bool) []Candidate {
	var list []Candidate
	laid := func(r fit.Reading, v float64) {
		list = append(list, Candidate{fit.LaidKey(r), func() *fit.Fitting { return a.f.WithLaid(r, v, freshReadings) }})
	}
	height := func(h int, r fit.Reading, y float64) {
		list = append(list, Candidate{fit.HeightKey(h, r), func() *fit.Fitting { return a.f.WithHeight(h, r, y, freshReadings) }})
	}
	for _, r := range nowReadings[:numEstimable] {
		if i, ok := a.m.Residual(residualOf(r)); !ok || a.m.Read(r) || !survey {
			continue
		} else if matters := a.p.Contribution(i, int(e)) != 0; !matters && (r == fit.Nose || r == fit.WristUp) {
			continue
		}
		y := a.s.Standing(r)
		if r.IsHeight() {
			height(a.m.HangOf(r), r, y)
		} else {
			laid(r, y)
		}
	}
	if i := a.m.PostureInput(fit.AheadDefault); !a.m.Read(fit.Ahead) && a.p.Contribution(i, int(e)) != 0 {
		laid(fit.Ahead, a.s.Ahead)
	}
	if i := a.m.PostureInput(fit.LevelByEye); a.m.Read(fit.GardaLevel) && a.p.Contribution(i, int(e)) != 0 {
		height(a.m.HangOf(fit.GardaLevel), fit.KneeLevel, a.s.KneeAtLevel)
	}
	for _, q := range needsOf[e] {
		if q == fit.NeedYLevel && !a.m.Read(fit.GardaLevel) {
			height(a.m.HangOf(fit.GardaLevel), fit.GardaLevel, a.s.YLevel)
		}
		if q == fit.NeedYTaut && !a.m.Read(fit.GardaTaut) {
			height(a.m.HangOf(fit.GardaTaut), fit.GardaTaut, a.s.YTaut)
		}
	}
	return append(list, a.afterChange(e)...)
}

// afterChange are the readings of the hang to come, and the lengths to be laid
// on again, that a change has made e rest on.
func (a *Assessment) afterChange(e End) []Candidate {
	var list []Candidate
	coming := len(a.f.Hangs)
	for i := range a.m.Inputs {
		in := &a.m.Inputs[i]
		if in.Origin != fit.Predicted || a.p.Contribution(i, int(e)) == 0 {
			continue
		}
		if c := in.Change - 1; c >= 0 {
			list = append(list, Candidate{fit.ChangeKey(c, true), func() *fit.Fitting { return a.f.LaidOn(c, in.V, freshReadings) }})
			continue
		}
		r := in.Reading
		list = append(list, Candidate{fit.HeightKey(coming, r), func() *fit.Fitting {
			f := a.f.WithHeight(coming, r, a.s.Standing(r), freshReadings)
			if r == fit.GardaLevel && a.m.Read(fit.KneeLevel) {
				f = f.WithHeight(coming, fit.KneeLevel, a.s.KneeAtLevel, freshReadings)
			}
			return f
		}})
	}
	return list
}
