package fit_test

import (
	"testing"

	"example.com/hangtape/fit"
)

// benched is an invented fitting with everything that can be read and told.
func benched() *fit.Fitting {
	return labelled(fitting(everyReading()))
}

func BenchmarkNewModel(b *testing.B) {
	f := benched()
	b.ReportAllocs()
	for b.Loop() {
		fit.NewModel(f, fit.Options{})
	}
}

func BenchmarkAt(b *testing.B) {
	m := fit.NewModel(benched(), fit.Options{})
	x, s := m.Values(), new(fit.State)
	for b.Loop() {
		m.At(x, s)
	}
	if !(s.Net > 0) {
		b.Error("nothing computed")
	}
}

func BenchmarkPropagate(b *testing.B) {
	m := fit.NewModel(benched(), fit.Options{})
	of := func(_ []float64, s *fit.State, out []float64) {
		for i := range drawn {
			out[i] = drawn[i].of(s)
		}
	}
	b.ReportAllocs()
	for b.Loop() {
		m.Propagate(len(drawn), of)
	}
}
