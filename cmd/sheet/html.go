package sheet

import (
	"bytes"
	_ "embed" // the style
	"fmt"
	"html"
	"io"
	"strings"

	"example.com/hangtape/rules"
)

//go:embed sheet.css
var css string

// An htmlPage is a page as it grows, without scripts and without anything from a
// network. All texts are escaped on the way in. It does without html/template,
// with which the linker keeps every method of every library: 6 MB of program.
type htmlPage struct{ strings.Builder }

// newHTMLPage begins a page that prints as these pages do on p.
func newHTMLPage(title string, p Paper) *htmlPage {
	h := &htmlPage{}
	h.WriteString("<!DOCTYPE html>\n<html lang=\"" + language + "\">\n<head>\n<meta charset=\"utf-8\">\n" +
		"<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
	h.element("title", "", title)
	const hair = 0.5 // less than the page, or a browser begins another one
	h.WriteString(fmt.Sprintf("<style>\n@page { size: %gpt %gpt; margin: 0 }\n.paper svg { width: %gpt; height: %gpt }\n", p.W, p.H, p.W-hair, p.H-hair) +
		css + "</style>\n</head>\n<body>\n<main>\n")
	return h
}

// to writes the whole page: what is read on a screen, then pages for the printer.
func (h *htmlPage) to(w io.Writer, pages []*Drawing) error {
	h.WriteString("</main>\n<div class=\"paper\">\n")
	for _, d := range pages {
		if err := h.picture(d); err != nil {
			return err
		}
	}
	_, err := io.WriteString(w, h.String()+"</div>\n</body>\n</html>\n")
	return err
}

// element is a text in an element of some class.
func (h *htmlPage) element(name, class, s string) {
	h.open(name, class)
	h.text(s)
	h.close(name)
}

func (h *htmlPage) open(name, class string) {
	h.WriteString("<" + name)
	if class != "" {
		h.WriteString(` class="` + html.EscapeString(class) + `"`)
	}
	h.WriteString(">")
}

func (h *htmlPage) close(name string) { h.WriteString("</" + name + ">\n") }

func (h *htmlPage) text(s string) { h.WriteString(html.EscapeString(visible(s))) }

// verdict is a verdict's word in its frame.
func (h *htmlPage) verdict(v rules.Verdict, class string) {
	h.element("span", join(" ", "v", string(v), class), v.Loud())
}

// paragraphs are texts under a heading; nothing where there are none.
func (h *htmlPage) paragraphs(heading string, texts []string) {
	if len(texts) > 0 {
		h.element("h2", "", heading)
	}
	for _, s := range texts {
		h.element("p", "", s)
	}
}

// list is a list under a heading; nothing where there are no items.
func (h *htmlPage) list(heading string, items []string) {
	if len(items) == 0 {
		return
	}
	h.element("h2", "", heading)
	h.open("ul", "")
	for _, s := range items {
		h.element("li", "", s)
	}
	h.close("ul")
}

// head is the first row of a table.
func (h *htmlPage) head(titles ...string) {
	h.open("thead", "")
	h.open("tr", "")
	for _, t := range titles {
		h.element("th", "", t)
	}
	h.close("tr")
	h.close("thead")
}

// cell is one of a row; is, where it is not empty, names it where there is no
// room for a table.
func (h *htmlPage) cell(is, s string, strong bool) {
	h.openCell(is)
	if strong {
		h.element("b", "", s)
	} else {
		h.text(s)
	}
	h.close("td")
}

func (h *htmlPage) openCell(is string) {
	h.WriteString("<td")
	if is != "" {
		h.WriteString(` data-is="` + html.EscapeString(is) + `"`)
	}
	h.WriteString(">")
}

// figure is the side view, or why there is none.
func (h *htmlPage) figure(f *Figure) error {
	h.element("h2", "", f.Title)
	if f.Instead != "" {
		h.element("p", "", f.Instead)
		return nil
	}
	const wide, high = 300, 340
	p := pen{&Drawing{W: wide, H: high}, newFaces()}
	p.sideView(f, Box{4, 4, wide - 4, high})
	h.open("figure", "")
	err := h.picture(p.Drawing)
	h.close("figure")
	return err
}

func (h *htmlPage) picture(d *Drawing) error {
	var b bytes.Buffer
	if err := svg(&b, d); err != nil {
		return fmt.Errorf("cannot draw the page: %w", err)
	}
	_, drawn, _ := strings.Cut(b.String(), "<svg ") // its letters are escaped
	h.WriteString("<svg " + drawn)
	return nil
}
