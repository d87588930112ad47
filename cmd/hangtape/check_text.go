package main

import (
	"example.com/hangtape/sessions/pages"
)

// textAnswer tells verdicts to people: one page a file, the cautions once.
type textAnswer struct {
	w     *world
	unit  unitFlag
	pages int
}

func (a *textAnswer) told(j judged) error {
	lines := pages.Check(j.File, j.report, look(a.w, a.unit.of(j.Session)))
	if a.pages++; a.pages > 1 {
		lines = append([]string{""}, lines...)
	}
	return writeLines(a.w.out, lines)
}

// failed has nothing to add: the complaint says it all.
func (a *textAnswer) failed(string, error) error { return nil }

func (a *textAnswer) end() error {
	if a.pages == 0 {
		return nil
	}
	return writeLines(a.w.out, pages.Cautions(look(a.w, "")))
}
