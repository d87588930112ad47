package sessions

import (
	"fmt"
	"math"
	"strconv"

	"example.com/hangtape/fit"
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
