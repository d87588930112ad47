package advice

import (
	"slices"

	"example.com/hangtape/rules"
)

// Brief is the check's verdict with its margin, as it stands in a table, with
// lengths in unit (mm, cm, in): "FAIL -12 mm".
func (c *Check) Brief(unit string) string {
	as := rules.Check{Name: c.Name, Verdict: c.Verdict, Margin: c.Margin, U: c.U, At: c.At}
	return as.Brief(unit)
}

// ShortMusts are the musts among checks that are short of pass, but for those of
// unknown, which wait for a reading.
func ShortMusts(checks []Check, unknown []string) []Check {
	return slices.DeleteFunc(slices.Clone(checks), func(c Check) bool {
		id, _ := rules.CheckNamed(c.Name)
		return id.Info().Kind != rules.Must || c.Verdict == rules.Pass || c.Verdict == rules.Unknown && slices.Contains(unknown, c.Name)
	})
}

// SameChanges says whether two answers set the same lengths.
func SameChanges(a, b []Change) bool {
	return slices.EqualFunc(a, b, func(x, y Change) bool { return x.Piece == y.Piece && x.To == y.To })
}
