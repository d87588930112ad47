package truth

import "math"

// root finds x between lo and hi where f is 0, to about a thousandth of a
// millimetre, by false position with the Illinois remedy; NaN where f has the
// same sign at both ends.
func root(lo, hi float64, f func(float64) float64) float64 {
	a, b := f(lo), f(hi)
	if !(a*b <= 0) {
		return math.NaN()
	}
	for range 60 {
		if a == b {
			return lo
		}
		x := (lo*b - hi*a) / (b - a)
		y := f(x)
		if math.Abs(y) < 1e-6 || math.Abs(hi-lo) < 1e-6 {
			return x
		}
		if y*b < 0 {
			lo, a = hi, b
		} else {
			a /= 2
		}
		hi, b = x, y
	}
	return hi
}
