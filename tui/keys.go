package tui

import (
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"
)

// keyID is what a key does.
type keyID int

const (
	noKey keyID = iota
	keyEnter
	keyBack
	keySteps
	keyHelp
	keySide
	keyOlder
	keyNewer
	keySkip
	keyPageUp
	keyShorter
	keyLonger
	keyMore
	keyKeep
	keyWanted
	keyStudents
	keyDown
	keyCompare
	keyHistory
	keyLeave
	keySuspend
)

// A binding is one key with its words: the one source of what keys do and of
// what the help says of them.
type binding struct {
	id     keyID
	names  []string // as Bubble Tea calls them
	label  string
	does   string
	letter bool // not where words are typed
}

// bindings are all keys beside digits and text. Digits, Enter and Esc are
// enough for all but names and notes.
func bindings() []binding {
	return []binding{
		{keyEnter, []string{"enter"}, "Enter", "take what is typed; with nothing typed go on, nothing is taken", false},
		{keyBack, []string{"esc", "shift+tab"}, "Esc", "back; what is typed stays", false},
		{keySteps, []string{"tab"}, "Tab", "all steps, to go to any of them; in past fittings, climbers and who is due, then cords by age", false},
		{keyHelp, []string{"?", "f1"}, "?", "help on this question (F1 where words are typed)", true},
		{keySide, []string{"v", "V"}, "v", "side view of climber and kit to scale; Up and Down show the other poses", true},
		{keyDown, []string{"d", "D"}, "d", "down now: stops the clock, shows the order of getting down; where words are typed Tab, then d", true},
		{keyKeep, []string{"k", "K"}, "k", "keep the earlier session's length, marked as kept; of the mass, that it is what it was", true},
		{keyStudents, []string{"ctrl+o"}, "Ctrl-O", "other students: those whose sessions are open, and the next one on this kit", false},
		{keyWanted, []string{"w", "W"}, "w", "to the reading worth taking: one that may still change a verdict", true},
		{keyCompare, []string{"c", "C"}, "c", "in a past fitting: hold it against another one", true},
		{keyHistory, []string{"h", "H"}, "h", "in a past fitting: all sessions of its climber, margins over time", true},
		{keyOlder, []string{"up"}, "Up", "correct the value taken before; emptied, it is taken out; in what if, the piece before; in lists and texts, up", false},
		{keyNewer, []string{"down"}, "Down", "on to the next value; in what if, the next piece; in lists and texts, down", false},
		{keySkip, []string{"pgdown"}, "PgDn", "on to the next step; in the review, lists and texts, further down", false},
		{keyPageUp, []string{"pgup"}, "PgUp", "in the review, lists and texts, further up", false},
		{keyShorter, []string{"left"}, "Left", "in what if, one mark of the tape shorter (PgDn ten); in the review, the verdict before", false},
		{keyLonger, []string{"right"}, "Right", "in what if, one mark of the tape longer (PgUp ten); in the review, the next verdict, for ? and for what if", false},
		{keyMore, []string{" "}, "Space", "in what if, more verdicts and poses; 0 puts the piece back", true},
		{keyLeave, []string{"ctrl+c", "ctrl+d"}, "Ctrl-C", "leave; all that was taken is saved", false},
		{keySuspend, []string{"ctrl+z"}, "Ctrl-Z", "suspend, until the shell's fg", false},
	}
}

// keyOf is what a key does; words says that the field takes words, so that
// letters and signs are text.
func keyOf(msg tea.KeyMsg, words bool) keyID {
	if msg.Paste {
		return noKey
	}
	name := msg.String()
	for _, b := range bindings() {
		if slices.Contains(b.names, name) && !(b.letter && words && len(name) == 1) {
			return b.id
		}
	}
	return noKey
}

// hints are the labels of a few keys for the last line, each with one word.
func (t theme) hints(width int, pairs ...string) string {
	var parts []string
	for i := 0; i+1 < len(pairs); i += 2 {
		parts = append(parts, t.key.Render(pairs[i])+" "+pairs[i+1])
	}
	for len(parts) > 1 && textWidth(strings.Join(parts, "  ")) > width {
		parts = parts[:len(parts)-1]
	}
	return strings.Join(parts, "  ")
}
