package main

import (
	"runtime"
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

// asciiOnly says whether the locale promises no more than ASCII (POSIX: the
// first of these that is set counts). Windows has no such promise to keep.
func asciiOnly(env func(string) string) bool {
	for _, name := range []string{"LC_ALL", "LC_CTYPE", "LANG"} {
		if v := strings.ToUpper(env(name)); v != "" {
			return !strings.Contains(v, "UTF-8") && !strings.Contains(v, "UTF8")
		}
	}
	return runtime.GOOS != "windows"
}
