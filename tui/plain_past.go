package tui

import (
	"math"
	"path/filepath"
	"strconv"
	"strings"

	"example.com/hangtape/sessions/pages"
	"example.com/hangtape/sessions/records"
)

// mostTold is how many sessions are told at once line by line.
const mostTold = 20

// past finds, shows and compares past fittings line by line, until an empty line
// or back.
func (p *plain) past() {
	m := Model{opts: p.opts, now: p.opts.Now()}
	listed := listPast(0, p.opts.Store, m.now)().(listedMsg)
	if listed.err != nil {
		p.say("%s", listed.err)
		return
	}
	m.listed(listed)
	p.told(&m)
	for {
		p.say("Type words to find (climber, place, date, verdict, piece, kit), a number to show that one, compare NUMBER NUMBER, history NUMBER, due for who is due for a re-check, cords for cords by age, or back.")
		line, ok := p.read()
		words := strings.Fields(line)
		if !ok || len(words) == 0 || line == "back" {
			return
		}
		switch first, last := p.entry(&m, words[0]), p.entry(&m, words[len(words)-1]); {
		case len(words) == 1 && first != nil && first.Good != nil:
			if p.mend(&damaged{first.Path, first.Good, toPast}) {
				m.listed(listPast(0, p.opts.Store, m.now)().(listedMsg))
				p.told(&m)
			}
		case len(words) == 1 && first != nil && first.Err != nil:
			p.page(pageMsg{write: func(l pages.Look) []string { return pages.BadFile(first, l) }})
		case len(words) == 1 && first != nil:
			p.page(m.readSession(0, first)().(pageMsg))
		case line == "due":
			for _, w := range m.past.people {
				p.say("%s", strings.TrimSpace(personRow(w)))
			}
		case line == "cords":
			p.page(m.readCords(0)().(pageMsg))
		case words[0] == "history" && len(words) == 2 && last != nil:
			if c := m.past.climberOf(last); c != nil {
				p.page(m.readHistory(0, c)().(pageMsg))
			} else {
				p.say("That one names no climber.")
			}
		case words[0] == "compare" && len(words) == 3 && last != nil && p.entry(&m, words[1]) != nil:
			p.page(m.readPair(0, p.entry(&m, words[1]), last)().(pageMsg))
		case words[0] == "compare" || words[0] == "history":
			p.say("Not done: compare takes two numbers of the list, history one. To search for the word itself type it in quotes.")
		default:
			m.past.typed = line
			m.past.find()
			p.told(&m)
		}
	}
}

// entry is the one that was told under a number, or nil. A year or a day is no
// number of the list.
func (p *plain) entry(m *Model, word string) *records.Entry {
	n, err := strconv.Atoi(word)
	if err != nil || n < 1 || n > min(len(m.past.found), mostTold) {
		return nil
	}
	return m.past.found[n-1]
}

// told says what was found.
func (p *plain) told(m *Model) {
	s := &m.past
	if s.wrong != "" {
		p.say("Not searched: %s", s.wrong)
		return
	}
	for i, e := range s.found[:min(len(s.found), mostTold)] {
		if e.Err != nil {
			p.say("%d: bad file: %s, %s", i+1, clean(filepath.Base(e.Path)), clean(e.Trouble()))
			continue
		}
		p.say("%d: %s, %s, %s, %s, %s", i+1, strings.TrimSpace(pastDay(e)), verdictWord(e), nameOr(e.Climber, "no name"), nameOr(e.Place, "no place"), nameOr(e.Kit, "no kit"))
	}
	if more := len(s.found) - mostTold; more > 0 {
		p.say("And %d more.", more)
	}
	p.say("%s.", m.pastCount(math.MaxInt))
}

// spokenWidth is too narrow for columns: side by side does not read aloud.
const spokenWidth = 79

// page says a page, a line each.
func (p *plain) page(msg pageMsg) {
	if msg.err != nil {
		p.say("%s", msg.err)
		return
	}
	for _, l := range msg.write(pages.Look{Width: spokenWidth, Unit: string(msg.unit), ASCII: p.opts.ASCII, Clean: clean}) {
		p.say("%s", l)
	}
}
