package tui

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/synctest"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/rules"
	"example.com/hangtape/sessions/demo"
	"example.com/hangtape/sessions/records"
)

// fill puts the demo sessions into a folder, and a file that is none.
func fill(t testing.TB, dir string) {
	t.Helper()
	for _, f := range demo.Files() {
		if _, err := f.Write(dir); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.WriteFile(filepath.Join(dir, "broken.toml"), []byte("format = 1\n[sesion]\n"), 0o600); err != nil {
		t.Fatal(err)
	}
}

// atPast is a wizard at the past fittings of a full folder.
func atPast(t testing.TB, width, height int) *desk {
	t.Helper()
	d := sit(t, width, height)
	fill(t, d.store.Dir())
	d.typed("4")
	return d
}

func (d *desk) sees(want ...string) {
	d.t.Helper()
	for _, w := range want {
		if !strings.Contains(d.model.View(), w) {
			d.t.Errorf("%q is not on the screen:\n%s", w, d.model.View())
		}
	}
}

func (d *desk) seesNo(unwanted ...string) {
	d.t.Helper()
	for _, w := range unwanted {
		if strings.Contains(d.model.View(), w) {
			d.t.Errorf("%q is on the screen:\n%s", w, d.model.View())
		}
	}
}

func TestPastFindsWhileOneTypes(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := atPast(t, 80, 24)
		d.sees("4 sessions; 1 bad file", "> 2026-10-10 TIGHT", "bad file: broken.toml, ")
		for _, c := range []struct {
			typed string
			n     int
		}{{"b", 4}, {`"climber B"`, 1}, {"climber:a", 2}, {"2026-10", 1}, {"fail", 1}, {"demo kit 2", 4}, {"garda-release-room", 3}, {"piece:tether", 2}, {"verdict:pass 2026", 1}, {"nobody", 0}} {
			d.press(tea.KeyCtrlU)
			d.typed(c.typed)
			if p := d.m().past; p.typed != c.typed || len(p.found)-countBad(p.found) != c.n {
				t.Errorf("%q: %d found, want %d", p.typed, len(p.found), c.n)
			}
		}
		d.sees("none of 4")
		d.press(tea.KeyEnter, tea.KeyDown, tea.KeyPgDown) // on nothing
		d.typed(strings.Repeat("x", 100) + "end")
		d.sees("Find: xx", "xend_\n")
		d.press(tea.KeyEsc)
		d.sees("4 sessions")
		d.typed("colour:")
		d.sees("Not searched: colour: is no key")
		d.press(tea.KeyBackspace)
		d.sees("none of 4")
		d.press(tea.KeyEsc, tea.KeyEsc)
		d.sees("new fitting")
		d.leave()
	})
}

// What the school's limits of today judge otherwise is marked.
func TestPastMarksMovedLimits(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := sit(t, 80, 24)
		fill(t, d.store.Dir())
		if err := os.WriteFile(filepath.Join(d.store.Dir(), "school.toml"), []byte("format = 1\n[limits]\nleast-over = 40\n"), 0o600); err != nil {
			t.Fatal(err)
		}
		d.typed("4is:moved")
		d.sees("+ limits moved", "2026-04-18 PASS+")
		d.leave()
	})
}

// Files that are one session are marked, and what a folder inside holds is not
// there.
func TestPastMarksCopies(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := sit(t, 80, 24)
		fill(t, d.store.Dir())
		data, err := os.ReadFile(filepath.Join(d.store.Dir(), "a-good-kit.toml"))
		if err != nil {
			t.Fatal(err)
		}
		if err := os.Mkdir(filepath.Join(d.store.Dir(), "old"), 0o700); err != nil {
			t.Fatal(err)
		}
		for _, name := range []string{"copy.toml", filepath.Join("old", "copy.toml")} {
			if err := os.WriteFile(filepath.Join(d.store.Dir(), name), data, 0o600); err != nil {
				t.Fatal(err)
			}
		}
		d.typed("4")
		d.sees("5 sessions; 1 bad file; ! in several files; not in folder old", "2026-04-18 PASS!")
		d.typed("is:bad")
		d.sees("1 bad file; ! in several")
		d.seesNo("none of")
		d.press(tea.KeyEnter)
		d.sees("broken.toml", "put an older copy in its place")
		d.leave()
	})
}

