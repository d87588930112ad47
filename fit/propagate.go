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
