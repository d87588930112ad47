package tui

import "strings"

// segments are digits three lines high, in ASCII, to be read at arm's length.
var segments = map[rune][3]string{
	'0': {" _ ", "| |", "|_|"}, '1': {"   ", "  |", "  |"}, '2': {" _ ", " _|", "|_ "}, '3': {" _ ", " _|", " _|"},
	'4': {"   ", "|_|", "  |"}, '5': {" _ ", "|_ ", " _|"}, '6': {" _ ", "|_ ", "|_|"}, '7': {" _ ", "  |", "  |"},
	'8': {" _ ", "|_|", "|_|"}, '9': {" _ ", "|_|", " _|"}, '-': {"   ", " _ ", "   "}, '.': {" ", " ", "."},
	' ': {"  ", "  ", "  "}, '/': {"  ", " /", "/ "},
}

// large is the number at the start of a text in large digits, and the rest of
// the text, its unit, beside them. It is nothing where the text starts with no
// number or is too wide.
func large(text string, width int) []string {
	end := strings.IndexFunc(text, func(r rune) bool { return !strings.ContainsRune("-0123456789./ ", r) })
	if end < 0 {
		end = len(text)
	}
	number, rest := strings.TrimSpace(text[:end]), text[end:]
	if strings.Trim(number, "-./ ") == "" {
		return nil
	}
	var lines [3]string
	for _, r := range number {
		for i, part := range segments[r] {
			lines[i] += part + " "
		}
	}
	lines[2] += rest
	if textWidth(lines[2]) > width {
		return nil
	}
	return lines[:]
}
