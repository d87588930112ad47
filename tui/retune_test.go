package tui

import (
	"slices"
	"strings"
	"testing"
	"testing/synctest"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/flow"
	"example.com/hangtape/tui/flow/flowtest"
)

// TestReTune goes through a re-tune: what is new is said, what is not stale is
// kept by one act, and what is asked for on the way settles every must. Its keys
// are the digits of what is read with one Enter each, and nine more: three to the
// session, that nothing more is new of the climber and of the kit, that the rest
// is kept, that nobody has inspected the kit, up, and down. Nine heights and how
// far the rope hangs ahead are 47 keys; what a new piece adds makes 60 of them and
// more, so that such a re-tune cannot stay under 60.
func TestReTune(t *testing.T) {
	for name, c := range map[string]struct {
		news string   // options picked of the climber, then of the kit
		laid []string // lengths and labels that are asked for
		most int      // key presses
	}{
		"a tether": {"1" + "81", []string{"rope.ahead_mm", "kit.garda.to_tether_mm", "kit.tether.length_mm", "kit.tether.cord_mm", "kit.tether.strands", "kit.tether.strength_kn"}, 71},
		"a saddle": {"1" + "21", []string{"rope.ahead_mm", "kit.main_bridge.length_mm", "kit.main_bridge.rings_mm", "kit.backup_bridge.length_mm", "kit.backup_bridge.rings_mm"}, 76},
		"boots":    {"21" + "1", []string{"climber.shin_mm", "climber.waist_mm", "rope.ahead_mm", "kit.foot_loop.length_mm"}, 72},
		"nothing":  {"1" + "1", []string{"rope.ahead_mm"}, 57},
	} {
		t.Run(name, func(t *testing.T) {
			synctest.Test(t, func(t *testing.T) {
				want := once(flowtest.Examples(t, exampleDir)["2-one-must-fails.toml"])
				d := begin(t, want, "3")
				n := 1 + 2 + len(c.news) + 1
				d.press(tea.KeyEnter) // the latest one
				d.press(tea.KeyEnter) // it is a re-tune
				if view := d.model.View(); !strings.Contains(view, "What of the climber is new?") {
					t.Errorf("not asked what is new:\n%s", view)
				}
				d.typed(c.news)
				if got := d.m().flow.Ask().Key; got != "new.keep" {
					t.Fatalf("at %s, not asked what to keep", got)
				}
				d.typed("1")
				var laid []string
				read := 0 // keys of numbers and of the Enter that takes each
				y := flowtest.New(want)
				if c.laid[0] != "rope.ahead_mm" || len(c.laid) > 1 {
					staleIsNotKept(t, d, want, c.laid[len(c.laid)-1])
				}
				for d.m().flow.Ask().Key != "review" {
					a := d.m().flow.Ask()
					if a.Kind == flow.Amount || a.Kind == flow.Reading && !a.Reading.IsHeight() {
						if a.Key != "climber.mass_kg" && !slices.Contains(laid, a.Key) {
							laid = append(laid, a.Key)
						}
					}
					if a.Key == "climber.mass_kg" {
						d.typed("k") // it is what it was
						n++
						continue
					}
					keys := d.answer(y)
					if n += keys; a.Kind == flow.Amount || a.Kind == flow.Reading {
						read += keys
					}
				}
				if fit.SortKeys(laid); !slices.Equal(laid, fit.SortKeys(c.laid)) {
					t.Errorf("asked for %v, want %v", laid, c.laid)
				}
				const around = 9
				if rest := n - read - (len(c.news) - 2); n > c.most || rest > around+1+count(name == "a saddle") { // the mass; whose rings
					t.Errorf("%d keys, at most %d; %d of them for numbers", n, c.most, read)
				}
				for _, check := range d.m().flow.Report.Checks {
					if check.Kind == rules.Must && check.Verdict == rules.Unknown {
						t.Errorf("%s is unknown: %v", check.Name, check.Missing)
					}
				}
				s := d.m().flow.Session
				d.leave()
				for _, k := range s.Fit.Kept {
					if k.Session != want.ID || !k.Taken.Equal(want.Started) {
						t.Errorf("kept %+v", k)
					}
				}
				if len(s.Fit.Kept) == 0 || s.Purpose != sessions.ReTune || s.Follows != want.ID {
					t.Errorf("%d kept, %s, follows %q", len(s.Fit.Kept), s.Purpose, s.Follows)
				}
			})
		})
	}
}

// staleIsNotKept goes to a stale length, whose old value is shown as stale, and
// tries to keep it.
func staleIsNotKept(t *testing.T, d *desk, want *sessions.Session, key string) {
	t.Helper()
	at := d.m().flow.At
	d.goTo(d.place(key))
	if a := d.m().flow.Ask(); a.Keepable() && len(d.m().flow.EarlierOf(a)) > 0 {
		if view := d.model.View(); !strings.Contains(view, "(stale: ") {
			t.Errorf("%s of %s is not shown as stale:\n%s", key, want.ID, view)
		}
		if d.typed("k"); d.m().flow.Ask().Told(&d.m().flow.Draft) > 0 || !strings.Contains(d.m().flow.Said.Text, "not kept") {
			t.Errorf("%s was kept: %s", key, d.m().flow.Said.Text)
		}
	}
	d.press(tea.KeyEsc)
	if d.m().flow.At != at {
		t.Fatalf("back leads to %v, not %v", d.m().flow.At, at)
	}
}

// TestReTuneKeepsByAnActAlone presses Enter through a re-tune: nothing is kept.
func TestReTuneKeepsByAnActAlone(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := begin(t, once(flowtest.Examples(t, exampleDir)["2-one-must-fails.toml"]), "3")
		for range 200 {
			if d.press(tea.KeyEnter); d.quit {
				break
			}
		}
		if !d.quit {
			t.Fatal("Enter does not lead out")
		}
		for _, k := range d.m().flow.Session.Fit.Kept {
			if !strings.HasSuffix(k.Key, "cord_mm") && k.Key != "kit.garda.inside_width_mm" {
				t.Errorf("Enter kept %s", k.Key)
			}
		}
		d.leave()
	})
}

// TestASecondEnterPassesNothingOver types a reading of a re-tune as in a first
// fitting, with an Enter to take it and one to go on: nothing is passed over, nor
// is a climber taken to be down.
func TestASecondEnterPassesNothingOver(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := begin(t, once(flowtest.Examples(t, exampleDir)["2-one-must-fails.toml"]), "3")
		d.burst("\r3" + "1" + "998\r\r")
		if a, said := d.m().flow.Ask(), d.m().flow.Said.Text; a.Reading != fit.ConnectorBottom || !strings.Contains(said, "Enter once more") {
			t.Errorf("at %s: %s", a.Key, said)
		}
		d.press(tea.KeyEnter)
		if a := d.m().flow.Ask(); a.Reading != fit.GardaLevel {
			t.Errorf("Enter once more does not go on: at %s", a.Key)
		}
		d.goTo(d.place("hangs.1.garda_taut_mm"))
		d.burst("1534\r\r") // taken, and out of habit
		if !d.m().flow.Hanging() || d.m().flow.Ask().Key != "down" {
			t.Errorf("an Enter too many has the climber down: at %s", d.m().flow.Ask().Key)
		}
		d.leave()
	})
}
