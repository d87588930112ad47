package tui

import (
	"strings"
	"testing"
	"testing/synctest"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/fit"
	"example.com/hangtape/tui/flow"
	"example.com/hangtape/tui/sideview"
)

// Every reading that the side view can show is shown with the tape at it, also
// where nothing has been read yet.
func TestSideViewShowsWhereTheTapeGoes(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		for _, first := range []tea.KeyMsg{{Type: tea.KeyEnter}, {Type: tea.KeyRunes, Runes: []rune("1")}} {
			d := sit(t, 120, 40)
			d.send(first)
			shown := 0
			for step, st := range d.m().flow.Steps {
				for i, a := range st.Asks {
					if a.Kind != flow.Reading || a.Reading >= fit.NumReadings {
						continue
					}
					if _, _, ok := a.Reading.Landmarks(); !ok {
						continue
					}
					m := d.m()
					if len(m.flow.Session.Fit.Hangs) == 0 {
						m.flow.Session.Fit.Hangs = make([]fit.Hang, 1)
					}
					m.flow.At = flow.Place{Step: step, Ask: i}
					if m.layout(); !strings.Contains(m.View(), "\n") || !hasAsked(m.View()) {
						t.Errorf("%s: no landmark is asked for in\n%s", a.Key, m.View())
					}
					shown++
				}
			}
			if shown < 20 {
				t.Errorf("only %d readings were shown", shown)
			}
			d.leave()
		}
	})
}

// hasAsked says whether a line of the key is marked.
func hasAsked(view string) bool {
	for r := range fit.NumReadings {
		if from, to, ok := r.Landmarks(); ok {
			for _, m := range []fit.Landmark{from, to} {
				if letter, ok := sideview.Letter(m); ok && (strings.Contains(view, ">"+string(letter)+" ") || strings.Contains(view, ">"+string(letter)+"~")) {
					return true
				}
			}
		}
	}
	return false
}

// The arrows go through all poses and come round; another key is back at the
// question with what was typed.
func TestSideViewOverAQuestion(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := sit(t, 44, 20)
		d.press(tea.KeyEnter)
		d.hang()
		d.typed("12")
		before := d.model.View()
		d.typed("v")
		seen := map[string]bool{}
		for range sidePoses {
			view := d.model.View()
			inBox(t, view, 44, 20)
			seen[strings.Split(view, "\n")[1]] = true
			d.press(tea.KeyDown)
		}
		if len(seen) != len(sidePoses) {
			t.Errorf("poses seen: %v", seen)
		}
		d.press(tea.KeyUp, tea.KeyEsc)
		if d.m().screen != onAsk || d.model.View() != before {
			t.Errorf("back from the side view:\n%s\nwant\n%s", d.model.View(), before)
		}
		d.leave()
	})
}

// Where climbers' names are typed, v is a letter.
func TestSideViewKeyIsALetterInWords(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := sit(t, 80, 24)
		d.typed("1")
		d.goTo(d.place("session.climber"))
		d.typed("Eve v")
		if d.m().screen != onAsk || d.m().flow.Text() != "Eve v" {
			t.Errorf("typed %q", d.m().flow.Text())
		}
		d.leave()
	})
}

// The check that is looked at in the review is the one that is drawn.
func TestSideViewFromTheReview(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := sit(t, 80, 24)
		d.press(tea.KeyEnter)
		m := d.m()
		m.looked = "garda-under-connector"
		d.model = *m
		d.typed("v")
		for _, want := range []string{poseTitles[fit.ThighLevel], "garda-under-connector: G to c "} {
			if !strings.Contains(d.model.View(), want) {
				t.Errorf("no %q in\n%s", want, d.model.View())
			}
		}
		d.leave()
	})
}

// With nothing known the side view says so, and what to do.
func TestNothingToDraw(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := sit(t, 80, 24)
		d.typed("1v")
		if !strings.Contains(d.model.View(), "Nothing to draw yet") {
			t.Errorf("drawn from nothing:\n%s", d.model.View())
		}
		d.leave()
	})
}

// Line by line the side view is told before each pose in which the climber hangs,
// and on request.
func TestPlainTellsTheSideView(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := sit(t, 80, 24)
		tell := func(in string) string {
			var out strings.Builder
			o := d.m().opts
			o.In, o.Out = strings.NewReader("demo\n"+in), &out
			if err := RunPlain(o); err != nil {
				t.Fatal(err)
			}
			return out.String()
		}
		if said := tell("view\n"); !strings.Contains(said, "The Garda hitch stops 65 mm under the connector.\n") {
			t.Errorf("on request:\n%s", said)
		}
		_, aloft, ok := strings.Cut(tell("go "+stepNumber(t, tell("steps\n"), "Seated on the main bridge")+"\n"), ": Seated on the main bridge.\n")
		if !ok || !strings.HasPrefix(aloft, "Side view, the climber faces right and hangs seated on the main bridge.\nThe tape hangs beside the rope: read it level with the hip point.\n") {
			t.Errorf("before the seated readings:\n%s", aloft)
		}
		d.leave()
	})
}
