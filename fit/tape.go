package fit

import "math"

// tapeLaw is the maximum permissible error of a tape: a + b·L, and c more where
// the length starts from an end face; L in metres, rounded up.
type tapeLaw struct{ a, b, c float64 } // mm, mm/m, mm

// Source: OIML R 35-1, clause 4.
var tapeLaws = [...]tapeLaw{
	ClassI:   {0.1, 0.1, 0.1},
	ClassII:  {0.3, 0.2, 0.2},
	ClassIII: {0.6, 0.4, 0.3},
}

// MaxError is the maximum permissible error, in mm, of a tape of the class over
// a length in mm, whose sign does not matter. fromEnd says that the length
// starts from the tape's end. Source: OIML R 35-1, clause 4.
func MaxError(class TapeClass, length float64, fromEnd bool) float64 {
	law := tapeLaws[class]
	// Means of readings that differ by a full metre may miss it by the computer's
	// arithmetic.
	e := law.a + law.b*math.Ceil(math.Abs(length)/1000-1e-12)
	if fromEnd {
		e += law.c
	}
	return e
}

// readingU is the standard uncertainty, in mm, of the mean of n readings of a
// length with the maximum permissible error maxError: the tape and its division
// count once, as rectangular distributions, and only the spread v of landing on
// the mark gets smaller with n. Source: GUM (JCGM 100) 4.3.7 and 4.2.3.
func (t Tape) readingU(maxError, v float64, n int) float64 {
	return math.Sqrt(maxError*maxError/3 + t.Division*t.Division/12 + v*v/float64(n))
}

// defaultSpread is the standard deviation, in mm, of landing on a mark once:
// judgement, until enough repeats of the session say otherwise.
var defaultSpread = [...]float64{Hardware: 3, Body: 8, Garda: 5}

// Spreads is how far one reading of each kind scatters, in mm.
type Spreads [3]float64

// spreads are the default spreads, or, for a kind whose repeats give at least 4
// degrees of freedom together, their pooled standard deviation, but not below
// half of the default: a few lucky repeats are no proof of a steady hand.
func (f *Fitting) spreads() Spreads {
	var ss [3]float64
	var dof [3]int
	add := func(kind Spread, list []float64) {
		if len(list) < 2 {
			return
		}
		m := Mean(list)
		for _, x := range list {
			ss[kind] += (x - m) * (x - m)
		}
		dof[kind] += len(list) - 1
	}
	for r := Reading(0); r < NumReadings; r++ {
		if r.IsHeight() {
			for i := range f.Hangs {
				add(r.Info().Spread, f.Hangs[i].Heights[r])
			}
		} else if _, kept := f.keptReading(r); !kept {
			add(r.Info().Spread, f.Laid[r])
		}
	}
	for i := range f.Changes {
		add(Hardware, f.Changes[i].Measured)
	}
	var v Spreads
	for k := range v {
		v[k] = defaultSpread[k]
		if dof[k] >= 4 {
			v[k] = max(math.Sqrt(ss[k]/float64(dof[k])), defaultSpread[k]/2)
		}
	}
	return v
}

// Mean is the arithmetic mean of a list that is not empty. It is the same for a
// list moved by a constant, to within rounding, and does not overflow.
func Mean(list []float64) float64 {
	sum := 0.0
	for _, x := range list {
		sum += x - list[0]
	}
	return list[0] + sum/float64(len(list))
}
