package tui

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"testing"
	"testing/synctest"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/fit"
	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/flow"
	"example.com/hangtape/tui/flow/flowtest"
)

const exampleDir = "../testdata/sessions/examples"

// TestFullScreenTypesASession types each example through the full screen, key
// by key, and finds its file and its verdicts.
func TestFullScreenTypesASession(t *testing.T) {
	for name, want := range flowtest.Examples(t, exampleDir) {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			synctest.Test(t, func(t *testing.T) {
				d := sit(t, 80, 24)
				d.clock = want.Started
				d.typed("1")
				d.as(want)
				y := flowtest.New(want)
				for n := 0; !d.quit; n++ {
					s := &d.m().flow
					if n > 2000 || s.Said.Kind == flow.Refused {
						t.Fatalf("stuck at %s: %s", s.Ask().Key, s.Said.Text)
					}
					if p, ok := y.Elsewhere(s); ok {
						d.goTo(p)
						s = &d.m().flow
					}
					d.clock = y.Now(s)
					text, option, isOption := y.Answer(s)
					if isOption {
						d.typed(fmt.Sprint(option + 1))
						continue
					}
					d.typed(text)
					d.press(tea.KeyEnter)
				}
				if err := d.m().finish(); err != nil {
					t.Fatal(err)
				}
				time.Sleep(time.Minute)
				same(t, d.only(), want)
			})
		})
	}
}

// as makes the open session the one that is wanted in what nobody types: its
// id, its start, whom it follows and the defaults of its school.
func (d *desk) as(want *sessions.Session) {
	m := d.m()
	id := m.flow.Session.ID
	m.flow = flow.Start(flowtest.Blank(want), m.flow.Config)
	m.flow.Session.ID = id
	field := m.newForm()
	m.layout()
	d.model = *m
	d.run(field)
}

// goTo goes to a question over the list of steps, as a person would.
func (d *desk) goTo(p flow.Place) {
	d.press(tea.KeyTab)
	for i, e := range d.m().entries() {
		if e.step == p.Step {
			d.typed(fmt.Sprint(i + 1))
			break
		}
	}
	d.press(tea.KeyEnter)
	for i, e := range d.m().entries() {
		if d.m().screen == onSteps && e.place == p {
			d.typed(fmt.Sprint(i + 1))
			d.press(tea.KeyEnter)
			break
		}
	}
	if d.m().flow.At.Step != p.Step || d.m().flow.At.Ask != p.Ask {
		d.t.Fatalf("went to %v, want %v", d.m().flow.At, p)
	}
}

// same compares what was saved with what was to be typed, and what the rules
// say of both.
func same(t *testing.T, got, want *sessions.Session) {
	t.Helper()
	want = want.Clone()
	want.ID = got.ID
	if g, w := string(sessions.Encode(got)), string(sessions.Encode(want)); g != w {
		t.Errorf("file: got\n%s\nwant\n%s", g, w)
	}
	g, err1 := got.Judge()
	w, err2 := want.Judge()
	if err1 != nil || err2 != nil || len(g.Checks) == 0 || fmt.Sprint(g) != fmt.Sprint(w) {
		t.Errorf("verdicts differ: %v %v", err1, err2)
	}
}

// TestPlainTypesASession types each example line by line and finds the same file.
func TestPlainTypesASession(t *testing.T) {
	for name, want := range flowtest.Examples(t, exampleDir) {
		t.Run(name, func(t *testing.T) {
			clock := want.Started
			now := func() time.Time { return clock }
			store := openAt(t, t.TempDir(), now)
			var out bytes.Buffer
			p := newPlain(Options{Store: store, Now: now, In: strings.NewReader("new\n"), Out: &out})
			if !p.start() {
				t.Fatalf("no session\n%s", out.String())
			}
			id := p.flow.Session.ID
			p.flow = flow.Start(flowtest.Blank(want), p.flow.Config)
			p.flow.Session.ID = id
			y := flowtest.New(want)
			for n := 0; !p.flow.Left; n++ {
				if n > 2000 {
					t.Fatalf("stuck at %s\n%s", p.flow.Ask().Key, out.String())
				}
				if place, ok := y.Elsewhere(&p.flow); ok {
					p.answer(wayTo(t, &p.flow, place))
				}
				clock = y.Now(&p.flow)
				text, option, isOption := y.Answer(&p.flow)
				if isOption {
					text = fmt.Sprint(option + 1)
				}
				p.answer(text)
			}
			if err := p.editor.Close(); err != nil || p.unsaved != nil {
				t.Fatal(err, p.unsaved)
			}
			same(t, theOnly(t, store).Session, want)
		})
	}
}

