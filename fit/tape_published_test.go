package fit_test

import (
	"fmt"
	"testing"

	"example.com/hangtape/fit"
)

// Source: OIML R 35-1:2007 by a retailer's table of fifteen entries (second
// hand).
func TestMaxErrorTable(t *testing.T) {
	for _, row := range []struct{ metres, i, ii, iii float64 }{
		{2, 0.30, 0.70, 1.40},
		{3, 0.40, 0.90, 1.80},
		{5, 0.60, 1.30, 2.60},
		{8, 0.90, 1.90, 3.80},
		{10, 1.10, 2.30, 4.60},
	} {
		for class, want := range map[fit.TapeClass]float64{fit.ClassI: row.i, fit.ClassII: row.ii, fit.ClassIII: row.iii} {
			near(t, fmt.Sprintf("class %d, %g m", class, row.metres), fit.MaxError(class, row.metres*1000, false), want, 1e-12)
		}
	}
}

// Source: the same recommendation's text (second hand): lengths round up to
// whole metres, an end face adds c.
func TestMaxErrorRoundsUpAndAddsTheEnd(t *testing.T) {
	for _, c := range []struct {
		class   fit.TapeClass
		length  float64
		fromEnd bool
		want    float64
	}{
		{fit.ClassII, 1230, false, 0.7},
		{fit.ClassII, 1230, true, 0.9},
		{fit.ClassII, 1000, false, 0.5},
		{fit.ClassII, 1000.0000000000002, false, 0.5}, // a metre as the difference of two means
		{fit.ClassII, 1000.1, false, 0.7},
		{fit.ClassII, 0, false, 0.3},
		{fit.ClassII, -1230, false, 0.7},
		{fit.ClassI, 1, true, 0.3},
		{fit.ClassIII, 1, true, 1.3},
	} {
		near(t, fmt.Sprintf("class %d, %g mm, from the end %v", c.class, c.length, c.fromEnd),
			fit.MaxError(c.class, c.length, c.fromEnd), c.want, 1e-12)
	}
}
