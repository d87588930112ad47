package advice

import (
	"math"
	"testing"
)

// What is unknown is left out between samples: of four the curve is followed, of
// two or three the line, one holds everywhere, and none leaves all unknown.
func TestInterpolationLeavesOutWhatIsUnknown(t *testing.T) {
	nan := math.NaN()
	xs := []float64{0, 1, 2, 4, 5}
	for _, c := range []struct {
		ys   []float64
		want float64 // at 3
	}{
		{[]float64{0, 1, 4, 16, 25}, 9},
		{[]float64{0, 1, nan, 16, 25}, 9},
		{[]float64{nan, nan, 4, 16, nan}, 10},
		{[]float64{nan, nan, nan, 16, nan}, 16},
		{[]float64{nan, nan, nan, nan, nan}, nan},
	} {
		got := between(xs, func(j int) float64 { return c.ys[j] })(3)
		if !(math.Abs(got-c.want) < 1e-9 || math.IsNaN(got) && math.IsNaN(c.want)) {
			t.Errorf("of %v at 3: %g, want %g", c.ys, got, c.want)
		}
	}
}

func TestStraightNeedsThreeSamplesOnALine(t *testing.T) {
	row := func(variance, shift float64) []sum {
		all := make([]sum, numOutputs)
		all[0] = sum{variance: variance, shift: shift}
		return all
	}
	for _, c := range []struct {
		got  [][]sum
		want bool
	}{
		{[][]sum{row(1, 0), row(9, 0)}, true}, // nothing to tell from
		{[][]sum{row(1, 0), row(2, 0), row(3, 0)}, true},
		{[][]sum{row(1, 0), row(2.5, 0), row(3, 0)}, false},
		{[][]sum{row(1, 1), row(1, -1), row(1, 1)}, false},
		{[][]sum{row(1, 0), row(math.NaN(), 0), row(3, 0)}, false},
	} {
		xs := []float64{0, 1, 2}[:len(c.got)]
		if got := straight(xs, c.got); got != c.want {
			t.Errorf("%v: %v, want %v", c.got, got, c.want)
		}
	}
}

// An end that is unknown is as far from passing as can be, in every search.
func TestUnknownIsNeverMet(t *testing.T) {
	for _, s := range []sum{{margin: math.NaN()}, {margin: 5, variance: math.NaN()}} {
		if r := ratio(s, searchFactor); !math.IsInf(r, -1) {
			t.Errorf("%+v has the ratio %g", s, r)
		}
	}
}

// A conflict that names no check is told of all of them.
func TestConflictWithoutChecksIsOfEveryMust(t *testing.T) {
	c := Conflict{Cause: causeUncertainty, Pieces: []string{"tether"}}
	want := "there are lengths that meet every must, but not surely enough; what limits it is how closely these can be set: backup tether"
	if got := c.Words("mm"); got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// Distances that lie too close for a curve have none: the full model is asked.
func TestNoCurveThroughDistancesThatAreOne(t *testing.T) {
	var at, got []sum
	for k := range 6 {
		at, got = append(at, sum{margin: 800 + 1e-300*float64(k)}), append(got, sum{margin: float64(k)})
	}
	at[5].margin, at[1].margin, at[2].margin, at[3].margin, at[4].margin = 900, math.Nextafter(800, 900), math.Nextafter(math.Nextafter(800, 900), 900), 850, 875
	if c := fitCurve(at, got); c != nil {
		t.Errorf("at 850: %v", c.at(sum{margin: 850}))
	}
	if c := fitCurve(at[:3], got[:3]); c != nil {
		t.Error("a curve through three")
	}
}
