package main

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.com/hangtape/rules"
)

// textWidth is what fits most terminals, and paper.
const textWidth = 80

// indented is a text broken between words, every line after so many blanks.
func indented(blanks int, text string) string {
	before := strings.Repeat(" ", blanks)
	text = strings.TrimRight(rules.Wrap(text, textWidth-blanks), "\n")
	return before + strings.ReplaceAll(text, "\n", "\n"+before)
}

// printable is s with everything that a terminal may take for a command, or
// that turns text around, written as an escape.
func printable(s string) string {
	if !strings.ContainsFunc(s, func(r rune) bool { return r < ' ' || r > '~' }) {
		return s // nearly always
	}
	var b strings.Builder
	for i, r := range s {
		switch {
		case r == utf8.RuneError && !strings.HasPrefix(s[i:], "\uFFFD"):
			fmt.Fprintf(&b, `\x%02x`, s[i])
		case unicode.IsPrint(r):
			b.WriteRune(r)
		case r < 0x80:
			fmt.Fprintf(&b, `\x%02x`, r)
		default:
			fmt.Fprintf(&b, `\u%04x`, r)
		}
	}
	return b.String()
}
