package number

import (
	"errors"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

type tokenKind int

const (
	digits   tokenKind = iota // digits with points and commas, as typed
	fraction                  // one sign, like 1/2 in a single rune
	slash
	minus
	plus
	word // a unit, it is hoped
)

type token struct {
	kind   tokenKind
	text   string // in ASCII
	spaced bool   // a space stands before it
	hyphen bool   // a minus that is a plain hyphen, which may join
}

// longest is the most that one value can need, in runes.
const longest = 60

// lex splits a text into tokens. Its errors are the reason alone.
func lex(text string) ([]token, error) {
	switch {
	case !utf8.ValidString(text):
		return nil, errors.New(whyText)
	case strings.ContainsAny(text, "\n\r\v\f\u0085\u2028\u2029"):
		return nil, errors.New(whyOneLine)
	case utf8.RuneCountInString(text) > longest:
		return nil, errors.New(whyLong)
	}
	var toks []token
	spaced := false
	rs := []rune(text)
	for i := 0; i < len(rs); {
		r := rs[i]
		if r == '\t' || unicode.Is(unicode.Zs, r) {
			spaced = true
			i++
			continue
		}
		t, n, err := next(rs[i:])
		if err != nil {
			return nil, err
		}
		t.spaced = spaced
		spaced = false
		toks = append(toks, t)
		i += n
	}
	return toks, nil
}

// next is the token at the start of rs and how many runes it takes.
func next(rs []rune) (token, int, error) {
	r := rs[0]
	if f, ok := fractionSigns[r]; ok {
		return token{kind: fraction, text: f}, 1, nil
	}
	switch {
	case isDigit(r) || isSeparator(r):
		n := run(rs, func(r rune) bool { return isDigit(r) || isSeparator(r) })
		return token{kind: digits, text: string(rs[:n])}, n, nil
	case unicode.IsNumber(r):
		return token{}, 0, errors.New(whyDigits)
	case unicode.IsLetter(r):
		n := run(rs, unicode.IsLetter)
		return token{kind: word, text: strings.ToLower(string(rs[:n]))}, n, nil
	case unicode.IsControl(r):
		return token{}, 0, errors.New(whyControl)
	case strings.ContainsRune("'\u2019\u2018\u2032\u02b9\u00b4`", r):
		if len(rs) > 1 && rs[1] == r {
			return token{kind: word, text: `"`}, 2, nil
		}
		return token{kind: word, text: "'"}, 1, nil
	case strings.ContainsRune("\"\u201d\u201c\u2033\u02ba", r):
		return token{kind: word, text: `"`}, 1, nil
	case r == '%' || r == '\u00b0':
		return token{kind: word, text: string(r)}, 1, nil
	case r == '/' || r == '\u2044' || r == '\u2215':
		return token{kind: slash, text: "/"}, 1, nil
	case r == '-' || r == '\u2010' || r == '\u2011':
		return token{kind: minus, text: "-", hyphen: true}, 1, nil
	case r == '\u2212' || r == '\u2013':
		return token{kind: minus, text: "-"}, 1, nil
	case r == '+':
		return token{kind: plus, text: "+"}, 1, nil
	}
	return token{}, 0, fmt.Errorf(whySign, string(r))
}

func run(rs []rune, in func(rune) bool) int {
	n := 1
	for n < len(rs) && in(rs[n]) {
		n++
	}
	return n
}

func isDigit(r rune) bool     { return '0' <= r && r <= '9' }
func isSeparator(r rune) bool { return r == '.' || r == ',' }

// fractionSigns are the fractions that are one character.
var fractionSigns = map[rune]string{
	'\u00bc': "1/4", '\u00bd': "1/2", '\u00be': "3/4",
	'\u2153': "1/3", '\u2154': "2/3", '\u2155': "1/5", '\u2156': "2/5", '\u2157': "3/5", '\u2158': "4/5",
	'\u2159': "1/6", '\u215a': "5/6", '\u2150': "1/7", '\u215b': "1/8", '\u215c': "3/8", '\u215d': "5/8", '\u215e': "7/8",
	'\u2151': "1/9", '\u2152': "1/10",
}
