package tui

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"

	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/flow"
	"example.com/hangtape/tui/flow/flowtest"
)

// BenchmarkFittingKeys is each key of a whole fitting at 120x40 in true colour,
// update and view, with the side view drawn and the rules running: its median,
// the slowest in a hundred and the slowest of all.
func BenchmarkFittingKeys(b *testing.B) {
	lipgloss.SetColorProfile(termenv.TrueColor)
	defer lipgloss.SetColorProfile(termenv.Ascii)
	want := once(flowtest.Examples(b, exampleDir)["2-one-must-fails.toml"])
	have := want.Clone()
	have.Fit.Hangs = nil
	now := func() time.Time { return want.Started }
	var took []time.Duration
	for b.Loop() {
		m := New(Options{Store: openAt(b, b.TempDir(), now), Now: now})
		m.screen = onAsk
		m.flow = flow.Start(*have, flow.Config{Judge: (*sessions.Session).Judge})
		m.newForm()
		var model tea.Model = m
		model, _ = model.Update(tea.WindowSizeMsg{Width: 120, Height: 40})
		y := flowtest.New(want)
		for n := 0; ; n++ {
			s := model.(Model).flow
			if s.Ask().Key == "review" {
				break
			}
			if n > 1000 {
				b.Fatalf("stuck at %s", s.Ask().Key)
			}
			keys := []tea.KeyMsg{{Type: tea.KeyEnter}}
			if text, option, isOption := y.Answer(&s); isOption {
				keys = []tea.KeyMsg{{Type: tea.KeyRunes, Runes: []rune(fmt.Sprint(option + 1))}}
			} else {
				keys = append(runes(strings.TrimSuffix(text, " mm")), keys...)
			}
			for _, k := range keys {
				start := time.Now()
				model, _ = model.Update(k)
				if model.View() == "" {
					b.Fatal("nothing to see")
				}
				took = append(took, time.Since(start))
			}
		}
	}
	slices.Sort(took)
	ms := func(share float64) float64 { return took[int(share*float64(len(took)-1))].Seconds() * 1000 }
	b.ReportMetric(ms(0.5), "p50-ms")
	b.ReportMetric(ms(0.99), "p99-ms")
	b.ReportMetric(ms(1), "max-ms")
}

// runes are the keys of a text.
func runes(text string) []tea.KeyMsg {
	var out []tea.KeyMsg
	for _, r := range text {
		out = append(out, tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}})
	}
	return out
}
