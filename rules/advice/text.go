package advice

import (
	"fmt"
	"strings"

	"example.com/hangtape/rules"
)

// geometryText tells a conflict of lengths, with the smallest easing of one
// limit that would do.
func (a *adviser) geometryText(c *Conflict) string {
	words := fmt.Sprintf("no lengths within the bounds meet %s, however well they are measured", together(c.Checks))
	if len(c.Bounds) > 0 {
		words += "; wider bounds of one of these pieces would do: " + strings.Join(c.Bounds, ", ")
	}
	if e := a.easing(c.Checks); e != "" {
		words += "; " + e
	}
	return words
}

func (a *adviser) uncertaintyText(c *Conflict) string {
	words := fmt.Sprintf("there are lengths that meet %s, but not surely enough", together(c.Checks))
	switch {
	case len(c.Next) > 0:
		words += "; read three times afresh: " + strings.Join(c.Next, ", ")
	case len(c.Pieces) > 0:
		words += "; what limits it is how closely these can be set: " + strings.Join(c.Pieces, ", ")
	}
	return words
}

func together(names []string) string {
	switch len(names) {
	case 0:
		return "every must"
	case 1:
		return names[0]
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1] + " together"
}

// mostEasing is how far a limit in mm is eased on trial.
const mostEasing = 500

// easing tells the least easing of one limit of the checks, in whole
// millimetres, with which some set would pass.
func (a *adviser) easing(checks []string) string {
	h := a.chooser
	best, at := mostEasing+1, rules.NumChecks
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
		if !does(best - 1) {
			continue
		}
		lo, hi := 0, best-1 // hi does
		for hi-lo > 1 {
			if mid := (lo + hi) / 2; does(mid) {
				hi = mid
			} else {
				lo = mid
			}
		}
		best, at = hi, c
	}
	if at == rules.NumChecks {
		return ""
	}
	return fmt.Sprintf("%s eased by %d mm would do too, if a school may and will", at.Info().Limits[0], best)
}
