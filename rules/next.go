package rules

import "example.com/hangtape/fit"

// WorthIt is the share of a guard that makes a reading worth taking where the guard
// shrinks to it: judgement.
const WorthIt = 0.95

// next names for every check that is not settled the reading that would settle
// it or shrink its guard most.
func (a *Assessment) next() []Next {
	t := newTryout(a)
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
		case r.unsettled():
			if b, ok := t.best(e, nil); ok && b.guard <= WorthIt*r.Guard {
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
