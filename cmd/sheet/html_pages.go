package sheet

import (
	"io"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// HTML writes the card as one page that reads on a phone, and prints as Pages
// lays it out on p.
func (c *Card) HTML(w io.Writer, p Paper) error {
	h := newHTMLPage(c.Climber, p)
	h.open("header", "")
	h.element("h1", "", c.Climber)
	h.verdict(c.Outcome, "big")
	h.close("header")
	for _, a := range append([]string{c.Tally}, c.About...) {
		h.element("p", "", a)
	}
	for _, m := range c.Marks {
		h.element("p", "mark", m)
	}
	h.lengths(c)
	h.element("p", "rope", c.Rope)
	h.open("div", "two")
	h.open("div", "")
	if err := h.figure(c.Figure); err != nil {
		return err
	}
	h.paragraphs("Ground drill", c.Drill)
	h.paragraphs("Limits moved by the school", c.Limits)
	h.paragraphs("Findings", c.Findings)
	h.paragraphs("Missing", runOn(c.Missing))
	h.close("div")
	h.open("div", "")
	h.checks("Musts", c.Musts)
	h.checks("Shoulds", c.Shoulds)
	h.close("div")
	h.close("div")
	h.list("Cautions", c.Cautions)
	h.list("Cord", c.CordCautions)
	h.element("p", "sign", c.Sign.Head)
	for _, s := range c.Sign.Lines {
		h.element("p", "", s)
	}
	for _, who := range signers {
		h.element("span", "pen", who)
	}
	pages, _ := c.Pages(p)
	return h.to(w, pages)
}

func (h *htmlPage) lengths(c *Card) {
	h.element("h2", "", "Lengths")
	h.open("table", "lettered")
	h.head("", "Piece", "Set to", "Window", "Tape from … to", "Cord to cut")
	h.open("tbody", "")
	for _, n := range c.Lengths {
		h.open("tr", "")
		h.cell("", n.Letter, true)
		h.cell("", n.Piece, false)
		h.cell("Set to", n.Set, true)
		h.cell("Window", n.Told(), n.Off)
		h.cell("Tape", n.Lay, false)
		h.cell("Cord to cut", n.Cut, false)
		h.close("tr")
	}
	h.close("tbody")
	h.close("table")
	h.element("p", "", c.LengthOf)
	h.element("p", "", c.PenMarks)
}

func (h *htmlPage) checks(title string, checks []Check) {
	h.element("h2", "", title)
	h.open("ul", "checks")
	for _, c := range checks {
		h.open("li", "")
		h.verdict(c.Verdict, "")
		h.text(c.Name + ": ")
		h.element("b", "", c.Told())
		if c.Verdict != rules.Pass {
			h.element("div", "", c.Text)
		}
		h.close("li")
	}
	h.close("ul")
}

// HTML writes the class as one page that reads on a phone, and prints as Pages
// lays it out on p.
func (c *Class) HTML(w io.Writer, p Paper) error {
	h := newHTMLPage(c.Title, p.turned())
	h.element("h1", "", c.Title)
	titles := []string{"Student", "Verdict"}
	for p := range fit.NumPieces {
		titles = append(titles, rules.PieceName(p))
	}
	titles = append(titles, "rope above", "Short of pass", "Signed")
	h.open("table", "students")
	h.head(titles...)
	h.open("tbody", "")
	for _, r := range c.Rows {
		h.student(titles, r)
	}
	h.close("tbody")
	h.close("table")
	h.list("Cautions", c.Cautions)
	pages, _ := c.Pages(p)
	return h.to(w, pages)
}

// student is one row of the class.
func (h *htmlPage) student(titles []string, r Row) {
	h.open("tr", "")
	h.openCell("")
	h.element("b", "", r.Climber)
	h.element("div", "", r.About)
	h.close("td")
	h.openCell("")
	h.verdict(r.Outcome, "")
	h.close("td")
	for p, s := range r.Lengths {
		h.cell(titles[2+p], s, true)
	}
	h.cell("rope above", r.Rope, false)
	h.openCell("")
	for _, s := range r.Short {
		h.element("div", "", s)
	}
	h.close("td")
	h.cell("", r.Sign, false)
	h.close("tr")
}
