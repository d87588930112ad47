package rules

import (
	"fmt"
	"strconv"

	"example.com/hangtape/fit"
)

// CordMark is the step of a tape, in mm, that people cut cord to who read in
// unit: 5 mm, or 1/4 in.
func CordMark(unit string) float64 {
	if unit == "in" {
		return mmPerInch / 4
	}
	return 5
}

// CordToCut says how much cord to cut for piece p of f's kit, to be finished at a
// length in mm, by what m has learnt, with lengths in unit: "cut 1140 mm of 8 mm
// cord for a backup tether of 178 mm". Where the session does not tell the cord it
// says how to ask; empty where no such piece can be tied.
func CordToCut(m *fit.CordModel, f *fit.Fitting, p fit.Piece, finished float64, unit string) string {
	c := fit.CordFor(f, p, finished)
	if c.Diameter == 0 {
		return fmt.Sprintf("how much cord to cut for it: hangtape cut %s --finished LENGTH --cord DIAMETER", c.Use.Key())
	}
	if c.Check() != nil {
		return ""
	}
	cut := m.Cut(c, CordMark(unit))
	return fmt.Sprintf("cut %s of %s mm cord for a %s of %s", FormatLength(cut.Length, unit), strconv.FormatFloat(c.Diameter, 'f', -1, 64), PieceName(p), FormatLength(finished, unit))
}
