package tui

import (
	"fmt"
	"html"
	"os"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"
)

// The README's still of the wizard is the golden view of a question in colour;
// with -update it is drawn afresh.
func TestReadmeStillIsCurrent(t *testing.T) {
	const path = "../testdata/wizard.svg"
	view, err := os.ReadFile("../testdata/views/nose_120x40_colour.txt")
	if err != nil {
		t.Fatal(err)
	}
	text := strings.NewReplacer("\r\n", "\n", "ESC[", "\x1b[").Replace(string(view))
	want := still(strings.Split(strings.TrimRight(text, "\n"), "\n"))
	if *update {
		if err := os.WriteFile(path, []byte(want), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if got, err := os.ReadFile(path); err != nil || strings.ReplaceAll(string(got), "\r\n", "\n") != want {
		t.Errorf("%s is not the view of today (%v): go test ./tui -update", path, err)
	}
}

// A cell of the still in pixels, and how each way of writing looks in it.
const stillWidth, stillHeight = 8, 17

var (
	stillRun   = regexp.MustCompile(`(?:\x1b\[([0-9;]*)m)?([^\x1b]*)`)
	stillLooks = map[string]string{"1": `font-weight="bold" fill="#fff"`, "32": `fill="#7ec16e"`, "1;31": `font-weight="bold" fill="#f2777a"`}
)

// still draws the lines of a coloured view, run by run so that every letter
// stands in its cell whatever font is there.
func still(lines []string) string {
	var b strings.Builder
	fmt.Fprintf(&b, "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" font-family=\"DejaVu Sans Mono, Menlo, Consolas, monospace\" font-size=\"13\" fill=\"#ddd\">\n",
		122*stillWidth, (len(lines)+1)*stillHeight)
	b.WriteString("<rect width=\"100%\" height=\"100%\" rx=\"6\" fill=\"#1d1f21\"/>\n")
	for row, line := range lines {
		column := 1
		for _, run := range stillRun.FindAllStringSubmatch(line, -1) {
			x, y := column*stillWidth, (row+1)*stillHeight
			cells := utf8.RuneCountInString(run[2])
			column += cells
			look := stillLooks[run[1]]
			if strings.HasSuffix(run[1], "7") { // reversed
				fmt.Fprintf(&b, "<rect x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\" fill=\"#ddd\"/>\n", x, y-13, cells*stillWidth, stillHeight)
				look = `font-weight="bold" fill="#1d1f21"`
			}
			words := strings.TrimLeft(run[2], " ")
			x += (cells - utf8.RuneCountInString(words)) * stillWidth
			if words = strings.TrimRight(words, " "); words != "" {
				fmt.Fprintf(&b, "<text xml:space=\"preserve\" x=\"%d\" y=\"%d\" textLength=\"%d\" lengthAdjust=\"spacingAndGlyphs\" %s>%s</text>\n",
					x, y, utf8.RuneCountInString(words)*stillWidth, look, html.EscapeString(words))
			}
		}
	}
	b.WriteString("</svg>\n")
	return b.String()
}
