package advice

import (
	"fmt"
	"math"
	"slices"

	"example.com/hangtape/rules"
)

// An Easing is the smallest easing of one limit, within what a school may set,
// with which some set would pass.
type Easing struct {
	Limit rules.Limit
	By    float64 // in the limit's unit, whole
}

// words tell by how much, a length in unit (mm, cm, in).
func (e *Easing) words(unit string) string {
	if u := e.Limit.Info().Unit; u != "mm" {
		return fmt.Sprintf("%g %s", e.By, u)
	}
	return atLeast(e.By, unit)
}

// easing is the least easing, in whole millimetres, or in whole degrees where no
// length would do; nil where no limit can be eased far enough.
func (a *adviser) easing() *Easing {
	for _, unit := range []string{"mm", "deg"} {
		var best *Easing
		for l := range rules.NumLimits {
			if l.Info().Unit != unit {
				continue
			}
			if by, ok := a.eased(l, best); ok {
				best = &Easing{l, by}
			}
		}
		if best != nil {
			return best
		}
	}
	return nil
}

// eased is by how much l has to be eased at least, in whole units of its own; false
// where it cannot be by so much, or would have to be by no less than best, which may
// be nil.
func (a *adviser) eased(l rules.Limit, best *Easing) (float64, bool) {
	h := a.chooser
	room := math.Inf(1)
	slopes := make([]float64, len(h.musts)) // margin for each unit that l is raised by
	up := false                             // whether the limit is eased by raising it
	for _, sub := range a.subjects {
		var now, then [rules.NumEnds]float64
		limits := sub.limits
		rules.Margins(sub.assessed.State(), &limits, now[:])
		limits[l]++
		rules.Margins(sub.assessed.State(), &limits, then[:])
		for i, d := range h.musts {
			if d.t.subject.assessed == sub.assessed {
				if slope := then[d.e] - now[d.e]; !math.IsNaN(slope) {
					slopes[i] = slope
					up = up || slope > 0
				}
			}
		}
	}
	for _, sub := range a.subjects {
		b := l.Info().Bounds
		if up {
			room = math.Min(room, b[1]-sub.limits[l])
		} else {
			room = math.Min(room, sub.limits[l]-b[0])
		}
	}
	if best != nil {
		room = math.Min(room, best.By-1)
	}
	does := func(by int) bool { // a limit moves margins alone: guards stay
		eased := make([]*demand, len(h.musts))
		for i, d := range h.musts {
			e := *d
			e.more.margin += math.Abs(slopes[i]) * float64(by)
			eased[i] = &e
		}
		return h.any(eased)
	}
	lo, hi := 0, int(room)
	moves := slices.ContainsFunc(slopes, func(v float64) bool { return v != 0 })
	if hi < 1 || !moves || !does(hi) {
		return 0, false
	}
	for hi-lo > 1 { // hi does
		if mid := (lo + hi) / 2; does(mid) {
			hi = mid
		} else {
			lo = mid
		}
	}
	return float64(hi), true
}
