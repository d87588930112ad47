package rules

import (
	"slices"

	"example.com/hangtape/fit"
)

// Readable are the readings that can be taken three times afresh: those taken
// less often that still have something to win, and those not taken so far, at
// the model's present value. Each comes with the fitting as it would be then.
func (a *Assessment) Readable() []Candidate {
	var list []Candidate
	for i := range a.m.Inputs {
		in := &a.m.Inputs[i]
		if u, ok := a.m.FreshU(i, freshReadings); ok && u < in.U {
			list = append(list, Candidate{Key: in.Key, fitting: func() *fit.Fitting { return a.f.Repeated(in, freshReadings) }})
		}
	}
	// Readings of body and poses that were not taken: each matters to one of these.
	seen := map[string]bool{}
	for _, c := range []CheckID{HitchTopReach, ConnectorAtFace, GardaLowReach, FootLoopAtWaist, GardaUnderConnector, GardaReleaseRoom, KneeBendOnTether, SlipDrop} {
		e := c.Ends()[0]
		if a.ends[e].Plain == Unknown {
			continue
		}
		for _, c := range a.untaken(nil, e, a.restsOnSurvey(e)) {
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

// A Candidate is a reading that could be taken three times afresh.
type Candidate struct {
	Key string

	f       *fit.Fitting        // what it is added to
	taken   fit.Taken           // the reading, where a trial of it needs no model made anew
	fitting func() *fit.Fitting // f with the reading, where it does
}

// Fitting is the fitting as it would be then.
func (c *Candidate) Fitting() *fit.Fitting {
	switch t := &c.taken; {
	case c.fitting != nil:
		return c.fitting()
	case t.Reading.IsHeight():
		return c.f.WithHeight(t.Hang, t.Reading, t.V, t.N)
	default:
		return c.f.WithLaid(t.Reading, t.V, t.N)
	}
}

// untaken adds to list the readings of the body and of the poses, not taken so
// far or moved since by a change, that can matter to e, at the model's present
// value.
func (a *Assessment) untaken(list []Candidate, e End, survey bool) []Candidate {
	add := func(key string, t fit.Taken) {
		t.N = freshReadings
		list = append(list, Candidate{Key: key, f: a.f, taken: t})
	}
	laid := func(r fit.Reading, v float64) { add(fit.LaidKey(r), fit.Taken{Reading: r, V: v}) }
	height := func(h int, r fit.Reading, y float64) {
		add(fit.HeightKey(h, r), fit.Taken{Reading: r, Hang: h, V: y})
	}
	pose := func(r fit.Reading, y float64) {
		h := a.m.HangOf(r)
		list = append(list, Candidate{Key: fit.HeightKey(h, r), fitting: func() *fit.Fitting { return a.f.WithHeight(h, r, y, freshReadings) }})
	}
	for _, r := range estimable {
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
	for _, q := range endInfo[e].rests {
		if q == fit.NeedYLevel && !a.m.Read(fit.GardaLevel) {
			pose(fit.GardaLevel, a.s.YLevel)
		}
		if q == fit.NeedYTaut && !a.m.Read(fit.GardaTaut) {
			pose(fit.GardaTaut, a.s.YTaut)
		}
	}
	return a.afterChange(list, e)
}

// afterChange adds to list the readings of the hang to come, and the lengths to
// be laid on again, that a change has made e rest on.
func (a *Assessment) afterChange(list []Candidate, e End) []Candidate {
	coming := len(a.f.Hangs)
	for i := range a.m.Inputs {
		in := &a.m.Inputs[i]
		if in.Origin != fit.Predicted || a.m.Superseded(i) || a.p.Contribution(i, int(e)) == 0 {
			continue
		}
		if c := in.Change - 1; c >= 0 {
			list = append(list, Candidate{Key: fit.ChangeKey(c, true), fitting: func() *fit.Fitting { return a.f.LaidOn(c, in.V, freshReadings) }})
			continue
		}
		r := in.Reading
		list = append(list, Candidate{Key: fit.HeightKey(coming, r), fitting: func() *fit.Fitting {
			f := a.f.WithHeight(coming, r, a.s.Standing(r), freshReadings)
			switch { // a knee counts only in the hang of its Garda hitch
			case r == fit.GardaLevel && a.m.Read(fit.KneeLevel):
				f = f.WithHeight(coming, fit.KneeLevel, a.s.KneeAtLevel, freshReadings)
			case r == fit.KneeLevel:
				f = f.WithHeight(coming, fit.GardaLevel, a.s.YLevel, freshReadings)
			}
			return f
		}})
	}
	return list
}
