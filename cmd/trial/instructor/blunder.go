package instructor

import (
	"math"
	"strconv"

	"example.com/hangtape/cmd/trial/truth"
)

// blunder spoils a number the way people do: the wrong landmark, a misread mark
// of the tape, two digits swapped.
func blunder(d truth.Dice, v float64) float64 {
	switch p := d.Float64(); {
	case p < 0.5:
		return math.Round(v + d.Normal(0, 40))
	case p < 0.85:
		step := []float64{10, -10, 50, -50, 100, -100}[d.IntN(6)]
		return v + step
	}
	digits := []byte(strconv.Itoa(int(math.Abs(v))))
	if len(digits) < 2 {
		return v + 10
	}
	i := d.IntN(len(digits) - 1)
	digits[i], digits[i+1] = digits[i+1], digits[i]
	swapped, _ := strconv.ParseFloat(string(digits), 64)
	return math.Copysign(swapped, v)
}
