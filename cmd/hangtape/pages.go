package main

import (
	"io"
	"strconv"
	"strings"

	"example.com/hangtape/sessions/pages"
)

// look is how pages are written to standard output: as wide as COLUMNS says, or
// else the terminal is, but no wider than prose is read well, and no narrower
// than 44.
func look(w *world, unit string) pages.Look {
	l := pages.Look{Width: textWidth, Unit: unit, ASCII: asciiOnly(w.env), Clean: printable}
	columns := w.columns
	if n, err := strconv.Atoi(w.env("COLUMNS")); err == nil {
		columns = n
	}
	if columns > 0 {
		l.Width = max(44, min(columns, textWidth))
	}
	return l
}

func writeLines(out io.Writer, lines []string) error {
	_, err := io.WriteString(out, strings.Join(lines, "\n")+"\n")
	return err
}
