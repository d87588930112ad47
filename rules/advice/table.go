package advice

import (
	"math"
	"slices"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// The search does not ask the full model at every mark: nearly all margins are
// sums of one term a piece, and so are their variances and shifts, since no
// input is multiplied by the length of a piece. Each term is worked out once, on
// the marks of its piece, from a reference in which all pieces are set anew.
// What is found is put through the full model in the end.
//
// Two ends are not such sums. The bend of the knee and the reach of the leg
// follow from one distance, between the foot loop's length and the Garda hitch's
// height, which is; they are tabled over it (bend.go). And the pair of hitches
// shares the connector where both loops are tied anew.

const (
	outDistance = int(rules.NumEnds) // the distance that the bend follows from
	numOutputs  = outDistance + 1

	unchanged = 0 // the option to leave a piece as it is; options from 1 are its marks
)

// tables are what one fitting comes to for every option of every piece.
type tables struct {
	subject *subject
	mark    float64 // mm between marks
	base    []sum   // at the reference, by output
	terms   [fit.NumPieces][numOutputs]*term
	pair    [2][2]float64                   // variance of the pair's ends, by loops changed
	bend    [2]*curve                       // of the knee, of the leg; nil where no piece moves them
	beyond  [fit.NumPieces][numOutputs]bool // that a piece moves, but only beyond its bounds
	sampler *sampler
}

// A sum is an output, or a part of one: margin and shift in its end's unit, variance
// in that unit squared.
type sum struct{ margin, variance, shift float64 }

// A term is what a piece adds to an output, by option.
type term struct {
	options []sum
	sign    int // of the margin, as the piece gets longer
}

// outputs fills out for a state under the limits l.
func outputs(l *rules.Limits) func(x []float64, s *fit.State, out []float64) {
	return func(_ []float64, s *fit.State, out []float64) {
		rules.Margins(s, l, out)
		out[outDistance] = s.FootLoop - s.YTaut
	}
}

// tabulate works the terms out.
func tabulate(sub *subject, ps *[fit.NumPieces]*piece) *tables {
	t := &tables{subject: sub, mark: sub.mark}
	ref := sub.reference(ps)
	m := sub.changed(ref)
	p := m.Propagate(numOutputs, outputs(&sub.limits))
	t.base = sumsOf(p)
	r := &sampler{t: t, m: m, ref: ref, relevant: p.Relevant()}
	t.sampler = r
	r.alsoAway(ps)
	for i, pc := range ps {
		if pc != nil {
			r.piece(i, pc)
		}
	}
	r.beyondBounds(ps)
	r.pairs(ps)
	r.bends(ps)
	return t
}

// freed are the tables with the piece at place i as it is in ps, and the others as
// they were. What is unknown with all pieces within their bounds has to be
// tabled anew.
func (t *tables) freed(i int, ps *[fit.NumPieces]*piece) *tables {
	if slices.ContainsFunc(t.base, func(s sum) bool { return math.IsNaN(s.margin) }) {
		return tabulate(t.subject, ps)
	}
	f, r := *t, *t.sampler
	f.sampler, r.t = &r, &f
	f.terms[i] = [numOutputs]*term{}
	r.piece(i, ps[i])
	r.bends(ps)
	return &f
}

// sumsOf are the outputs that were propagated.
func sumsOf(p *fit.Propagation) []sum {
	list := make([]sum, len(p.Values))
	for o, v := range p.Values {
		u, shift := p.U(o)
		list[o] = sum{v, u * u, shift}
	}
	return list
}

func (a sum) plus(b sum) sum {
	return sum{a.margin + b.margin, a.variance + b.variance, a.shift + b.shift}
}

func (a sum) minus(b sum) sum {
	return sum{a.margin - b.margin, a.variance - b.variance, a.shift - b.shift}
}

// A choice is an option for every piece, by its place in order.
type choice [fit.NumPieces]int

// at is an output for a choice of options.
func (t *tables) at(o int, c *choice) sum {
	s := t.base[o]
	for i := range t.terms {
		if tm := t.terms[i][o]; tm != nil {
			a := &tm.options[c[i]]
			s.margin += a.margin
			s.variance += a.variance
			s.shift += a.shift
		}
	}
	return s
}

// guard is what a pass needs of margin, with the guard's factor for u.
func (a sum) guard(factor float64) float64 {
	return rules.Guard(factor, math.Sqrt(math.Max(0, a.variance)), a.shift)
}

// ratio is margin over guard of an end, with the guard's factor for u.
func ratio(s sum, factor float64) float64 {
	r := rules.Ratio(s.margin, s.guard(factor))
	if math.IsNaN(r) {
		return math.Inf(-1)
	}
	return r
}