func countBad(list []*records.Entry) (n int) {
	for _, e := range list {
		n += count(e.Err != nil)
	}
	return n
}

func TestPastShowsComparesAndFollows(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := atPast(t, 80, 24)
		d.press(tea.KeyEnter)
		d.sees("d-half-a-year-later.toml: TIGHT (2 tight, ", "more lines", "c compare")
		d.press(tea.KeyPgDown, tea.KeyDown, tea.KeyUp)
		d.sees("thigh: 415, 411, 417 mm (414 ± 2 mm)")
		d.typed("h")
		d.sees("demo climber A: 2 sessions", "DUE: nobody has signed")
		for range 20 {
			d.press(tea.KeyPgDown)
		}
		d.sees("One rope, one union and one saddle")
		d.press(tea.KeyEsc)
		d.sees("thigh: 415, 411, 417 mm (414 ± 2 mm)") // where one was
		d.typed("c")
		// the same climber's first, never itself or a bad file
		d.sees("Hold demo climber A, 2026-10-10, against which?", "> 2026-04-18 PASS", "  2026-04-20 UNKNOWN")
		d.seesNo("  2026-10-10 TIGHT", "bad file: ")
		d.press(tea.KeyEsc)
		d.sees("Past fittings")
		d.press(tea.KeyEnter)
		d.typed("c")
		d.typed("2026-04-18")
		d.press(tea.KeyEnter)
		// from the earlier to the later one, whichever was chosen first
		d.sees("Two sessions side by side", "2026-04-18, first fitting: PASS", "garda-release-room: PASS, then TIGHT")
		d.press(tea.KeyEsc)
		d.sees("Past fittings", "Find: 2026-04-18_")
		d.leave()
	})
}

func TestPastTellsWhoIsDue(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := atPast(t, 80, 24)
		d.press(tea.KeyTab)
		d.sees("Climbers, and who is due", "3 climbers, 3 due", "> DUE not signed demo climber A, 2 sessions")
		d.typed("CLIMBER c")
		d.sees("> DUE not signed demo climber C, 1 session")
		d.seesNo("demo climber B")
		d.press(tea.KeyEnter)
		d.sees("demo climber C, all sessions", "demo climber C: 1 session")
		d.press(tea.KeyEsc)
		d.sees("Find: CLIMBER c_")
		d.press(tea.KeyTab)
		d.sees("Cords by age", "tied", "left hitch loop", "demo kit 2")
		d.press(tea.KeyEsc)
		d.sees("Find: CLIMBER c_")
		d.press(tea.KeyEsc, tea.KeyEsc)
		d.sees("Past fittings", "4 sessions")
		d.leave()
	})
}

func TestPastTellsWhatIsWrong(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := atPast(t, 80, 24)
		d.typed("is:bad")
		d.press(tea.KeyEnter)
		d.sees("broken.toml", "sesion", "did you mean")
		d.press(tea.KeyEsc)
		// a file that went away since
		d.press(tea.KeyCtrlU)
		if err := os.Remove(filepath.Join(d.store.Dir(), "d-half-a-year-later.toml")); err != nil {
			t.Fatal(err)
		}
		d.press(tea.KeyEnter)
		d.sees("there is no such file")
		d.press(tea.KeyEsc)
		d.leave()

		d = sit(t, 80, 24)
		d.typed("4")
		d.sees("0 sessions")
		d.press(tea.KeyEnter, tea.KeyUp, tea.KeyDown)
		d.leave()
	})
}

