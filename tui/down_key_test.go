package tui

import (
	"testing"
	"testing/synctest"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/tui/flow"
)

// Where nobody hangs, d over the help or the side view is any other key: back,
// with nothing typed into the field.
func TestDownKeyOverAQuestionTypesNothing(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := sit(t, 80, 24)
		d.typed("1")
		d.goTo(d.place("climber.thigh_mm"))
		d.typed("43")
		for _, over := range []string{"?", "v"} {
			d.typed(over)
			if d.m().screen == onAsk {
				t.Fatalf("%s showed nothing", over)
			}
			d.typed("d")
			if d.m().screen != onAsk || d.m().flow.Text() != "43" {
				t.Errorf("%s, then d: %q is typed", over, d.m().flow.Text())
			}
		}
		d.leave()
	})
}

// wordsAsked is the question for a name, to go to while somebody hangs.
func (d *desk) wordsAsked() flow.Place {
	p := d.place("session.climber")
	p.Hang = d.m().flow.Hang
	return p
}

// Where somebody hangs, d over the help gets down, also where the question under
// it takes words.
func TestDownKeyOverTheHelpGetsDown(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		for _, words := range []bool{false, true} {
			d := sit(t, 80, 24)
			d.press(tea.KeyEnter)
			d.hang()
			if words {
				d.goTo(d.wordsAsked())
			}
			d.press(tea.KeyF1)
			if d.m().screen != onHelp {
				t.Fatal("no help")
			}
			d.typed("d")
			if s := &d.m().flow; d.m().screen != onAsk || s.Ask().Key != "down" || s.Hanging() {
				t.Errorf("words: %v; at %s, hanging: %v", words, s.Ask().Key, s.Hanging())
			}
			d.leave()
		}
	})
}

// Where words are typed d is a letter: the last line and the clock tell how to get
// down all the same.
func TestHowToGetDownIsToldWhereWordsAreTyped(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := sit(t, 80, 24)
		d.press(tea.KeyEnter)
		d.hang()
		d.goTo(d.wordsAsked())
		d.clock = d.clock.Add(time.Hour)
		d.send(tickMsg{})
		d.sees("time for a break, Tab d", "Tab d down now")
		d.press(tea.KeyTab)
		d.typed("d")
		if s := &d.m().flow; s.Ask().Key != "down" || s.Hanging() {
			t.Errorf("at %s, hanging: %v", s.Ask().Key, s.Hanging())
		}
		d.leave()
	})
}
