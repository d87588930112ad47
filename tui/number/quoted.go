package number

import (
	"math/big"
	"strings"
)

// quoted finds a mark between thousands, 1'220, which may also mean feet. It
// returns both meanings as texts that have no other.
func quoted(toks []token) (feet, plain string, ok bool) {
	neg := ""
	if len(toks) > 0 && toks[0].kind == minus {
		neg, toks = "-", toks[1:]
	}
	if len(toks) != 3 || !marksThousands(toks) {
		return "", "", false
	}
	whole, err := readDigits(toks[0].text+toks[2].text, decimals)
	ft, err1 := readDigits(toks[0].text, decimals)
	in, err2 := readDigits(toks[2].text, decimals)
	if err != nil || err1 != nil || err2 != nil {
		return "", "", false
	}
	in.value.Add(in.value, ft.value.Mul(ft.value, big.NewRat(12, 1)))
	return neg + unmistakable(in.value) + " in", neg + whole.text, true
}

// joinQuoted takes the mark out of 1'220 where a unit follows with which the
// mark cannot mean feet.
func joinQuoted(toks []token) []token {
	n := len(toks) - 4
	if n < 0 || n > 1 || !marksThousands(toks[n:]) || toks[n+3].kind != word || unitWords[toks[n+3].text] == "in" {
		return toks
	}
	joined := toks[n]
	joined.text += toks[n+2].text
	return append(append(toks[:n:n], joined), toks[n+3])
}

func marksThousands(toks []token) bool {
	head, mark, tail := toks[0], toks[1], toks[2]
	whole, _, _ := strings.Cut(strings.ReplaceAll(tail.text, ",", "."), ".")
	return head.kind == digits && onlyDigits(head.text) && len(head.text) <= 3 && head.text[0] != '0' &&
		mark.text == "'" && !mark.spaced && tail.kind == digits && !tail.spaced && len(whole) == 3
}
