package tui

import (
	"bytes"
	"io"
	"strings"
	"testing"
	"testing/synctest"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/fit"
	"example.com/hangtape/sessions"
)

// What somebody with cold hands types, pastes or means, and what is kept of it.
var oddAnswers = []struct {
	at, typed string // Enter follows
	want      string // what is kept, as it is shown; empty: nothing
	says      string // part of what is said of it
}{
	{"climber.thigh_mm", `17 1/4 in`, "438.15 mm", ""},
	{"climber.thigh_mm", `17¼"`, "438.15 mm", ""},
	{"climber.thigh_mm", `1'5 1/4`, "438.15 mm", ""},
	{"climber.thigh_mm", `43,8 cm`, "438 mm", ""},
	{"climber.thigh_mm", `0.438 m`, "438 mm", ""},
	{"climber.thigh_mm", "438\u00a0mm", "438 mm", ""},
	{"climber.thigh_mm", `438.`, "", "point or comma"},
	{"climber.thigh_mm", `171/4 in`, "", "42.75 or 17 1/4"},
	{"climber.thigh_mm", `17 5/4 in`, "", "5/4"},
	{"climber.thigh_mm", `17 1/0 in`, "", "1/0"},
	{"climber.thigh_mm", `1,438`, "", "1438 mm"},
	{"climber.thigh_mm", `43'8`, "", ""},
	{"climber.thigh_mm", `-438`, "", "no sign"},
	{"climber.thigh_mm", `+438`, "", "no sign"},
	{"climber.thigh_mm", `0`, "", "above 0"},
	{"climber.thigh_mm", `-0`, "", "sign"},
	{"climber.thigh_mm", `4e2`, "", `"e" is no unit`},
	{"climber.thigh_mm", `0x1B6`, "", `"x" is no unit`},
	{"climber.thigh_mm", `4_38`, "", `"_"`},
	{"climber.thigh_mm", `NaN`, "", `"nan" is no unit`},
	{"climber.thigh_mm", `inf`, "", `"inf" is no unit`},
	{"climber.thigh_mm", `٤٣٨`, "", "0 to 9"},
	{"climber.thigh_mm", `４３８`, "", "0 to 9"},
	{"climber.thigh_mm", `四百三十八`, "", ""},
	{"climber.thigh_mm", `438±5`, "", "±"},
	{"climber.thigh_mm", `~438`, "", `"~"`},
	{"climber.thigh_mm", `438 or so`, "", `"or"`},
	{"climber.thigh_mm", `433-443`, "", "range"},
	{"climber.thigh_mm", `438 mm 440 mm`, "", ""},
	{"climber.thigh_mm", `438;440`, "", ""},
	{"climber.thigh_mm", `=438`, "", ""},
	{"climber.thigh_mm", `438 kg`, "", "a length"},
	{"climber.thigh_mm", `438 furlong`, "", `"furlong" is no unit`},
	{"climber.thigh_mm", `O.438 m`, "", ""},
	{"climber.thigh_mm", `l0l`, "", ""},
	{"climber.thigh_mm", strings.Repeat("4", 400), "", ""},
	{"climber.thigh_mm", `100 m`, "", ""},
	{"climber.thigh_mm", `"; DROP TABLE`, "", ""},
	{"climber.thigh_mm", `$(reboot)`, "", ""},
	{"climber.thigh_mm", `<b>438</b>`, "", ""},
	{"climber.thigh_mm", "🌲", "", ""},
	{"climber.mass_kg", `12 st 5`, "78.47148 kg", ""},
	{"climber.mass_kg", `185 lb`, "83.914588 kg", ""},
	{"climber.mass_kg", `84,5 kg`, "84.5 kg", ""},
	{"climber.mass_kg", `84500 g`, "84.5 kg", ""},
	{"climber.mass_kg", `0`, "", "above 0"},
	{"climber.mass_kg", `-84`, "", "no sign"},
	{"climber.mass_kg", `84 mm`, "", "a mass"},
	{"climber.mass_kg", `840`, "", "250 kg"},
	{"climber.mass_kg", `eighty`, "", ""},
	{"climber.mass_kg", `84 85`, "", "two numbers"},
	{"rope.ahead_mm", `-20`, "-20 mm", ""},
	{"rope.ahead_mm", `−20`, "-20 mm", ""},
	{"rope.ahead_mm", `0`, "0 mm", ""},
	{"rope.elongation_percent", `0.021`, "", "0.3 %"},
	{"rope.elongation_percent", `2,1 %`, "2.1 %", ""},
	{"rope.elongation_percent", `2.1 mm`, "", "a percentage"},
	{"rope.diameter_mm", `7/16"`, "11.1125 mm", ""},
	{"rope.diameter_mm", `11 cm`, "", "20 mm"},
	{"kit.hitch_left.wraps", `4.5`, "", "whole number"},
	{"kit.hitch_left.wraps", `-4`, "", "no sign"},
	{"kit.hitch_left.wraps", `four`, "", ""},
	{"kit.tether.strength_kn", `17000 N`, "17 kN", ""},
	{"kit.tether.strength_kn", `17000`, "", "60 kN"},
	{"kit.tether.strength_kn", `17 kg`, "", "a force"},
	{"kit.inspected", `2026-02-30`, "", "is not a date"},
	{"kit.inspected", `18.4.2026`, "", "is not a date"},
	{"kit.inspected", `yesterday`, "", "is not a date"},
	{"kit.inspected", `2026-04-18`, "2026-04-18", ""},
	{"session.climber", `Ōta 日本 O'Neill "Bob" <b>`, `Ōta 日本 O'Neill "Bob" <b>`, ""},
	{"session.climber", `../../etc/passwd`, `../../etc/passwd`, ""},
	{"session.climber", `-84`, `-84`, ""},
	{"session.climber", `nan`, `nan`, ""},
}

