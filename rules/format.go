package rules

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// MMPerInch is exact (international inch, 1959).
const MMPerInch = 25.4

// mmPerFoot is exact (international foot, 1959).
const mmPerFoot = 12 * MMPerInch

// The steps between the marks of a tape that lengths are set and cord is cut to, in
// mm: judgement, nobody ties cord to the millimetre.
const (
	MarkMetric = 5.0
	MarkInch   = MMPerInch / 4
)

// MarkIn is the step for people who read in unit (mm, cm, in).
func MarkIn(unit string) float64 {
	if unit == "in" {
		return MarkInch
	}
	return MarkMetric
}

// IsLength says whether unit is one in which people read lengths: mm, cm, in.
func IsLength(unit string) bool { return unit == "mm" || unit == "cm" || unit == "in" }

// FormatLength is a length as a tape shows it, with its unit: whole
// millimetres, tenths of a centimetre, or inches to the nearest sixteenth as a
// fraction. mm may be negative; where it is unknown (NaN) the answer is "-".
func FormatLength(mm float64, unit string) string {
	switch {
	case math.IsNaN(mm):
		return "-"
	case unit == "in":
		return sixteenths(mm) + " in"
	case unit == "cm":
		return decimal(mm/10, 1) + " cm"
	}
	return decimal(mm, 0) + " mm"
}

// sixteenths is mm in inches with a fraction: 68 1/2, 3/16, -2 1/16, 0.
func sixteenths(mm float64) string {
	n := int(math.Round(math.Abs(mm) / MMPerInch * 16))
	whole, num, den := n/16, n%16, 16
	for num != 0 && num%2 == 0 {
		num, den = num/2, den/2
	}
	sign := ""
	if mm < 0 && n != 0 {
		sign = "-"
	}
	switch {
	case num == 0:
		return sign + strconv.Itoa(whole)
	case whole == 0:
		return fmt.Sprintf("%s%d/%d", sign, num, den)
	}
	return fmt.Sprintf("%s%d %d/%d", sign, whole, num, den)
}

// FormatBelow is a distance below the union, or a height to climb, in mm: rounded up
// to a tenth of a metre or, where unit is in, of a foot; "-" where it is unknown
// (NaN).
func FormatBelow(mm float64, unit string) string {
	if math.IsNaN(mm) {
		return "-"
	}
	per, of := 1000.0, "m"
	if unit == "in" {
		per, of = mmPerFoot, "ft"
	}
	return fmt.Sprintf("%.1f %s", math.Ceil(mm/per*10-1e-9)/10, of)
}

// FormatValue is a computed value with its unit: a length in mm shown in unit
// (mm, cm, in), or a value in deg, kN or "" (a ratio or a count) as it is. The
// decimals follow from u, its standard uncertainty. Inches are decimal here: a
// margin is compared, not set on a tape. Unknown (NaN) is "-".
func FormatValue(value, u float64, unit string) string {
	return newScale(unit, u).withUnit(value)
}

// FormatPM is FormatValue with its standard uncertainty: "12 ± 5 mm". Without
// an uncertainty (0 or unknown) it is the value alone.
func FormatPM(value, u float64, unit string) string {
	s := newScale(unit, u)
	if math.IsNaN(value) || math.IsNaN(u) || u == 0 {
		return s.withUnit(value)
	}
	return s.number(value) + " ± " + s.withUnit(u)
}

// A scale says how values of one unit and uncertainty are written.
type scale struct {
	per      float64 // how many of the value's own unit make one of the unit shown
	decimals int
	unit     string
}

// newScale chooses the decimals: the last digit shown is not finer than u, nor
// coarser or finer than serves in that unit.
func newScale(unit string, u float64) scale {
	s := scale{per: 1, unit: unit}
	least, most := 0, 1
	switch unit {
	case "cm":
		s.per, least, most = 10, 1, 2
	case "in":
		s.per, least, most = MMPerInch, 1, 2
	case "kN":
		least, most = 2, 3
	case "":
		least, most = 2, 3
	}
	s.decimals = least
	if u > 0 { // false for NaN
		for s.decimals < most && u/s.per < math.Pow10(-s.decimals) {
			s.decimals++
		}
	}
	return s
}

// number is v, which is known, without its unit.
func (s scale) number(v float64) string {
	return decimal(v/s.per, s.decimals)
}

// withUnit is v with its unit; a "-" stands alone.
func (s scale) withUnit(v float64) string {
	return string(s.appendWithUnit(make([]byte, 0, 24), v))
}

// appendWithUnit is withUnit added to b.
func (s scale) appendWithUnit(b []byte, v float64) []byte {
	if math.IsNaN(v) {
		return append(b, '-')
	}
	b = appendDecimal(b, v/s.per, s.decimals)
	if s.unit != "" {
		b = append(append(b, ' '), s.unit...)
	}
	return b
}

// Upper is a text with a capital first letter.
func Upper(s string) string {
	first, n := utf8.DecodeRuneInString(s)
	if n == 0 {
		return s
	}
	return string(unicode.ToUpper(first)) + s[n:]
}

// Count is so many of something: "1 session", "12 sessions".
func Count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

// decimal is v with so many decimals, never "-0".
func decimal(v float64, decimals int) string {
	return string(appendDecimal(make([]byte, 0, 24), v, decimals))
}

// appendDecimal is decimal added to b.
func appendDecimal(b []byte, v float64, decimals int) []byte {
	from := len(b)
	b = strconv.AppendFloat(b, v, 'f', decimals, 64)
	if number := b[from:]; number[0] == '-' && isZero(string(number)) {
		return append(b[:from], number[1:]...)
	}
	return b
}

// isZero says whether a number is written without a digit other than 0.
func isZero(number string) bool { return strings.Trim(number, "-0.") == "" }