// An answer for a page that was left is dropped.
func TestPastDropsWhatCameTooLate(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := atPast(t, 80, 24)
		d.press(tea.KeyEnter, tea.KeyEsc)
		old := d.m().pageGen
		d.press(tea.KeyDown, tea.KeyEnter)
		d.sees("demo climber C")
		d.send(pageMsg{gen: old, err: os.ErrInvalid}, listedMsg{gen: 0, err: os.ErrInvalid})
		d.sees("demo climber C")
		d.seesNo("invalid")
		d.leave()
	})
}

func TestPlainPast(t *testing.T) {
	store := openAt(t, t.TempDir(), time.Now)
	fill(t, store.Dir())
	say := func(lines ...string) string {
		var out bytes.Buffer
		o := Options{Store: store, Now: func() time.Time { return time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC) },
			In: strings.NewReader("past\n" + strings.Join(lines, "\n") + "\n"), Out: &out}
		if err := RunPlain(o); err != nil {
			t.Fatal(err)
		}
		return out.String()
	}
	for want, lines := range map[string][]string{
		"1: 2026-10-10, TIGHT, demo climber A, demo beech, demo kit 2\n":     {""},
		"5: bad file: broken.toml, ":                                         {""},
		"\n4 sessions; 1 bad file":                                           {""},
		"put an older copy in its place":                                     {"5"},
		"did you mean session":                                               {"5"},
		"1: 2026-04-19, FAIL, demo climber B":                                {"fail"},
		"a-good-kit.toml: PASS (":                                            {"4"},
		"demo climber A: 2 sessions":                                         {"history 1"},
		"thigh\n  A 414 ± 2 mm ×3  B 414 ± 2 mm ×3\n  change same reading\n": {"compare 4 1"},
		"2026-04-11    228  left hitch loop":                                 {"cords"},
		"none of 4":                                                          {"nowhere"},
		"Not done: compare takes two":                                        {"compare 1 99"},
		"Not searched: colour: is no key":                                    {"colour:x"},
	} {
		if got := say(lines...); !strings.Contains(got, want) {
			t.Errorf("%v: no %q in\n%s", lines, want, got)
		}
	}
	if got := say("back", "quit"); !strings.HasSuffix(got, "past fittings.\n") {
		t.Errorf("back leads elsewhere:\n%s", got)
	}
}

// BenchmarkPastFrame is one key of the search at 120x40 over 10,000 sessions,
// update and view.
func BenchmarkPastFrame(b *testing.B) {
	list := &records.List{}
	start := time.Date(2010, 1, 1, 8, 0, 0, 0, time.UTC)
	for i := range 10_000 {
		e := &records.Entry{
			Path: fmt.Sprintf("/s/%d.toml", i), ID: fmt.Sprintf("01KPFXRYR03M4T5W6X7Y%06d", i), Purpose: "re-check",
			Started: start.Add(time.Duration(i) * 13 * time.Hour),
			Climber: fmt.Sprintf("climber %d of the school", i%500), Place: fmt.Sprintf("beech %d by the barn", i%40),
			Instructor: fmt.Sprintf("instructor %d", i%7), Kit: fmt.Sprintf("school kit %d", i%12),
		}
		e.Outcome = []rules.Verdict{rules.Pass, rules.Tight, rules.Fail, rules.Unknown}[i%4]
		list.Entries = append(list.Entries, e)
	}
	now := func() time.Time { return start }
	var model tea.Model = New(Options{Store: openAt(b, b.TempDir(), now), Now: now})
	model, _ = model.Update(tea.WindowSizeMsg{Width: 120, Height: 40})
	model, _ = model.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("4")})
	model, _ = model.Update(listedMsg{gen: 1, list: list})
	var keys []tea.KeyMsg
	for _, r := range "barn climber 49 fail" {
		keys = append(keys, tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}})
	}
	keys = append(keys, tea.KeyMsg{Type: tea.KeyCtrlU})
	for i := 0; b.Loop(); i++ {
		model, _ = model.Update(keys[i%len(keys)])
		if !strings.Contains(model.View(), "10000") {
			b.Fatal(model.View())
		}
	}
}
