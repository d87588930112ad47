package tui

import (
	"path/filepath"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/sessions/pages"
	"example.com/hangtape/sessions/records"
)

// pastScreen lists the past fittings, or their climbers, those that match what
// is typed.
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
	moved   bool           // some session is judged otherwise under the school's limits of today
	twice   bool           // some session is in several files

	byClimber bool
	people    []person // all of them
	who       []person // those that match
}

// openPast shows the past fittings, read afresh.
func (m *Model) openPast() tea.Cmd {
	m.past = pastScreen{gen: m.past.gen + 1}
	m.screen = onPast
	return listPast(m.past.gen, m.opts.Store, m.now)
}

func (m *Model) listed(msg listedMsg) {
	if msg.gen != m.past.gen {
		return
	}
	if msg.err != nil {
		m.past.problem = msg.err.Error()
		return
	}
	m.past.list, m.past.people = msg.list, msg.people
	m.past.differs = slices.ContainsFunc(msg.list.Sessions(), func(e *records.Entry) bool { return e.Differs })
	m.past.moved = slices.ContainsFunc(msg.list.Sessions(), func(e *records.Entry) bool { return e.Moved })
	m.past.twice = slices.ContainsFunc(msg.list.Sessions(), func(e *records.Entry) bool { return e.Same != nil })
	m.past.find()
}

// find looks up what is typed; a query that is none leaves what was found.
func (p *pastScreen) find() {
	p.wrong = ""
	if p.list == nil {
		return
	}
	if p.byClimber {
		p.who, p.at, p.top = p.people, 0, 0
		if typed := records.Unaccented(p.typed); typed != "" {
			p.who = slices.DeleteFunc(slices.Clone(p.people), func(w person) bool { return !strings.Contains(records.Unaccented(w.Climber), typed) })
		}
		return
	}
	q, err := records.ParseQuery(p.typed)
	if err != nil {
		p.wrong = err.Error()
		return
	}
	p.found, p.at, p.top = p.list.Find(q), 0, 0
	if p.with != nil {
		p.found = p.against(p.found)
	}
}

// against are the sessions of found that the chosen one can be held against, the
// same climber's first.
func (p *pastScreen) against(found []*records.Entry) []*records.Entry {
	var own []*records.Entry
	if c := p.climberOf(p.with); c != nil {
		own = c.Sessions
	}
	var first, then []*records.Entry
	for _, e := range found {
		switch {
		case e == p.with || e.Err != nil:
		case slices.Contains(own, e):
			first = append(first, e)
		default:
			then = append(then, e)
		}
	}
	return append(first, then...)
}

func (m *Model) pastKey(msg tea.KeyMsg) tea.Cmd {
	p := &m.past
	switch keyOf(msg, true) {
	case keyBack:
		switch {
		case p.with != nil:
			p.with = nil
			p.find()
		case p.typed != "":
			p.typed = ""
			p.find()
		case p.byClimber:
			p.byClimber = false
			p.find()
		default:
			m.screen = onFirst
		}
		return nil
	case keySteps:
		switch {
		case p.with != nil || p.list == nil:
		case p.byClimber:
			return m.readCords(m.turnTo(page{title: "Cords by age, those of all kits"}))
		default:
			p.byClimber, p.typed = true, ""
			p.find()
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
	if typed := edited(p.typed, msg); typed != p.typed {
		p.typed = typed
		p.find()
	}
	return nil
}

func (p *pastScreen) move(by int) { p.at = max(0, min(p.at+by, p.len()-1)) }

// len is how many rows there are.
func (p *pastScreen) len() int {
	if p.byClimber {
		return len(p.who)
	}
	return len(p.found)
}

// pastChosen opens the marked one, or holds it against the one before.
func (m *Model) pastChosen() tea.Cmd {
	p := &m.past
	switch {
	case p.at >= p.len():
		return nil
	case p.byClimber:
		w := p.who[p.at]
		return m.readHistory(m.turnTo(page{title: nameOr(w.Climber, "no name") + ", all sessions"}), w.climber)
	}
	e, with := p.found[p.at], p.with
	switch {
	case e.Good != nil:
		m.showDamaged(&damaged{e.Path, e.Good, toPast})
		return nil
	case e.Err != nil:
		m.turnTo(page{title: clean(filepath.Base(e.Path)), write: func(l pages.Look) []string { return pages.BadFile(e, l) }})
		return nil
	case with != nil:
		p.with = nil
		p.find()
		if e.Day().Before(with.Day()) { // from the earlier to the later one
			e, with = with, e
		}
		return m.readPair(m.turnTo(page{title: "Two sessions side by side"}), with, e)
	}
	return m.readSession(m.turnTo(page{title: nameOr(e.Climber, "no name"), entry: e}), e)
}

// climberOf is the climber of e in the list; nil where e names none.
func (p *pastScreen) climberOf(e *records.Entry) *records.Climber {
	for _, w := range p.people {
		if slices.Contains(w.climber.Sessions, e) {
			return w.climber
		}
	}
	return nil
}
