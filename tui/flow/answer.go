package flow

import (
	"fmt"
	"strings"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/number"
)

// An answer is what a text was understood as.
type answer struct {
	number float64
	text   string
	day    time.Time
	echo   string // said back
}

func blank(s string) bool { return strings.TrimSpace(s) == "" }

// Says is the question with an answer behind it.
func (a Ask) Says(answer string) string {
	if strings.HasSuffix(a.Title, "?") {
		return a.Title + " " + answer
	}
	return a.Title + ": " + answer
}

// ToldAs is the question with the answers that it has; of a Choice, the one that
// stands.
func (a Ask) ToldAs(d *Draft, unit sessions.Unit) string {
	values := a.Values(d, unit)
	if a.Kind == Choice && a.cell != nil {
		values = []string{a.Options(d)[a.Mark(d)].Word}
	}
	if len(values) == 0 {
		return a.Title
	}
	return a.Says(strings.Join(values, ", "))
}

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
	v, err := number.Parse(text, a.field(unit))
	if err != nil {
		return answer{}, err
	}
	return answer{number: v.Value.V, echo: strings.Join(append([]string{v.Understood}, v.Notes...), "; ")}, nil
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
		return a.Show((*c)[i], unit)
	case *fit.Number:
		return a.Show(c.V, unit)
	case *float64:
		return a.Show(*c, unit)
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
	out := make([]string, a.Told(d))
	for i := range out {
		out[i] = a.Exact(d, i, unit)
	}
	return out
}

// Words is what is asked for and why. Each may be empty.
func (a Ask) Words() (what, why string) {
	topic, ok := rules.Explain(a.Topic)
	switch {
	case a.Kind == Reading && ok:
		return a.How, topic.Why
	case a.How != "":
		return a.How, ""
	case ok && a.Topic == a.Key:
		return topic.What, ""
	}
	return "", ""
}

// field is what a number has to fit.
func (a Ask) field(unit sessions.Unit) number.Field {
	return number.Field{Name: a.Title, Kind: a.Quantity, Unit: unit, Accepted: a.Accepted}
}

// Accepts says what may be typed; empty for words.
func (a Ask) Accepts(unit sessions.Unit) string {
	switch a.Kind {
	case Reading, Amount:
		return a.field(unit).AcceptedWords()
	case Day:
		return "a date as 2026-04-18, or 0 for today"
	case Text, Choice:
	}
	return ""
}

// Show is a value of a number as it is read out, with its unit; it reads back
// as the same value.
func (a Ask) Show(v float64, unit sessions.Unit) string { return number.Text(v, a.field(unit)) }
