package tui

import (
	"math/rand/v2"
	"os"
	"strings"
	"testing"
	"testing/synctest"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/sessions"
)

// TestTextSurvives types half an answer and then does what people and windows
// do: the text is there again.
func TestTextSurvives(t *testing.T) {
	ways := map[string]func(d *desk){
		"resized": func(d *desk) {
			d.send(tea.WindowSizeMsg{Width: 120, Height: 40}, tea.WindowSizeMsg{Width: 44, Height: 20})
		},
		"too small for while": func(d *desk) {
			d.send(tea.WindowSizeMsg{Width: 20, Height: 6})
			d.typed("999")
			d.send(tea.WindowSizeMsg{Width: 80, Height: 24})
		},
		"back and on": func(d *desk) { d.press(tea.KeyEsc, tea.KeyEnter) },
		"refused, then back": func(d *desk) {
			d.typed(" x")
			d.press(tea.KeyEnter, tea.KeyBackspace, tea.KeyBackspace, tea.KeyEsc, tea.KeyEnter)
		},
		"help":               func(d *desk) { d.typed("?"); d.press(tea.KeyEsc) },
		"steps":              func(d *desk) { d.press(tea.KeyTab, tea.KeyTab) },
		"elsewhere and back": func(d *desk) { d.goTo(d.place("climber.mass_kg")); d.press(tea.KeyEsc) },
		"next step and back": func(d *desk) { d.press(tea.KeyPgDown, tea.KeyEsc) },
		"an older value":     func(d *desk) { d.press(tea.KeyUp, tea.KeyDown) },
	}
	for name, way := range ways {
		t.Run(name, func(t *testing.T) {
			synctest.Test(t, func(t *testing.T) {
				d := sit(t, 80, 24)
				d.press(tea.KeyEnter)
				d.goTo(d.place("climber.thigh_mm"))
				d.press(tea.KeyEnter)
				d.typed("51")
				way(d)
				if got := d.m().flow.Text(); got != "51" {
					t.Errorf("text is %q", got)
				}
				d.typed("9")
				if got := d.m().flow.Text(); got != "519" {
					t.Errorf("typing on gives %q", got)
				}
				if !strings.Contains(d.model.View(), "> 519") {
					t.Errorf("the field does not show it:\n%s", d.model.View())
				}
				d.leave()
			})
		})
	}
}

// TestKilledAndResumed ends the program without a word while somebody hangs;
// the next start offers the session, at the next reading, with the clock right.
func TestKilledAndResumed(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		dir := t.TempDir()
		d := sitAt(t, dir, 80, 24)
		d.typed("11")
		d.typed("Ash")
		d.press(tea.KeyEnter)
		d.goTo(d.place("hang"))
		d.typed("1")
		d.typed("1217")
		d.press(tea.KeyEnter)
		if err := d.m().saver.editor.Close(); err != nil { // a killed process holds no lock
			t.Fatal(err)
		}
		time.Sleep(time.Minute)

		d2 := sitAt(t, dir, 80, 24)
		d2.clock = d.clock.Add(7 * time.Minute)
		if !strings.Contains(d2.model.View(), "resume Ash") {
			t.Errorf("not offered:\n%s", d2.model.View())
		}
		d2.typed("2")
		view := d2.model.View()
		for _, want := range []string{"Nose", "Hanging 7:00", "break"} {
			if !strings.Contains(view, want) {
				t.Errorf("no %q in\n%s", want, view)
			}
		}
		d2.typed("d")
		d2.typed("1")
		d2.leave()
		h := d2.only().Fit.Hangs
		if len(h) != 1 || h[0].Ended.Sub(h[0].Started) != 7*time.Minute {
			t.Errorf("hangs: %+v", h)
		}
	})
}

