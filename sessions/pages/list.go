package pages

import (
	"fmt"
	"path/filepath"
	"strings"
	"time"

	"github.com/mattn/go-runewidth"

	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/records"
)

// wideList is the width from which a session of a list has one line.
const wideList = 80

// List is sessions in a line each, in two where the page is narrow, then the
// files that are none, with why, and the folders inside that are not looked into.
func List(entries []*records.Entry, aside []string, l Look) []string {
	p := newPage(l)
	good := len(entries)
	for good > 0 && entries[good-1].Err != nil {
		good--
	}
	p.listed(entries[:good])
	p.marks(entries[:good])
	p.bad(entries[good:])
	p.aside(aside)
	return p.lines
}

func (p *page) listed(entries []*records.Entry) {
	if len(entries) == 0 {
		return
	}
	p.row("date", "climber", "place", "today", "signed", "id")
	for _, e := range entries {
		today, signed := e.Outcome.Loud(), string(e.Signed)
		if e.Moved {
			today += "+" // the longest has 8 letters with it
		}
		switch {
		case e.Outcome == "":
			today = "CANNOT"
		case e.NoVerdict():
			today = e.Purpose.Word()
		}
		switch {
		case e.Differs:
			signed += " *"
		case e.Finished.IsZero() && signed == "":
			signed = "open"
		case signed == "":
			signed = "no"
		}
		id := shortID(e.ID)
		if e.Same != nil {
			id += " !"
		}
		p.row(dayOf(e.Day()), p.typed(e.Climber), p.typed(e.Place), today, signed, id)
	}
}

// row is one session: at its day who, where, how it comes out today, as what it
// was signed, and the start of its id.
func (p *page) row(day, climber, place, today, signed, id string) {
	if p.Width >= wideList {
		wide := (p.Width - wideList) / 2
		p.line(strings.Join([]string{pad(day, 10), fill(climber, 17+wide), fill(place, 15+wide), pad(today, 8), pad(signed, 8), id}, "  "))
		return
	}
	p.line(pad(day, 10) + "  " + fill(climber, p.Width-22) + "  " + today)
	p.line("  " + fill(place, p.Width-26) + "  " + pad(signed, 8) + "  " + id)
}

// marks explains what the list marks, and counts.
func (p *page) marks(entries []*records.Entry) {
	count := map[rules.Verdict]int{}
	differ, moved, twice, rechecks := 0, 0, 0, 0
	for _, e := range entries {
		if e.NoVerdict() {
			rechecks++
		} else {
			count[e.Outcome]++
		}
		if e.Differs {
			differ++
		}
		if e.Moved {
			moved++
		}
		if e.Same != nil {
			twice++
		}
	}
	var tally []string
	for _, v := range rules.Verdicts() {
		if n := count[v]; n > 0 {
			tally = append(tally, fmt.Sprintf("%d %s", n, v.Word()))
		}
	}
	if rechecks > 0 {
		tally = append(tally, rules.Count(rechecks, "re-check", "re-checks"))
	}
	total := rules.Count(len(entries), "session", "sessions")
	if len(tally) > 0 {
		total += ": " + strings.Join(tally, ", ")
	}
	if len(entries) > 0 {
		p.section(total)
	} else {
		p.para(0, "no session")
	}
	if n := count[""]; n > 0 {
		p.para(2, fmt.Sprintf("CANNOT: the readings of %d cannot be true together; hangtape check FILE says why", n))
	}
	if differ > 0 {
		p.para(2, fmt.Sprintf("*: %d judged differently today than signed; hangtape show ID says how", differ))
	}
	if moved > 0 {
		p.para(2, fmt.Sprintf("+: %d judged otherwise under the school's limits of today; hangtape history CLIMBER says how", moved))
	}
	if twice > 0 {
		p.para(2, fmt.Sprintf("!: %d share their id with another file of the folder; keep one of each:", twice))
		p.copies(entries)
	}
}

