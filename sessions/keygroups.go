package sessions

import (
	"fmt"
	"math"
	"regexp"
	"slices"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

var entryNumber = regexp.MustCompile(`\.[0-9]+\.`)

// The ranges of lengths.
var (
	length  = above(0, mostLength)
	height  = between(-mostLength, mostLength)
	stature = KeyInfo{Least: 500, Most: 2500, usual: [2]float64{1200, 2200}}
)

var verdicts = same(rules.Fail, rules.Unknown, rules.Tight, rules.Pass)

// rangeOf says between which values a reading lies: a height counts from a zero
// that may be anywhere, and the rope may hang behind the hip.
func rangeOf(r fit.Reading) KeyInfo {
	switch {
	case r.IsHeight() || r == fit.Ahead:
		return height
	case r == fit.Stature:
		return stature
	}
	return length
}

// laid is the keys of laid lengths.
func laid(readings ...fit.Reading) []sessionField {
	var fields []sessionField
	for _, r := range readings {
		fields = append(fields, numbers(r.Info().Key, func(s *Session, _ int) *[]float64 { return &s.Fit.Laid[r] }, rangeOf(r)))
	}
	return fields
}

// otherLaid is the keys of the laid lengths of a table, but for those that have
// their place already.
func otherLaid(table string, placed ...fit.Reading) []sessionField {
	var others []fit.Reading
	for r := range fit.NumReadings {
		if r.Info().Table == table && !slices.Contains(placed, r) {
			others = append(others, r)
		}
	}
	return laid(others...)
}

// heights is the keys of a hang's readings.
func heights() []sessionField {
	var fields []sessionField
	for r := range fit.NumReadings {
		if r.IsHeight() {
			fields = append(fields, numbers(r.Info().Key, func(s *Session, i int) *[]float64 { return &s.Fit.Hangs[i].Heights[r] }, rangeOf(r)))
		}
	}
	return fields
}

// format is the key that says how to read the others.
func format[T any]() field[T] {
	return must(field[T]{key: "format", about: KeyInfo{Kind: CountKind, Least: Format, Most: Format},
		take: func(_ *T, _ int, v any) []wrong {
			n, ok := v.(int64)
			switch {
			case ok && n == Format:
				return nil
			case ok && n > Format:
				return []wrong{{found: show(v), accepted: fmt.Sprintf("%d", Format), hint: "written by a newer hangtape; this one reads format 1"}}
			}
			return []wrong{{found: inWords(v), accepted: fmt.Sprintf("the whole number %d", Format)}}
		},
		put: func(*T, int) string { return fmt.Sprint(Format) }})
}

// tapeFields is the tape measure; a session has to say which.
func tapeFields[T any](at func(*T) *fit.Tape, needed bool) []field[T] {
	class := anyCase(word("class", func(t *T, _ int) *fit.TapeClass { return &at(t).Class },
		[]named[fit.TapeClass]{{"I", fit.ClassI}, {"II", fit.ClassII}, {"III", fit.ClassIII}}))
	division := plainNumber("division_mm", func(t *T, _ int) *float64 { return &at(t).Division }, between(0.5, 10))
	class.needed, division.needed = needed, needed
	return []field[T]{class, division, yesNo("hook", func(t *T, _ int) *bool { return &at(t).Hook })}
}

// limitFields is one key for every limit, by its name.
func limitFields[T any](at func(*T) *map[rules.Limit]float64) []field[T] {
	var fields []field[T]
	for l := range rules.NumLimits {
		info := l.Info()
		about := KeyInfo{Kind: NumberKind, Unit: info.Unit, Least: info.Bounds[0], Most: info.Bounds[1]}
		fields = append(fields, field[T]{key: info.Name, about: about,
			take: func(t *T, _ int, v any) []wrong {
				n, w := takeNumber(v, about)
				if *at(t) == nil {
					*at(t) = map[rules.Limit]float64{}
				}
				(*at(t))[l] = n
				return w
			},
			put: func(t *T, _ int) string {
				if n, moved := (*at(t))[l]; moved {
					return decimal(n)
				}
				return ""
			}})
	}
	return fields
}

// postureFields is one key for every posture: its value and standard
// uncertainty.
func postureFields() []sessionField {
	var fields []sessionField
	for p := range fit.NumPostures {
		info := p.Info()
		about := between(-2000, 2000)
		switch info.Unit {
		case "deg":
			about = between(-90, 90)
		case "":
			about = between(0, 1.5)
		}
		about.Unit = info.Unit
		fields = append(fields, pair(info.Key,
			func(s *Session, _ int) ([2]float64, bool) {
				set := s.Fit.Posture[p]
				return [2]float64{set.V, set.U}, set.Given
			},
			func(s *Session, _ int, two [2]float64) {
				s.Fit.Posture[p] = fit.Setting{V: two[0], U: two[1], Given: true}
			},
			about,
			func(two [2]float64) *wrong {
				if two[1] < p.LeastU() {
					return &wrong{found: decimals(two[:]...), accepted: fmt.Sprintf("a standard uncertainty (the second number) of at least %s %s", decimal(p.LeastU()), info.Unit)}
				}
				return nil
			}))
	}
	return fields
}

func pieceWords() []named[fit.Piece] {
	var words []named[fit.Piece]
	for p := range fit.NumPieces {
		words = append(words, named[fit.Piece]{p.Key(), p})
	}
	return words
}

// KeptKeys are the keys of what may be taken over from an earlier session.
func KeptKeys() []string {
	var keys []string
	for r := range fit.NumReadings {
		keys = append(keys, join(r.Info().Table, r.Info().Key))
	}
	for p := range fit.NumPieces {
		keys = append(keys, "kit."+p.Key()+".cord_mm")
	}
	keys = append(keys, "kit.garda.inside_width_mm")
	return slices.DeleteFunc(keys, func(key string) bool { return !fit.CanKeep(key) })
}

// orEmpty also takes the empty text, for nothing.
func orEmpty[T any](f field[T]) field[T] {
	take := f.take
	f.take = func(t *T, i int, v any) []wrong {
		if v == "" {
			return nil
		}
		return take(t, i, v)
	}
	return f
}

// quantity is a number of a report, left out where it is unknown.
func quantity(key string, at func(*Session, int) *rules.Num) sessionField {
	about := KeyInfo{Kind: NumberKind, Least: -1e9, Most: 1e9}
	return sessionField{key: key, about: about,
		take: func(s *Session, i int, v any) []wrong {
			n, w := takeNumber(v, about)
			*at(s, i) = rules.Num(n)
			return w
		},
		put: func(s *Session, i int) string {
			if n := float64(*at(s, i)); !math.IsNaN(n) && !math.IsInf(n, 0) {
				return decimal(n)
			}
			return ""
		}}
}

func unknownChecks(n int) []SignedCheck {
	checks := make([]SignedCheck, n)
	for i := range checks {
		checks[i].Margin, checks[i].Guard = rules.Num(math.NaN()), rules.Num(math.NaN())
	}
	return checks
}

// drillOf is the session's drill, or an empty one to read from.
func drillOf(s *Session) *Drill {
	if s.Drill == nil {
		return &Drill{}
	}
	return s.Drill
}

// signOffOf is the session's sign-off, or an empty one to read from.
func signOffOf(s *Session) *SignOff {
	if s.SignOff == nil {
		return &SignOff{}
	}
	return s.SignOff
}
