package fit

import (
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
	places []int     // by input: its place among the contributions; 0 is that of inputs not stepped
	count  int       // of places
	contr  []float64 // by output, then place
	sums   sums      // over the inputs
	still  sums      // over those that a reading on trial leaves alone
	lo, hi []float64 // scratch
}

// An Uncertainty is the standard uncertainty and the second-order shift of an
// output.
type Uncertainty struct{ U, Shift float64 }

// sums are the squares of contributions and the shares of shifts, summed up, by
// output.
type sums struct{ squares, shifts []float64 }

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
	p.start(f, x, u, blocks, n, every)
	p.fill(every)
	return p
}

func every(int) bool { return true }

// start makes p ready for the steps of those inputs for which steps is true. It
// uses the room that p has.
func (p *Propagation) start(f stepped, x, u []float64, blocks []Block, n int, steps func(i int) bool) {
	p.f, p.x, p.u, p.blocks = f, x, u, blocks
	p.places = zeroed(p.places, len(x))
	p.count = 1
	for i := range x {
		if u[i] != 0 && !math.IsNaN(x[i]) && steps(i) {
			p.places[i] = p.count
			p.count++
		}
	}
	p.contr = zeroed(p.contr, p.count*n)
	for _, s := range []*[]float64{&p.Values, &p.sums.squares, &p.sums.shifts, &p.lo, &p.hi} {
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

// fill steps those inputs that have a place and for which which is true, and keeps
// what that does.
func (p *Propagation) fill(which func(i int) bool) {
	for i, place := range p.places {
		if place == 0 || !which(i) {
			continue
		}
		p.step(i, p.u[i])
		for o, mid := range p.Values {
			if p.hi[o] == mid && p.lo[o] == mid {
				continue // most inputs leave most outputs alone
			}
			c, shift := p.effect(o)
			p.contr[o*p.count+place] = c
			p.sums.squares[o] += c * c
			p.sums.shifts[o] += shift
		}
	}
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
// with its sign; NaN where both its steps leave the domain.
func (p *Propagation) Contribution(i, o int) float64 { return p.of(o)[p.places[i]] }

// of is the contributions to output o, by place.
func (p *Propagation) of(o int) []float64 { return p.contr[o*p.count : (o+1)*p.count] }

// Relevant says of each input whether it has any part in the outputs of p.
func (p *Propagation) Relevant() []bool {
	relevant := make([]bool, len(p.x))
	for o := range p.Values {
		contr := p.of(o)
		for i, place := range p.places {
			relevant[i] = relevant[i] || contr[place] != 0
		}
	}
	return relevant
}

// U is the standard uncertainty and the second-order shift of output o.
func (p *Propagation) U(o int) (u, shift float64) {
	return p.combine(o, p.sums.squares[o], p.sums.shifts[o])
}

// With is U with the standard uncertainty of input i, which belongs to no block,
// replaced.
func (p *Propagation) With(i int, u float64) func(o int) Uncertainty {
	n := len(p.Values)
	contr, gained := make([]float64, n), make([]float64, n) // gained by the shifts
	if p.places[i] != 0 {
		p.step(i, p.u[i])
		for o := range gained {
			_, shift := p.effect(o)
			gained[o] = -shift
		}
	}
	if u != 0 && !math.IsNaN(p.x[i]) {
		p.step(i, u)
		for o, mid := range p.Values {
			if p.hi[o] == mid && p.lo[o] == mid {
				continue // most inputs leave most outputs alone
			}
			c, shift := p.effect(o)
			contr[o] = c
			gained[o] += shift
		}
	}
	return func(o int) Uncertainty {
		sum := contr[o] * contr[o]
		for j, place := range p.places {
			if j != i {
				c := p.of(o)[place]
				sum += c * c
			}
		}
		u, shift := p.combine(o, sum, p.sums.shifts[o]+gained[o])
		return Uncertainty{u, shift}
	}
}

// combine is the standard uncertainty of output o from the sum of the squares of
// its contributions, and its shift.
func (p *Propagation) combine(o int, sum, shift float64) (u, total float64) {
	if math.IsNaN(p.Values[o]) {
		return math.NaN(), math.NaN()
	}
	contr := p.of(o)
	for _, b := range p.blocks {
		places := p.places[b.Start : b.Start+len(b.Corr)]
		for j, row := range b.Corr {
			cj := contr[places[j]]
			if cj == 0 {
				continue
			}
			for k := j + 1; k < len(row); k++ {
				sum += 2 * row[k] * cj * contr[places[k]]
			}
		}
	}
	return math.Sqrt(math.Max(0, sum)), shift
}
