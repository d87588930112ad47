package sheet

import (
	"fmt"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// Text is the class as plain text, no line wider than 80 cells.
func (c *Class) Text() string {
	p := &textPage{}
	p.line(0, 0, fmt.Sprintf("%s: %s", c.Title, rules.Count(len(c.Rows), "student", "students")))
	for _, r := range c.Rows {
		p.line(0, 0, "")
		p.line(0, 2, r.Climber)
		p.line(2, 2, r.Outcome.Loud()+"; "+r.Sign)
		if r.About != "" {
			p.line(2, 2, r.About)
		}
		lengths := ""
		for i := range fit.NumPieces {
			lengths = join(", ", lengths, rules.PieceName(i)+" "+r.Lengths[i])
		}
		p.line(2, 2, lengths)
		p.line(2, 2, "holds only with at least this much rope above: "+r.Rope)
		for _, s := range r.Short {
			p.line(2, 2, s)
		}
	}
	p.items("Cautions", c.Cautions)
	return p.String()
}
