package sessions

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/oklog/ulid/v2"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules/nearest"
)

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
