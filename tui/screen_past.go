package tui

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"unicode"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/sessions/records"
)

// pastScreen lists the past fittings, those that match what is typed.
type pastScreen struct {
	gen     int
	list    *records.List // nil while the folder is read
	problem string        // of the folder
	typed   string
	wrong   string // why what is typed finds nothing
	found   []*records.Entry
	at, top int            // which of found is marked, and which is the first to be seen
	with    *records.Entry // to be held against the one that is chosen next
	differs bool           // some session is judged otherwise today than it was signed
}

// openPast shows the past fittings, read afresh.
func (m *Model) openPast() tea.Cmd {
	m.past = pastScreen{gen: m.past.gen + 1}
	m.screen = onPast
	return listPast(m.past.gen, m.opts.Store)
}

func (m *Model) listed(msg listedMsg) {
	if msg.gen != m.past.gen {
		return
	}
	if msg.err != nil {
		m.past.problem = msg.err.Error()
		return
	}
	m.past.list = msg.list
	m.past.differs = slices.ContainsFunc(msg.list.Sessions(), func(e *records.Entry) bool { return e.Differs })
	m.past.find()
}

// find looks up what is typed; a query that is none leaves what was found.
func (p *pastScreen) find() {
	p.wrong = ""
	if p.list == nil {
		return
	}
	q, err := records.ParseQuery(p.typed)
	if err != nil {
		p.wrong = err.Error()
		return
	}
	p.found, p.at, p.top = p.list.Find(q), 0, 0
}

func (m *Model) pastKey(msg tea.KeyMsg) tea.Cmd {
	p := &m.past
	switch keyOf(msg, true) {
	case keyBack:
		switch {
		case p.with != nil:
			p.with = nil
		case p.typed != "":
			p.typed = ""
			p.find()
		default:
			m.screen = onFirst
		}
		return nil
	case keyEnter:
		return m.pastChosen()
	case keyOlder:
		p.move(-1)
		return nil
	case keyNewer:
		p.move(1)
		return nil
	case keySkip:
		p.move(m.pastRows())
		return nil
	case keyPageUp:
		p.move(-m.pastRows())
		return nil
	default:
	}
	typed := p.typed
	switch {
	case msg.Type == tea.KeyBackspace && p.typed != "":
		runes := []rune(p.typed)
		p.typed = string(runes[:len(runes)-1])
	case msg.Type == tea.KeyCtrlU:
		p.typed = ""
	case (msg.Type == tea.KeyRunes || msg.Type == tea.KeySpace) && len(p.typed) < 200:
		p.typed += strings.Map(func(r rune) rune {
			if unicode.IsPrint(r) {
				return r
			}
			return -1
		}, string(msg.Runes))
	}
	if p.typed != typed {
		p.find()
	}
	return nil
}

func (p *pastScreen) move(by int) { p.at = max(0, min(p.at+by, len(p.found)-1)) }

// pastChosen opens the marked one, or holds it against the one before.
func (m *Model) pastChosen() tea.Cmd {
	p := &m.past
	if p.at >= len(p.found) {
		return nil
	}
	e, with := p.found[p.at], p.with
	switch {
	case e.Err != nil:
		m.turnTo(page{title: clean(filepath.Base(e.Path)), problem: e.Err.Error()})
		return nil
	case with != nil:
		p.with = nil
		if e.Day().Before(with.Day()) { // from the earlier to the later one
			e, with = with, e
		}
		return m.readPair(m.turnTo(page{title: "Two sessions side by side"}), with, e)
	}
	return m.readSession(m.turnTo(page{title: nameOr(e.Climber, "no name"), entry: e}), e)
}

// climberOf is the climber of e in the list; nil where e names none.
func (p *pastScreen) climberOf(e *records.Entry) *records.Climber {
	all := p.list.Climbers()
	i := slices.IndexFunc(all, func(c records.Climber) bool { return slices.Contains(c.Sessions, e) })
	if i < 0 {
		return nil
	}
	return &all[i]
}

// pastHead is how many lines stand above the rows.
const pastHead = 3

// pastRows is how many rows there is room for.
func (m *Model) pastRows() int { return max(1, m.bodyHeight()-pastHead) }

func (m *Model) pastLines(width int) []string {
	p := &m.past
	title := "Past fittings"
	if p.with != nil {
		title = cut(fmt.Sprintf("Hold %s, %s, against which?", nameOr(p.with.Climber, "no name"), pastDay(p.with)), width)
	}
	lines := []string{m.theme.title.Render(title), cut("Find: "+clean(p.typed)+"_", width), ""}
	switch {
	case p.problem != "":
		return append(lines, wrap(clean(p.problem), width)...)
	case p.list == nil:
		return append(lines, "reading the folder …")
	case p.wrong != "":
		return append(lines[:2], wrap("Not searched: "+clean(p.wrong), width)...)
	}
	lines[2] = cut(m.pastCount(), width)
	rows := m.pastRows()
	p.top = max(min(p.top, p.at), p.at-rows+1)
	for i := p.top; i < min(len(p.found), p.top+rows); i++ {
		row := cut(m.pastRow(p.found[i], width-2), width-2)
		if i == p.at {
			lines = append(lines, m.theme.key.Render("> "+row))
		} else {
			lines = append(lines, "  "+row)
		}
	}
	return lines
}

// pastCount says how many were found of how many, and what can be typed.
func (m *Model) pastCount() string {
	p := &m.past
	all := len(p.list.Sessions())
	var parts []string
	switch {
	case p.typed == "":
		parts = append(parts, plural(all, "session"))
	case len(p.found) == 0:
		parts = append(parts, fmt.Sprintf("none of %d", all))
	default:
		parts = append(parts, fmt.Sprintf("%d of %d", len(p.found), all))
	}
	if p.list.Bad > 0 {
		parts = append(parts, plural(p.list.Bad, "bad file"))
	}
	if p.differs {
		parts = append(parts, "* signed otherwise")
	}
	if p.typed == "" {
		parts = append(parts, "type climber, place, date, verdict, piece or kit")
	}
	return strings.Join(parts, "; ")
}

func plural(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// pastRow is one session, or a file that is none, in one line.
func (m *Model) pastRow(e *records.Entry, width int) string {
	if e.Err != nil {
		return "cannot be read: " + clean(filepath.Base(e.Path))
	}
	verdict := verdictWord(e)
	if e.Differs {
		verdict += "*"
	}
	row := pastDay(e) + " " + pad(verdict, 9)
	if width < 76 {
		return row + nameOr(e.Climber, "no name") + ", " + clean(e.Place)
	}
	column := (width - 20) / 3
	return row + pad(nameOr(e.Climber, "no name"), column-1) + " " + pad(clean(e.Place), column-1) + " " + clean(e.Kit)
}

func pastDay(e *records.Entry) string {
	if d := e.Day(); !d.IsZero() {
		return d.Format("2006-01-02")
	}
	return "no date   "
}

// verdictWord is the outcome of a session; readings that cannot be true together
// have none.
func verdictWord(e *records.Entry) string {
	if e.Outcome == "" {
		return "WRONG"
	}
	return strings.ToUpper(string(e.Outcome))
}
