package tui

import (
	"strings"

	"github.com/charmbracelet/lipgloss"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/tui/flow"
	"example.com/hangtape/tui/sideview"
)

// A drawn side view is kept until what it shows changes, so that typing does not
// draw it anew.
type drawn struct {
	of    drawnOf
	lines []string
}

type drawnOf struct {
	report        *rules.Report // a new one with every answer
	at            flow.Place
	pose          fit.Pose
	looked        string
	width, height int
}

// sideLines is the side view in at most so many cells, with the sentence of the
// check that is drawn where there is room for it; nil where there is nothing or
// no room to draw.
func (m *Model) sideLines(v side, width, height int) []string {
	of := drawnOf{m.flow.Report, m.flow.At, v.pose, m.looked, width, height}
	if m.drawn.of != of {
		m.drawn = drawn{of, m.drawSide(v, width, height)}
	}
	return m.drawn.lines
}

func (m *Model) drawSide(v side, width, height int) []string {
	d, ok := m.draw(v, width, height)
	if !ok || len(d.Cells) < fewestMarks && len(d.Asked) == 0 {
		return nil
	}
	return m.theme.paint(d)
}

// draw is the side view of the session; false where it cannot be drawn.
func (m *Model) draw(v side, width, height int) (sideview.Drawing, bool) {
	sh, ok := shapeOf(&m.flow, v)
	if !ok {
		return sideview.Drawing{}, false
	}
	d, err := sideview.Draw(&sh, sideview.Options{
		Width: width, Height: height, ASCII: m.theme.ascii, Unit: string(m.flow.Session.Unit),
		Reading: v.reading, Check: v.check,
	})
	return d, err == nil
}

// fewestMarks is how many landmarks are worth a drawing that nobody asked for.
const fewestMarks = 4

// paint gives the lines of a drawing their looks, a run of cells at a time.
func (t theme) paint(d sideview.Drawing) []string {
	out := make([]string, len(d.Lines))
	for row, line := range d.Lines {
		if row >= len(d.Tints) {
			out[row] = line // what stands under the picture
			continue
		}
		out[row] = t.paintRow([]rune(line), d.Tints[row])
	}
	return out
}

func (t theme) paintRow(line []rune, tints []sideview.Tint) string {
	var s strings.Builder
	for at := 0; at < len(line); {
		end := at + 1
		for end < len(line) && tintAt(tints, line, end) == tintAt(tints, line, at) {
			end++
		}
		s.WriteString(t.tint(tintAt(tints, line, at)).Render(string(line[at:end])))
		at = end
	}
	return s.String()
}

// tintAt is the tint of a column; the key, beyond the picture, has none, and
// nothing is worth a look of its own where nothing is drawn.
func tintAt(tints []sideview.Tint, line []rune, col int) sideview.Tint {
	if col >= len(tints) || line[col] == ' ' {
		return sideview.Plain
	}
	return tints[col]
}

func (t theme) tint(of sideview.Tint) lipgloss.Style {
	switch of {
	case sideview.TintTape:
		return t.tape
	case sideview.TintGap:
		return t.strong
	case sideview.TintClash:
		return t.refused
	case sideview.Plain:
	}
	return t.plain
}
