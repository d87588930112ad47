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
	return sentence(id, &c, unit)
}

// MarginWords is the end of a Sentence alone, for a table: "12 ± 5 mm to spare",
// "short by 12 ± 5 mm", "just met" where there is nothing to spare; "not known"
// where the check is unknown.
func MarginWords(c Check, unit string) string {
	id, ok := CheckNamed(c.Name)
	switch {
	case !ok:
		return ""
	case isUnknown(&c):
		return "not known"
	case c.Margin == 0:
		return "just met"
	}
	s := say(id, &c, unit)
	return string(s.margin(nil))
}

func isUnknown(c *Check) bool { return c.Verdict == Unknown || !c.Has.Known() || !c.Needs.Known() }

func sentence(id CheckID, c *Check, unit string) string {
	if isUnknown(c) {
		return "not known: " + WaitsFor(c.Missing)
	}
	s := say(id, c, unit)
	return string(s.tail(s.clauses(make([]byte, 0, 256))))
}

// say is a check that is known, about to be put into words.
func say(id CheckID, c *Check, unit string) said {
	if !IsLength(c.Unit) {
		unit = c.Unit
	}
	s := said{Check: c, scale: newScale(unit, float64(c.U)), phrase: id.endAt(c.At).says}
	if checkInfo[id].counts {
		s.scale.decimals = 0
	}
	margin, guard := float64(c.Margin), float64(c.Guard)
	blurred := func() bool {
		short := c.Verdict == Tight && margin < guard
		return margin != 0 && isZero(s.number(margin)) || short && s.number(margin) == s.number(guard)
	}
	for s.decimals < 3 && blurred() {
		s.decimals++ // short by 0.3 mm, not by 0; 8.1 mm to spare where 8.4 mm would make it sure
	}
	return s
}

// said is a check about to be put into words.
type said struct {
	*Check
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

// clauses adds to b what there is and what is needed.
func (s *said) clauses(b []byte) []byte {
	needs := s.phrase.needs
	switch {
	case s.Needs == 0 && s.zero != "":
		needs = s.zero
	case s.Needs < 0 && s.negative != "":
		needs = s.negative
	}
	b = append(s.fill(b, s.phrase.has), "; "...)
	return s.fill(b, needs)
}

// fill adds text with what belongs in its brackets.
func (s *said) fill(b []byte, text string) []byte {
	for {
		before, rest, found := strings.Cut(text, "{")
		b = append(b, before...)
		if !found {
			return b
		}
		slot, after, _ := strings.Cut(rest, "}")
		name, words, two := strings.Cut(slot, " ")
		switch name {
		case "at":
			b = append(b, sideWord(s.At)...)
		case "has":
			b = s.amount(b, float64(s.Has), words, two)
		case "needs":
			b = s.amount(b, float64(s.Needs), words, two)
		}
		text = after
	}
}

// sideWord is a side as it stands in a sentence: other ends are not named there.
func sideWord(at string) string {
	if at == "left" {
		return "left"
	}
	return "right"
}

// amount adds the absolute value of v and, where there are two words for it, the
// one that goes with its sign.
func (s *said) amount(b []byte, v float64, words string, two bool) []byte {
	b = s.appendWithUnit(b, math.Abs(v))
	if !two {
		return b
	}
	word, below, _ := strings.Cut(words, "|")
	if v < 0 {
		word = below
	}
	return append(append(b, ' '), word...)
}

// tail adds the margin and what the verdict makes of it, in brackets.
func (s *said) tail(b []byte) []byte {
	if s.Verdict == Pass && s.Margin == 0 {
		return b
	}
	b = s.margin(append(b, " ("...))
	switch {
	case s.Verdict != Tight:
	case s.Margin < s.Guard:
		b = append(s.appendWithUnit(append(b, "; "...), float64(s.Guard)), " would make it sure"...)
	case len(s.Missing) > 0:
		b = append(append(b, "; to be sure, "...), toDo(s.Missing)...)
	default:
		b = append(b, ", but it rests on an estimate"...)
	}
	return append(b, ')')
}

// margin adds the margin: "12 ± 5 mm to spare", "short by 12 ± 5 mm".
func (s *said) margin(b []byte) []byte {
	if s.Verdict == Fail {
		b = append(append(b, s.fails...), ' ')
	}
	margin := math.Abs(float64(s.Margin))
	if s.U > 0 {
		b = append(appendDecimal(b, margin/s.per, s.decimals), " ± "...)
		margin = float64(s.U)
	}
	b = s.appendWithUnit(b, margin)
	if s.Verdict != Fail {
		b = append(b, " to spare"...)
	}
	return b
}

// WaitsFor says what an unknown check waits for that is missing.
func WaitsFor(missing []string) string {
	if len(missing) == 0 {
		return "as read, leg, foot loop and rope do not reach each other, or only just (out-of-domain)"
	}
	return toDo(missing)
}

// ToDo is what to read or to tell, by its key: "read the thigh", "tell the climber's
// mass".
func ToDo(key string) string { return toDo([]string{key}) }

// toDo is what to read and to tell: "read the thigh and the shin; tell the
// climber's mass".
func toDo(keys []string) string {
	var read, tell []string
	for _, key := range keys {
		name := InputName(key)
		if key != "kit.backup_bridge.own_rings" { // whether it has
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
	for _, v := range Verdicts() {
		n := 0
		for _, c := range checks {
			if c.Verdict == v {
				n++
			}
		}
		if n > 0 {
			parts = append(parts, strconv.Itoa(n)+" "+v.Word())
		}
	}
	return strings.Join(parts, ", ")
}
