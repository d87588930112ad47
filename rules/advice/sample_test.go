package advice

import (
	"math"
	"testing"

	"example.com/hangtape/fit"
)

// Which way a margin goes as a piece gets longer is told from the first and the
// last length at which it is known.
func TestWhichWayAMarginGoes(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		margins []float64
		want    int
	}{
		{[]float64{1, 2, 3}, 1}, {[]float64{3, 2}, -1}, {[]float64{1, 1}, 0}, {[]float64{1, 1 + 1e-10}, 0}, {[]float64{1, 1 - 1e-10}, 0},
		{[]float64{nan, 1, 2}, 1}, {[]float64{2, 1, nan}, -1}, {[]float64{-2, nan, -1}, 1}, {[]float64{nan, nan}, 0}, {[]float64{nan, 5, nan}, 0}, {[]float64{5}, 0},
	} {
		rows := make([][numOutputs]float64, len(c.margins))
		for k, v := range c.margins {
			rows[k][3] = v
		}
		if got := signOf(rows, 3); got != c.want {
			t.Errorf("%v goes %d, want %d", c.margins, got, c.want)
		}
	}
}

// The marks that are propagated are both ends and some between, closest together
// at the short end, and all where there are few.
func TestSampledMarks(t *testing.T) {
	a := advising(t, "1-good-kit", wide)
	h := a.chooser
	r := h.musts[0].t.sampler
	for i, p := range h.ps {
		at := r.sampleMarks(p)
		n := len(p.marks)
		if len(at) != samples || at[0] != 0 || at[len(at)-1] != n-1 {
			t.Errorf("of %d marks %v", n, at)
		}
		for k := 1; k < len(at); k++ {
			if at[k] <= at[k-1] {
				t.Errorf("of %d marks %v", n, at)
			}
		}
		if first, last := at[3]-at[0], at[len(at)-1]-at[len(at)-4]; first >= last {
			t.Errorf("of %d marks %v are not closer together at the short end", n, at)
		}
		three := *h.ps[i]
		three.marks = three.marks[:3]
		if at := r.sampleMarks(&three); len(at) != 3 {
			t.Errorf("of three marks %v", at)
		}
	}
}

// Two files have different lengths of a piece where these lie further apart than
// the readings explain, at 95 %.
func TestLengthsThatDiffer(t *testing.T) {
	with := func(tether float64) *subject {
		return advising(t, "1-good-kit", func(f *fit.Fitting) { f.Laid[fit.Tether] = []float64{tether} }).subjects[0]
	}
	first := with(150)
	m := first.assessed.Model()
	u, _ := m.Propagate(1, func(_ []float64, s *fit.State, out []float64) { out[0] = m.Length(fit.PieceTether, s) }).U(0)
	apart := 1.96 * math.Sqrt2 * u
	for by, want := range map[float64]bool{0: false, apart - 0.1: false, apart + 0.1: true, 0.1 - apart: false, -apart - 0.1: true} {
		if got := lengthsDiffer([]*subject{first, with(150 + by)}, fit.PieceTether); got != want {
			t.Errorf("%g mm apart, each ± %.2f mm: differ %t", by, u, got)
		}
		if got := lengthsDiffer([]*subject{first, with(150), with(150 + by)}, fit.PieceTether); got != want {
			t.Errorf("the third %g mm apart: differ %t", by, got)
		}
	}
	if lengthsDiffer([]*subject{first, with(500)}, fit.PieceFootLoop) {
		t.Error("the foot loops differ where the tethers do")
	}
}
