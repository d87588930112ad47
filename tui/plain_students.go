package tui

import (
	"fmt"
	"slices"
	"strconv"

	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/flow"
)

// students says who else is there, each with the number to go there by.
func (p *plain) students() {
	same := ", same tape, rope and kit"
	if p.flow.Demo { // its kit is invented
		same = ""
	}
	p.say("student 1: the next student%s.", same)
	for i := range p.seats {
		s := &p.seats[i].flow
		line := fmt.Sprintf("student %d: %s, open at: %s", i+2, nameOr(s.Session.Climber, "no name yet"), s.Ask().Title)
		if d, ok := hangingFor(s, p.opts.Now()); ok {
			line += fmt.Sprintf(". Hanging for %s", clockText(d))
		}
		p.say("%s.", line)
	}
	for i, e := range p.notOpen() {
		p.say("student %d: %s, begun %s.", i+2+len(p.seats), nameOr(e.Climber, "no name"), minuteOf(e.Started))
	}
	p.tellKit()
	p.say("Type student and a number. What is open stays open.")
}

// tellKit says which pieces of the kit other sessions have set otherwise since.
func (p *plain) tellKit() {
	for _, l := range p.flow.KitSince() {
		p.say("%s", l)
	}
}

// notOpen are the unfinished sessions of the folder that are not open here.
func (p *plain) notOpen() []found {
	msg := lookFor(forStudents, p.opts.Store)
	if msg.err != nil {
		p.say("%s", msg.err)
	}
	return slices.DeleteFunc(msg.list, func(f found) bool {
		return f.ID == p.flow.Session.ID ||
			slices.ContainsFunc(p.seats, func(s seat) bool { return s.flow.Session.ID == f.ID })
	})
}

// student goes to another student's session by the number that was said; false
// where it stays.
func (p *plain) student(number string) bool {
	n, err := strconv.Atoi(number)
	rest := p.notOpen()
	switch {
	case p.flow.Saves > p.saved && p.editor != nil:
		p.say("Not all is saved; nothing is left before it is.")
		return false
	case err == nil && n == 1:
		p.nextStudent()
	case err == nil && n >= 2 && n-2 < len(p.seats):
		to := p.seats[n-2]
		p.seats = slices.Delete(p.seats, n-2, n-1)
		p.setAside()
		p.flow, p.editor, p.saved = to.flow, to.editor, to.saves
		p.come(p.folder)
	case err == nil && n >= 2 && n-2-len(p.seats) < len(rest):
		opened := p.resume(rest[n-2-len(p.seats)].Path)
		if opened.session == nil && opened.err == nil {
			return false
		}
		p.open(opened)
	default:
		p.say("%q is none of them.", number)
		return false
	}
	return true
}

// nextStudent starts the session of the next student on this kit.
func (p *plain) nextStudent() {
	m := Model{opts: p.opts}
	if p.flow.Demo {
		p.open(m.startNew(nil)().(openedMsg))
		return
	}
	p.open(m.startNext(&p.flow.Session)().(openedMsg))
}

// setAside keeps the session in hand open beside the one to come.
func (p *plain) setAside() {
	switch {
	case p.editor == nil:
	case !p.flow.Session.Finished.IsZero() || p.flow.Demo || untouched(&p.flow):
		if err := p.editor.Close(); err != nil {
			p.say("%s", err)
		}
	default:
		p.seats = append(p.seats, seat{p.editor, p.flow, p.saved})
	}
	p.editor = nil
}

// come says where one is after going to another session.
func (p *plain) come(folder []*sessions.Session) {
	p.folder, p.step, p.verdicts = folder, 0, map[string]rules.Verdict{}
	kitOf(&p.flow, p.seats, folder)
	p.say("%s.", nameOr(p.flow.Session.Climber, "The next student, no name yet"))
	p.tellKit()
	p.tellChanges()
}

// elsewhere does what the flow leaves to be done outside this session.
func (p *plain) elsewhere() {
	switch p.flow.Next {
	case flow.Students:
		p.students()
	case flow.NextStudent:
		if p.unsaved == nil {
			p.nextStudent()
		}
	case flow.NoNext:
	}
}