// emptied is the example with nothing in what the odd answers are typed into.
func emptied(t *testing.T) *sessions.Session {
	t.Helper()
	s := example(t, "1-good-kit.toml")
	s.Fit.Laid[fit.Thigh], s.Fit.Laid[fit.Ahead] = nil, nil
	s.Fit.Mass, s.Fit.Rope.Elongation, s.Fit.Rope.Diameter = fit.Number{}, fit.Number{}, fit.Number{}
	s.Fit.Kit.Pieces[fit.PieceHitchLeft].Wraps, s.Fit.Kit.Pieces[fit.PieceTether].Strength = fit.Number{}, fit.Number{}
	s.Inspected, s.Climber = time.Time{}, ""
	return s
}

// TestOddAnswers types each into the full screen, where what is not taken stays
// in the field, and answers with it line by line; both keep the same.
func TestOddAnswers(t *testing.T) {
	for _, o := range oddAnswers {
		t.Run(o.at+" "+o.typed[:min(len(o.typed), 20)], func(t *testing.T) {
			t.Parallel()
			synctest.Test(t, func(t *testing.T) {
				dir := t.TempDir()
				path := writeSession(t, dir, emptied(t))
				d := sitAt(t, dir, 80, 24)
				d.typed("2")
				d.goTo(d.place(o.at))
				a := d.m().flow.Ask()
				d.typed(o.typed)
				d.press(tea.KeyEnter)
				s := &d.m().flow
				if got := strings.Join(a.Values(&s.Draft, "mm"), ", "); got != o.want {
					t.Errorf("keeps %q, want %q", got, o.want)
				}
				if o.want == "" && s.Text() != o.typed {
					t.Errorf("the field has %q", s.Text())
				}
				said := s.Said.Text
				d.leave()
				d.readsBack(path)

				var out bytes.Buffer
				path = writeSession(t, dir, emptied(t))
				p := resumed(t, d.store, path, &out)
				at, _ := p.flow.Find(o.at)
				p.flow.At = at
				p.answer("=" + o.typed) // as words of its own go
				if got := strings.Join(a.Values(&p.flow.Draft, "mm"), ", "); got != o.want {
					t.Errorf("line by line %q, want %q", got, o.want)
				}
				if !strings.Contains(said, o.says) || !strings.Contains(out.String(), o.says) {
					t.Errorf("says %q and\n%s\nwant %q", said, out.String(), o.says)
				}
				if err := p.editor.Close(); err != nil {
					t.Error(err)
				}
				d.readsBack(path)
			})
		})
	}
}

// readsBack holds that what was saved is a session.
func (d *desk) readsBack(path string) {
	d.t.Helper()
	if _, err := d.store.Load(path); err != nil {
		d.t.Errorf("the file does not read back: %v", err)
	}
}

