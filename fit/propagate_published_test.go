package fit_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"example.com/hangtape/fit"
)

// Source: GUM (JCGM 100:2008) example H.1, the calibration of an end gauge, as
// the documentation of the Measurement Standards Laboratory of New Zealand
// restates it (seen): 50 000 838 nm with u = 32 nm. 31.66 nm is derived.
func TestPropagateEndGauge(t *testing.T) {
	const (
		standard = iota // nm, length of the standard
		fromStd         // nm, comparator: mean difference
		random          // nm, comparator: random effects
		system          // nm, comparator: systematic effects
		alpha           // 1/K, thermal expansion of the standard
		dAlpha          // 1/K, difference in expansion
		theta           // K, mean of the bed's temperature from 20 °C
		cyclic          // K, its cycles
		dTheta          // K, difference in temperature
		inputs
	)
	x := make([]float64, inputs)
	u := make([]float64, inputs)
	x[standard], u[standard] = 50_000_623, 25
	x[fromStd], u[fromStd] = 215, 5.8
	u[random], u[system] = 3.9, 6.7
	x[alpha], u[alpha] = 11.5e-6, 2e-6/math.Sqrt(3)
	u[dAlpha] = 1e-6 / math.Sqrt(3)
	x[theta], u[theta] = -0.1, 0.2
	u[cyclic] = 0.5 / math.Sqrt2
	u[dTheta] = 0.05 / math.Sqrt(3)
	p := fit.Propagate(func(x, out []float64) {
		d := x[fromStd] + x[random] + x[system]
		out[0] = x[standard] + d - x[standard]*(x[dAlpha]*(x[theta]+x[cyclic])+x[alpha]*x[dTheta])
	}, x, u, nil, 1)
	near(t, "length in nm", p.Values[0], 50_000_838, 0.5)
	total, shift := p.U(0)
	near(t, "u in nm, printed", math.Round(total), 32, 0)
	near(t, "u in nm", total, 31.66, 0.005)
	near(t, "shift in nm", shift, 0, 1e-6)
	for i, want := range map[int]float64{standard: 25, dTheta: 16.599, system: 6.7, fromStd: 5.8, random: 3.9, dAlpha: 2.88679, alpha: 0, theta: 0, cyclic: 0} {
		near(t, "component in nm", math.Abs(p.Contribution(i, 0)), want, 0.0006)
	}
}

// Source: GUM example H.2, resistance and reactance from correlated readings,
// from the same documentation (seen).
func TestPropagateCorrelatedInputs(t *testing.T) {
	x := []float64{4.999, 19.661e-3, 1.04446}
	u := []float64{3.2e-3, 9.5e-6, 7.5e-4}
	block := fit.Block{Corr: [][]float64{{1, -0.36, 0.86}, {-0.36, 1, -0.65}, {0.86, -0.65, 1}}}
	p := fit.Propagate(func(x, out []float64) {
		z := x[0] / x[1]
		out[0], out[1], out[2] = z*math.Cos(x[2]), z*math.Sin(x[2]), z
	}, x, u, []fit.Block{block}, 3)
	for o, want := range []struct{ v, within, u, uWithin float64 }{
		{127.732, 0.0005, 0.070, 0.0005}, {219.85, 0.005, 0.30, 0.005}, {254.26, 0.005, 0.24, 0.005},
	} {
		near(t, "value", p.Values[o], want.v, want.within)
		got, _ := p.U(o)
		near(t, "u", got, want.u, want.uWithin)
	}
}

// The second-order shift of x² is u², whatever x; of a product of inputs that
// share nothing it is 0 (JCGM 101, the moments of a square).
func TestPropagateShift(t *testing.T) {
	p := fit.Propagate(func(x, out []float64) { out[0], out[1] = x[0]*x[0], x[0]*x[1] }, []float64{3, 5}, []float64{0.5, 0.25}, nil, 2)
	u, shift := p.U(0)
	near(t, "u of the square", u, 3, 1e-12)
	near(t, "shift of the square", shift, 0.25, 1e-12)
	u, shift = p.U(1)
	near(t, "u of the product", u, math.Hypot(5*0.5, 3*0.25), 1e-12)
	near(t, "shift of the product", shift, 0, 1e-12)
}

// Who has seen enough of the contributions is not told the rest.
func TestContributionsEndEarly(t *testing.T) {
	p := fit.Propagate(func(x, out []float64) { out[0] = x[0] + x[1] + x[2] }, []float64{1, 2, 3}, []float64{1, 1, 1}, nil, 1)
	seen := 0
	for range p.Contributions(0) {
		seen++
		break
	}
	if seen != 1 {
		t.Errorf("told %d", seen)
	}
}

// At the edge of the domain one step counts whole; past both edges nothing is
// known.
func TestPropagateAtTheEdgeOfTheDomain(t *testing.T) {
	p := fit.Propagate(func(x, out []float64) {
		out[0] = math.Sqrt(x[0])
		out[1] = math.Sqrt(1e-4 - x[0]*x[0])
	}, []float64{0.005}, []float64{0.02}, nil, 2)
	u, shift := p.U(0)
	near(t, "u", u, math.Sqrt(0.025)-math.Sqrt(0.005), 1e-12)
	near(t, "shift", shift, 0, 0)
	if u, _ := p.U(1); !math.IsNaN(u) {
		t.Errorf("both steps leave the domain: u %v, want NaN", u)
	}
}

// Source: JCGM 106:2012, guarded acceptance, 9.5.2: a guard band of k·u leaves
// a specific consumer's risk of 1 − Φ(k) (second hand).
func TestGuardFactorsLeaveTheirRisk(t *testing.T) {
	for _, c := range []struct{ k, sure, within float64 }{
		{1.645, 0.95, 0.0001}, // each check
		{2.05, 0.98, 0.0002},  // each check of an advice
		{2.33, 0.9901, 0.00005},
		{2, 0.9772, 0.0001}, // derived
		{1.40, 0.919, 0.0005},
	} {
		near(t, "share accepted rightly", distuv.UnitNormal.CDF(c.k), c.sure, c.within)
	}
}
