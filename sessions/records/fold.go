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
		case unicode.Is(unicode.Latin, r) && r >= utf8.RuneSelf:
			b.WriteString(latin().spelled(r))
		default:
			b.WriteRune(r)
		}
	}
	return strings.ToLower(b.String()) // a sign such as № is several letters now
}

func isASCII(s string) bool {
	return !strings.ContainsFunc(s, func(r rune) bool { return r >= utf8.RuneSelf })
}

// latin is the alphabet, made when the first letter beyond ASCII comes.
var latin = sync.OnceValue(newAlphabet)

// An alphabet knows how letters are sorted.
type alphabet struct {
	*collate.Collator
	letters map[string]byte // a to z by their keys
}

const keyBytes = 2 // in the key of a letter from a to z

func newAlphabet() *alphabet {
	a := &alphabet{collate.New(language.Und, collate.Loose), map[string]byte{}}
	for l := byte('a'); l <= 'z'; l++ {
		a.letters[a.key(string(l))] = l
	}
	return a
}

func (a *alphabet) key(s string) string {
	var b collate.Buffer
	return string(a.KeyFromString(&b, s))
}

// spelled is r in letters from a to z that are sorted as it is, or else r.
func (a *alphabet) spelled(r rune) string {
	var letters []byte
	for key := a.key(string(r)); key != ""; key = key[keyBytes:] {
		l, ok := a.letters[key[:min(keyBytes, len(key))]]
		if !ok {
			return string(r)
		}
		letters = append(letters, l)
	}
	return string(letters)
}
