package sideview

import (
	"fmt"
	"math"
	"slices"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// captionsOf are the lines under the picture beside the scale: the margin asked
// for, what collides, and what the sign of an estimate means.
func captionsOf(sh *fit.Shape, drawn []fit.Landmark, o Options) []string {
	var out []string
	if span, ok := spanOf(o.Check); ok && span.Pose == sh.Pose && o.Check.Has.Known() {
		if gap := sh.At[span.Upper].Y - sh.At[span.Lower].Y; !math.IsNaN(gap) {
			line := fmt.Sprintf(sayGap, letterOf(span.Lower), letterOf(span.Upper), rules.FormatLength(gap, o.Unit))
			if n := o.Check.Needs; n.Known() && o.Check.Unit == "mm" {
				if more := line + fmt.Sprintf(sayNeeds, rules.FormatLength(float64(n), o.Unit)); len(more) <= o.Width {
					line = more
				}
			}
			out = append(out, line)
		}
	}
	for _, c := range sh.Clashes() {
		out = append(out, fmt.Sprintf(sayClash, letterOf(c.Lower), letterOf(c.Upper), rules.FormatLength(c.Depth, o.Unit)))
	}
	if slices.ContainsFunc(drawn, func(m fit.Landmark) bool { return sh.Estimated[m] }) {
		out = append(out, sayEstimate)
	}
	return out
}

func letterOf(m fit.Landmark) rune {
	letter, _ := Letter(m)
	return letter
}
