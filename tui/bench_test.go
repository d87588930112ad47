package tui

import (
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"

	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/demo"
	"example.com/hangtape/tui/flow"
)

// BenchmarkKeyPress is one key at 120x40 in true colour, update and view: a
// reading typed digit by digit, taken, and put right again, with the rules
// running.
func BenchmarkKeyPress(b *testing.B) {
	lipgloss.SetColorProfile(termenv.TrueColor)
	defer lipgloss.SetColorProfile(termenv.Ascii)
	s, err := sessions.Decode("demo", demo.Files()[0].Data)
	if err != nil {
		b.Fatal(err)
	}
	now := func() time.Time { return s.Started }
	m := New(Options{Store: openAt(b, b.TempDir(), now), Now: now})
	m.screen = onAsk
	m.flow = flow.Start(*s, flow.Config{Judge: (*sessions.Session).Judge})
	p, ok := m.flow.Find("hangs.1.nose_mm")
	if !ok {
		b.Fatal("no nose")
	}
	m.flow = m.flow.Do(flow.GoTo{Place: p})
	m.newForm()
	var model tea.Model = m
	model, _ = model.Update(tea.WindowSizeMsg{Width: 120, Height: 40})
	keys := []tea.KeyMsg{
		{Type: tea.KeyRunes, Runes: []rune("1")}, {Type: tea.KeyRunes, Runes: []rune("9")}, {Type: tea.KeyRunes, Runes: []rune("0")}, {Type: tea.KeyRunes, Runes: []rune("8")},
		{Type: tea.KeyEnter}, {Type: tea.KeyUp}, {Type: tea.KeyCtrlU}, {Type: tea.KeyEnter},
	}
	for i := 0; b.Loop(); i++ {
		model, _ = model.Update(keys[i%len(keys)])
		if model.View() == "" {
			b.Fatal("nothing to see")
		}
	}
}

// BenchmarkTrialKey is one key in what if at 120x40: a piece moved by a mark, put
// through the model, its windows found, drawn.
func BenchmarkTrialKey(b *testing.B) {
	s, err := sessions.Decode("demo", demo.Files()[0].Data)
	if err != nil {
		b.Fatal(err)
	}
	now := func() time.Time { return s.Started }
	m := New(Options{Store: openAt(b, b.TempDir(), now), Now: now})
	m.screen = onAsk
	m.flow = flow.Start(*s, flow.Config{Judge: (*sessions.Session).Judge})
	p, ok := m.flow.Find(flow.WhatIfKey)
	if !ok {
		b.Fatal("no what if")
	}
	m.flow = m.flow.Do(flow.GoTo{Place: p})
	var model tea.Model = m
	model, _ = model.Update(tea.WindowSizeMsg{Width: 120, Height: 40})
	keys := []tea.KeyType{tea.KeyRight, tea.KeyRight, tea.KeyLeft, tea.KeyLeft, tea.KeyPgUp, tea.KeyPgDown, tea.KeyDown, tea.KeyUp}
	for i := 0; b.Loop(); i++ {
		model, _ = model.Update(tea.KeyMsg{Type: keys[i%len(keys)]})
		if model.View() == "" {
			b.Fatal("nothing to see")
		}
	}
}
