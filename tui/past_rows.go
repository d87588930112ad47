package tui

import (
	"fmt"
	"path/filepath"

	"github.com/charmbracelet/x/ansi"

	"example.com/hangtape/rules"
	"example.com/hangtape/sessions/records"
)

// pastHead is how many lines stand above the rows.
const pastHead = 3

// pastRows is how many rows there is room for.
func (m *Model) pastRows() int { return max(1, m.bodyHeight()-pastHead) }

func (m *Model) pastLines(width int) []string {
	p := &m.past
	title := "Past fittings"
	if p.byClimber {
		title = "Climbers, and who is due for a re-check"
	}
	if p.with != nil {
		title = cut(fmt.Sprintf("Hold %s, %s, against which?", nameOr(p.with.Climber, "no name"), pastDay(p.with)), width)
	}
	lines := []string{m.theme.title.Render(title), p.prompt(width), ""}
	switch {
	case p.problem != "":
		return append(lines, m.theme.wrap(clean(p.problem), width)...)
	case p.list == nil:
		return append(lines, "reading the folder …")
	case p.wrong != "":
		return append(lines[:2], m.theme.wrap("Not searched: "+clean(p.wrong), width)...)
	}
	lines[2] = m.pastCount(width)
	rows := m.pastRows()
	p.top = max(min(p.top, p.at), p.at-rows+1)
	for i := p.top; i < min(p.len(), p.top+rows); i++ {
		row := cut(m.pastText(i, width-2), width-2)
		if i == p.at {
			lines = append(lines, m.theme.key.Render("> "+row))
		} else {
			lines = append(lines, "  "+row)
		}
	}
	return lines
}

func (p *pastScreen) prompt(width int) string {
	if p.byClimber {
		return findPrompt(p.typed, "climber", width)
	}
	return findPrompt(p.typed, "climber, place, date, verdict, piece, kit", width)
}

// findPrompt is what is typed, its end if it is long, or what can be.
func findPrompt(typed, can string, width int) string {
	const find = "Find: "
	if typed == "" {
		return cut(find+"_  "+can, width)
	}
	text := clean(typed) + "_"
	return find + ansi.TruncateLeft(text, textWidth(text)-(width-len(find)), "")
}

// pastText is one row.
func (m *Model) pastText(i, width int) string {
	if m.past.byClimber {
		return personRow(m.past.who[i])
	}
	return m.pastRow(m.past.found[i], width)
}

// personRow is one climber in one line.
func personRow(w person) string {
	due, on := "    ", w.Due.On
	if w.Due.Now {
		due = "DUE "
	}
	if on == "" {
		on = "not signed"
	}
	return due + on + " " + nameOr(w.Climber, "no name") + ", " + rules.Count(w.Sessions, "session", "sessions")
}

// pastCount says how many were found of how many, and what the marks mean, as much
// as there is room for.
func (m *Model) pastCount(width int) string {
	p := &m.past
	if p.byClimber {
		due := 0
		for _, w := range p.people {
			due += count(w.Due.Now)
		}
		return cut(fmt.Sprintf("%s, %d due", rules.Count(len(p.people), "climber", "climbers"), due), width)
	}
	all, found := len(p.list.Sessions()), len(p.found)
	for found > 0 && p.found[found-1].Err != nil { // bad files come last
		found--
	}
	var parts []string
	switch {
	case found == 0 && len(p.found) > 0: // bad files alone
	case p.typed == "":
		parts = append(parts, rules.Count(all, "session", "sessions"))
	case found == 0:
		parts = append(parts, fmt.Sprintf("none of %d", all))
	default:
		parts = append(parts, fmt.Sprintf("%d of %d", found, all))
	}
	if p.list.Bad > 0 {
		parts = append(parts, rules.Count(p.list.Bad, "bad file", "bad files"))
	}
	if p.differs {
		parts = append(parts, "* signed otherwise")
	}
	if p.moved {
		parts = append(parts, "+ limits moved")
	}
	if p.twice {
		parts = append(parts, "! in several files")
	}
	for _, name := range p.list.Aside {
		parts = append(parts, "not in folder "+clean(name))
	}
	line := parts[0]
	for _, part := range parts[1:] {
		if longer := line + "; " + part; textWidth(longer) <= width {
			line = longer
		}
	}
	return cut(line, width)
}

// pastRow is one session, or a file that is none, in one line.
func (m *Model) pastRow(e *records.Entry, width int) string {
	if e.Err != nil {
		return "bad file: " + clean(filepath.Base(e.Path)) + ", " + clean(e.Trouble())
	}
	verdict := verdictWord(e)
	if e.Differs {
		verdict += "*"
	}
	if e.Moved {
		verdict += "+"
	}
	if e.Same != nil {
		verdict += "!"
	}
	row := pastDay(e) + " " + pad(verdict, 8) + " "
	if width < 76 {
		return row + nameOr(e.Climber, "no name") + ", " + clean(e.Place)
	}
	column := (width - 20) / 3
	return row + inColumn(nameOr(e.Climber, "no name"), column-1) + " " + inColumn(clean(e.Place), column-1) + " " + clean(e.Kit)
}

// inColumn is s in exactly width cells, marked where it is cut.
func inColumn(s string, width int) string {
	if width > 1 && textWidth(s) > width {
		s = cut(s, width-1) + "~"
	}
	return pad(s, width)
}

func pastDay(e *records.Entry) string {
	if d := e.Day(); !d.IsZero() {
		return d.Format("2006-01-02")
	}
	return pad("no date", len("2006-01-02"))
}

// verdictWord is the outcome of a session; readings that cannot be true together
// have none.
func verdictWord(e *records.Entry) string {
	switch {
	case e.Outcome == "":
		return "WRONG"
	case e.NoVerdict():
		return e.Purpose.Word()
	}
	return e.Outcome.Loud()
}
