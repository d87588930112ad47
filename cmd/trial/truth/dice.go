package truth

import (
	"math"
	"math/rand/v2"
)

// Dice draws what differs from climber to climber and from reading to reading.
// Every shape has the given centre and, at scale 1, the given standard deviation;
// none is the normal distribution that the tool reckons with, but Normal itself.
type Dice struct {
	*rand.Rand
	Scale float64 // of every standard deviation: 1, 1.5, 2
}

// NewDice are the dice of one row of the survey, the same whoever throws before
// or after.
func NewDice(seed uint64, row int, stream uint64, scale float64) Dice {
	return Dice{rand.New(rand.NewPCG(seed<<20^uint64(row), stream)), scale}
}

// Normal draws from a normal distribution.
func (d Dice) Normal(centre, sd float64) float64 { return centre + d.Scale*sd*d.NormFloat64() }

// Flat draws from an even distribution.
func (d Dice) Flat(centre, sd float64) float64 {
	return centre + d.Scale*sd*math.Sqrt(3)*(2*d.Float64()-1)
}

// Tent draws from a triangular distribution.
func (d Dice) Tent(centre, sd float64) float64 {
	return centre + d.Scale*sd*math.Sqrt(6)*(d.Float64()-d.Float64())
}

// Skew draws from a distribution with its long tail upward: the sum of four
// exponential waits.
func (d Dice) Skew(centre, sd float64) float64 {
	sum := d.ExpFloat64() + d.ExpFloat64() + d.ExpFloat64() + d.ExpFloat64()
	return centre + d.Scale*sd*(sum-4)/2
}

// TwoHumps draws from two equal habits, each with its own small spread.
func (d Dice) TwoHumps(centre, sd float64) float64 {
	side := 0.85
	if d.Float64() < 0.5 {
		side = -side
	}
	return centre + d.Scale*sd*(side+math.Sqrt(1-side*side)*d.NormFloat64())
}

// Chance says yes with probability p.
func (d Dice) Chance(p float64) bool { return d.Float64() < p }
