package tui

import "example.com/hangtape/rules/drill"

// forceLines are what a catch comes to, with its chart: of the words that stand
// for it line by line those alone that the chart does not tell. nil where there
// is no chart.
func (m *Model) forceLines(width int) []string {
	p := m.flow.DrillPlan()
	if p == nil {
		return nil
	}
	chart := p.Force.Chart(width, string(m.flow.Session.Unit), m.theme.ascii)
	if chart == nil {
		return nil
	}
	lines := append(append(chart, ""), wrap(drill.ChartWords, width)...)
	lines = append(lines, "")
	for _, l := range m.flow.BesideForce() {
		lines = append(lines, wrap(l, width)...)
	}
	return lines
}
