package records

import (
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/collate"
	"golang.org/x/text/language"
	"golang.org/x/text/unicode/norm"
)

// Fold is s as names are told to be the same: letter case, runs of blanks and how
// an accent was typed do not count.
func Fold(s string) string {
	s = strings.ToLower(strings.Join(strings.Fields(s), " "))
	if isASCII(s) {
		return s
	}
	return norm.NFC.String(s)
}

// Unaccented is s as it is searched: folded, and without accents. Letters that
// are no others with an accent, as ł, ø or ß, become what they are sorted as (CLDR
// root collation): l, o, ss.
func Unaccented(s string) string {
	s = Fold(s)
	if isASCII(s) {
		return s
	}
	var b strings.Builder
	for _, r := range norm.NFKD.String(s) {
		switch {
		case unicode.Is(unicode.Mn, r):
		case r < utf8.RuneSelf:
			b.WriteRune(r)
		default:
			if s, ok := latin()[r]; ok {
				b.WriteString(s)
			} else {
				b.WriteRune(r)
			}
		}
	}
	return strings.ToLower(b.String()) // a sign such as № is several letters now
}

func isASCII(s string) bool {
	return !strings.ContainsFunc(s, func(r rune) bool { return r >= utf8.RuneSelf })
}

// latin tells Latin letters beyond ASCII in letters from a to z that are sorted as
// they are; those that are others are not in it. It is made when the first one
// comes.
var latin = sync.OnceValue(func() map[rune]string {
	var key collate.Buffer
	c := collate.New(language.Und, collate.Loose)
	keyOf := func(s string) string {
		key.Reset()
		return string(c.KeyFromString(&key, s))
	}
	letters := map[string]byte{}
	for l := byte('a'); l <= 'z'; l++ {
		letters[keyOf(string(l))] = l
	}
	all := map[rune]string{}
	for _, part := range unicode.Latin.R16 {
		for r := max(utf8.RuneSelf, rune(part.Lo)); r <= rune(part.Hi); r += rune(part.Stride) {
			if s, ok := spelled(keyOf(string(r)), letters); ok {
				all[r] = s
			}
		}
	}
	return all
})

const keyBytes = 2 // in the key of a letter from a to z

// spelled is a key in the letters whose keys it is made of.
func spelled(key string, letters map[string]byte) (string, bool) {
	var s []byte
	for ; key != ""; key = key[keyBytes:] {
		l, ok := letters[key[:min(keyBytes, len(key))]]
		if !ok {
			return "", false
		}
		s = append(s, l)
	}
	return string(s), true
}
