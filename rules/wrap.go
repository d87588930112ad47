package rules

import (
	"strings"
	"unicode/utf8"
)

// Wrap breaks text into lines of at most width letters (at least 20) where its words
// allow.
func Wrap(text string, width int) string { return wrap(text, "", width) }

// wrap breaks each line of text at spaces, but for those inside a number with its
// unit, so that with the indent before it it is no wider than width (at least 20).
// Further lines of an item "- …" or "1. …" are indented under its words.
func wrap(text, indent string, width int) string {
	width = max(width, 20)
	var b strings.Builder
	for line := range strings.SplitSeq(text, "\n") {
		hang := indent
		if first, _, ok := strings.Cut(line, " "); ok && (first == "-" || strings.HasSuffix(first, ".") && strings.Trim(first, "0123456789.") == "") {
			hang += strings.Repeat(" ", len(first)+1)
		}
		at := 0
		for i, word := range Unbroken(line) {
			n := utf8.RuneCountInString(word)
			switch {
			case i == 0:
				b.WriteString(indent)
				at = len(indent)
			case at+1+n > width:
				b.WriteString("\n" + hang)
				at = len(hang)
			default:
				b.WriteByte(' ')
				at++
			}
			b.WriteString(word)
			at += n
		}
		b.WriteByte('\n')
	}
	return b.String()
}

// Unbroken is the words of a line between which it may be broken; a number with
// its uncertainty and unit is one of them: "25 ± 5 mm", in ASCII "25 +- 5 mm".
func Unbroken(line string) []string {
	var words []string
	for _, w := range strings.Fields(line) {
		if last := len(words) - 1; last >= 0 && sticks(words[last], w) {
			words[last] += " " + w
		} else {
			words = append(words, w)
		}
	}
	return words
}

// sticks says whether w must not be parted from the word before it.
func sticks(before, w string) bool {
	for _, sign := range []string{"±", "+-"} {
		if strings.HasPrefix(w, sign) || strings.HasSuffix(before, sign) {
			return true
		}
	}
	if num, den, ok := strings.Cut(strings.TrimRight(w, ".,;:)"), "/"); ok && isCount(before) && isCount(num) && isCount(den) {
		return true // 78 3/4
	}
	switch end := before[len(before)-1]; strings.TrimRight(w, ".,;:)") {
	case "mm", "cm", "m", "in", "deg", "kN", "kg", "%":
		return '0' <= end && end <= '9'
	}
	return false
}

// isCount says whether s is digits alone, with a sign before them at most.
func isCount(s string) bool {
	digits := strings.TrimPrefix(s, "-")
	return digits != "" && strings.Trim(digits, "0123456789") == ""
}
