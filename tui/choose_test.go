package tui

import (
	"bytes"
	"strings"
	"testing"
	"testing/synctest"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/sessions/sessionstest"
)

// In a folder of many, words lead to the session that a re-check starts from.
func TestEarlierSessionIsFoundByWords(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := sit(t, 80, 24)
		fill(t, d.store.Dir())
		if _, err := sessionstest.Write(d.store.Dir(), 60); err != nil {
			t.Fatal(err)
		}
		d.typed("3")
		d.sees("Start from which earlier session?", "64 sessions", ">    1 ")
		d.press(tea.KeyUp, tea.KeyDown, tea.KeyDown)
		d.sees(">    3 ")
		d.typed("40")
		d.sees(">   40 ")
		d.press(tea.KeyCtrlU)
		d.typed("nobody")
		d.sees("0 of 64")
		d.press(tea.KeyEnter) // on nothing
		d.press(tea.KeyEsc)
		d.typed("colour:")
		d.sees("Not searched: colour: is no key")
		d.press(tea.KeyEnter, tea.KeyEsc)
		d.typed(`"climber b"`)
		d.sees("1 of 64", "demo climber B")
		d.press(tea.KeyEnter)
		if got := d.m().flow.Session.Climber; got != "demo climber B" {
			t.Errorf("started from %q\n%s", got, d.model.View())
		}
		d.leave()
	})
}

// Told line by line no list is longer than can be listened to.
func TestEarlierSessionIsFoundByWordsInLines(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := sit(t, 80, 24)
		fill(t, d.store.Dir())
		if _, err := sessionstest.Write(d.store.Dir(), 60); err != nil {
			t.Fatal(err)
		}
		var out bytes.Buffer
		in := strings.NewReader("earlier\nnobody\ncolour:x\n\"climber b\"\n1\nquit\n")
		if err := RunPlain(Options{Store: d.store, Now: d.now, In: in, Out: &out}); err != nil {
			t.Fatal(err)
		}
		for _, want := range []string{"And 44 more.", "None of 64.", "Not searched: colour: is no key", "\n1: 2026-04-19 09:12, demo climber B, first fitting\n"} {
			if !strings.Contains(out.String(), want) {
				t.Errorf("%q is not said:\n%s", want, out.String())
			}
		}
		d.leave()
	})
}

// While a large folder is read nothing is said of what is in it.
func TestFirstScreenWhileTheFolderIsRead(t *testing.T) {
	var m tea.Model = New(Options{Store: sit(t, 80, 24).store, Now: sit(t, 80, 24).now})
	if v := m.View(); !strings.Contains(v, "resume (reading the folder") || strings.Contains(v, "nothing unfinished") {
		t.Errorf("it says\n%s", v)
	}
	m, _ = m.Update(foundMsg{why: forFirst})
	if v := m.View(); !strings.Contains(v, "nothing unfinished") {
		t.Errorf("it says\n%s", v)
	}
}
