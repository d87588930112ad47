package pages

import (
	"math"
	"strings"

	"example.com/hangtape/rules"
	"example.com/hangtape/sessions/history"
)

// signs are what charts are drawn with.
type signs struct {
	full, left, right  string // a cell, its left half, its right half
	zero, guard, blank string
}

func (p *page) signs() signs {
	if p.ASCII {
		return signs{"#", "#", "#", "|", ":", " "}
	}
	return signs{"█", "▌", "▐", "│", "┊", " "}
}

// The parts of a line of the chart beside its bar.
const (
	dateCells = 13 // and the blanks around it
	textCells = 19
	mostBar   = 40
)

// bars draws one check: a bar a session, from 0 to the margin.
func (p *page) bars(name string, all []history.Session) {
	lo, hi, unit := 0.0, 0.0, ""
	for _, s := range all {
		for _, c := range s.Checks {
			if c.Name == name && c.Margin.Known() {
				lo, hi = min(lo, float64(c.Margin)), max(hi, float64(c.Margin), float64(c.Guard))
				unit = c.Unit
			}
		}
	}
	p.line("")
	p.line("  " + name)
	cells := min(mostBar, p.Width-dateCells-textCells)
	sc := barScale{lo: lo, hi: hi, cells: cells}
	for _, s := range all {
		text, drawn := "cannot be judged", strings.Repeat(" ", cells)
		for _, c := range s.Checks {
			if c.Name != name {
				continue
			}
			text = word(c.Verdict)
			if c.Margin.Known() && c.Unit == unit {
				text, drawn = text+" "+p.value(c.Margin, c.U, c.Unit), sc.bar(c.Margin, c.Guard, p.signs())
			}
		}
		line := "  " + pad(dayOfStamp(s.Started), dateCells-2) + drawn + " " + text
		if width(line) > p.Width {
			line = "  " + pad(dayOfStamp(s.Started), dateCells-2) + drawn
			p.line(line)
			line = "    " + text
		}
		p.line(line)
	}
}

// A barScale lays values from lo to hi, of which 0 is one, out on cells.
type barScale struct {
	lo, hi float64
	cells  int
}

// at is the place of v in half cells, from the left.
func (s barScale) at(v float64) int {
	halves := 2 * (s.cells - 1) // the cell of the zero sign has no value
	if s.hi == s.lo {
		return 0
	}
	return int(math.Round(float64(halves) * (v - s.lo) / (s.hi - s.lo)))
}

// bar is a bar from 0 to margin with the signs of zero and guard; it fills all
// cells.
func (s barScale) bar(margin, guard rules.Num, sign signs) string {
	zero := s.at(0) / 2 // cells left of the zero sign
	cells := make([]string, s.cells)
	for i := range cells {
		cells[i] = sign.blank
	}
	cells[zero] = sign.zero
	from, to := 2*zero, s.at(float64(margin))
	for h := min(from, to); h < max(from, to); h++ {
		i := h / 2
		if i >= zero {
			i++ // right of the sign
		}
		if i < 0 || i >= s.cells {
			continue
		}
		switch {
		case cells[i] == sign.left && h%2 == 1, cells[i] == sign.right && h%2 == 0:
			cells[i] = sign.full
		case h%2 == 0 && cells[i] == sign.blank:
			cells[i] = sign.left
		case cells[i] == sign.blank:
			cells[i] = sign.right
		}
	}
	if guard.Known() && guard > 0 {
		if i := s.at(float64(guard))/2 + 1; i < s.cells {
			cells[i] = sign.guard
		}
	}
	return strings.Join(cells, "")
}
