package number

import (
	"fmt"
	"strings"
)

// A Choice is one meaning of a text. Typing Text gives that meaning alone.
type Choice struct {
	Text   string
	Answer Answer
}

// Ambiguous is a text with more than one meaning, or with one that nobody
// should assume unasked. It has at least one choice.
type Ambiguous struct {
	Name, Typed string
	Why         string
	Choices     []Choice
}

func (e *Ambiguous) Error() string {
	return fmt.Sprintf(sayAmbiguous, e.Name, e.Typed, e.Why, list(e.Choices))
}

// Unlikely is a text with one meaning that lies outside the usual range. Whoever
// typed it may insist: then Answer counts.
type Unlikely struct {
	Name, Typed string
	Answer      Answer
	Usual       string   // the usual range in words
	Likely      []Choice // other units in which the same number would be usual
}

func (e *Unlikely) Error() string {
	s := fmt.Sprintf(sayUnlikely, e.Name, e.Answer.Understood, e.Usual)
	if len(e.Likely) > 0 {
		s += fmt.Sprintf(sayPerhaps, list(e.Likely))
	}
	return s
}

// Refused is a text that gives no answer to the field.
type Refused struct {
	Name, Typed string
	Why         string // names the part that is off
	WrongKind   bool   // a number with a unit of another kind of quantity
	Accepted    string // in words
	Example     string
	Likely      []Choice // what may have been meant
}

func (e *Refused) Error() string {
	s := fmt.Sprintf(sayRefused, e.Name, e.Typed, e.Why)
	if len(e.Likely) > 0 {
		s += fmt.Sprintf(sayPerhaps, list(e.Likely))
	}
	return s + fmt.Sprintf(sayAccepted, e.Accepted, e.Example)
}

func list(cs []Choice) string {
	texts := make([]string, len(cs))
	for i, c := range cs {
		texts[i] = c.Text
		if !strings.HasPrefix(c.Answer.Understood, c.Text) {
			texts[i] += " (" + c.Answer.Understood + ")"
		}
	}
	return strings.Join(texts, sayOr)
}
