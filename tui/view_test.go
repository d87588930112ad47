package tui

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"testing/synctest"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/flow"
)

// sizes are the windows in which screens are looked at: a phone, the classic
// terminal, a large one.
var sizes = [][2]int{{44, 20}, {80, 24}, {120, 40}, {200, 60}}

// scenes are screens worth looking at, and the way there.
var scenes = []struct {
	name string
	to   func(d *desk)
}{
	{"first", func(*desk) {}},
	{"purpose", func(d *desk) { d.typed("1") }},
	{"refused", func(d *desk) {
		d.typed("1")
		d.goTo(d.place("climber.thigh_mm"))
		d.typed("4 1 5")
		d.press(tea.KeyEnter)
	}},
	{"long-question", func(d *desk) { d.typed("1"); d.goTo(d.place("tape.hook")) }},
	{"review", func(d *desk) { d.press(tea.KeyEnter) }},
	{"side", func(d *desk) { d.press(tea.KeyEnter); d.typed("v") }},
	{"side-next-pose", func(d *desk) { d.press(tea.KeyEnter); d.typed("v"); d.press(tea.KeyDown) }},
	{"steps", func(d *desk) { d.press(tea.KeyEnter, tea.KeyTab) }},
	{"help", func(d *desk) { d.press(tea.KeyEnter); d.typed("?") }},
	{"help-reading", func(d *desk) { d.press(tea.KeyEnter); d.hang(); d.typed("?"); d.press(tea.KeyPgDown) }},
	{"help-unread", func(d *desk) {
		d.typed("1")
		d.goTo(d.place("climber.thigh_mm"))
		d.typed("?")
		d.press(tea.KeyPgDown)
	}},
	{"demo-sign-off", func(d *desk) { d.press(tea.KeyEnter); d.typed("1"); d.typed("2") }},
	{"drill-start", func(d *desk) { d.press(tea.KeyEnter); d.typed("1") }},
	{"drill-force", func(d *desk) { d.press(tea.KeyEnter); d.typed("1"); d.option("the force") }},
	{"drill-rehearsal", func(d *desk) {
		d.press(tea.KeyEnter)
		d.typed("1")
		d.option("one move")
		d.typed("1")
		d.typed("12 m")
		d.press(tea.KeyEnter, tea.KeyPgDown)
	}},
	{"drill-step", func(d *desk) { d.press(tea.KeyEnter); d.typed("1"); d.drillTo("drill.steps.ease-left") }},
	{"drill-stopped", func(d *desk) {
		d.press(tea.KeyEnter)
		d.typed("1")
		d.drillTo("drill.steps.hang-on-tether")
		d.typed("2")
	}},
	{"drill-result", func(d *desk) {
		d.press(tea.KeyEnter)
		d.typed("1")
		d.typed("1")
		d.drilled(map[string]string{"steps.load-low.sag_mm": "120", "steps.ease-both.garda_mm": "540"})
		d.typed("1")
		d.press(tea.KeyEnter)
	}},
	{"nose", func(d *desk) {
		d.press(tea.KeyEnter)
		d.hang()
		d.typed("1217")
		d.press(tea.KeyEnter, tea.KeyEnter)
		d.typed("1905")
	}},
	{"break", func(d *desk) {
		d.press(tea.KeyEnter)
		d.hang()
		d.clock = d.clock.Add(6 * time.Minute)
		d.press(tea.KeyEnter)
	}},
	{"advice", func(d *desk) { d.short(); d.option("what to change") }},
	{"advice-checks", func(d *desk) { d.short(); d.option("what to change"); d.press(tea.KeyPgDown, tea.KeyPgDown) }},
	{"set", func(d *desk) { d.short(); d.option("what to change"); d.option("least change") }},
	{"stale", func(d *desk) { d.changed(); d.press(tea.KeyEnter) }},
	{"changed-review", func(d *desk) { d.changed(); d.typed("d"); d.option("on the ground") }},
	{"check-help", func(d *desk) { d.short(); d.press(tea.KeyRight); d.typed("?") }},
	{"advice-conflict", func(d *desk) { d.shortWith("bounds_mm = [950, 980]"); d.option("what to change") }},
	{"advice-fixed", func(d *desk) { d.shortWith(`change = "fixed"`); d.option("what to change") }},
	{"what-if", func(d *desk) { d.short(); d.option("what if"); d.press(tea.KeyPgUp, tea.KeyRight, tea.KeyRight) }},
	{"what-if-window", func(d *desk) { d.short(); d.option("what if"); d.typed("4"); d.press(tea.KeyLeft, tea.KeyLeft) }},
	{"what-if-sure", func(d *desk) { d.short(); d.option("what if"); d.press(tea.KeyPgUp, tea.KeyEnter) }},
	{"what-if-held", func(d *desk) { d.typed("1"); d.goTo(d.place("what-if")) }},
	{"past", func(d *desk) { fill(d.t, d.store.Dir()); d.typed("4") }},
	{"past-found", func(d *desk) { fill(d.t, d.store.Dir()); d.typed("4piece:tether") }},
	{"past-due", func(d *desk) { fill(d.t, d.store.Dir()); d.typed("4"); d.press(tea.KeyTab) }},
	{"past-session", func(d *desk) { fill(d.t, d.store.Dir()); d.typed("4"); d.press(tea.KeyEnter) }},
	{"past-compare", func(d *desk) {
		fill(d.t, d.store.Dir())
		d.typed("4")
		d.press(tea.KeyEnter)
		d.typed(`cclimber:"demo climber a" 2026-04`)
		d.press(tea.KeyEnter)
	}},
	{"past-history", func(d *desk) {
		fill(d.t, d.store.Dir())
		d.typed("4")
		d.press(tea.KeyEnter)
		d.typed("h")
		d.press(tea.KeyPgDown)
	}},
	{"list", func(d *desk) {
		for i, name := range []string{"A climber with a name of some length", "Ash", "Birk"} {
			s := example(d.t, "1-good-kit.toml")
			s.ID, s.Climber = fmt.Sprintf("01KR0TVZ00B18KMSWGEJB4H4X%d", i), name
			writeSession(d.t, d.store.Dir(), s)
		}
		d.typed("3")
	}},
	{"damaged", func(d *desk) {
		s := example(d.t, "1-good-kit.toml")
		path := writeSession(d.t, d.store.Dir(), s)
		ed, _, err := d.store.Edit(path)
		if err != nil {
			d.t.Fatal(err)
		}
		ed.Close()
		at := time.Date(2026, 5, 7, 8, 0, 0, 0, time.Local)
		if err := os.Chtimes(filepath.Join(d.store.LastGoodPath(), filepath.Base(path)), at, at); err != nil {
			d.t.Fatal(err)
		}
		if err := os.WriteFile(path, sessions.Encode(s)[:900], 0o600); err != nil {
			d.t.Fatal(err)
		}
		d.typed("4")
		d.press(tea.KeyEnter)
	}},
	{"students", func(d *desk) {
		d.typed("1" + "1Ash")
		d.press(tea.KeyEnter, tea.KeyCtrlO)
		d.typed("1" + "1Mir")
		d.press(tea.KeyEnter, tea.KeyCtrlO)
	}},
	{"down-now", func(d *desk) { d.press(tea.KeyEnter); d.hang(); d.typed("d") }},
}

