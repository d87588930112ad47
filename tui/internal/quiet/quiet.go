// Package quiet keeps the start from waiting for the terminal. Bubble Tea asks
// the terminal for its background colour when the program starts, and a
// terminal that does not answer stalls it by five seconds; it does not ask
// where the answer is already given. Packages start in the order of their
// import paths, so this one, which sorts before Bubble Tea and imports Lip
// Gloss alone, gives it. Colours are the terminal's own sixteen, which suit
// light and dark, so the answer colours nothing.
package quiet

import "github.com/charmbracelet/lipgloss"

func init() { lipgloss.SetHasDarkBackground(true) }