// wayTo is what is typed in lines to go to a question.
func wayTo(t *testing.T, s *flow.State, to flow.Place) string {
	t.Helper()
	for i, g := range s.Asked() {
		for j, p := range g.Places {
			if p == to {
				return fmt.Sprintf("go %d %d", i+1, j+1)
			}
		}
	}
	t.Fatalf("nothing leads to %v", to)
	return ""
}

// TestEnterNeverMeasures presses Enter on every question, with somebody hanging
// too, and finds no reading and no label in the file.
func TestEnterNeverMeasures(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := sit(t, 80, 24)
		d.typed("1")
		seen := map[string]bool{}
		for range 400 {
			if d.quit {
				break
			}
			m := d.m()
			a := m.flow.Ask()
			seen[m.flow.Slot(a)] = true
			switch {
			case a.Key == "hang" && len(m.flow.Session.Fit.Hangs) == 0:
				d.typed("1") // up: the heights are asked for
			case strings.HasPrefix(a.Key, "kit.") && strings.Count(a.Key, ".") == 1 && a.Kind == flow.Choice:
				d.typed("1") // the piece is there: what is laid on is asked for
			default:
				d.press(tea.KeyEnter)
			}
		}
		if !d.quit {
			t.Fatal("Enter does not lead out")
		}
		if err := d.m().finish(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(time.Minute)
		for r := range fit.NumReadings {
			if key := r.Info().Table + "." + r.Info().Key; !seen[strings.Replace(key, "hangs.", "hangs.1.", 1)] {
				t.Errorf("%s was not asked for", key)
			}
		}
		for line := range strings.Lines(string(sessions.Encode(d.only()))) {
			if key, value, ok := strings.Cut(line, " = "); ok && strings.HasSuffix(key, "_mm") && key != "division_mm" && value != "[]\n" {
				t.Errorf("Enter measured: %s", line)
			}
		}
	})
}

// TestKeysTypedAhead sends a whole burst without a pause: each key belongs to
// the question that is asked when its turn comes.
func TestKeysTypedAhead(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := sit(t, 80, 24)
		d.typed("1")
		var burst []tea.Msg
		for _, k := range "1demo climber\rdemo instructor\rtree\r1" {
			switch k {
			case '\r':
				burst = append(burst, tea.KeyMsg{Type: tea.KeyEnter})
			default:
				burst = append(burst, tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{k}})
			}
		}
		d.send(burst...)
		s := d.m().flow.Session
		if s.Climber != "demo climber" || s.Instructor != "demo instructor" || s.Place != "tree" || s.Unit != sessions.MM {
			t.Errorf("got %q %q %q %q", s.Climber, s.Instructor, s.Place, s.Unit)
		}
		d.leave()
	})
}

// TestSignsThatArriveTogether hands signs over as the library does where they
// were typed faster than it looks: in one message.
func TestSignsThatArriveTogether(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := sit(t, 80, 24)
		together := func(text string) { d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text)}) }
		d.typed("1")
		together("1Ash")
		d.press(tea.KeyEnter, tea.KeyTab)
		if got := d.m().flow.Session.Climber; got != "Ash" {
			t.Errorf("the climber is %q", got)
		}
		groups := d.m().flow.Asked()
		together("10")
		d.press(tea.KeyEnter)
		if got, want := d.m().flow.At.Step, groups[9].Step; got != want {
			t.Errorf("10 leads to step %d, want %d", got, want)
		}
		d.leave()
	})
}

// TestPlainEndOfInput leaves at the end of the input with all saved, wherever
// that is, also in the middle of a line.
func TestPlainEndOfInput(t *testing.T) {
	for in, climber := range map[string]string{"": "", "new": "", "new\n1\nAsh\n": "Ash", "new\n1\nAsh": "Ash", "nonsense\nnew\n9\n1\n=skip\nback\nback\n": "skip"} {
		now := func() time.Time { return time.Date(2026, 5, 7, 9, 0, 0, 0, time.UTC) }
		store := openAt(t, t.TempDir(), now)
		if err := RunPlain(Options{Store: store, Now: now, In: strings.NewReader(in), Out: io.Discard}); err != nil {
			t.Errorf("%q: %v", in, err)
		}
		files := filesIn(t, store)
		if (climber != "") != (len(files) == 1) {
			t.Errorf("%q: %d files", in, len(files))
		} else if climber != "" && files[0].Session.Climber != climber {
			t.Errorf("%q: climber %q", in, files[0].Session.Climber)
		}
	}
}
