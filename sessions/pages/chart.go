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

// The parts of a line of the chart.
const (
	dateCells = 13 // of a day, with the blanks around it
	mostBar   = 40 // cells of a bar, where the page is wide enough
)

// bars draws one check: a bar a session, from 0 to the margin.
func (p *page) bars(name string, all []history.Session) {
	nan := rules.Num(math.NaN())
	rows := make([]history.Check, len(all))
	texts := make([]string, len(all))
	lo, hi, unit, longest := 0.0, 0.0, "", 0
	for i, s := range all {
		rows[i], texts[i] = history.Check{Margin: nan}, "cannot be judged"
		for _, c := range s.Checks {
			if c.Name == name {
				rows[i], texts[i] = c, c.Verdict.Loud()
			}
		}
		if c := rows[i]; c.Margin.Known() {
			texts[i] += " " + p.value(c.Margin, c.U, c.Unit)
			lo, hi, unit = min(lo, float64(c.Margin)), max(hi, float64(c.Margin), float64(c.Guard)), c.Unit
		}
		longest = max(longest, width(texts[i]))
	}
	p.line("")
	p.line("  " + name)
	sc := barScale{lo: lo, hi: hi, cells: min(mostBar, p.Width-dateCells-1-longest)}
	for i, s := range all {
		drawn := strings.Repeat(" ", sc.cells)
		if c := rows[i]; c.Margin.Known() && c.Unit == unit {
			drawn = sc.bar(c.Margin, c.Guard, p.signs())
		}
		p.line("  " + pad(dayOfStamp(s.Started), dateCells-2) + drawn + " " + texts[i])
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
