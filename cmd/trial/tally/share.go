// Package tally counts what the runs found and lays it out as tables.
package tally

import (
	"fmt"
	"math"
)

// A Share is k of n.
type Share struct{ K, N int }

// Add counts one more, in the share or not.
func (s *Share) Add(in bool) {
	s.N++
	if in {
		s.K++
	}
}

// Value is the share, NaN of nothing.
func (s Share) Value() float64 { return float64(s.K) / float64(s.N) }

// SD is the binomial standard deviation of the share, that of half a case at
// least.
func (s Share) SD() float64 {
	if s.N == 0 {
		return math.NaN()
	}
	p := s.Value()
	return math.Max(math.Sqrt(p*(1-p)/float64(s.N)), 0.5/float64(s.N))
}

// String is the share in per cent, "-" of nothing.
func (s Share) String() string {
	if s.N == 0 {
		return "-"
	}
	return fmt.Sprintf("%.1f %%", 100*s.Value())
}

// Of is the share with what it is of.
func (s Share) Of() string {
	if s.N == 0 {
		return "-"
	}
	return fmt.Sprintf("%d/%d (%.1f %%)", s.K, s.N, 100*s.Value())
}

// A Mean is an average of numbers.
type Mean struct {
	sum float64
	n   int
}

// Add counts one more.
func (m *Mean) Add(v float64) { m.sum += v; m.n++ }

// Value is the mean, NaN of nothing.
func (m Mean) Value() float64 { return m.sum / float64(m.n) }
