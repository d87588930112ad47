// Package number turns what people type into a quantity, and a quantity back
// into text that can be typed. It never guesses: what has two meanings is asked
// about, what has none is refused whole, and an empty answer is not taken,
// which is not 0.
//
// Typed text may use a decimal comma or point, spaces or no-break spaces between
// thousands, fractions as 1/2 or as one sign, and the marks ' and " or their
// typographic forms. Everything that the package says is plain ASCII.
package number

import (
	"example.com/hangtape/fit"
	"example.com/hangtape/sessions"
)

// Kind is what sort of quantity a field takes; it settles the stored unit and
// which sign is allowed.
type Kind int

// The kinds, with the unit that values are stored in.
const (
	Height   Kind = iota // mm on the hanging tape, whose zero may be anywhere
	Laid                 // mm, above 0
	Offset               // mm, either side of a mark
	Diameter             // mm, above 0, off a label: a bare number is mm whatever people read in
	Mass                 // kg, above 0
	Force                // kN, above 0
	Percent              // %, above 0
	Angle                // deg
	Count                // whole, not below 0
	Ratio                // a plain number, not below 0
)

// Range is a closed interval in the stored unit. The zero Range is none.
type Range struct{ Least, Most float64 }

func (r Range) given() bool { return r != Range{} }

// holds says whether v is within; where no range is given every value is.
func (r Range) holds(v float64) bool { return !r.given() || r.Least <= v && v <= r.Most }

// A Field is what an answer has to fit.
type Field struct {
	Name     string        // in the trade's words, for messages: "nose"
	Kind     Kind          //
	Unit     sessions.Unit // what people read lengths in; empty means mm
	Accepted Range         // outside it an answer is refused; lengths always end at 100 m
	Usual    Range         // outside it an answer is questioned
}

// ForReading is the field of a reading in the unit that people read in.
func ForReading(r fit.Reading, unit sessions.Unit) Field {
	f := Field{Name: r.String(), Kind: Laid, Unit: unit}
	switch {
	case r.IsHeight():
		f.Kind = Height
	case r == fit.Ahead:
		f.Kind = Offset
	}
	return f
}

// An Answer is what was understood. The zero Answer was not taken.
type Answer struct {
	Value      fit.Number // in the stored unit of the field's kind, to a millionth of it
	Understood string     // to say back, in both units: "1220 mm = 48 1/32 in"
	Notes      []string   // what is odd about it, if anything
}

// Taken says whether a value was given.
func (a Answer) Taken() bool { return a.Value.Known }
