package sideview

import (
	"slices"

	"example.com/hangtape/fit"
)

// marksOf are the marks of sh that have a place and are worth a letter, those
// first that say most: what is asked for, then the rest in the order of marks.
func marksOf(sh *fit.Shape, wanted []fit.Landmark) []fit.Landmark {
	var first, rest []fit.Landmark
	for _, k := range marks {
		p := sh.At[k.at]
		switch {
		case !p.Known() || k.at == fit.MarkLoopEnd && p == sh.At[fit.MarkSole]:
		case k.at == fit.MarkHip || slices.Contains(wanted, k.at):
			first = append(first, k.at)
		case k.at != fit.MarkGround || p.Y > lowest(sh)-mostToGround:
			rest = append(rest, k.at)
		}
	}
	return append(first, rest...)
}

// mostToGround is how far under everything else the ground is drawn unasked, in
// mm: further down it would shrink the rest.
const mostToGround = 250

func lowest(sh *fit.Shape) float64 {
	y := sh.At[fit.MarkHip].Y
	for _, m := range []fit.Landmark{fit.MarkSole, fit.MarkLoopEnd} {
		if p := sh.At[m]; p.Known() {
			y = min(y, p.Y)
		}
	}
	return y
}
