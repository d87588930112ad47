package advice

import (
	"fmt"
	"strings"

	"example.com/hangtape/rules"
)

// Words tells the conflict, with lengths in unit (mm, cm, in).
func (c *Conflict) Words(unit string) string {
	if c.Cause == causeGeometry {
		words := fmt.Sprintf("no lengths within the bounds meet %s, however well they are measured", inOne(c.Checks))
		if len(c.Bounds) > 0 {
			words += "; other bounds for one of these would do: " + named(c.Bounds)
		}
		if c.Easing != nil {
			words += fmt.Sprintf("; so would %s eased by %s, if the school may and will", c.Easing.Limit, rules.FormatLength(c.Easing.MM, unit))
		}
		return words
	}
	words := fmt.Sprintf("there are lengths that meet %s, but not surely enough", inOne(c.Checks))
	switch {
	case len(c.Next) > 0:
		words += "; read three times afresh: " + named(c.Next)
	case len(c.Pieces) > 0:
		keys := make([]string, len(c.Pieces))
		for i, p := range c.Pieces {
			keys[i] = "kit." + p
		}
		words += "; what limits it is how closely these can be set: " + named(keys)
	}
	return words
}

// inOne lists checks that have to be met at once.
func inOne(checks []string) string {
	switch n := len(checks); n {
	case 0:
		return "every must"
	case 1:
		return checks[0]
	default:
		return strings.Join(checks[:n-1], ", ") + " and " + checks[n-1] + " together"
	}
}

// named lists keys of the session file in the trade's words.
func named(keys []string) string {
	names := make([]string, len(keys))
	for i, k := range keys {
		names[i] = rules.InputName(strings.TrimSuffix(k, ".bounds_mm"))
	}
	return strings.Join(names, "; ")
}

// mostEasing is how far a limit in mm is eased on trial.
const mostEasing = 500

// easing is the least easing of one limit of the checks, in whole millimetres,
// with which some set would pass; nil where none would do.
func (a *adviser) easing(checks []string) *Easing {
	h := a.chooser
	var best *Easing
	most := mostEasing + 1
	for _, name := range checks {
		c, _ := rules.CheckNamed(name)
		if c.Info().Unit != "mm" || len(c.Info().Limits) == 0 {
			continue
		}
		does := func(mm int) bool {
			return h.any(changed(h.musts, func(d *demand) {
				if d.e.Check() == c {
					d.more.margin += float64(mm)
				}
			}))
		}
		if !does(most - 1) {
			continue
		}
		lo, hi := 0, most-1 // hi does
		for hi-lo > 1 {
			if mid := (lo + hi) / 2; does(mid) {
				hi = mid
			} else {
				lo = mid
			}
		}
		most, best = hi, &Easing{c.Info().Limits[0], float64(hi)}
	}
	return best
}
