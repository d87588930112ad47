package rules

import (
	"testing"

	"example.com/hangtape/fit"
)

// What an end rests on is a quantity that fit knows the keys of: without them
// nobody would be told what to read.
func TestWhatAnEndRestsOnHasKeys(t *testing.T) {
	m := fit.NewModel(&fit.Fitting{}, fit.Options{})
	for e := range NumEnds {
		for _, q := range endInfo[e].rests {
			if len(m.Missing(q)) == 0 {
				t.Errorf("%s %s rests on quantity %d, of which nothing is missing where nothing was told", e.Check(), e.At(), q)
			}
		}
	}
}
