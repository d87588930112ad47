package tui

import (
	"strconv"
	"strings"

	"example.com/hangtape/fit"
	"example.com/hangtape/tui/flow"
)

// walk asks until the wizard is left or the input ends.
func (p *plain) walk() {
	var asked flow.Place
	edit := -1 // of the question that was said last; -1: it is to be said again
	p.tellChanges()
	for !p.flow.Left {
		switch s := &p.flow; {
		case s.At == asked && s.Edit == edit:
		case s.At == asked && s.Edit == edit+1 && edit >= 0 && s.Said.Kind == flow.Taken:
			p.say("Take it again, or an empty line to go on.")
		default:
			p.ask()
		}
		asked, edit = p.flow.At, p.flow.Edit
		line, ok := p.read()
		if !ok {
			p.say("End of the input. %s", p.left())
			return
		}
		if p.answer(line) {
			edit = -1
		}
	}
	p.say("%s", p.left())
}

// left says what became of the answers.
func (p *plain) left() string {
	switch {
	case p.flow.ReadOnly != "":
		return "Left; nothing was changed."
	case p.unsaved != nil:
		return "Left; the last answers are not saved."
	}
	return "Left; all is saved."
}

// ask says the question that is asked now.
func (p *plain) ask() {
	s, a := &p.flow, p.flow.Ask()
	if step := s.At.Step + 1; step != p.step {
		p.step = step
		n, of := s.Progress()
		demo := ""
		if s.Demo {
			demo = "DEMO. "
		}
		p.say("%sStep %d of %d: %s.", demo, n, of, s.Step().Title)
		if s.Step().Pose != fit.NoPose {
			p.sideView()
		}
	}
	switch {
	case a.Key == "review":
		p.review()
	case s.Unadvised():
		p.do(flow.Advised{Answer: s.Advise()})
		fallthrough
	case a.Key == flow.AdviceKey:
		p.sayAdvice()
	}
	p.say("%s", a.Title)
	for _, l := range proseOf(s, a) {
		p.say("%s", l)
	}
	if s.Hanging() {
		d := max(0, p.opts.Now().Sub(s.HangingSince()))
		p.say("Hanging for %s.", clockText(d))
		if d >= p.opts.breakAfter() {
			p.say("Time for a break: type down.")
		}
	}
	for _, l := range besideOf(s, a) {
		p.say("%s", l)
	}
	for i, o := range s.Options() {
		mark := ""
		if i == s.Marked() {
			mark = " (an empty line takes this)"
		}
		p.say("%d: %s%s", i+1, o.Word, mark)
	}
	if a.Kind != flow.Choice && s.Edit < a.Told(&s.Draft) {
		p.say("Correcting value %d: type the right one, drop to take it out, an empty line to leave it.", s.Edit+1)
	}
}

// answer takes one line; true asks for the question to be said again.
func (p *plain) answer(line string) bool {
	s, a := &p.flow, p.flow.Ask()
	word, rest, _ := strings.Cut(line, " ")
	now := p.opts.Now()
	literal, isLiteral := strings.CutPrefix(line, "=")
	told, again := p.tell(line)
	switch {
	case again:
		return true
	case told:
	case isLiteral:
		p.do(flow.Typed{Text: literal})
		p.do(flow.Enter{Now: now})
	case line == "back":
		p.do(flow.Back{})
	case line == "skip":
		p.do(flow.Skip{})
	case line == "next":
		p.do(flow.SkipStep{})
	case line == "older":
		p.do(flow.Older{})
	case line == "drop":
		if s.Edit < a.Told(&s.Draft) {
			p.do(flow.Typed{})
			p.do(flow.Enter{Now: now})
		}
	case line == "keep", line == "k" && a.Keepable():
		p.do(flow.Keep{})
	case word == "student" && rest != "":
		return p.student(rest)
	case line == "settle":
		p.do(flow.ToWanted{})
	case line == "down":
		p.do(flow.DownNow{Now: now})
	case line == "quit":
		p.flow.Left = true
	case word == "go" && rest != "":
		p.goTo(rest)
	case a.Kind == flow.Choice:
		p.choose(line)
	case line == "" && s.Said.Kind == flow.Doubted:
		p.do(flow.Enter{Now: now})
	case line == "" && s.Edit < a.Told(&s.Draft):
		p.do(flow.Newer{})
	default:
		p.do(flow.Typed{Text: line})
		p.do(flow.Enter{Now: now})
	}
	if p.flow.Said.Kind == flow.Refused {
		p.do(flow.Typed{}) // it stands in the scrollback
	}
	return false
}

// choose takes the number of an option, its first word, or nothing for the
// marked one.
func (p *plain) choose(line string) {
	now, options := p.opts.Now(), p.flow.Options()
	if line == "" {
		if !p.flow.WentOn() {
			p.chosen(options, p.flow.Marked())
		}
		p.do(flow.Enter{Now: now})
		return
	}
	n, err := strconv.Atoi(line)
	for i, o := range options {
		if err != nil && strings.EqualFold(line, o.Word) {
			n, err = i+1, nil
		}
	}
	if err != nil {
		n = 0
	}
	p.chosen(options, n-1)
	p.do(flow.Pick{Option: n - 1, Now: now})
}

// chosen says which option an answer was taken for.
func (p *plain) chosen(options []flow.Option, i int) {
	if i >= 0 && i < len(options) {
		p.say("Chosen: %s.", options[i].Word)
	}
}
