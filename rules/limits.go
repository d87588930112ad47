package rules

import (
	"fmt"
	"math"
)

//go:generate go run ./internal/limitsgen limits.toml limits_gen.go

// A Limit is a number that a check holds something against. A school may move
// it within its bounds. Names, defaults, bounds and reasons are data: they
// stand in limits.toml, from which the constants and their table are generated.
type Limit int

// LimitInfo is what limits.toml says of a limit.
type LimitInfo struct {
	Name    string     // in session and school files
	Default float64    // in Unit
	Unit    string     // mm, deg, kN, or "" for a ratio or a count
	Bounds  [2]float64 // least and most that a school may set, both allowed
	Title   string     // its name for people
	Why     string     // what goes wrong beyond it
	Source  string     // where the number comes from
}

// Info tells what the program knows of l, which must be one of the limits.
func (l Limit) Info() LimitInfo { return limitInfo[l] }

// String is the limit's name.
func (l Limit) String() string { return limitInfo[l].Name }

// LimitNamed is the limit with that name, and whether there is one.
func LimitNamed(name string) (Limit, bool) {
	for l, info := range limitInfo {
		if info.Name == name {
			return Limit(l), true
		}
	}
	return 0, false
}

// Limits is a value for every limit, in the limit's unit.
type Limits [NumLimits]float64

// DefaultLimits are the limits where no school has moved one.
func DefaultLimits() Limits {
	var all Limits
	for l, info := range limitInfo {
		all[l] = info.Default
	}
	return all
}

// With is l with what a school has moved.
func (l Limits) With(moved map[Limit]float64) Limits {
	for k, v := range moved {
		l[k] = v
	}
	return l
}

// MovedWords tells what a school has moved, a line each, with lengths in mm, cm or
// in; what stands at its default is left out.
func MovedWords(moved map[Limit]float64, unit string) []string {
	var lines []string
	for l, info := range limitInfo {
		if v, ok := moved[Limit(l)]; ok && v != info.Default {
			lines = append(lines, fmt.Sprintf("%s: %s in place of %s", info.Name, FormatTold(v, info.Unit, unit), FormatTold(info.Default, info.Unit, unit)))
		}
	}
	return lines
}

// A LimitFault is a limit that stands where it may not.
type LimitFault struct {
	Limit Limit
	Text  string // says what was found and what is accepted
}

// Error is the fault in words.
func (f LimitFault) Error() string { return f.Text }

// Faults are the limits outside their bounds, and least-over where it lies
// above most-over; in the order of the limits, none where all is well.
func (l Limits) Faults() []LimitFault {
	var faults []LimitFault
	for i, v := range l {
		limit, info := Limit(i), limitInfo[i]
		if math.IsNaN(v) || v < info.Bounds[0] || v > info.Bounds[1] {
			faults = append(faults, LimitFault{limit, fmt.Sprintf("limit %s is %s; accepted is %g to %s",
				limit, withUnit(v, info.Unit), info.Bounds[0], withUnit(info.Bounds[1], info.Unit))})
		}
	}
	if l[LeastOver] > l[MostOver] {
		faults = append(faults, LimitFault{LeastOver, fmt.Sprintf("limit %s is %s, above %s at %s; accepted is at most that",
			LeastOver, withUnit(l[LeastOver], "mm"), MostOver, withUnit(l[MostOver], "mm"))})
	}
	return faults
}

// withUnit is v as it was typed, with its unit where it has one.
func withUnit(v float64, unit string) string {
	if unit == "" {
		return fmt.Sprintf("%g", v)
	}
	return fmt.Sprintf("%g %s", v, unit)
}
