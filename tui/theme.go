package tui

import (
	"github.com/charmbracelet/lipgloss"

	"example.com/hangtape/rules"
)

// A theme is how things look. Colours are the terminal's own sixteen, and never
// the only sign of anything: NO_COLOR and a screen in the sun lose nothing.
type theme struct {
	title, strong, key lipgloss.Style
	verdict            map[rules.Verdict]lipgloss.Style
	refused, demo      lipgloss.Style
	tape, plain        lipgloss.Style // of the side view
	ascii              bool
}

func newTheme(o Options) theme {
	s := lipgloss.NewStyle
	bold := s().Bold(true)
	t := theme{title: bold, strong: bold, key: bold, refused: bold, demo: bold.Reverse(true), tape: bold, plain: s(), ascii: o.ASCII,
		verdict: map[rules.Verdict]lipgloss.Style{rules.Fail: bold.Reverse(true), rules.Tight: bold, rules.Unknown: bold, rules.Pass: s()}}
	if !o.Contrast {
		t.verdict[rules.Fail] = bold.Foreground(lipgloss.Color("1"))
		t.verdict[rules.Tight] = bold.Foreground(lipgloss.Color("5")) // yellow is lost on white
		t.verdict[rules.Pass] = s().Foreground(lipgloss.Color("2"))
		t.refused = bold.Foreground(lipgloss.Color("1"))
	}
	return t
}

// word is a verdict as it is shown: always in words.
func (t theme) word(v rules.Verdict) string {
	return t.verdict[v].Render(v.Loud())
}