// TestDownNowIsOneKey stops the clock and saves from any question of a hang,
// also with half an answer typed.
func TestDownNowIsOneKey(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := sit(t, 44, 20)
		d.press(tea.KeyEnter)
		d.hang()
		d.typed("12")
		d.clock = d.clock.Add(90 * time.Second)
		d.typed("d")
		if view := d.model.View(); !strings.Contains(view, "1. ") || !strings.Contains(view, "on the ground") {
			t.Errorf("no order of getting down:\n%s", view)
		}
		h := d.m().flow.Session.Fit.Hangs
		if last := h[len(h)-1]; last.Ended.Sub(last.Started) != 90*time.Second {
			t.Errorf("hang: %v to %v", last.Started, last.Ended)
		}
		d.typed("2")
		if !d.m().flow.Hanging() || d.m().flow.Text() != "12" {
			t.Errorf("taken back: hanging %v, text %q", d.m().flow.Hanging(), d.m().flow.Text())
		}
		d.leave()
	})
}

// TestDemoCannotBeSigned goes all the way and is refused.
func TestDemoCannotBeSigned(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := sit(t, 80, 24)
		d.press(tea.KeyEnter)
		d.typed("1")
		d.press(tea.KeyEnter, tea.KeyEnter)
		d.typed("me")
		d.press(tea.KeyEnter)
		d.typed("1")
		if d.quit || d.m().flow.Session.SignOff != nil || !strings.Contains(d.model.View(), "cannot be signed") {
			t.Errorf("signed, or not said:\n%s", d.model.View())
		}
		d.leave()
	})
}

// TestChangedMeanwhile asks which to keep when another program wrote the file.
func TestChangedMeanwhile(t *testing.T) {
	for key, want := range map[string]string{"1": "here", "2": "there"} {
		synctest.Test(t, func(t *testing.T) {
			d := sit(t, 80, 24)
			d.typed("11")
			d.typed("Ash")
			d.press(tea.KeyEnter)
			other := d.only()
			other.Place = "there"
			if err := os.WriteFile(d.m().saver.editor.Path, sessions.Encode(other), 0o600); err != nil {
				t.Fatal(err)
			}
			d.press(tea.KeyEnter)
			d.typed("here")
			d.press(tea.KeyEnter)
			if !strings.Contains(d.model.View(), "The file has changed") {
				t.Errorf("not said:\n%s", d.model.View())
			}
			d.typed(key)
			if got := d.only().Place; got != want || d.m().flow.Session.Place != want {
				t.Errorf("key %s keeps %q", key, got)
			}
			d.leave()
		})
	}
}

// TestAnyKeys presses random keys in windows of random sizes: nothing panics,
// no frame is larger than its window, and Ctrl-C always leaves.
func TestAnyKeys(t *testing.T) {
	keys := []tea.KeyType{tea.KeyEnter, tea.KeyEnter, tea.KeyEnter, tea.KeyEsc, tea.KeyTab, tea.KeyUp, tea.KeyDown, tea.KeyPgDown, tea.KeyPgUp,
		tea.KeyBackspace, tea.KeyLeft, tea.KeyRight, tea.KeyHome, tea.KeyEnd, tea.KeyDelete, tea.KeyShiftTab, tea.KeyCtrlO, tea.KeyF1, tea.KeyCtrlU, tea.KeyCtrlA}
	for seed := range uint64(8) {
		synctest.Test(t, func(t *testing.T) {
			r := rand.New(rand.NewPCG(seed, 1))
			d := sit(t, 80, 24)
			w, h := 80, 24
			for range 300 {
				switch n := r.IntN(20); {
				case n == 0:
					w, h = 1+r.IntN(210), 1+r.IntN(64)
					d.send(tea.WindowSizeMsg{Width: w, Height: h})
				case n < 9:
					d.press(keys[r.IntN(len(keys))])
				default:
					signs := []rune("0123456789112?dkwo x日é")
					d.typed(string(signs[r.IntN(len(signs))]))
				}
				inBox(t, d.model.View(), w, h)
				if d.quit {
					break
				}
			}
			if !d.quit {
				d.press(tea.KeyCtrlC)
			}
			if !d.quit {
				t.Error("Ctrl-C did not leave")
			}
			if err := d.m().finish(); err != nil {
				t.Error(err)
			}
			time.Sleep(time.Minute)
		})
	}
}
