package main

import (
	"math"

	"example.com/hangtape/rules"
)

// tenth rounds to a tenth: finer than cord can be cut.
func tenth(v float64) rules.Num { return rules.Num(math.Round(v*10) / 10) }

// thousandth rounds to a thousandth, for forces and what a label says.
func thousandth(v float64) rules.Num { return rules.Num(math.Round(v*1000) / 1000) }

// unlessZero is null for 0, which means that there is none.
func unlessZero(v float64) rules.Num {
	if v == 0 {
		return rules.Num(math.NaN())
	}
	return tenth(v)
}
