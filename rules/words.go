package rules

import (
	"math"
	"strconv"
	"strings"
)

// Sentence is a verdict in words, from the check's numbers, with lengths in
// unit (mm, cm or in): "with the thigh level the Garda hitch's top comes 12 mm
// under the main connector; 25 mm is needed (short by 12 ± 10 mm)". The number
// after ± is one standard uncertainty.
func Sentence(c Check, unit string) string {
	id, ok := CheckNamed(c.Name)
	if !ok {
		return ""
	}
	if c.Verdict == Unknown || !c.Has.Known() || !c.Needs.Known() {
		return notKnown(c.Missing)
	}
	if !IsLength(c.Unit) {
		unit = c.Unit
	}
	s := said{Check: c, scale: newScale(unit, float64(c.U)), phrase: phraseFor(id, c.At)}
	if id == HitchWraps || id == TwoLoadPaths { // counts
		s.scale.decimals = 0
	}
	for s.Margin != 0 && s.decimals < 3 && s.number(float64(s.Margin)) == decimal(0, s.decimals) {
		s.decimals++ // short by 0.3 mm, not by 0
	}
	return s.clauses() + s.tail()
}

// said is a check about to be put into words.
type said struct {
	Check
	scale
	phrase
}

// A phrase is how the numbers of a check at one of its ends are told. In has
// and needs, "{has}" and "{needs}" stand for the absolute value with its unit,
// "{has above|under}" for that and the first word, or the second one where the
// value is below 0.
type phrase struct {
	has      string
	needs    string
	zero     string // in place of needs where what is needed is 0
	negative string // in place of needs where what is needed is below 0
	fails    string // before the amount: "short by", "too much by"
}

// clauses tells what there is and what is needed.
func (s said) clauses() string {
	needs := s.phrase.needs
	switch {
	case s.Needs == 0 && s.zero != "":
		needs = s.zero
	case s.Needs < 0 && s.negative != "":
		needs = s.negative
	}
	text := s.fill(s.phrase.has + "; " + needs)
	return strings.ReplaceAll(text, "{at}", s.At)
}

// fill puts the numbers in.
func (s said) fill(text string) string {
	for name, v := range map[string]float64{"has": float64(s.Has), "needs": float64(s.Needs)} {
		number := s.withUnit(math.Abs(v))
		text = strings.ReplaceAll(text, "{"+name+"}", number)
		for {
			before, rest, found := strings.Cut(text, "{"+name+" ")
			if !found {
				break
			}
			words, after, _ := strings.Cut(rest, "}")
			word, below, _ := strings.Cut(words, "|")
			if v < 0 {
				word = below
			}
			text = before + number + " " + word + after
		}
	}
	return text
}

// tail tells the margin and what the verdict makes of it, in brackets.
func (s said) tail() string {
	margin := s.withUnit(math.Abs(float64(s.Margin)))
	if s.U > 0 {
		margin = s.number(math.Abs(float64(s.Margin))) + " ± " + s.withUnit(float64(s.U))
	}
	switch {
	case s.Verdict == Fail:
		return " (" + s.fails + " " + margin + ")"
	case s.Verdict == Tight && s.Margin < s.Guard:
		return " (" + margin + " to spare; " + s.withUnit(float64(s.Guard)) + " would make it sure)"
	case s.Verdict == Tight && len(s.Missing) > 0:
		return " (" + margin + " to spare; to be sure, " + toDo(s.Missing) + ")"
	case s.Verdict == Tight:
		return " (" + margin + " to spare, but it rests on an estimate)"
	case s.Margin == 0:
		return ""
	}
	return " (" + margin + " to spare)"
}

// notKnown says what an unknown check waits for.
func notKnown(missing []string) string {
	if len(missing) == 0 {
		return "not known: as read, leg, foot loop and rope do not reach each other (out-of-domain)"
	}
	return "not known: " + toDo(missing)
}

// toDo is what to read and to tell: "read the thigh and the shin; tell the
// climber's mass".
func toDo(keys []string) string {
	var read, tell []string
	for _, key := range keys {
		name := InputName(key)
		if !strings.HasPrefix(name, "whether") {
			name = "the " + name
		}
		if isRead(key) {
			read = append(read, name)
		} else {
			tell = append(tell, name)
		}
	}
	var parts []string
	if len(read) > 0 {
		parts = append(parts, "read "+list(read))
	}
	if len(tell) > 0 {
		parts = append(parts, "tell "+list(tell))
	}
	return strings.Join(parts, "; ")
}

// Tally is how many checks came out which way, in words: "2 fail, 1 unknown, 3
// tight, 15 pass". Verdicts that no check has are left out.
func Tally(checks []Check) string {
	var parts []string
	for _, v := range []Verdict{Fail, Unknown, Tight, Pass} {
		n := 0
		for _, c := range checks {
			if c.Verdict == v {
				n++
			}
		}
		if n > 0 {
			parts = append(parts, strconv.Itoa(n)+" "+string(v))
		}
	}
	return strings.Join(parts, ", ")
}
