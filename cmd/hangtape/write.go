package main

import (
	"encoding/json"
	"io"
	"strings"
)

// writeJSON writes an answer for programs on one line, with the signs that HTML
// would escape left as they are.
func writeJSON(out io.Writer, answer any) error {
	e := json.NewEncoder(out)
	e.SetEscapeHTML(false)
	return e.Encode(answer)
}

// writeLines writes lines, each with its end.
func writeLines(out io.Writer, lines []string) error {
	_, err := io.WriteString(out, strings.Join(lines, "\n")+"\n")
	return err
}

// writePage writes a page as it has grown.
func writePage(out io.Writer, p *page) error {
	_, err := io.WriteString(out, p.String())
	return err
}
