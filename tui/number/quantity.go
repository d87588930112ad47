package number

import (
	"errors"
	"fmt"
	"math/big"
	"strconv"
	"strings"
)

// A style says what a single point or comma before exactly three digits is.
// Everything else about points and commas has one meaning.
type style int

const (
	decimals style = iota
	thousands
)

// A quantity is one number as it stands before its unit.
type quantity struct {
	value    *big.Rat
	typed    string // its digits as they were typed
	text     string // in plain ASCII, to be typed again before any unit
	decimals string // the digits after the decimal sign
	fraction bool
}

func (q quantity) whole() bool { return q.decimals == "" && !q.fraction }

// readQuantity reads the number at the start of toks: digits, groups of
// thousands set off by spaces, and a fraction. It returns how many tokens it took.
func readQuantity(toks []token, s style) (quantity, int, error) {
	if len(toks) == 0 {
		return quantity{}, 0, errors.New(whyNoNumber)
	}
	if f, n, err := readFraction(toks); n > 0 || err != nil {
		return f, n, err
	}
	if toks[0].kind != digits {
		return quantity{}, 0, fmt.Errorf(whyUnitFirst, toks[0].text)
	}
	text, n := joinGroups(toks)
	if n > 1 {
		s = decimals
	}
	q, err := readDigits(text, s)
	if err != nil {
		return quantity{}, 0, err
	}
	rest := toks[n:]
	joined := 0
	if len(rest) > 1 && rest[0].hyphen && !rest[0].spaced && !rest[1].spaced {
		joined = 1
	}
	f, m, err := readFraction(rest[joined:])
	switch {
	case err != nil:
		return quantity{}, 0, err
	case m == 0:
		return q, n, nil
	case !q.whole():
		return quantity{}, 0, fmt.Errorf(whyBeforeFrac, text)
	}
	f.value.Add(f.value, q.value)
	f.text = q.text + " " + f.text
	return f, n + joined + m, nil
}

// joinGroups joins thousands that are set off by spaces, "1 220,5". It returns
// the text of a number and how many tokens that took.
func joinGroups(toks []token) (string, int) {
	text, n := toks[0].text, 1
	if len(text) > 3 || !onlyDigits(text) || text[0] == '0' {
		return text, 1
	}
	for n < len(toks) && toks[n].kind == digits && toks[n].spaced {
		if n+1 < len(toks) && toks[n+1].kind == slash && !toks[n+1].spaced {
			break
		}
		whole, _, _ := strings.Cut(strings.ReplaceAll(toks[n].text, ",", "."), ".")
		if len(whole) != 3 {
			break
		}
		text += toks[n].text
		n++
		if len(toks[n-1].text) > 3 {
			break
		}
	}
	return text, n
}

// readFraction reads "1/2" or a fraction sign; it takes 0 tokens where there is none.
func readFraction(toks []token) (quantity, int, error) {
	text, n := "", 0
	switch {
	case len(toks) > 0 && toks[0].kind == slash:
		return quantity{}, 0, errors.New(whySlash)
	case len(toks) > 0 && toks[0].kind == fraction:
		text, n = toks[0].text, 1
	case len(toks) > 1 && toks[0].kind == digits && toks[1].kind == slash:
		if len(toks) < 3 || toks[2].kind != digits || toks[1].spaced || toks[2].spaced || !onlyDigits(toks[0].text+toks[2].text) {
			return quantity{}, 0, errors.New(whySlash)
		}
		text, n = toks[0].text+"/"+toks[2].text, 3
	default:
		return quantity{}, 0, nil
	}
	above, below, _ := strings.Cut(text, "/")
	num, err1 := strconv.ParseInt(above, 10, 32)
	den, err2 := strconv.ParseInt(below, 10, 32)
	switch {
	case err1 != nil || err2 != nil:
		return quantity{}, 0, fmt.Errorf(whyManyDigits, text)
	case den == 0:
		return quantity{}, 0, fmt.Errorf(whyFractionBy, text)
	case num >= den && len(above) > 1:
		if head, tail := above[:len(above)-1], above[len(above)-1:]; tail != "0" && tail[0]-'0' < byte(min(den, 10)) {
			decimal := trimZeros(big.NewRat(num, den).FloatString(3))
			return quantity{}, 0, fmt.Errorf(whySplit, text, decimal, head, tail+"/"+below)
		}
		fallthrough
	case num >= den || num < 1:
		return quantity{}, 0, fmt.Errorf(whyFraction, text)
	case den > 64:
		return quantity{}, 0, fmt.Errorf(whyFine, text)
	}
	return quantity{value: big.NewRat(num, den), text: text, fraction: true}, n, nil
}

// mostDigits is the most that one number may have.
const mostDigits = 20

// readDigits reads digits with points and commas. Where both signs stand, the
// last one is the decimal sign.
func readDigits(text string, s style) (quantity, error) {
	if len(text) > mostDigits {
		return quantity{}, fmt.Errorf(whyManyDigits, text)
	}
	last := strings.LastIndexAny(text, ".,")
	if last < 0 {
		return decimal(text, ""), nil
	}
	sign := text[last : last+1]
	before, after := text[:last], text[last+1:]
	switch {
	case after == "", before == "" && strings.ContainsAny(after, ".,"):
		return quantity{}, fmt.Errorf(whyEnds, text)
	case before == "":
		return decimal("0", after), nil
	case onlyDigits(before):
		if s == thousands && len(after) == 3 && len(before) <= 3 && before[0] != '0' {
			return decimal(before+after, ""), nil
		}
		return decimal(before, after), nil
	}
	whole, ok := ungroup(before)
	switch {
	case !ok:
	case !strings.Contains(before, sign):
		return decimal(whole, after), nil
	default:
		if whole, ok = ungroup(text); ok {
			return decimal(whole, ""), nil
		}
	}
	return quantity{}, fmt.Errorf(whySeparators, text)
}

// ungroup takes out one kind of sign between thousands.
func ungroup(text string) (string, bool) {
	sign := text[strings.IndexAny(text, ".,"):][:1]
	groups := strings.Split(text, sign)
	for i, g := range groups {
		if !onlyDigits(g) || i > 0 && len(g) != 3 || i == 0 && (len(g) > 3 || g[0] == '0') {
			return "", false
		}
	}
	return strings.Join(groups, ""), true
}

func decimal(whole, after string) quantity {
	text := whole
	if after != "" {
		text += "." + after
	}
	v, _ := new(big.Rat).SetString(text)
	return quantity{value: v, typed: text, text: unmistakable(v), decimals: after}
}

func onlyDigits(s string) bool {
	return s != "" && strings.Trim(s, "0123456789") == ""
}
