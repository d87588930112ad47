package advice

import (
	"math"

	"gonum.org/v1/gonum/interp"
)

// straight says whether variances and shifts lie on lines through three samples,
// as they do where a margin is linear in the piece; false where one is unknown.
func straight(xs []float64, got [][]sum) bool {
	if len(xs) < 3 {
		return true
	}
	share := (xs[1] - xs[0]) / (xs[2] - xs[0])
	on := func(a, b, c float64) bool {
		return math.Abs(a+(c-a)*share-b) <= 1e-9*(1+math.Abs(b))
	}
	for o := range numOutputs {
		a, b, c := got[0][o], got[1][o], got[2][o]
		known := !math.IsNaN(a.variance + b.variance + c.variance)
		none := math.IsNaN(a.variance) && math.IsNaN(b.variance) && math.IsNaN(c.variance)
		if !none && !(known && on(a.variance, b.variance, c.variance) && on(a.shift, b.shift, c.shift)) {
			return false
		}
	}
	return true
}

// between interpolates y, which is told at xs, ascending; where y is unknown it
// is left out.
func between(xs []float64, y func(j int) float64) func(x float64) float64 {
	var kx, ky []float64
	for j, x := range xs {
		if v := y(j); !math.IsNaN(v) {
			kx, ky = append(kx, x), append(ky, v)
		}
	}
	if len(kx) == 0 {
		return func(float64) float64 { return math.NaN() }
	}
	var spline interp.NotAKnotCubic
	if len(kx) > 3 && spline.Fit(kx, ky) == nil {
		return spline.Predict
	}
	var line interp.PiecewiseLinear
	if len(kx) > 1 && line.Fit(kx, ky) == nil {
		return line.Predict
	}
	return func(float64) float64 { return ky[0] }
}
