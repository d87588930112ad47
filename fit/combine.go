package fit

import (
	"iter"
	"math"
)

// An Uncertainty is the standard uncertainty and the second-order shift of an
// output.
type Uncertainty struct{ U, Shift float64 }

// Contribution is what input i adds to the standard uncertainty of output o,
// with its sign; NaN where the output is unknown, or where both steps of i leave
// the domain.
func (p *Propagation) Contribution(i, o int) float64 {
	if math.IsNaN(p.Values[o]) {
		return math.NaN()
	}
	for s := range p.of(o) {
		if int(s.input) == i {
			return s.contr
		}
	}
	return 0
}

// Contributions are the inputs that output o moves with and what each of them
// contributes, in no order; none where the output is unknown.
func (p *Propagation) Contributions(o int) iter.Seq2[int, float64] {
	return func(yield func(int, float64) bool) {
		for s := range p.of(o) {
			if !yield(int(s.input), s.contr) {
				return
			}
		}
	}
}

// Relevant says of each input whether it has any part in the outputs of p. In
// one that is unknown every input that is stepped may have.
func (p *Propagation) Relevant() []bool {
	relevant := make([]bool, len(p.x))
	for o, v := range p.Values {
		if math.IsNaN(v) {
			for i := range relevant {
				relevant[i] = p.steps(i)
			}
			return relevant
		}
		for s := range p.of(o) {
			relevant[s.input] = relevant[s.input] || s.contr != 0
		}
	}
	return relevant
}

// U is the standard uncertainty and the second-order shift of output o.
func (p *Propagation) U(o int) (u, shift float64) { return p.combine(o, -1, share{}) }

// With is U with the standard uncertainty of input i, which belongs to no block,
// replaced.
func (p *Propagation) With(i int, u float64) func(o int) Uncertainty {
	list := make([]share, len(p.Values)) // of i, by output
	if u != 0 && !math.IsNaN(p.x[i]) {
		p.step(i, u)
		for o := range list {
			list[o].contr, list[o].shift = p.effect(o)
		}
	}
	return func(o int) Uncertainty {
		u, shift := p.combine(o, i, list[o])
		return Uncertainty{u, shift}
	}
}

// combine is the standard uncertainty of output o, and its shift, with the share
// of the input without replaced by instead.
func (p *Propagation) combine(o, without int, instead share) (u, shift float64) {
	if math.IsNaN(p.Values[o]) {
		return math.NaN(), math.NaN()
	}
	sum, shift := instead.contr*instead.contr, instead.shift
	for s := range p.of(o) {
		if int(s.input) != without {
			sum += s.contr * s.contr
			shift += s.shift
		}
	}
	for _, b := range p.blocks {
		sum += p.correlated(o, b)
	}
	return math.Sqrt(math.Max(0, sum)), shift
}

// correlated is what the correlations of b add to the variance of output o.
func (p *Propagation) correlated(o int, b Block) float64 {
	contr := zeroed(p.inside, len(b.Corr))
	p.inside = contr
	n := 0
	for s := range p.of(o) {
		if j := int(s.input) - b.Start; j >= 0 && j < len(contr) {
			contr[j] = s.contr
			n++
		}
	}
	if n < 2 {
		return 0
	}
	sum := 0.0
	for j, row := range b.Corr {
		if contr[j] == 0 {
			continue
		}
		for k := j + 1; k < len(row); k++ {
			sum += 2 * row[k] * contr[j] * contr[k]
		}
	}
	return sum
}
