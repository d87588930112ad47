// Package runs puts the tool and the rules of thumb through the true world, one
// body at a time, and holds what was told against what is so. It counts nothing:
// package tally does.
package runs

import (
	"example.com/hangtape/cmd/trial/truth"
	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// A Bench is what every body is tried under.
type Bench struct {
	Seed   uint64
	Scale  float64 // of every spread in the true world
	Limits rules.Limits
	Bounds truth.Bounds
	Survey func(fit.Sex, bool) fit.Regression // fitted without the bodies on trial

	limits truth.Limits
	ends   [rules.NumEnds]int // the tool's ends in the truth's order
}

// NewBench readies a bench with the school's bounds.
func NewBench(seed uint64, scale float64, l rules.Limits, survey func(fit.Sex, bool) fit.Regression) *Bench {
	b := &Bench{Seed: seed, Scale: scale, Limits: l, Bounds: truth.SchoolBounds, Survey: survey, limits: trueLimits(&l)}
	for e := range rules.NumEnds {
		for i, end := range truth.Ends {
			if end.Check == e.Check().String() && end.At == e.At() {
				b.ends[e] = i
			}
		}
	}
	return b
}

// trueLimits hands the limits to the truth as numbers.
func trueLimits(l *rules.Limits) truth.Limits {
	return truth.Limits{
		ReachReserve: l[rules.ReachReserve], LeastLoop: l[rules.LeastLoop], MostPairDifference: l[rules.MostPairDifference],
		FaceBelow: l[rules.FaceBelow], FaceAbove: l[rules.FaceAbove], WaistBelow: l[rules.WaistBelow], WaistAbove: l[rules.WaistAbove],
		ConnectorClearance: l[rules.ConnectorClearance], ReleaseRoom: l[rules.ReleaseRoom], LeastOver: l[rules.LeastOver], MostOver: l[rules.MostOver],
		MostFlexion: l[rules.MostFlexion], MostDrop: l[rules.MostDrop], PeakForce: l[rules.PeakForce],
		LeastWidthRatio: l[rules.LeastWidthRatio], LeastCordRatio: l[rules.LeastCordRatio], MostCordRatio: l[rules.MostCordRatio],
		LeastWraps: l[rules.LeastWraps], LeastHitchRatio: l[rules.LeastHitchRatio], LeastStrengthRatio: l[rules.LeastStrengthRatio],
		KnotEfficiency: l[rules.KnotEfficiency],
	}
}

// The streams of chance: each part of the trial draws from its own, so that one
// can change without moving the others.
const (
	streamWorld = iota
	streamPractice
	streamStature
	streamFull
	streamShort
	streamBlunder
)

func (b *Bench) dice(body truth.Body, stream uint64) truth.Dice {
	return truth.NewDice(b.Seed, body.Row, stream, b.Scale)
}

// world is the one true world of a body, with gear as it comes.
func (b *Bench) world(body truth.Body) truth.World {
	return truth.Draw(b.dice(body, streamWorld), body)
}

// soundWorld is the same with gear that meets every must that lengths cannot mend.
func (b *Bench) soundWorld(body truth.Body) truth.World {
	d := b.dice(body, streamWorld)
	w := truth.Draw(d, body)
	w.Sound(d, &b.limits)
	return w
}

// mendable keeps the ends that lengths and the rope above can mend: of those it is
// asked whether a kit fits.
func mendable(misses []int) []int {
	var out []int
	for _, e := range misses {
		if truth.Ends[e].Movable || e == truth.SlipForce {
			out = append(out, e)
		}
	}
	return out
}
