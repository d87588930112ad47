package main

import (
	"fmt"
	"io"
	"strings"
	"time"

	"example.com/hangtape/cmd/sheet"
)

// made is a sheet to be written, with its title and date as a document.
type made struct {
	sheetPage
	title string
	at    time.Time
}

// write writes the sheet in a format, and complains of letters that it could not
// draw.
func (m made) write(w *world, to io.Writer, format string, p sheet.Paper) error {
	switch format {
	case "text":
		_, err := io.WriteString(to, m.Text())
		return err
	case "html":
		return m.HTML(to, p)
	}
	pages, missing := m.Pages(p)
	if format == "svg" {
		return sheet.SVG(to, pages)
	}
	if len(missing) > 0 {
		complain(w.err, fmt.Errorf("the sheet's font does not have %s: drawn as %c; the other formats have them", letters(missing), sheet.Instead))
	}
	return sheet.PDF(to, pages, m.title, m.at)
}

// letters names letters, the first few of them.
func letters(all []rune) string {
	const most = 8
	var names []string
	for _, r := range all[:min(len(all), most)] {
		names = append(names, fmt.Sprintf("%c (U+%04X)", r, r))
	}
	if more := len(all) - most; more > 0 {
		names = append(names, fmt.Sprintf("%d more", more))
	}
	return strings.Join(names, ", ")
}