// place is where the answer with that key is asked for.
func (d *desk) place(key string) flow.Place {
	at, ok := d.m().flow.Find(key)
	if !ok {
		d.t.Fatalf("nothing asks for %s", key)
	}
	return at
}

// hang lets the demo climber go up again.
func (d *desk) hang() {
	d.goTo(d.place("hang"))
	d.typed("1")
}

// short opens the demo climber whose bridge is too short, at the review.
func (d *desk) short() { d.shortWith("") }

// shortWith is short with a line in place of every other line with its key.
func (d *desk) shortWith(line string) {
	d.press(tea.KeyEnter) // the demo files are written
	m := d.m()
	path := filepath.Join(m.opts.Demo.Dir(), "b-short-bridge.toml")
	if key, _, ok := strings.Cut(line, "="); ok {
		data, err := os.ReadFile(path)
		if err != nil {
			d.t.Fatal(err)
		}
		data = regexp.MustCompile(`(?m)^`+key+`=.*`).ReplaceAll(data, []byte(line))
		if err := os.WriteFile(path, data, 0o600); err != nil {
			d.t.Fatal(err)
		}
	}
	d.run(m.resume(path))
	m = d.m()
	m.flow.Demo = true
	d.model = *m
	d.goTo(d.place("review"))
}

// option takes the option that starts with word.
func (d *desk) option(word string) {
	d.typed(fmt.Sprint(optionNamed(d.t, &d.m().flow, word)))
}

// changed sets the least change and lets the climber go up again.
func (d *desk) changed() {
	d.short()
	d.option("what to change")
	d.option("least change")
	d.option("set")
	d.goTo(d.place("hang"))
	d.option("up now")
	d.typed("1205")
	d.press(tea.KeyEnter)
}

func TestViews(t *testing.T) {
	for _, scene := range scenes {
		for _, size := range sizes {
			for _, ascii := range []bool{false, true} {
				name := fmt.Sprintf("%s_%dx%d", scene.name, size[0], size[1])
				if ascii {
					name += "_ascii"
				}
				t.Run(name, func(t *testing.T) {
					t.Parallel()
					synctest.Test(t, func(t *testing.T) {
						d := sitAt(t, evenFolder(t), size[0], size[1])
						m := d.m()
						m.theme.ascii, m.opts.ASCII = ascii, ascii
						d.model = *m
						scene.to(d)
						got := strings.ReplaceAll(d.model.View(), d.store.Dir(), "/sessions")
						inBox(t, d.model.View(), size[0], size[1])
						if lines := strings.Split(got, "\n"); d.m().screen == onAsk && !strings.Contains(lines[len(lines)-1], " help") {
							t.Errorf("the last line does not say how to get help: %q", lines[len(lines)-1])
						}
						if ascii {
							for _, r := range got {
								if r > 126 {
									t.Errorf("%q is not ASCII", r)
								}
							}
						}
						if !ascii || size[0] < 200 {
							golden(t, name, got)
						}
						d.leave()
					})
				})
			}
		}
	}
}

// evenFolder is a folder whose path is always as long: the first screen wraps it,
// and the names of temporary folders end in a number of any length.
func evenFolder(t *testing.T) string {
	t.Helper()
	base, err := os.MkdirTemp("", "views")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = os.RemoveAll(base) })
	const length = 42
	return filepath.Join(base, strings.Repeat("s", max(1, length-len(base)-1)))
}

// inBox fails where a view is larger than its window.
func inBox(t testing.TB, view string, width, height int) {
	t.Helper()
	lines := strings.Split(view, "\n")
	if len(lines) > height {
		t.Errorf("%d lines in a window of %d", len(lines), height)
	}
	for _, l := range lines {
		if w := ansi.StringWidth(l); w > width {
			t.Errorf("%d cells in a window of %d: %q", w, width, l)
		}
	}
}

func golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("../testdata/views", name+".txt")
	var lines []string
	for _, l := range strings.Split(got, "\n") {
		lines = append(lines, strings.TrimRight(l, " "))
	}
	got = strings.Join(lines, "\n") + "\n"
	if *update {
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("view %s is\n%s\nwant\n%s", name, got, want)
	}
}
