package tui

import (
	"strings"
	"testing"
	"testing/synctest"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/tui/flow"
)

// In the smallest window every question of a fitting shows its title, what it
// accepts and its field, whole, with a value in the field; and no option is cut.
func TestEveryQuestionIsWhole(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := sit(t, leastWidth, leastHeight)
		d.typed("1")
		at := func(p flow.Place) flow.Ask {
			m := d.m()
			m.flow = m.flow.Do(flow.GoTo{Place: p})
			cmd := m.newForm()
			m.layout()
			d.model = *m
			d.run(cmd)
			return d.m().flow.Ask()
		}
		seen := 0
		for st := range d.m().flow.Steps {
			for i := range d.m().flow.Steps[st].Asks {
				s := &d.m().flow
				p := flow.Place{Step: st, Ask: i, Hang: s.Hang}
				if ask := s.Steps[st].Asks[i]; ask.When != nil && !ask.When(&s.Draft) || ask.Key == flow.WhatIfKey {
					continue
				}
				a := at(p)
				seen++
				if a.Kind != flow.Choice && a.Kind != flow.Text {
					d.typed("7")
				}
				view := strings.Join(strings.Fields(d.model.View()), " ")
				words := []string{a.Title}
				if accepts := a.Accepts(s.Session.Unit); accepts != "" {
					words = append(words, "Accepted: "+accepts)
				}
				for _, o := range d.m().flow.Options() {
					words = append(words, o.Word)
				}
				for _, w := range words {
					if !strings.Contains(view, strings.Join(strings.Fields(w), " ")) {
						t.Errorf("%s without %q:\n%s", a.Key, w, d.model.View())
					}
				}
				switch {
				case strings.HasPrefix(a.Key, "kit.") && strings.Count(a.Key, ".") == 1 && a.Kind == flow.Choice, a.Key == "hang":
					d.typed("1") // the piece is there, the climber is up: more is asked
				case a.Kind != flow.Choice && a.Kind != flow.Text:
					d.press(tea.KeyBackspace)
				}
			}
		}
		if seen < 90 {
			t.Errorf("only %d questions", seen)
		}
		d.leave()
	})
}
