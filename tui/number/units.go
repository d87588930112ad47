package number

import (
	"math/big"

	"example.com/hangtape/sessions"
)

type dimension int

const (
	length dimension = iota
	mass
	force
	share
	angle
	plain
)

// A unit is num/den of its dimension's stored unit. Where a smaller unit may
// follow it ("5 ft 9 in"), per of those make one.
type unit struct {
	name     string
	dim      dimension
	num, den int64
	smaller  string
	per      int64
	implied  bool // the smaller unit may be left out
}

// Inch and pound: international yard and pound agreement of 1959, 25.4 mm and
// 0.45359237 kg exactly. Pound-force: the pound times 9.80665 m/s².
var units = map[string]unit{
	"mm":  {name: "mm", dim: length, num: 1, den: 1},
	"cm":  {name: "cm", dim: length, num: 10, den: 1, smaller: "mm", per: 10},
	"m":   {name: "m", dim: length, num: 1000, den: 1, smaller: "cm", per: 100, implied: true},
	"in":  {name: "in", dim: length, num: 254, den: 10},
	"ft":  {name: "ft", dim: length, num: 3048, den: 10, smaller: "in", per: 12, implied: true},
	"kg":  {name: "kg", dim: mass, num: 1, den: 1},
	"g":   {name: "g", dim: mass, num: 1, den: 1000},
	"lb":  {name: "lb", dim: mass, num: 45359237, den: 1e8},
	"st":  {name: "st", dim: mass, num: 14 * 45359237, den: 1e8, smaller: "lb", per: 14, implied: true},
	"kN":  {name: "kN", dim: force, num: 1, den: 1},
	"daN": {name: "daN", dim: force, num: 1, den: 100},
	"N":   {name: "N", dim: force, num: 1, den: 1000},
	"lbf": {name: "lbf", dim: force, num: 44482216152605, den: 1e16},
	"%":   {name: "%", dim: share, num: 1, den: 1},
	"deg": {name: "deg", dim: angle, num: 1, den: 1},
	"":    {dim: plain, num: 1, den: 1},
}

// unitOrder is the order in which units are offered.
var unitOrder = []string{"mm", "cm", "m", "in", "ft", "kg", "g", "lb", "kN", "N", "daN", "lbf"}

// size is u in its dimension's stored unit.
func (u unit) size() *big.Rat { return big.NewRat(u.num, u.den) }

// inUnit is v, in the stored unit of its dimension, in the unit of that name.
func inUnit(v float64, name string) float64 {
	size, _ := units[name].size().Float64()
	return v / size
}

var kindInfo = [...]struct {
	dim    dimension
	unit   string // stored, and the one of a bare number but for lengths off a tape
	signed bool
	zero   bool
}{
	Height:   {length, "mm", true, true},
	Laid:     {length, "mm", false, false},
	Offset:   {length, "mm", true, true},
	Diameter: {length, "mm", false, false},
	Mass:     {mass, "kg", false, false},
	Force:    {force, "kN", false, false},
	Percent:  {share, "%", false, false},
	Angle:    {angle, "deg", true, true},
	Count:    {plain, "", false, true},
	Ratio:    {plain, "", false, true},
}

// bareUnit is the unit that a number without one is in.
func (f Field) bareUnit() unit {
	if f.Kind == Height || f.Kind == Laid || f.Kind == Offset {
		switch f.Unit {
		case sessions.CM:
			return units["cm"]
		case sessions.Inch:
			return units["in"]
		}
	}
	return units[kindInfo[f.Kind].unit]
}
