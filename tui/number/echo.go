package number

import (
	"fmt"
	"math"
	"math/big"
	"strconv"
	"strings"

	"example.com/hangtape/sessions"
)

// Text is v, in the stored unit of f's kind, as a text that Parse reads back to
// the same value: in the unit that people read in where that is exact to a 64th
// of an inch or a decimal, else in the stored unit.
func Text(v float64, f Field) string {
	value := rounded(new(big.Rat).SetFloat64(v))
	u := f.bareUnit()
	number := new(big.Rat).Quo(value, u.size())
	if u.name == "in" {
		if k := new(big.Rat).Mul(number, big.NewRat(64, 1)); k.IsInt() {
			return mixed(k.Num().Int64(), 64) + " in"
		}
		number, u = value, units["mm"]
	}
	return strings.TrimSpace(unmistakable(number) + " " + u.name)
}

// understood says a value back, in both units; feet is how it was typed.
func (f Field) understood(v float64, feet bool) string {
	switch kindInfo[f.Kind].dim {
	case length:
		metric, inches := f.metric(v), f.inches(v)
		if feet {
			inches = inFeet(v) + " = " + inches
		}
		if f.Unit == sessions.Inch && f.Kind != Diameter {
			return inches + " = " + metric
		}
		return metric + " = " + inches
	case mass:
		return fmt.Sprintf("%s kg = %s lb", trim(v, 1), trim(inUnit(v, "lb"), 1))
	case force:
		return fmt.Sprintf("%s kN = %s lbf", trim(v, 3), trim(inUnit(v, "lbf"), 0))
	}
	return f.short(v)
}

// short is a value in the unit that people read in.
func (f Field) short(v float64) string {
	if kindInfo[f.Kind].dim == length {
		if f.bareUnit().name == "in" {
			return f.inches(v)
		}
		return f.metric(v)
	}
	return strings.TrimSpace(trim(v, 3) + " " + kindInfo[f.Kind].unit)
}

func (f Field) metric(v float64) string {
	switch {
	case f.Kind == Diameter:
		return trim(v, 2) + " mm"
	case f.Unit == sessions.CM:
		return trim(inUnit(v, "cm"), 2) + " cm"
	}
	return trim(v, 1) + " mm"
}

func (f Field) inches(v float64) string {
	if f.Kind == Diameter {
		return trim(inUnit(v, "in"), 3) + " in"
	}
	return mixed(int64(math.Round(inUnit(v, "in")*32)), 32) + " in"
}

func inFeet(v float64) string {
	k := int64(math.Round(inUnit(math.Abs(v), "in") * 32))
	s := fmt.Sprintf("%d ft %s in", k/(12*32), mixed(k%(12*32), 32))
	if v < 0 {
		return "-" + s
	}
	return s
}

// mixed is k/den as "48 1/32".
func mixed(k, den int64) string {
	sign := ""
	if k < 0 {
		sign, k = "-", -k
	}
	whole, rest := k/den, k%den
	for rest > 0 && rest%2 == 0 {
		rest, den = rest/2, den/2
	}
	switch {
	case rest == 0:
		return sign + strconv.FormatInt(whole, 10)
	case whole == 0:
		return fmt.Sprintf("%s%d/%d", sign, rest, den)
	}
	return fmt.Sprintf("%s%d %d/%d", sign, whole, rest, den)
}

// AcceptedWords says what the field takes, for a prompt or an error.
func (f Field) AcceptedWords() string {
	s := strings.TrimSpace(accepts[f.Kind])
	unit := f.bareUnit().name
	if unit == "in" { // "in in" reads badly
		unit = "inches"
	}
	s = fmt.Sprintf(s, unit)
	if f.Accepted.given() {
		if f.Accepted.Least >= 0 {
			s = strings.TrimSuffix(s, sayMinus)
		}
		s += fmt.Sprintf(sayWithin, f.inWords(f.Accepted))
	}
	return s
}

// Example is something that could be typed.
func (f Field) Example() string {
	if s, ok := inchExamples[f.Kind]; ok && f.Unit == sessions.Inch {
		return s
	}
	if f.Unit == sessions.CM {
		if s, ok := centimetreExamples[f.Kind]; ok {
			return s
		}
	}
	return examples[f.Kind]
}

func (f Field) inWords(r Range) string {
	return fmt.Sprintf(sayRange, f.short(r.Least), f.short(r.Most))
}

// rounded is v to a millionth of its unit, finer than any tape or label.
func rounded(v *big.Rat) *big.Rat {
	r, _ := new(big.Rat).SetString(v.FloatString(6))
	return r
}

// unmistakable is v as decimals. Where three decimals could be taken for
// thousands a 0 is added, so that the text has one meaning.
func unmistakable(v *big.Rat) string {
	s := trimZeros(v.FloatString(mostDigits))
	if dot := strings.IndexByte(s, '.'); dot >= 0 && len(s)-dot == 4 {
		s += "0"
	}
	return s
}

// trim is v to at most n decimals.
func trim(v float64, n int) string {
	s := trimZeros(strconv.FormatFloat(v, 'f', n, 64))
	if s == "-0" {
		return "0"
	}
	return s
}

func trimZeros(s string) string {
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}
