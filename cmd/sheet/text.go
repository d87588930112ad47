package sheet

import (
	"fmt"
	"strings"

	"example.com/hangtape/rules"
)

// Text is the card as plain text, no line wider than 80 cells.
func (c *Card) Text() string {
	p := &textPage{}
	p.line(0, 0, c.Climber)
	for _, m := range c.Marks {
		p.line(0, 2, m)
	}
	p.line(0, 0, fmt.Sprintf("%s (%s)", c.Outcome.Loud(), c.Tally))
	for _, a := range c.About {
		p.line(0, 2, a)
	}
	p.section(strings.ToUpper(c.Sign.Head))
	for _, s := range c.Sign.Lines {
		p.line(2, 2, s)
	}
	p.lengths(c)
	p.line(0, 0, "")
	p.line(0, 2, c.Rope)
	p.checks("Musts", c.Musts)
	p.checks("Shoulds", c.Shoulds)
	p.items("Missing", runOn(c.Missing))
	p.items("Findings", c.Findings)
	p.items("Limits moved by the school", c.Limits)
	p.items("Ground drill", c.Drill)
	p.items("Cautions", c.Cautions)
	p.items("Cord", c.CordCautions)
	return p.String()
}

// lengths is the table of the pieces, with what it means.
func (p *textPage) lengths(c *Card) {
	p.section("Lengths")
	for _, n := range c.Lengths {
		p.columns(fmt.Sprintf("  %s %s %s window %s", n.Letter, padded(n.Piece, 16), padded(n.Set, 20), n.Told()))
		lay := "tape: " + n.Lay
		if n.Cut != "" {
			lay += "; cord to cut: " + n.Cut
		}
		p.line(4, 2, lay)
	}
	p.line(2, 2, c.LengthOf)
	p.line(2, 2, c.PenMarks)
}

// checks are those of one kind, with their sentences but for passes.
func (p *textPage) checks(title string, checks []Check) {
	p.section(title)
	for _, c := range checks {
		p.columns(fmt.Sprintf("  %s %s %s", padded(c.Word(), 8), padded(c.Name, 23), c.Told()))
		if c.Verdict != rules.Pass {
			p.line(11, 0, c.Text)
		}
	}
}
