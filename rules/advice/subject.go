package advice

import (
	"maps"
	"math"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// A subject is one fitting that the advice is for.
type subject struct {
	name     string // of its file, where there are several
	f        *fit.Fitting
	limits   rules.Limits
	mark     float64      // mm between the marks that a length is set to
	spreads  *fit.Spreads // today's, for readings tried out
	assessed *rules.Assessment
}

// lengths are what pieces are set to, in mm.
type lengths map[fit.Piece]float64

func (l lengths) clone() lengths { return maps.Clone(l) }

// changed is the model with the pieces of l set to new lengths.
func (s *subject) changed(l lengths) *fit.Model {
	return fit.NewModel(s.f.Changed(l), fit.Options{Spreads: s.spreads})
}

// length is the present length of p.
func (s *subject) length(p fit.Piece) float64 {
	return s.assessed.Model().Length(p, s.assessed.State())
}

// sums are what the full model says of f, a variant of the subject's fitting,
// with the pieces of to set anew.
func (s *subject) sums(f *fit.Fitting, to lengths) []sum {
	m := fit.NewModel(f.Changed(to), fit.Options{Spreads: s.spreads})
	return sumsOf(m.Propagate(numOutputs, outputs(&s.limits)))
}

// reference sets all pieces that may change to lengths at which as much as
// possible is known: as they are, or else on a mark where the poses are in their
// domain.
func (s *subject) reference(ps *[fit.NumPieces]*piece) lengths {
	ref := lengths{}
	for _, p := range ps {
		if p != nil {
			ref[p.id] = math.Min(math.Max(p.from, p.lo), p.hi)
		}
	}
	m := s.changed(ref)
	var state fit.State
	known := func() int {
		m.Current(&state)
		var out [numOutputs]float64
		outputs(&s.limits)(nil, &state, out[:])
		n := 0
		for _, v := range out {
			if !math.IsNaN(v) {
				n++
			}
		}
		return n
	}
	for _, p := range ps {
		if p == nil {
			continue
		}
		best, at := known(), ref[p.id]
		for k, v := range p.marks {
			m.SetLength(p.id, v)
			// the middle of the marks is safest from the edge of the domain
			if n := known(); n > best || n == best && at != ref[p.id] && k <= len(p.marks)/2 {
				best, at = n, v
			}
		}
		ref[p.id] = at
		m.SetLength(p.id, at)
	}
	return ref
}
