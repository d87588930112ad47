package advice

import (
	"math"
	"slices"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// A Sharer is one of several climbers who are to use one kit.
type Sharer struct {
	File    string
	Fitting *fit.Fitting // without Faults
	Limits  rules.Limits
}

// A SharedAnswer is what to change on one kit for several climbers, in the order
// of `hangtape advise --json` of several files.
type SharedAnswer struct {
	Format       int             `json:"format"`
	Files        []string        `json:"files"`
	StoppedEarly bool            `json:"stopped_early"`
	LeastChange  SharedOutcome   `json:"least_change"`
	BestFit      SharedOutcome   `json:"best_fit"`
	Unknown      [][]string      `json:"unknown"`   // by file
	Estimated    [][]string      `json:"estimated"` // by file
	Own          []string        `json:"own"`       // pieces that stay as each file has them, which differ
	Conflict     *SharedConflict `json:"conflict"`

	Now [][]Check `json:"-"` // by file
}

// A SharedOutcome is one answer for all, put through each one's full model.
type SharedOutcome struct {
	Feasible bool      `json:"feasible"`
	Cost     int       `json:"cost"`
	Ratio    rules.Num `json:"ratio"`
	Changes  []Change  `json:"changes"` // from is the mean of the files' own
	Checks   [][]Check `json:"checks"`  // by file
}

// A SharedConflict says who cannot share a kit, and why.
type SharedConflict struct {
	Files []string `json:"files"` // any one of them left out, the others can
	Conflict
}

// AdviseTogether says what to change so that one kit serves all of list, which has
// one at least, with lengths on multiples of mark mm: the pieces that every file may change, within
// the bounds of all of them. Where the files' lengths of such a piece differ by
// more than the readings explain, it has to be set to one. A piece that some file
// holds fixed stays as each file has it.
func AdviseTogether(list []Sharer, mark float64) *SharedAnswer {
	ans := &SharedAnswer{Format: 1, Own: []string{}}
	subjects := make([]*subject, len(list))
	for i, s := range list {
		subjects[i] = newSubject(s.File, s.Fitting, s.Limits, mark)
		ans.Files = append(ans.Files, s.File)
	}
	a := together(subjects)
	for _, p := range a.own {
		ans.Own = append(ans.Own, p.Key())
	}
	for _, s := range subjects {
		ans.Unknown, ans.Estimated = append(ans.Unknown, s.unknown()), append(ans.Estimated, a.estimated(s))
		ans.Now = append(ans.Now, checks(s.assessed))
	}
	var least plan
	ok := len(a.apart) == 0
	if ok {
		least, ok = a.chooser.settle(a.chooser.leastChange)
	}
	if !ok {
		none := SharedOutcome{Ratio: nan, Changes: []Change{}, Checks: [][]Check{}}
		ans.LeastChange, ans.BestFit = none, none
		ans.Conflict = cannotShare(subjects)
	} else {
		ans.LeastChange = a.told(&least)
		if best, ok := a.chooser.settle(a.chooser.bestFit); ok {
			ans.BestFit = a.told(&best)
		}
	}
	ans.StoppedEarly = a.chooser.stopped
	return ans
}

// cannotShare finds the smallest group in conflict: climbers are left out in turn,
// in the order of the call, for as long as the rest still cannot share.
func cannotShare(subjects []*subject) *SharedConflict {
	group := subjects
	for _, s := range subjects {
		if len(group) == 1 {
			break
		}
		rest := slices.DeleteFunc(slices.Clone(group), func(other *subject) bool { return other == s })
		if a := together(rest); len(a.apart) > 0 || !a.chooser.any(a.chooser.musts) {
			group = rest
		}
	}
	c := &SharedConflict{Conflict: *together(group).conflict()}
	for _, s := range group {
		c.Files = append(c.Files, s.name)
	}
	return c
}

// together is the adviser for one kit: a piece whose lengths differ has to be set
// where all may change it, and stays each file's own where some may not.
func together(subjects []*subject) *adviser {
	var ps [fit.NumPieces]*piece
	var forced set
	var own, apart []fit.Piece
	all := make([][fit.NumPieces]*piece, len(subjects))
	for k, s := range subjects {
		all[k] = pieces(s.f, s.assessed.Model(), s.mark)
	}
	for i, id := range order {
		var free bool
		ps[i], free = common(all, i, subjects[0].mark)
		switch differ := lengthsDiffer(subjects, id); {
		case differ && ps[i] != nil:
			forced |= 1 << i
		case differ && free:
			apart = append(apart, id)
		case differ:
			own = append(own, id)
		}
	}
	same := make([]*subject, len(subjects))
	for k, s := range subjects {
		same[k] = s.settingLike(&ps)
	}
	a := newAdviser(same, &ps, forced)
	slices.Sort(own)
	slices.Sort(apart)
	a.own, a.apart = own, apart
	return a
}

// common is the piece at place i as all files may change it, with the narrowest
// bounds and the dearest way; nil where there is none. free says that every file
// may change it.
func common(all [][fit.NumPieces]*piece, i int, mark float64) (c *piece, free bool) {
	for _, ps := range all {
		p := ps[i]
		if p == nil {
			return nil, false
		}
		if c == nil {
			first := *p
			first.from = 0
			c = &first
		}
		c.from += p.from / float64(len(all))
		c.lo, c.hi = math.Max(c.lo, p.lo), math.Min(c.hi, p.hi)
		if p.cost > c.cost {
			c.cost, c.how = p.cost, p.how
		}
	}
	if c.layOut(mark); len(c.marks) == 0 {
		return nil, true
	}
	return c, true
}

// settingLike is the subject with the pieces set as closely as all files can.
func (s *subject) settingLike(ps *[fit.NumPieces]*piece) *subject {
	f := *s.f
	for _, p := range ps {
		if p != nil {
			f.Kit.Pieces[p.id].Change = p.how
		}
	}
	like := *s
	like.f = &f
	return &like
}

// lengthsDiffer says whether the piece has different lengths in two files, by
// more than the readings explain with 95 % probability.
func lengthsDiffer(subjects []*subject, p fit.Piece) bool {
	type length struct{ v, u float64 } // mm
	var seen []length
	for _, s := range subjects {
		m := s.assessed.Model()
		at := m.Propagate(1, func(_ []float64, st *fit.State, out []float64) { out[0] = m.Length(p, st) })
		u, _ := at.U(0)
		for _, other := range seen {
			if math.Abs(at.Values[0]-other.v) > rules.TwoSided*math.Hypot(u, other.u) {
				return true
			}
		}
		seen = append(seen, length{at.Values[0], u})
	}
	return false
}
