package fit

import (
	"testing"

	"gonum.org/v1/gonum/mat"
)

// Where the covariance of what was read cannot be one, the readings say nothing
// of the rest: the estimates stay the survey's own.
func TestNoCovarianceSharpensNothing(t *testing.T) {
	m := NewModel(&Fitting{}, Options{})
	m.regression.Cov[PartShin][PartShin] = -1
	estimates, likely := []sharpening{{part: PartThigh}}, []sharpening{{part: PartShin}}
	m.sharpen(estimates, likely, []partner{{part: PartShin}})
	for i, s := range append(estimates, likely...) {
		if mat.Sum(mat.NewVecDense(len(s.gain), s.gain[:])) != 0 {
			t.Errorf("sharpened by %v: %d", s.gain, i)
		}
	}
}
