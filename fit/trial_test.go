package fit_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/hangtape/fit"
)

// A reading on trial leaves most of a model as it is. A model made anew with the
// reading in its fitting has to say the same.
func TestTrialsAgainstModelsMadeAnew(t *testing.T) {
	tried := map[fit.Reading]int{}
	rapid.Check(t, func(t *rapid.T) {
		f := drawFitting(t)
		for _, r := range rapid.SliceOfN(rapid.SampledFrom(untaken), 1, 4).Draw(t, "not taken") {
			f.Laid[r] = nil
			for h := range f.Hangs {
				f.Hangs[h].Heights[r] = nil
			}
		}
		m := fit.NewModel(f, fit.Options{})
		n := len(drawn)
		values := func(s *fit.State, out []float64) {
			for o := range drawn {
				out[o] = drawn[o].of(s)
			}
		}
		p := m.Propagate(n+1, func(_ []float64, s *fit.State, out []float64) { values(s, out[1:]) })
		of := make([]int, n)
		for o := range of {
			of[o] = o + 1
		}
		trials := m.Trials(p, of, values)
		for what, f := range readable(m, f) {
			got := trials.Take(what)
			today := m.Today()
			anew := fit.NewModel(f, fit.Options{Spreads: &today}).Propagate(n, func(_ []float64, s *fit.State, out []float64) { values(s, out) })
			for o := range drawn {
				u, shift := anew.U(o)
				if !math.IsNaN(anew.Values[o]) { // as a height is whose hang lacks the hip
					same(t, "value without "+what.Reading.String(), o, p.Values[o+1], anew.Values[o])
				}
				same(t, "u with "+what.Reading.String(), o, got[o].U, u)
				same(t, "shift with "+what.Reading.String(), o, got[o].Shift, shift)
			}
			tried[what.Reading]++
		}
	})
	if len(tried) < 4 {
		t.Errorf("few were on trial: %v", tried)
	}
}

// untaken are the readings that Trials takes.
var untaken = []fit.Reading{fit.Thigh, fit.Shin, fit.Waist, fit.WristDown, fit.Nose, fit.WristUp, fit.Ahead, fit.KneeLevel}

// readable are the readings that can be taken on trial on m, with the fitting f
// as it would be then.
func readable(m *fit.Model, f *fit.Fitting) map[fit.Taken]*fit.Fitting {
	list := map[fit.Taken]*fit.Fitting{}
	var s fit.State
	m.Current(&s)
	for _, r := range untaken {
		y := s.Standing(r)
		if r == fit.Ahead {
			y = s.Ahead
		}
		h := m.HangOf(r)
		if r == fit.KneeLevel {
			h = m.HangOf(fit.GardaLevel)
		}
		switch {
		case r.IsHeight() && h < len(f.Hangs) && len(f.Hangs[h].Heights[fit.Hip]) == 0: // Take asks for its hip
		case m.Read(r) || math.IsNaN(y) || r == fit.KneeLevel && !m.Read(fit.GardaLevel):
		case r.IsHeight():
			list[fit.Taken{Reading: r, Hang: h, V: y, N: 3}] = f.WithHeight(h, r, y, 3)
		default:
			list[fit.Taken{Reading: r, V: y, N: 3}] = f.WithLaid(r, y, 3)
		}
	}
	return list
}
