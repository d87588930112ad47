package records

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.com/hangtape/rules"
	"example.com/hangtape/rules/nearest"
	"example.com/hangtape/sessions"
)

// A Query is what a session has to match: all of its words. The zero Query
// matches every file.
type Query struct{ terms []term }

// A term is one word; without a key it may stand in any field.
type term struct {
	key, word string
	whole     string // the word with a blank around it
	begins    string // the word at the begin of a line
}

// Keys are what a word of a query may be narrowed to, as in kit:"school kit 2".
// Letter case and accents never count. Dates match from their start (2026-04), or as a
// range of two (2026-03..2026-05); verdicts and states match as whole words;
// all else matches anywhere in a name, but a word without a key only the start
// of a check or piece.
func Keys() []KeyInfo { return slices.Clone(keys) }

// KeyInfo is one key of a query.
type KeyInfo struct{ Name, Of string }

var keys = []KeyInfo{
	{"climber", "who climbs"},
	{"place", "where"},
	{"instructor", "who fits"},
	{"kit", "the label of the kit"},
	{"purpose", "first-fitting, re-tune, re-check or review"},
	{"date", "the day, month or year: 2026-04-18, 2026-04, 2026; or from..to"},
	{"verdict", "the outcome as judged today: pass, tight, fail, unknown"},
	{"check", "a check that fails, is tight or unknown"},
	{"piece", "a piece that a failing or tight check rests on: main-bridge, hitch-left, tether, …"},
	{"is", "finished, unfinished, signed, unsigned, differs (judged otherwise today than signed), moved (judged otherwise under the school's limits of today), twice (one id in several files), bad (no session)"},
}

// whole are the words of the keys that match whole words alone.
var whole = map[string][]string{
	"verdict": {"pass", "tight", "fail", "unknown"},
	"is":      {"finished", "unfinished", "signed", "unsigned", "differs", "moved", "twice", "bad"},
}

func checkNames() []string {
	var names []string
	for c := range rules.NumChecks {
		names = append(names, c.String())
	}
	return names
}

// ParseQuery reads words that are split by blanks; quotes hold a phrase
// together. The error names a key that there is not, or a word after it that finds
// nothing whatever a session says; the beginning of one may become one.
func ParseQuery(text string) (Query, error) {
	var q Query
	for text = strings.TrimSpace(text); text != ""; text = strings.TrimSpace(text) {
		var t term
		if i := strings.IndexAny(text, ": \t\""); i > 0 && text[i] == ':' && isLetters(text[:i]) {
			t.key, text = strings.ToLower(text[:i]), text[i+1:]
			if err := checkKey(t.key); err != nil {
				return Query{}, err
			}
		}
		t.word, text = cutWord(text)
		if t.word = Unaccented(t.word); t.word != "" {
			if err := checkWord(t.key, t.word); err != nil {
				return Query{}, err
			}
			t.whole, t.begins = " "+t.word+" ", "\n"+t.word
			q.terms = append(q.terms, t)
		}
	}
	return q, nil
}

// cutWord takes the first word or quoted phrase off text. A quote that is not
// closed yet goes to the end.
func cutWord(text string) (word, rest string) {
	if strings.HasPrefix(text, `"`) {
		word, rest, _ = strings.Cut(text[1:], `"`)
		return word, rest
	}
	if i := strings.IndexAny(text, " \t"); i >= 0 {
		return text[:i], text[i:]
	}
	return text, ""
}

func isLetters(s string) bool {
	return !strings.ContainsFunc(s, func(r rune) bool { return (r < 'a' || r > 'z') && (r < 'A' || r > 'Z') })
}

// checkWord is the error of a word that no session can have under key.
func checkWord(key, word string) error {
	fits, accepted := strings.Contains, []string(nil)
	switch key {
	case "verdict", "is":
		fits, accepted = strings.HasPrefix, whole[key]
	case "purpose":
		for _, p := range sessions.Purposes() {
			accepted = append(accepted, string(p))
		}
	case "check":
		accepted = checkNames()
	case "piece":
		accepted = pieceNames()
	case "date":
		return checkDate(word)
	default:
		return nil
	}
	if slices.ContainsFunc(accepted, func(w string) bool { return fits(w, word) }) {
		return nil
	}
	err := fmt.Errorf("%s:%s finds nothing; accepted are %s", key, word, strings.Join(accepted, ", "))
	if n := nearest.Of(word, accepted); n != "" {
		err = fmt.Errorf("%w (did you mean %s:%s?)", err, key, n)
	}
	return err
}

// checkDate is the error of a date that no day begins with. A range that is being
// typed has one dot first.
func checkDate(word string) error {
	from, to, ranged := strings.Cut(word, "..")
	if !ranged {
		from = strings.TrimSuffix(word, ".")
	}
	if beginsDay(from) && beginsDay(to) {
		return nil
	}
	return fmt.Errorf("date:%s finds nothing; accepted is a day, month or year, as 2026-04-18, 2026-04 or 2026, or a range from..to of them", word)
}

// beginsDay says whether some day, as 2026-04-18, begins with word.
func beginsDay(word string) bool {
	for _, rest := range []string{"2000-01-01", "2000-10-10"} {
		if len(word) > len(rest) {
			return false
		}
		if _, err := time.Parse(time.DateOnly, word+rest[len(word):]); err == nil {
			return true
		}
	}
	return false
}

func checkKey(key string) error {
	names := make([]string, len(keys))
	for i, k := range keys {
		if names[i] = k.Name; k.Name == key {
			return nil
		}
	}
	err := fmt.Errorf("%s: is no key to search by; accepted are %s", key, strings.Join(names, ", "))
	if n := nearest.Of(key, names); n != "" {
		err = fmt.Errorf("%w (did you mean %s:?)", err, n)
	}
	return err
}
