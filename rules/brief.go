package rules

import (
	"fmt"
)

// Brief is the check's verdict with its margin, as it stands in a table, with
// lengths in unit (mm, cm, in): "FAIL -12 mm".
func (c *Check) Brief(unit string) string {
	id, _ := CheckNamed(c.Name)
	of := id.UnitAt(c.At)
	if IsLength(of) {
		of = unit
	}
	word := c.Verdict.Loud()
	switch {
	case c.Verdict == Unknown:
		return word
	case checkInfo[id].counts:
		return fmt.Sprintf("%s %.0f", word, float64(c.Margin))
	}
	return word + " " + FormatValue(float64(c.Margin), float64(c.U), of)
}
