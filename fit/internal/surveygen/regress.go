package main

import (
	"math/big"

	"example.com/hangtape/fit"
)

// The survey holds whole millimetres, so the regressions are computed in exact
// fractions and rounded once, at the end: the generated file is the same bytes
// on every machine.

// Columns of the table of moments: 1, stature, inseam, then the body parts.
const (
	numPredictors = 3
	numColumns    = numPredictors + int(fit.NumBodyParts)
)

// moments are sums over persons of products of two columns.
type moments [numColumns][numColumns]*big.Rat

// weighedMoments sums over the persons of sex s, or over all of them with each
// sex given the same total weight and the weights summing to their number. It
// also tells that number.
func weighedMoments(people []person, s fit.Sex) (m moments, n int64) {
	var sums [3][numColumns][numColumns]int64
	var count [3]int64
	for _, p := range people {
		count[p.sex]++
		row := [numColumns]int64{1, p.stature, p.inseam}
		copy(row[numPredictors:], p.parts[:])
		for i, a := range row {
			for j, b := range row {
				sums[p.sex][i][j] += a * b
			}
		}
	}
	weight := map[fit.Sex]*big.Rat{s: big.NewRat(1, 1)}
	n = count[s]
	if s == fit.Unsaid {
		n = count[fit.Male] + count[fit.Female]
		weight = map[fit.Sex]*big.Rat{
			fit.Male:   big.NewRat(n, 2*count[fit.Male]),
			fit.Female: big.NewRat(n, 2*count[fit.Female]),
		}
	}
	for i := range m {
		for j := range m[i] {
			m[i][j] = new(big.Rat)
			for sex, w := range weight {
				m[i][j].Add(m[i][j], mul(w, new(big.Rat).SetInt64(sums[sex][i][j])))
			}
		}
	}
	return m, n
}

// regress fits all body parts on the first k predictors by weighed least
// squares. The divisor of the residual covariance is the number of persons
// less k.
func regress(people []person, s fit.Sex, k int) fit.Regression {
	m, n := weighedMoments(people, s)
	// Sweeping the predictors out of the moments leaves the coefficients in
	// their rows and the residual sums of products among the parts.
	for c := range k {
		pivot := new(big.Rat).Inv(m[c][c])
		for j := c; j < numColumns; j++ {
			m[c][j] = mul(m[c][j], pivot)
		}
		for i := range m {
			if i == c {
				continue
			}
			f := m[i][c]
			for j := c; j < numColumns; j++ {
				m[i][j] = new(big.Rat).Sub(m[i][j], mul(f, m[c][j]))
			}
		}
	}
	var r fit.Regression
	divisor := big.NewRat(1, n-int64(k))
	for p := range r.Beta {
		for c := range k {
			r.Beta[p][c], _ = m[c][numPredictors+p].Float64()
		}
		for q := range r.Cov[p] {
			r.Cov[p][q], _ = mul(m[numPredictors+p][numPredictors+q], divisor).Float64()
		}
	}
	return r
}

func mul(a, b *big.Rat) *big.Rat { return new(big.Rat).Mul(a, b) }
