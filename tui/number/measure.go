package number

import (
	"errors"
	"fmt"
	"math/big"
	"strconv"
	"strings"
)

// A measure is a whole text, understood as one value with its units.
type measure struct {
	value  *big.Rat // in the stored unit; nil where the text was not understood
	unit   unit     // of its first part
	bare   bool     // no unit was written
	signed bool     // a sign was written
	parts  int
	last   quantity // of its last part, without the sign
}

func (r measure) sign() string {
	if r.value.Sign() < 0 {
		return "-"
	}
	return ""
}

// retype is a text of r that has no other meaning.
func (r measure) retype() string {
	return strings.TrimSpace(r.sign() + r.last.text + " " + r.unit.name)
}

// inFeet are the two meanings of 5.9 feet: tenths of a foot, and inches.
func (r measure) inFeet() []string {
	whole := new(big.Int).Quo(r.last.value.Num(), r.last.value.Denom())
	rest := new(big.Rat).Sub(r.last.value, new(big.Rat).SetInt(whole))
	rest.Mul(rest, big.NewRat(12, 1))
	inches := strings.TrimLeft(r.last.decimals, "0")
	head := r.sign() + whole.String() + " ft "
	return []string{head + unmistakable(rest) + " in", head + inches + " in"}
}

// mayBeInches says whether the decimals of a number of feet may be inches.
func mayBeInches(after string) bool {
	n, err := strconv.Atoi(after)
	return err == nil && len(after) <= 2 && 1 <= n && n <= 11
}

// wrongKind is a unit of another kind of quantity.
type wrongKind struct{ error }

// read reads all tokens as one quantity for f. Its errors are the reason alone;
// where the text was understood and does not fit, the measure comes with it.
func (f Field) read(toks []token, s style) (measure, error) {
	r := measure{value: new(big.Rat)}
	negative := false
	if len(toks) > 0 && (toks[0].kind == minus || toks[0].kind == plus) {
		r.signed, negative = true, toks[0].kind == minus
		toks = toks[1:]
	}
	if len(toks) > 0 && toks[0].kind == word {
		if _, known := unitWords[toks[0].text]; !known {
			return measure{}, fmt.Errorf(whyNoUnit, toks[0].text)
		}
	}
	var before unit
	for len(toks) > 0 {
		q, n, err := readQuantity(toks, s)
		if err != nil {
			return measure{}, err
		}
		u, m, err := f.readUnit(toks[n:])
		if err != nil {
			return measure{}, err
		}
		if r.parts > 0 {
			if u, err = follow(before, r.last, u, m == 0, q); err != nil {
				return measure{}, err
			}
		} else {
			r.unit, r.bare = u, m == 0
		}
		r.value.Add(r.value, new(big.Rat).Mul(q.value, u.size()))
		r.last, before = q, u
		r.parts++
		toks = toks[n+m:]
		if len(toks) > 0 && m == 0 {
			return measure{}, stray(q, toks[0])
		}
		if toks, err = joint(toks, u); err != nil {
			return measure{}, err
		}
	}
	if r.parts == 0 {
		return measure{}, errors.New(whyNoNumber)
	}
	if negative {
		r.value.Neg(r.value)
	}
	return r, f.admit(r)
}

// readUnit reads the unit at the start of toks, taking 0 tokens where a number
// stands there, or nothing.
func (f Field) readUnit(toks []token) (unit, int, error) {
	if len(toks) == 0 || toks[0].kind != word {
		return f.bareUnit(), 0, nil
	}
	name, ok := unitWords[toks[0].text]
	if !ok {
		return unit{}, 0, fmt.Errorf(whyNoUnit, toks[0].text)
	}
	u, want := units[name], kindInfo[f.Kind].dim
	if u.dim != want {
		w := kindWords[f.Kind]
		return unit{}, 0, wrongKind{fmt.Errorf(whyKind, w.one, w.is, dimensionWords[u.dim])}
	}
	return u, 1, nil
}

// follow is the unit of a part after another: inches after feet, centimetres
// after metres, pounds after stones.
func follow(before unit, whole quantity, u unit, bare bool, q quantity) (unit, error) {
	switch {
	case bare && !before.implied:
		return unit{}, fmt.Errorf(whyTwo, whole.text+" "+before.name, q.text)
	case bare:
		u = units[before.smaller]
		if before.name == "m" && (len(q.typed) != 2 || !q.whole()) {
			return unit{}, fmt.Errorf(whyTwoDigits, before.name)
		}
	case u.name != before.smaller && (before.name != "m" || u.name != "mm"):
		return unit{}, fmt.Errorf(whyCompound, u.name, before.name)
	}
	if !whole.whole() {
		return unit{}, fmt.Errorf(whyWholeFirst, whole.text+" "+before.name, u.name)
	}
	per := before.size()
	per.Quo(per, u.size())
	if q.value.Cmp(per) >= 0 {
		return unit{}, fmt.Errorf(whyTooMuch, q.text, u.name, per.Num(), before.name)
	}
	return u, nil
}

// joint skips the hyphen of 5'-9", which stands tight between feet and inches.
func joint(toks []token, u unit) ([]token, error) {
	if len(toks) == 0 || toks[0].kind != minus && toks[0].kind != plus {
		return toks, nil
	}
	if u.name == "ft" && toks[0].hyphen && !toks[0].spaced && len(toks) > 1 && !toks[1].spaced && toks[1].kind != word {
		return toks[1:], nil
	}
	return nil, errors.New(whyMinus)
}

// stray says what is wrong with a token that follows a number without a unit.
func stray(q quantity, t token) error {
	switch t.kind {
	case minus:
		return fmt.Errorf(whyRange, q.text+" - ...")
	case plus:
		return fmt.Errorf(whySign, t.text)
	}
	return fmt.Errorf(whyTwo, q.text, t.text)
}
