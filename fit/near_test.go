package fit_test

import (
	"math"
	"testing"
)

// near fails t where got is not a number within the given distance of want.
func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %.6g, want %.6g ± %.2g", what, got, want, within)
	}
}
