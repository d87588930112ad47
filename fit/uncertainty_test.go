package fit_test

import (
	"math"
	"testing"

	"example.com/hangtape/fit"
)

// A reading's uncertainty from the tape's class, its division and the spread of
// landing on the mark, which alone gets smaller with repeats. Maximum
// permissible errors by OIML R 35-1; rectangular by GUM 4.3.7.
func TestReadingUncertainty(t *testing.T) {
	for _, c := range []struct {
		name    string
		reading fit.Reading
		list    []float64
		e, v    float64 // mm
	}{
		{"laid from the hook", fit.FootLoop, []float64{1230}, 0.3 + 0.2*2 + 0.2, 3},
		{"laid, under a metre", fit.Thigh, []float64{440}, 0.3 + 0.2 + 0.2, 8},
		{"a height 710 above the hip", fit.Nose, []float64{2210}, 0.3 + 0.2, 8},
		{"a height below the hip", fit.Ground, []float64{-200}, 0.3 + 0.2*2, 3},
		{"a height at the hip", fit.BackupRings, []float64{1500}, 0.3, 3},
		{"the hip itself", fit.Hip, []float64{1500}, 0, 8},
		{"the Garda hitch in its pose", fit.GardaTaut, []float64{2010}, 0.3 + 0.2, 5},
		{"three times", fit.Shin, []float64{538, 540, 545}, 0.3 + 0.2 + 0.2, 8 / math.Sqrt(3)},
	} {
		rs := readings{fit.Hip: {1500}}
		rs[c.reading] = c.list
		key := fit.LaidKey(c.reading)
		if c.reading.IsHeight() {
			key = fit.HeightKey(0, c.reading)
		}
		m, _ := stateOf(fitting(rs))
		near(t, c.name, input(m, key).U, math.Sqrt(c.e*c.e/3+1.0/12+c.v*c.v), 1e-12)
	}
}

// Repeats of a kind settle the spread together once they have four degrees of
// freedom, down to half of the default.
func TestPooledSpread(t *testing.T) {
	spread := func(rs readings) float64 { return fit.NewModel(fitting(rs), fit.Options{}).Today()[fit.Body] }
	near(t, "three degrees of freedom", spread(readings{fit.Hip: {1500, 1510, 1520}, fit.Thigh: {440, 441}}), 8, 0)
	near(t, "four degrees of freedom", spread(readings{fit.Hip: {1490, 1500, 1510}, fit.Thigh: {434, 440, 446}}),
		math.Sqrt((200+72)/4.0), 1e-12)
	near(t, "repeats too good to be true", spread(readings{fit.Hip: {1500, 1500, 1500}, fit.Thigh: {440, 440, 440}}), 4, 0)
	near(t, "other kinds do not count", spread(readings{fit.Tether: {150, 160, 170, 180, 190}}), 8, 0)
}

// uOf is the standard uncertainty of what of says of f, and its second-order
// shift.
func uOf(f *fit.Fitting, of func(*fit.State) float64) (u, shift float64) {
	m := fit.NewModel(f, fit.Options{})
	p := m.Propagate(1, func(_ []float64, s *fit.State, out []float64) { out[0] = of(s) })
	return p.U(0)
}

// Heights of one hang share its hip, so where they are held against each other
// its error cancels.
func TestHipIsShared(t *testing.T) {
	rs := everyLength()
	rs[fit.GardaTaut] = []float64{2010}
	room := func(s *fit.State) float64 { return s.ConnectorBottom - s.YTaut }
	m, _ := stateOf(fitting(rs))
	bottom, taut, hip := input(m, "hangs.1.connector_bottom_mm").U, input(m, "hangs.1.garda_taut_mm").U, input(m, "hangs.1.hip_mm").U
	got, _ := uOf(fitting(rs), room)
	near(t, "room above the Garda hitch", got, math.Hypot(bottom, taut), 1e-9)
	got, _ = uOf(fitting(rs), func(s *fit.State) float64 { return s.YTaut })
	near(t, "Garda hitch above the hip", got, math.Hypot(hip, taut), 1e-9)
}
