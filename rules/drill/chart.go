package drill

import (
	"fmt"
	"math"
	"strings"

	"example.com/hangtape/rules"
)

// Chart draws the peak force of the worst fall against the rope above, a bar for
// each length, with both limits across, and the peaks of the other falls beside
// it, or under it where it is narrow: at least 44 columns wide. ascii keeps to
// ASCII. A bar that is longer than the chart ends in ">". It is nil where the force
// is not known.
func (f Force) Chart(width int, unit string, ascii bool) []string {
	if !f.Known() {
		return nil
	}
	const left, number = 9, 6
	row := func(first, second, third string) string {
		return fmt.Sprintf("%*s%*s%*s", number, first, number, second, number, third)
	}
	others := func(p Point) string { return row(kN(p.Peak[OneLow]), kN(p.Peak[BothUp]), kN(p.Peak[OneUp])) }
	heads := [2]string{row("one", "both", "one"), row("low", "up", "up")}
	beside := width >= 70
	c := chart{bar: "█", limit: "│", cells: width - left - number}
	if beside {
		c.cells -= len(heads[0])
	}
	if ascii {
		c.bar, c.limit = "#", "|"
	}
	most := math.Max(f.Points[0].Peak[BothLow], f.Limits[0])
	c.perKN = float64(c.cells-1) / math.Min(math.Ceil(most), 2*f.Limits[0])

	lines := []string{
		fmt.Sprintf("%-*s%s%*s", left, "rope", c.over(f.Limits, "saddle", "peak"), number, "both"),
		fmt.Sprintf("%-*s%s%*s", left, "above", c.over(f.Limits, kN(f.Limits[1]), kN(f.Limits[0])), number, "low"),
	}
	under := []string{"", fmt.Sprintf("%-*s%s", left, "rope", heads[0]), fmt.Sprintf("%-*s%s", left, "above", heads[1])}
	for _, p := range f.Points {
		above := fmt.Sprintf("%-*s", left, rules.FormatBelow(p.Above, unit))
		lines = append(lines, above+c.row(p.Peak[BothLow], f.Limits)+fmt.Sprintf("%*s", number, kN(p.Peak[BothLow])))
		under = append(under, above+others(p))
	}
	if !beside {
		return append(lines, under...)
	}
	lines[0], lines[1] = lines[0]+heads[0], lines[1]+heads[1]
	for i, p := range f.Points {
		lines[2+i] += others(p)
	}
	return lines
}

// ChartWords says what a chart shows.
const ChartWords = "Peak force in kN if the tether ever has to catch, against the rope above: bars for both hitches letting go, Garda hitch low; then one hitch, and both again with the Garda hitch drawn up (low: just sat back; up: drawn up). The lines are saddle-force, to aim at, and peak-force."

// kN is a force with the decimals of the chart.
func kN(v float64) string { return fmt.Sprintf("%.1f", v) }

// A chart is how bars are drawn.
type chart struct {
	bar, limit string  // a cell of a bar, and of a limit's line
	cells      int     // of a bar at its longest
	perKN      float64 // cells
}

// at is the cell in which a bar of force, in kN, ends; the last where it is longer
// than the chart.
func (c chart) at(force float64) int {
	return min(c.cells-1, int(math.Round(force*c.perKN)))
}

// beyond says whether a bar of force, in kN, is longer than the chart.
func (c chart) beyond(force float64) bool { return math.Round(force*c.perKN) > float64(c.cells-1) }

// row is the bar of a force, with the limits drawn over it.
func (c chart) row(force float64, limits [2]float64) string {
	cells := make([]string, c.cells)
	for i := range cells {
		switch {
		case i == c.at(limits[0]), i == c.at(limits[1]):
			cells[i] = c.limit
		case i < c.at(force):
			cells[i] = c.bar
		case i == c.cells-1 && c.beyond(force):
			cells[i] = ">"
		default:
			cells[i] = " "
		}
	}
	return strings.Join(cells, "")
}

// over sets a word above each limit's line, ending there.
func (c chart) over(limits [2]float64, saddle, peak string) string {
	line := []rune(strings.Repeat(" ", c.cells))
	for _, l := range []struct {
		at   int
		word string
	}{{c.at(limits[1]), saddle}, {c.at(limits[0]), peak}} {
		word := []rune(l.word)
		for i, r := range word {
			if at := l.at - len(word) + 1 + i; at >= 0 {
				line[at] = r
			}
		}
	}
	return string(line)
}
