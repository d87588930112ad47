package rules

import (
	"math"
	"slices"
)

// Wanted are the readings that can still turn a verdict of the kind, and what
// each would settle, the check's name, in the order of the checks. spent says
// that a reading was taken, or asked for, often enough. None wanted is that no
// reading can change a verdict of the kind any more.
func (r *Report) Wanted(kind Kind, spent func(key string) bool) []Wanted {
	var list []Wanted
	add := func(key, check string) {
		if !spent(key) && !slices.Contains(list, Wanted{key, check}) {
			list = append(list, Wanted{key, check})
		}
	}
	for i := range r.Checks {
		c := &r.Checks[i]
		if c.Kind != kind {
			continue
		}
		for _, n := range r.Next {
			if n.Check == c.Name && canTurn(c, n) {
				add(n.Reading, c.Name)
			}
		}
		if c.Verdict == Unknown {
			for _, key := range c.Missing {
				add(key, c.Name)
			}
		}
	}
	return list
}

// A Wanted is a reading, by its key, and the check that it may settle.
type Wanted struct{ Reading, Check string }

// canTurn says whether the reading can turn the verdict: by it the margin moves,
// at most times by what u loses, and the guard shrinks.
func canTurn(c *Check, n Next) bool {
	if c.Verdict == Unknown || !n.UThen.Known() {
		return true
	}
	margin, guard := float64(c.Margin), float64(n.GuardThen)
	moves := GuardFactor * math.Sqrt(math.Max(0, float64(n.UNow*n.UNow-n.UThen*n.UThen)))
	if c.Verdict == Fail {
		return margin+moves >= 0
	}
	return margin-moves < 0 || margin+moves >= guard
}
