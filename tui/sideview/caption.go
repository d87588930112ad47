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
	if span, ok := o.Check.Span(); ok && span.Pose == sh.Pose && o.Check.Has.Known() {
		if gap := sh.At[span.Upper].Y - sh.At[span.Lower].Y; !math.IsNaN(gap) {
			out = append(out, gapCaption(span, gap, o))
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

// gapCaption tells the height that is drawn, and where there is room what it
// leaves and for which check.
func gapCaption(span rules.Span, gap float64, o Options) string {
	line := fmt.Sprintf(sayGap, letterOf(span.Lower), letterOf(span.Upper), rules.FormatLength(gap, o.Unit))
	longer := func(s string) {
		if len(s) <= o.Width {
			line = s
		}
	}
	if m := o.Check.Margin; m.Known() && o.Check.Unit == "mm" {
		says := sayLeft
		if m < 0 {
			says = sayLacks
		}
		longer(line + fmt.Sprintf(says, rules.FormatLength(math.Abs(float64(m)), o.Unit)))
	}
	longer(o.Check.Name + ": " + line)
	return line
}

func letterOf(m fit.Landmark) rune {
	letter, _ := Letter(m)
	return letter
}
