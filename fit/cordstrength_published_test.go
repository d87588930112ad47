package fit_test

import (
	"testing"

	"example.com/hangtape/fit"
)

// Source: the table of EN 564 (second hand); 2, 3 and 9 mm are outside it.
func TestCordStrength(t *testing.T) {
	for _, c := range []struct{ d, want float64 }{{4, 3.2}, {5, 5.0}, {6, 7.2}, {7, 9.8}, {8, 12.8}} {
		got := fit.CordStrength(c.d)
		if !got.Known {
			t.Errorf("cord of %g mm: unknown", c.d)
		}
		near(t, "cord", got.V, c.want, 1e-12)
	}
	for _, d := range []float64{0, 2, 3, 3.99, 8.01, 9, -5} {
		if got := fit.CordStrength(d); got.Known {
			t.Errorf("cord of %g mm: %g kN, want unknown", d, got.V)
		}
	}
}
