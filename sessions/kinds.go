package sessions

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"github.com/oklog/ulid/v2"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules/nearest"
)

// What one value may hold at most.
const (
	mostEntries = 99   // of a list
	mostText    = 2000 // bytes
	mostLength  = 1e5  // mm; no tape is longer
)

// Ranges of numbers.
func between(least, most float64) KeyInfo { return KeyInfo{Least: least, Most: most} }
func above(least, most float64) KeyInfo   { return KeyInfo{Least: least, Most: most, Above: true} }

// number is a key of one number that may be unknown. Its unit ends the key.
func number[T any](key string, at func(*T, int) *fit.Number, about KeyInfo) field[T] {
	about.Kind, about.Unit = NumberKind, unitOf(key)
	return field[T]{key: key, about: about,
		take: func(t *T, i int, v any) []wrong {
			n, w := takeNumber(v, about)
			*at(t, i) = fit.Some(n)
			return w
		},
		put: func(t *T, i int) string {
			if n := at(t, i); n.Known {
				return decimal(n.V)
			}
			return ""
		}}
}

// count is a number that has to be whole.
func count[T any](key string, at func(*T, int) *fit.Number, least, most float64) field[T] {
	f := number(key, at, between(least, most))
	f.about.Kind = CountKind
	about := f.about
	f.take = func(t *T, i int, v any) []wrong {
		n, w := takeNumber(v, about)
		if len(w) == 0 && n != math.Trunc(n) {
			w = []wrong{{found: decimal(n)}}
		}
		*at(t, i) = fit.Some(n)
		return w
	}
	return f
}

// plainNumber is a number that is never unknown.
func plainNumber[T any](key string, at func(*T, int) *float64, about KeyInfo) field[T] {
	about.Kind, about.Unit = NumberKind, unitOf(key)
	return field[T]{key: key, about: about,
		take: func(t *T, i int, v any) (w []wrong) {
			*at(t, i), w = takeNumber(v, about)
			return w
		},
		put: func(t *T, i int) string { return decimal(*at(t, i)) }}
}

// whole is an int that is 0 where it is not told.
func whole[T any](key string, at func(*T, int) *int, least, most int) field[T] {
	about := between(float64(least), float64(most))
	about.Kind = CountKind
	return field[T]{key: key, about: about,
		take: func(t *T, i int, v any) []wrong {
			n, ok := v.(int64)
			if !ok || n < int64(least) || n > int64(most) {
				return []wrong{{found: inWords(v)}}
			}
			*at(t, i) = int(n)
			return nil
		},
		put: func(t *T, i int) string {
			if n := *at(t, i); n != 0 {
				return strconv.Itoa(n)
			}
			return ""
		}}
}

// numbers is a list with one entry for each time that something was read. A nil
// list has no key; an empty one is written as such.
func numbers[T any](key string, at func(*T, int) *[]float64, about KeyInfo) field[T] {
	about.Kind, about.Unit = NumbersKind, unitOf(key)
	return field[T]{key: key, about: about,
		take: func(t *T, i int, v any) []wrong {
			list, ok := v.([]any)
			if !ok {
				w := wrong{found: inWords(v)}
				if _, bad := takeNumber(v, about); len(bad) == 0 {
					w.hint = fmt.Sprintf("did you mean [%s]?", show(v))
				}
				return []wrong{w}
			}
			if len(list) > mostEntries {
				return []wrong{{found: fmt.Sprintf("a list of %d", len(list))}}
			}
			values := make([]float64, len(list))
			var all []wrong
			for j, e := range list {
				var w []wrong
				values[j], w = takeNumber(e, about)
				for _, one := range w {
					one.found += ordinal(j, len(list))
					one.accepted = "a number " + about.Range()
					all = append(all, one)
				}
			}
			*at(t, i) = values
			return all
		},
		put: func(t *T, i int) string {
			if *at(t, i) == nil {
				return ""
			}
			return decimals(*at(t, i)...)
		}}
}

// pair is a list of exactly two numbers; check, if any, says what is wrong
// between them.
func pair[T any](key string, get func(*T, int) ([2]float64, bool), set func(*T, int, [2]float64), about KeyInfo, check func([2]float64) *wrong) field[T] {
	about.Kind = PairKind
	return field[T]{key: key, about: about,
		take: func(t *T, i int, v any) []wrong {
			list, ok := v.([]any)
			if !ok || len(list) != 2 {
				return []wrong{{found: inWords(v)}}
			}
			var two [2]float64
			var all []wrong
			for j, e := range list {
				var w []wrong
				two[j], w = takeNumber(e, about)
				for _, one := range w {
					one.found += ordinal(j, 2)
					one.accepted = "a number " + about.Range()
					all = append(all, one)
				}
			}
			if len(all) == 0 {
				if w := check(two); w != nil {
					return []wrong{*w}
				}
			}
			set(t, i, two)
			return all
		},
		put: func(t *T, i int) string {
			if two, told := get(t, i); told {
				return decimals(two[:]...)
			}
			return ""
		}}
}

// text is a text; the empty text is left out.
func text[T any](key string, at func(*T, int) *string) field[T] {
	about := KeyInfo{Kind: TextKind}
	return field[T]{key: key, about: about,
		take: func(t *T, i int, v any) []wrong {
			s, w := takeText(v)
			*at(t, i) = s
			return w
		},
		put: func(t *T, i int) string {
			if s := *at(t, i); s != "" {
				return quoted(s)
			}
			return ""
		}}
}

