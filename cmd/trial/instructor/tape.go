package instructor

import (
	"math"

	"example.com/hangtape/cmd/trial/truth"
	"example.com/hangtape/fit"
)

// tape is a tape measure of class II in one pair of hands for one day.
type tape struct {
	wrong float64                  // share of the permissible error that it is off by
	bias  [fit.NumReadings]float64 // mm, where this hand lands, all day
}

// The permissible error of class II (OIML R 35-1): a + b·L mm, L in metres.
const (
	permissibleA = 0.3
	permissibleB = 0.2
	division     = 1.0
)

// landing is how far a hand lands from the mark, mm, as a standard deviation: all
// day, and from one time to the next.
var landing = map[fit.Spread]struct{ day, time float64 }{
	fit.Hardware: {0.8, 2.7},
	fit.Body:     {2.0, 6.3},
	fit.Garda:    {1.0, 3.2},
}

func newTape(d truth.Dice) tape {
	t := tape{wrong: d.Flat(0, 1/math.Sqrt(3))}
	for r := range t.bias {
		t.bias[r] = d.Tent(0, landing[fit.Reading(r).Info().Spread].day)
	}
	return t
}

// read is what the hand reads where a perfect tape shows at.
func (t *tape) read(d truth.Dice, r fit.Reading, at float64) float64 {
	sd := landing[r.Info().Spread].time
	off := d.Normal(0, 0.9*sd)
	if d.Chance(0.05) { // a hurried one
		off = d.Normal(0, 1.9*sd)
	}
	at += t.bias[r] + off
	at += t.wrong * (permissibleA + permissibleB*math.Abs(at)/1000)
	return math.Round(at/division) * division
}
