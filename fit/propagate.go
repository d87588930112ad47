package fit

import (
	"iter"
	"math"
)

// A Block is a run of inputs that are correlated with each other.
type Block struct {
	Start int         // index of the first of them
	Corr  [][]float64 // correlation coefficients, 1 on the diagonal
}

// A Propagation is what a vector function of uncertain inputs comes to: its
// values and, for every output, what each input contributes to its standard
// uncertainty and to its second-order shift.
type Propagation struct {
	Values []float64 // the function at the inputs' values; NaN where unknown

	blocks []Block
	x, u   []float64
	f      stepped
	shares []share   // of all outputs; the first is none
	first  []int32   // by output: its first share, 0 where no input moves it
	lo, hi []float64 // scratch
	inside []float64 // scratch: the contributions of a block
}

// A share is what one input contributes to one output. Most inputs leave most
// outputs alone, so that there are few.
type share struct {
	input, next  int32 // next is the output's next share, 0 after the last
	contr, shift float64
}

// An Uncertainty is the standard uncertainty and the second-order shift of an
// output.
type Uncertainty struct{ U, Shift float64 }

// stepped is a function of inputs x of which only x[i] is not at its value, with
// out as it was when all were; i is -1 where all are.
type stepped func(i int, x, out []float64)

// Propagate steps every input x[i] of f by ± its standard uncertainty u[i]: its
// contribution is half the difference, its share of the second-order shift half
// the second difference. Where one step leaves the domain (NaN), the other
// counts whole and adds no shift; where both do, the output is unknown. f must
// fill out, which has n places, and must not keep its arguments. An input that
// is itself unknown (NaN) or certain (u = 0) is not stepped.
//
// Source: GUM (JCGM 100) 5.1.3 note 2, and 5.2.2 for the correlated blocks.
func Propagate(f func(x, out []float64), x, u []float64, blocks []Block, n int) *Propagation {
	return propagate(func(_ int, x, out []float64) { f(x, out) }, append([]float64(nil), x...), u, blocks, n)
}

// propagate is Propagate for a function that is told which input was stepped. It
// keeps x and moves it while it works.
func propagate(f stepped, x, u []float64, blocks []Block, n int) *Propagation {
	p := new(Propagation)
	p.start(f, x, u, blocks, n)
	for i := range x {
		p.add(i)
	}
	return p
}

// start makes p ready for the steps of the inputs. It uses the room that p has.
func (p *Propagation) start(f stepped, x, u []float64, blocks []Block, n int) {
	p.f, p.x, p.u, p.blocks = f, x, u, blocks
	if cap(p.shares) == 0 {
		p.shares = make([]share, 0, 8*n)
	}
	p.shares = append(p.shares[:0], share{})
	p.first = zeroed(p.first, n)
	for _, s := range []*[]float64{&p.Values, &p.lo, &p.hi} {
		*s = zeroed(*s, n)
	}
	f(-1, p.x, p.Values)
}

// zeroed is s with n places, all 0.
func zeroed[T any](s []T, n int) []T {
	if cap(s) < n {
		return make([]T, n)
	}
	s = s[:n]
	clear(s)
	return s
}

// steps says whether input i is stepped.
func (p *Propagation) steps(i int) bool { return p.u[i] != 0 && !math.IsNaN(p.x[i]) }

// add steps input i and keeps what that does.
func (p *Propagation) add(i int) {
	if !p.steps(i) {
		return
	}
	p.step(i, p.u[i])
	for o, mid := range p.Values {
		if p.hi[o] == mid && p.lo[o] == mid || mid != mid { // NaN is unknown whatever is stepped
			continue
		}
		contr, shift := p.effect(o)
		p.keep(o, share{input: int32(i), contr: contr, shift: shift})
	}
}

// keep adds s to the shares of output o.
func (p *Propagation) keep(o int, s share) {
	s.next = p.first[o]
	p.first[o] = int32(len(p.shares))
	p.shares = append(p.shares, s)
}

// of goes through the shares of output o.
func (p *Propagation) of(o int) iter.Seq[*share] {
	return func(yield func(*share) bool) {
		for k := p.first[o]; k != 0; k = p.shares[k].next {
			if !yield(&p.shares[k]) {
				return
			}
		}
	}
}

// sharesOf is how many shares the outputs have together.
func (p *Propagation) sharesOf(outputs []int) int {
	n := 0
	for _, o := range outputs {
		for range p.of(o) {
			n++
		}
	}
	return n
}

// step computes the outputs with input i moved by ± u.
func (p *Propagation) step(i int, u float64) {
	x := p.x[i]
	copy(p.hi, p.Values)
	p.x[i] = x + u
	p.f(i, p.x, p.hi)
	copy(p.lo, p.Values)
	p.x[i] = x - u
	p.f(i, p.x, p.lo)
	p.x[i] = x
}

// effect is what the input last stepped contributes to output o and to its
// shift.
func (p *Propagation) effect(o int) (contr, shift float64) {
	lo, mid, hi := p.lo[o], p.Values[o], p.hi[o]
	switch d := hi - lo; {
	case d == d: // neither is NaN
		return d / 2, (hi + lo - 2*mid) / 2
	case lo == lo:
		return mid - lo, 0
	}
	return hi - mid, 0
}

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