// texts is a list of texts.
func texts[T any](key string, at func(*T, int) *[]string) field[T] {
	return field[T]{key: key, about: KeyInfo{Kind: TextsKind},
		take: func(t *T, i int, v any) []wrong {
			list, ok := v.([]any)
			if !ok || len(list) > mostEntries {
				return []wrong{{found: inWords(v)}}
			}
			var all []wrong
			values := make([]string, len(list))
			for j, e := range list {
				var w []wrong
				values[j], w = takeText(e)
				all = append(all, w...)
			}
			*at(t, i) = values
			return all
		},
		put: func(t *T, i int) string {
			if *at(t, i) == nil {
				return ""
			}
			all := make([]string, len(*at(t, i)))
			for j, s := range *at(t, i) {
				all[j] = quoted(s)
			}
			return "[" + strings.Join(all, ", ") + "]"
		}}
}

// id is the id of a session.
func id[T any](key string, at func(*T, int) *string) field[T] {
	f := text(key, at)
	f.about.Kind = IDKind
	f.take = func(t *T, i int, v any) []wrong {
		s, ok := v.(string)
		if !ok || !ValidID(s) {
			return []wrong{{found: inWords(v)}}
		}
		*at(t, i) = s
		return nil
	}
	return f
}

// ValidID says whether id is a ULID in its canonical spelling. Nothing else may
// become part of a path.
func ValidID(id string) bool {
	u, err := ulid.ParseStrict(id)
	return err == nil && u.String() == id
}

// A named value is one of a few words.
type named[V comparable] struct {
	word  string
	value V
}

// same names values that are their own words.
func same[V ~string](values ...V) []named[V] {
	all := make([]named[V], len(values))
	for i, v := range values {
		all[i] = named[V]{string(v), v}
	}
	return all
}

// word is a key that takes one of a few words. A value that is none of them is
// left out.
func word[T any, V comparable](key string, at func(*T, int) *V, words []named[V]) field[T] {
	about := KeyInfo{Kind: WordKind}
	for _, w := range words {
		about.Words = append(about.Words, w.word)
	}
	return field[T]{key: key, about: about,
		take: func(t *T, i int, v any) []wrong {
			s, ok := v.(string)
			for _, w := range words {
				if ok && w.word == s {
					*at(t, i) = w.value
					return nil
				}
			}
			wr := wrong{found: inWords(v)}
			if n := nearest.Of(s, about.Words); n != "" && ok {
				wr.hint = fmt.Sprintf("did you mean %q?", n)
			}
			return []wrong{wr}
		},
		put: func(t *T, i int) string {
			for _, w := range words {
				if w.value == *at(t, i) {
					return quoted(w.word)
				}
			}
			return ""
		}}
}

// anyCase accepts the words of f, all capitals, in any letter case.
func anyCase[T any](f field[T]) field[T] {
	take := f.take
	f.take = func(t *T, i int, v any) []wrong {
		if s, ok := v.(string); ok && len(take(t, i, strings.ToUpper(s))) == 0 {
			return nil
		}
		return take(t, i, v)
	}
	return f
}

// choice is a yes or no that may be unsaid.
func choice[T any](key string, at func(*T, int) *fit.Choice) field[T] {
	return field[T]{key: key, about: KeyInfo{Kind: YesNoKind},
		take: func(t *T, i int, v any) []wrong {
			b, ok := v.(bool)
			if !ok {
				return []wrong{{found: inWords(v)}}
			}
			*at(t, i) = fit.No
			if b {
				*at(t, i) = fit.Yes
			}
			return nil
		},
		put: func(t *T, i int) string {
			switch *at(t, i) {
			case fit.Yes:
				return "true"
			case fit.No:
				return "false"
			}
			return ""
		}}
}

// yesNo is a yes or no that is never unsaid.
func yesNo[T any](key string, at func(*T, int) *bool) field[T] {
	return field[T]{key: key, about: KeyInfo{Kind: YesNoKind},
		take: func(t *T, i int, v any) []wrong {
			b, ok := v.(bool)
			if !ok {
				return []wrong{{found: inWords(v)}}
			}
			*at(t, i) = b
			return nil
		},
		put: func(t *T, i int) string { return strconv.FormatBool(*at(t, i)) }}
}

// moment is a time with its zone; it becomes UTC.
func moment[T any](key string, at func(*T, int) *time.Time) field[T] {
	return date(key, at, TimeKind, "", time.RFC3339Nano)
}

// day is a date without a time; it becomes its midnight in UTC.
func day[T any](key string, at func(*T, int) *time.Time) field[T] {
	return date(key, at, DayKind, localDate, time.DateOnly)
}

// localDate and the like name the zones that the TOML library gives times
// without a zone.
const localDate, localTime, localDateTime = "date-local", "time-local", "datetime-local"

func date[T any](key string, at func(*T, int) *time.Time, kind Kind, zone, layout string) field[T] {
	return field[T]{key: key, about: KeyInfo{Kind: kind},
		take: func(t *T, i int, v any) []wrong {
			when, ok := v.(time.Time)
			if !ok {
				return []wrong{{found: inWords(v)}}
			}
			is := when.Location().String()
			local := is == localDate || is == localTime || is == localDateTime
			if local != (zone != "") || local && is != zone {
				return []wrong{{found: inWords(v)}}
			}
			if local {
				when = time.Date(when.Year(), when.Month(), when.Day(), 0, 0, 0, 0, time.UTC)
			}
			when = when.UTC()
			if y := when.Year(); y < 1900 || y > 2199 {
				return []wrong{{found: show(v), accepted: "a year from 1900 to 2199"}}
			}
			*at(t, i) = when
			return nil
		},
		put: func(t *T, i int) string {
			if at(t, i).IsZero() {
				return ""
			}
			return at(t, i).UTC().Format(layout)
		}}
}
