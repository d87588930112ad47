package number

import (
	"errors"
	"fmt"
	"math"
	"math/big"
	"strings"

	"example.com/hangtape/fit"
	"example.com/hangtape/sessions"
)

// Parse reads what was typed into f. An empty text, or one of spaces alone, is
// an Answer that was not taken. Its errors are *Refused, *Ambiguous and
// *Unlikely; a text is read whole or not at all.
func Parse(text string, f Field) (Answer, error) {
	text = strings.TrimSpace(text)
	if text == "" {
		return Answer{}, nil
	}
	toks, err := lex(text)
	if err != nil {
		return Answer{}, f.refuse(text, measure{}, err)
	}
	if feet, plain, ok := quoted(toks); ok {
		return f.ask(text, whyQuote, plain, feet)
	}
	toks = joinQuoted(toks)
	r, err := f.read(toks, decimals)
	if other, err2 := f.read(toks, thousands); err2 == nil {
		if err == nil && other.value.Cmp(r.value) != 0 {
			return f.ask(text, whyThousands, other.retype(), r.retype())
		}
		r, err = other, nil
	}
	switch {
	case r.value != nil && r.bare && r.last.fraction && r.unit.dim == length && r.unit.name != "in":
		inches := r.sign() + r.last.text + " in"
		if f.Unit == sessions.Inch { // nobody else has a tape with fractions
			return Parse(inches, f)
		}
		return f.ask(text, whyBareFrac, inches)
	case err != nil:
		return Answer{}, f.refuse(text, r, err)
	case r.unit.name == "ft" && r.parts == 1 && mayBeInches(r.last.decimals):
		return f.ask(text, whyFeet, r.inFeet()...)
	}
	a := f.answer(r)
	if !f.Usual.holds(a.Value.V) {
		return Answer{}, &Unlikely{f.Name, text, a, f.inWords(f.Usual), f.likely(r)}
	}
	return a, nil
}

// ask turns a text with several meanings into a question. Meanings that the
// field does not accept are left out; a text without a unit gets the field's.
func (f Field) ask(typed, why string, meanings ...string) (Answer, error) {
	var choices []Choice
	var refused error
	for _, m := range meanings {
		c, err := f.choice(m)
		if err != nil {
			refused = err
			continue
		}
		choices = append(choices, c)
	}
	if len(choices) == 0 {
		var r *Refused
		errors.As(refused, &r)
		return Answer{}, &Refused{f.Name, typed, r.Why, r.WrongKind, r.Accepted, r.Example, nil}
	}
	return Answer{}, &Ambiguous{f.Name, typed, why, choices}
}

// choice is the meaning of a text that has only one.
func (f Field) choice(text string) (Choice, error) {
	f.Usual = Range{}
	if u := f.bareUnit().name; u != "" && strings.Trim(text, "-0123456789./ ") == "" {
		text += " " + u
	}
	a, err := Parse(text, f)
	return Choice{text, a}, err
}

// refuse says why a text gives no answer. A measure that was understood and is
// out of range also gets the units that would fit.
func (f Field) refuse(typed string, r measure, err error) error {
	e := &Refused{Name: f.Name, Typed: typed, Why: err.Error(), Accepted: f.AcceptedWords(), Example: f.Example()}
	var k wrongKind
	e.WrongKind = errors.As(err, &k)
	if r.value != nil {
		e.Likely = f.likely(r)
	}
	return e
}

// likely lists the units in which a number typed without one would fit.
func (f Field) likely(r measure) []Choice {
	if !r.bare || r.parts > 1 || r.value.Sign() == 0 || !f.Usual.given() && !f.Accepted.given() {
		return nil
	}
	var texts []string
	for _, name := range unitOrder {
		if units[name].dim != r.unit.dim || name == r.unit.name {
			continue
		}
		if name == "ft" && mayBeInches(r.last.decimals) {
			texts = append(texts, r.inFeet()...)
			continue
		}
		texts = append(texts, r.sign()+r.last.text+" "+name)
	}
	var out []Choice
	for _, t := range texts {
		if c, err := f.choice(t); err == nil && f.Usual.holds(c.Answer.Value.V) {
			out = append(out, c)
		}
	}
	return out
}

const (
	farthest = 100_000   // mm; no rope in a tree is longer
	largest  = 1_000_000 // in the stored unit of every other kind
)

// admit says what is wrong with a value that was understood.
func (f Field) admit(r measure) error {
	info, words := kindInfo[f.Kind], kindWords[f.Kind]
	v, _ := rounded(r.value).Float64()
	switch {
	case r.signed && !info.signed:
		return fmt.Errorf(whyNegative, words.one)
	case v == 0 && !info.zero:
		return fmt.Errorf(whyZero, words.one)
	case f.Kind == Count && !r.value.IsInt():
		return fmt.Errorf(whyWhole, words.one)
	case info.dim == length && math.Abs(v) > farthest:
		return fmt.Errorf(whyFar, f.short(v))
	case math.Abs(v) > largest:
		return fmt.Errorf(whyLarge, r.retype())
	case !f.Accepted.holds(v) && v < f.Accepted.Least:
		return fmt.Errorf(whyBelow, f.short(v), f.short(f.Accepted.Least))
	case !f.Accepted.holds(v):
		return fmt.Errorf(whyAbove, f.short(v), f.short(f.Accepted.Most))
	}
	return nil
}

func (f Field) answer(r measure) Answer {
	v, _ := rounded(r.value).Float64()
	a := Answer{Value: fit.Some(v), Understood: f.understood(v, r.unit.name == "ft")}
	if r.unit.dim == length && r.last.fraction {
		if sixteenths := new(big.Rat).Mul(r.last.value, big.NewRat(16, 1)); !sixteenths.IsInt() {
			a.Notes = append(a.Notes, noteDivision)
		}
	}
	return a
}