// resumed is a wizard in lines on the session at path.
func resumed(t *testing.T, store *sessions.Store, path string, out io.Writer) *plain {
	t.Helper()
	now := func() time.Time { return time.Date(2026, 5, 7, 9, 30, 0, 0, time.UTC) }
	o := Options{Store: store, Now: now, In: strings.NewReader(""), Out: out}
	m := Model{opts: o}
	opened := m.resume(path)().(openedMsg)
	if opened.err != nil {
		t.Fatal(opened.err)
	}
	p := newPlain(o)
	p.open(opened)
	return p
}

// TestPastedTextFillsOneFieldAtMost pastes what does not belong into one field.
func TestPastedTextFillsOneFieldAtMost(t *testing.T) {
	for _, text := range []string{"438\n439\n440\n", "438\r\n", "\t438", strings.Repeat("438\n", 20), "\x1b[2J438", "438\x00", "\x1b]0;title\x07", "\u202e834", strings.Repeat("9", 10_000)} {
		synctest.Test(t, func(t *testing.T) {
			dir := t.TempDir()
			path := writeSession(t, dir, emptied(t))
			d := sitAt(t, dir, 80, 24)
			d.typed("2")
			d.goTo(d.place("climber.thigh_mm"))
			a := d.m().flow.Ask()
			before, at := sessions.Encode(&d.m().flow.Session), d.m().flow.At
			d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text), Paste: true})
			if !bytes.Equal(before, sessions.Encode(&d.m().flow.Session)) || d.m().flow.At != at {
				t.Errorf("pasting %.40q answered", text)
			}
			if view := d.model.View(); strings.ContainsAny(view, "\x00\x07\u202e") || strings.Contains(view, "\x1b[2J") {
				t.Errorf("pasting %.40q reaches the terminal: %q", text, view)
			}
			inBox(t, d.model.View(), 80, 24)
			d.press(tea.KeyEnter)
			if n := a.Told(&d.m().flow.Draft); n > 1 {
				t.Errorf("pasting %.40q gave %d readings", text, n)
			}
			d.leave()
			d.readsBack(path)
		})
	}
}

// TestClockThatJumpsBack sets the clock back, and on by years, while somebody
// hangs: no hang lasts less than nothing, and the file reads back.
func TestClockThatJumpsBack(t *testing.T) {
	for _, jump := range []time.Duration{-time.Second, -time.Hour, -24 * 365 * time.Hour, 24 * 365 * 30 * time.Hour} {
		synctest.Test(t, func(t *testing.T) {
			dir := t.TempDir()
			path := writeSession(t, dir, emptied(t))
			d := sitAt(t, dir, 80, 24)
			d.typed("2")
			d.goTo(d.place("hang"))
			d.typed("1")
			if !d.m().flow.Hanging() {
				t.Fatalf("not hanging:\n%s", d.model.View())
			}
			d.clock = d.clock.Add(jump)
			d.send(tickMsg{})
			for _, line := range strings.Split(d.model.View(), "\n") {
				if strings.Contains(line, "Hanging -") {
					t.Errorf("%v: %s", jump, line)
				}
			}
			d.typed("d") // down now
			d.leave()
			f, err := d.store.Load(path)
			if err != nil {
				t.Fatalf("%v: %v", jump, err)
			}
			h := f.Session.Fit.Hangs
			if last := h[len(h)-1]; last.Ended.IsZero() || last.Ended.Before(last.Started) {
				t.Errorf("%v: a hang from %v to %v", jump, last.Started, last.Ended)
			}
		})
	}
}

// TestUnitSwitchedHalfWay reads on in inches: what was taken in mm stays as it is,
// and a number without a unit is one in inches.
func TestUnitSwitchedHalfWay(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		dir := t.TempDir()
		s := emptied(t)
		path := writeSession(t, dir, s)
		d := sitAt(t, dir, 80, 24)
		d.typed("2")
		d.goTo(d.place("session.unit"))
		d.typed("3")
		d.goTo(d.place("climber.thigh_mm"))
		d.burst("17 1/4\r")
		d.leave()
		f, err := d.store.Load(path)
		if err != nil {
			t.Fatal(err)
		}
		s.Unit, s.Fit.Laid[fit.Thigh] = sessions.Inch, []float64{438.15}
		if got, want := string(sessions.Encode(f.Session)), string(sessions.Encode(s)); got != want {
			t.Errorf("the file is\n%s\nwant\n%s", got, want)
		}
	})
}