// mostCopies is how many ids are told with all of their files.
const mostCopies = 10

// copies names the files that are one session.
func (p *page) copies(entries []*records.Entry) {
	told := map[string]bool{}
	for _, e := range entries {
		if e.Same == nil || told[e.ID] {
			continue
		}
		if told[e.ID] = true; len(told) > mostCopies {
			p.para(4, "and more: list --json is:twice names them all")
			return
		}
		names := make([]string, len(e.Same))
		for i, same := range e.Same {
			names[i] = p.typed(filepath.Base(same.Path))
		}
		p.para(4, shortID(e.ID)+": "+strings.Join(names, "; "))
	}
}

// bad lists the files that are no sessions.
func (p *page) bad(entries []*records.Entry) {
	if len(entries) == 0 {
		return
	}
	p.section(rules.Count(len(entries), "file", "files") + " that cannot be read as a session")
	for _, e := range entries {
		p.item(p.typed(filepath.Base(e.Path)), p.typed(e.Trouble()))
		if e.Good != nil {
			p.para(4, p.typed(lastGood(e.Good)))
		}
	}
	p.line("")
	p.para(2, "all in "+p.typed(filepath.Dir(entries[0].Path)))
	p.para(2, mend)
}

// mend is what can be done about a file that is no session.
const mend = "A file like that stops nothing and is left as it is. Mend the line that is named, with any editor of plain text; " +
	"or put an older copy in its place; or move it out of the folder. A newer format takes a newer hangtape."

// BadFile is all that is wrong with a file that is no session, and what can be done.
func BadFile(e *records.Entry, l Look) []string {
	p := newPage(l)
	for line := range strings.Lines(e.Err.Error()) {
		p.para(0, p.typed(line))
	}
	p.line("")
	if e.Good != nil {
		p.para(0, p.typed(lastGood(e.Good)))
	}
	p.para(0, mend)
	return p.lines
}

// lastGood says that there is a last good copy, and where it is taken over.
func lastGood(g *sessions.LastGood) string {
	return "There is a last good copy, " + g.Says() + ": the wizard offers to take it over."
}

// aside tells the folders inside that may hold sessions.
func (p *page) aside(names []string) {
	for _, name := range names {
		p.section("Not looked into: the folder " + p.typed(name) + ", where files end in .toml too; list --dir tells them")
	}
}

// CordList is every piece of cord that somebody said when it was tied, the
// oldest first.
func CordList(cords []records.Cord, now time.Time, l Look) []string {
	p := newPage(l)
	p.cordRow("tied", "days", "piece", "kit, or whose")
	for _, c := range cords {
		kit := c.Kit
		if kit == "" {
			kit = c.Seen.Climber
		}
		p.cordRow(dayOf(c.Tied.On), fmt.Sprint(Days(c.Tied.On, now)), rules.PieceName(c.Piece), p.typed(kit))
	}
	p.section(rules.Count(len(cords), "piece", "pieces") + " of cord with a day on which it was tied, as the newest session of each kit tells it")
	return p.lines
}

func (p *page) cordRow(tied, days, piece, kit string) {
	row := strings.Join([]string{pad(tied, 10), fmt.Sprintf("%5s", days), pad(piece, 16)}, "  ")
	if p.Width < wideList {
		p.line(row)
		p.line("  " + fill(kit, p.Width-2))
		return
	}
	p.line(row + "  " + fill(kit, p.Width-37))
}

// shortID is the start of an id that tells the time to the millisecond: seldom
// do two sessions share it, and commands take it for the whole.
func shortID(id string) string { return id[:min(10, len(id))] }

// fill is s in exactly so many cells, cut where it is longer.
func fill(s string, cells int) string {
	switch w := width(s); {
	case w <= cells:
	case w == len(s): // a byte a cell: most names, and there are very many
		s = s[:cells-1] + "~"
	default:
		s = runewidth.Truncate(s, cells, "~")
	}
	return pad(s, cells)
}
