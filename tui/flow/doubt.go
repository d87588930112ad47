package flow

import (
	"regexp"
	"strings"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules/plausible"
	"example.com/hangtape/sessions"
)

// doubts asks about a reading that does not fit the others, or an amount that is
// odd, once: the same text entered again is taken as it is. Nothing is refused for
// it. Where a second Enter is what leads on, that one out of habit does not count.
func (s *State) doubts(a Ask, v answer, now time.Time) bool {
	stays := a.Kind == Reading && !s.Once(a)
	switch {
	case s.ReadOnly != "", s.doubted == s.question() && s.insisted:
		return false
	case s.doubted == s.question():
		s.insisted = true
		s.Said = Said{Kind: Doubted, Text: "That is still in question. Enter once more takes it as it is; typing another replaces it."}
		return true
	}
	words := ""
	switch {
	case a.Kind == Amount:
		words = s.odd(a, v)
	case a.Kind == Reading && a.Reading < fit.NumReadings:
		words = s.misfit(a, v, now)
	}
	if words == "" {
		return false
	}
	s.doubted, s.insisted = s.question(), !stays
	enter := "Enter"
	if stays {
		enter = "Enter twice"
	}
	s.Said = Said{Kind: Doubted, Text: words + " " + enter + " takes it as it is; typing another replaces it."}
	return true
}

// misfit is how a reading does not fit the others, and the likely slip; empty where
// it does.
func (s *State) misfit(a Ask, v answer, now time.Time) string {
	d := s.Draft.clone()
	if s.Edit < a.Told(&d) {
		a.remove(&d, s.Edit)
	}
	try := plausible.Try{Reading: a.Reading, Hang: s.Hang, Value: v.number, Unit: string(s.Session.Unit), Ways: a.ways(s.Text(), v.number, s.Session.Unit, now)}
	if a.Keepable() {
		try.Before = s.EarlierOf(a)
	}
	doubt, ok := plausible.Of(&d.Session.Fit, try)
	if !ok {
		return ""
	}
	return doubt.Words()
}

// question names what is in the field, for a doubt about it.
func (s *State) question() string { return s.field() + "\n" + strings.TrimSpace(s.Text()) }

// number and unit of a plain answer: "174.2 cm".
var plainNumber = regexp.MustCompile(`^([-+]?[0-9][0-9., ]*?)\s*([a-zA-Z]*)$`)

// ways is what else a text that was taken as v could have meant: with two digits
// swapped, or in another unit.
func (a Ask) ways(text string, v float64, unit sessions.Unit, now time.Time) []plausible.Way {
	var out []plausible.Way
	add := func(slip, text string) {
		if w, err := a.parse(text, unit, now); err == nil && w.number != v {
			out = append(out, plausible.Way{Slip: slip, Value: w.number})
		}
	}
	text = strings.TrimSpace(text)
	for i := 0; i+1 < len(text); i++ {
		if digit(text[i]) && digit(text[i+1]) && text[i] != text[i+1] {
			add("two digits swapped", text[:i]+text[i+1:i+2]+text[i:i+1]+text[i+2:])
		}
	}
	if m := plainNumber.FindStringSubmatch(text); m != nil {
		was := m[2]
		if was == "" {
			was = string(unit)
		}
		for _, u := range []string{"mm", "cm", "in"} {
			if u != was {
				add(m[1]+" "+u+" and not "+was, m[1]+" "+u)
			}
		}
	}
	return out
}

func digit(c byte) bool { return '0' <= c && c <= '9' }
