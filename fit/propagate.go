package fit

import "math"

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
	f      func(x, out []float64)
	contr  []float64 // by input, then output
	shifts []float64
	lo, hi []float64 // scratch
}

// Propagate steps every input x[i] of f by ± its standard uncertainty u[i]: its
// contribution is half the difference, its share of the second-order shift half
// the second difference. Where one step leaves the domain (NaN), the other
// counts whole and adds no shift; where both do, the output is unknown. f must
// fill out, which has n places, and must not keep its arguments. An input that
// is itself unknown (NaN) or certain (u = 0) is not stepped.
//
// Source: GUM (JCGM 100) 5.1.3 note 2, and 5.2.2 for the correlated blocks.
func Propagate(f func(x, out []float64), x, u []float64, blocks []Block, n int) *Propagation {
	p := &Propagation{
		blocks: blocks, x: append([]float64(nil), x...), u: u, f: f,
		Values: make([]float64, n), lo: make([]float64, n), hi: make([]float64, n),
		contr: make([]float64, n*len(x)), shifts: make([]float64, n*len(x)),
	}
	f(p.x, p.Values)
	for i := range x {
		p.step(i, u[i], p.contr[i*n:(i+1)*n], p.shifts[i*n:(i+1)*n])
	}
	return p
}

// step fills in what input i contributes to each output with the standard
// uncertainty u.
func (p *Propagation) step(i int, u float64, contr, shift []float64) {
	x := p.x[i]
	if u == 0 || math.IsNaN(x) {
		clear(contr)
		clear(shift)
		return
	}
	p.x[i] = x + u
	p.f(p.x, p.hi)
	p.x[i] = x - u
	p.f(p.x, p.lo)
	p.x[i] = x
	for o, mid := range p.Values {
		lo, hi := p.lo[o], p.hi[o]
		switch d := hi - lo; {
		case d == d: // neither is NaN
			contr[o], shift[o] = d/2, (hi+lo-2*mid)/2
		case lo == lo:
			contr[o], shift[o] = mid-lo, 0
		default:
			contr[o], shift[o] = hi-mid, 0
		}
	}
}

// Contribution is what input i adds to the standard uncertainty of output o,
// with its sign; NaN where both its steps leave the domain.
func (p *Propagation) Contribution(i, o int) float64 { return p.contr[i*len(p.Values)+o] }

// U is the standard uncertainty and the second-order shift of output o.
func (p *Propagation) U(o int) (u, shift float64) {
	return p.combine(o, -1, 0, 0)
}

// With is U with the standard uncertainty of input i, which belongs to no block,
// replaced.
func (p *Propagation) With(i int, u float64) func(o int) (float64, float64) {
	n := len(p.Values)
	contr, shift := make([]float64, n), make([]float64, n)
	p.step(i, u, contr, shift)
	return func(o int) (float64, float64) { return p.combine(o, i, contr[o], shift[o]) }
}

// combine adds up the contributions to output o, with those of input other
// replaced by contr and shift.
func (p *Propagation) combine(o, other int, contr, shift float64) (u, total float64) {
	n := len(p.Values)
	if math.IsNaN(p.Values[o]) {
		return math.NaN(), math.NaN()
	}
	sum := 0.0
	for i := range p.x {
		c, s := p.contr[i*n+o], p.shifts[i*n+o]
		if i == other {
			c, s = contr, shift
		}
		sum += c * c
		total += s
	}
	for _, b := range p.blocks {
		for j, row := range b.Corr {
			cj := p.contr[(b.Start+j)*n+o]
			if cj == 0 {
				continue
			}
			for k := j + 1; k < len(row); k++ {
				sum += 2 * row[k] * cj * p.contr[(b.Start+k)*n+o]
			}
		}
	}
	return math.Sqrt(math.Max(0, sum)), total
}
