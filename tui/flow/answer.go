package flow

import (
	"errors"
	"fmt"
	"strings"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/sessions"
)

// Quantity is what a number measures.
type Quantity int

// The quantities.
const (
	Height    Quantity = iota // a length off the hanging tape, its zero anywhere
	Laid                      // a length above 0
	Signed                    // a length that may be 0 or less
	Mass                      // kg
	MassDoubt                 // kg, 0 or more
	Force                     // kN
	Percent
	Count // a whole number
)

// An answer is what a text was understood as.
type answer struct {
	number float64
	text   string
	day    time.Time
	echo   string // said back
}

func blank(s string) bool { return strings.TrimSpace(s) == "" }

// Understood is what the text would be taken as, said back, or why it is refused.
func (a Ask) Understood(text string, unit sessions.Unit, now time.Time) (string, error) {
	v, err := a.parse(text, unit, now)
	return v.echo, err
}

func (a Ask) parse(text string, unit sessions.Unit, now time.Time) (answer, error) {
	switch a.Kind {
	case Text:
		t := strings.TrimSpace(text)
		return answer{text: t, echo: t}, nil
	case Day:
		return parseDay(strings.TrimSpace(text), now)
	case Reading, Amount, Choice:
	}
	v, err := parseNumber(text, a.Quantity, unit)
	if err != nil {
		return answer{}, err
	}
	if (a.Least != 0 || a.Most != 0) && (v < a.Least || v > a.Most) {
		return answer{}, fmt.Errorf("%s is out of range; %s to %s is accepted", a.Quantity.Show(v, unit), a.Quantity.Show(a.Least, unit), a.Quantity.Show(a.Most, unit))
	}
	return answer{number: v, echo: a.Quantity.Show(v, unit)}, nil
}

func parseDay(text string, now time.Time) (answer, error) {
	day := now.UTC().Truncate(24 * time.Hour)
	if text != "0" {
		var err error
		if day, err = time.Parse(time.DateOnly, text); err != nil {
			return answer{}, fmt.Errorf("%q is not a date; write it as 2026-04-18, or 0 for today", text)
		}
	}
	return answer{day: day, echo: day.Format(time.DateOnly)}, nil
}

// add notes a new answer: one more of a Reading, else in the place of the old one.
func (a Ask) add(d *Draft, v answer) {
	if list, ok := a.cell(d).(*[]float64); ok {
		*list = append(*list, v.number)
		return
	}
	a.replace(d, 0, v)
}

func (a Ask) replace(d *Draft, i int, v answer) {
	switch c := a.cell(d).(type) {
	case *[]float64:
		(*c)[i] = v.number
	case *fit.Number:
		*c = fit.Some(v.number)
	case *float64:
		*c = v.number
	case *string:
		*c = v.text
	case *time.Time:
		*c = v.day
	}
}

func (a Ask) remove(d *Draft, i int) {
	switch c := a.cell(d).(type) {
	case *[]float64:
		*c = append((*c)[:i:i], (*c)[i+1:]...)
	case *fit.Number:
		*c = fit.Number{}
	case *float64:
		*c = 0
	case *string:
		*c = ""
	case *time.Time:
		*c = time.Time{}
	}
}

// Exact is answer i as a text that reads back as the same answer.
func (a Ask) Exact(d *Draft, i int, unit sessions.Unit) string {
	switch c := a.cell(d).(type) {
	case *[]float64:
		return exact((*c)[i], a.Quantity, unit)
	case *fit.Number:
		return exact(c.V, a.Quantity, unit)
	case *float64:
		return exact(*c, a.Quantity, unit)
	case *string:
		return *c
	case *time.Time:
		return c.Format(time.DateOnly)
	}
	return ""
}

// Values are the answers so far, as they are shown.
func (a Ask) Values(d *Draft, unit sessions.Unit) []string {
	if a.cell == nil {
		return nil
	}
	var out []string
	switch c := a.cell(d).(type) {
	case *[]float64:
		for _, v := range *c {
			out = append(out, a.Quantity.Show(v, unit))
		}
	default:
		for i := range a.Told(d) {
			v, err := a.parse(a.Exact(d, i, unit), unit, time.Time{})
			if err != nil {
				v.echo = a.Exact(d, i, unit)
			}
			out = append(out, v.echo)
		}
	}
	return out
}

var errNotANumber = errors.New("not a number")
