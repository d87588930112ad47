package tui

import (
	"strings"

	"example.com/hangtape/rules"
)

// plainWords are the words that may stand in place of an answer, one a line; one
// that is meant as an answer is typed after =.
var plainWords = []string{
	"Words in place of an answer; an answer that is one of them is typed after =:",
	"back: to the question before.",
	"skip: to the next question. next: to the next step.",
	"older: correct the value before. drop: take it out.",
	"keep: take over the earlier session's value.",
	"down: down now; the clock stops.",
	"view: the side view in words.",
	"verdicts: all that the rules say so far.",
	"settle: to the reading that may still change a verdict.",
	"steps: all steps. steps NUMBER: the questions of one. go NUMBER, or go NUMBER QUESTION: there.",
	"students: who else is there, and the next one. student NUMBER: to that one.",
	"? CHECK: what a check means, and what a longer piece does to its margin. ? WORD: what a word means.",
	"quit: leave, all saved.",
}

// tell does what a line asks for that wants to know something and answers nothing;
// told where it is one, again where so much was said that the question is to be
// said again.
func (p *plain) tell(line string) (told, again bool) {
	word, rest, _ := strings.Cut(line, " ")
	switch {
	case line == "?":
		p.help()
		return true, true
	case line == "verdicts":
		p.review()
		return true, true
	case word == "?":
		p.explain(rest)
	case line == "view":
		p.sideView()
	case line == "students":
		p.students()
	case line == "steps":
		for i, g := range p.flow.Asked() {
			p.say("%d: %s", i+1, g.Says())
		}
		p.say("go NUMBER goes there; steps NUMBER tells its questions.")
	case word == "steps" && rest != "":
		p.questions(rest)
	default:
		return false, false
	}
	return true, false
}

// help tells about the question, and the words that may stand in place of an
// answer.
func (p *plain) help() {
	a := p.flow.Ask()
	if topic, ok := rules.Explain(a.Topic); ok {
		p.sayTopic(topic)
	}
	for _, l := range append(p.flow.CordGoes(a), plainWords...) {
		p.say("%s", l)
	}
}

// sideView tells the drawing in words.
func (p *plain) sideView() {
	words := sideWords(&p.flow, sideOf(&p.flow, ""))
	if words == nil {
		p.say("There is no side view yet.")
	}
	for _, l := range words {
		p.say("%s", l)
	}
}
