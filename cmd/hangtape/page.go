package main

import (
	"slices"
	"strings"

	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

// page is a text of advise, cut, drill or explain, as it grows.
type page struct {
	strings.Builder
	unit string
}

func (p *page) line(text string)     { p.WriteString(text + "\n") }
func (p *page) section(title string) { p.line("\n" + title) }

// title is a section's title that may be longer than a line.
func (p *page) title(text string) { p.section(indented(0, text)) }

// item is one entry of a section: a word or name, then the text.
func (p *page) item(name, text string) {
	if name != "" {
		text = name + ": " + text
	}
	p.line(indented(2, text))
}

// list is entries with a dash before each.
func (p *page) list(words []string) {
	for _, w := range words {
		p.item("", "- "+w)
	}
}

// about tells whose session it is, where and when.
func (p *page) about(s *sessions.Session) {
	about := []string{s.Climber, s.Place}
	if !s.Started.IsZero() {
		about = append(about, s.Started.Format("2006-01-02"))
	}
	about = slices.DeleteFunc(about, func(a string) bool { return a == "" })
	if len(about) > 0 {
		p.line(printable(strings.Join(about, ", ")))
	}
}

// cautions stand on every page that tells verdicts.
func (p *page) cautions() {
	p.section("Cautions")
	for _, c := range append([]string{rules.ShortCaution}, rules.VerdictCautions()...) {
		p.item("", c)
	}
}
