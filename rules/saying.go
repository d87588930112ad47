package rules

import (
	"fmt"
	"strconv"
	"strings"
)

// A Saying is a sentence whose lengths are told in the unit that people read in.
type Saying struct {
	format string
	args   []any // a length and a typed are lengths in mm
}

// Say is a sentence in a format for Sprintf, in which a Length is a %v.
func Say(format string, args ...any) Saying { return Saying{format, args} }

// A Length in a sentence is a computed one in mm.
type Length = length

// A LengthPM in a sentence is a length in mm with its standard uncertainty.
type LengthPM struct{ V, U float64 }

type (
	length float64 // computed, in mm
	typed  float64 // as somebody typed it, in mm
)

// In is the sentence with its lengths in unit: mm, cm or in.
func (s Saying) In(unit string) string {
	args := make([]any, len(s.args))
	for i, a := range s.args {
		switch v := a.(type) {
		case length:
			args[i] = FormatValue(float64(v), 0, unit)
		case LengthPM:
			args[i] = FormatPM(v.V, v.U, unit)
		case typed:
			args[i] = FormatTyped(float64(v), unit)
		default:
			args[i] = a
		}
	}
	return fmt.Sprintf(s.format, args...)
}

// finding is a Finding told in a format for Sprintf, in which a length or a
// typed is a %v.
func finding(name string, inputs []string, format string, args ...any) Finding {
	return Found(name, inputs, Say(format, args...))
}

// Found is a Finding told in a sentence.
func Found(name string, inputs []string, s Saying) Finding {
	return Finding{Name: name, Text: s.In("mm"), Inputs: inputs, said: s}
}

// In is the finding's text with its lengths in unit: mm, cm or in.
func (f Finding) In(unit string) string {
	if f.said.format == "" {
		return f.Text
	}
	return f.said.In(unit)
}

// FormatTold is a value that somebody set or read, in the unit of, without the
// decimals of a computed one; a length in mm is told in unit (mm, cm or in), in
// inches as a tape shows it.
func FormatTold(v float64, of, unit string) string {
	switch {
	case of != "mm":
		return strings.TrimSpace(strconv.FormatFloat(v, 'g', -1, 64) + " " + of)
	case unit == "in":
		return FormatLength(v, unit)
	}
	return FormatTyped(v, unit)
}

// FormatTyped is a length in mm that somebody typed, in unit (mm, cm or in), to
// at most six digits and without the decimals of a computed one.
func FormatTyped(mm float64, unit string) string {
	return strconv.FormatFloat(mm/newScale(unit, 0).per, 'g', 6, 64) + " " + unit
}
