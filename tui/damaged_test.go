package tui

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/synctest"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/sessions"
)

// cutSession leaves an unfinished session in dir whose file something has cut in
// half since.
func cutSession(t testing.TB, dir string) (path string, was []byte) {
	t.Helper()
	d := sitAt(t, dir, 80, 24)
	d.burst("11Ash\rBea\rtree\r")
	path = d.m().saver.editor.Path
	d.leave()
	was, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, was[:len(was)/2], 0o600); err != nil {
		t.Fatal(err)
	}
	return path, was
}

// TestDamagedSessionIsTakenFromItsLastGoodCopy cuts the file of an unfinished
// session: the first screen, the list and past fittings offer the last good copy;
// it is taken by a key of its own, the damaged file is kept beside it, and the
// session goes on at the question that was open.
func TestDamagedSessionIsTakenFromItsLastGoodCopy(t *testing.T) {
	for name, c := range map[string]struct {
		size    [2]int
		several bool
		keys    string
		after   string
	}{
		"the only one":           {[2]int{80, 24}, false, "2", "Unit that you read and type in"},
		"on a phone":             {[2]int{44, 20}, false, "2", "Unit that you read and type in"},
		"one of several":         {[2]int{44, 20}, true, "21\r", "Unit that you read and type in"},
		"found by words":         {[2]int{80, 24}, true, "2birk\r", "Unit that you read and type in"},
		"among the past ones":    {[2]int{80, 24}, true, "4is:bad\r", "Past fittings"},
		"past ones, on a phone":  {[2]int{44, 20}, false, "4\r", "Past fittings"},
		"left first, then taken": {[2]int{44, 20}, false, "2\x1b2", "Unit that you read and type in"},
	} {
		t.Run(name, func(t *testing.T) {
			synctest.Test(t, func(t *testing.T) {
				dir := t.TempDir()
				path, was := cutSession(t, dir)
				if c.several {
					s := example(t, "1-good-kit.toml")
					s.Climber = "Birk"
					writeSession(t, dir, s)
				}
				d := sitAt(t, dir, c.size[0], c.size[1])
				if !c.several {
					d.sees("damaged: Ash")
				}
				cut, err := os.ReadFile(path)
				if err != nil {
					t.Fatal(err)
				}
				for _, k := range c.keys {
					if k == 0x1b {
						d.press(tea.KeyEsc)
						continue
					}
					d.burst(string(k))
				}
				inBox(t, d.model.View(), c.size[0], c.size[1])
				d.sees("This file is damaged", "it was cut", "There is a last good copy, of ", "Ash", "1  take the last good copy")
				d.seesNo("2  go on")
				d.typed("2") // nothing to go on with
				if now, err := os.ReadFile(path); err != nil || !bytes.Equal(now, cut) {
					t.Errorf("before it was asked for: %v\n%s", err, now)
				}
				d.typed("1")
				inBox(t, d.model.View(), c.size[0], c.size[1])
				d.sees("The last good copy was taken", ".toml.damaged")
				d.press(tea.KeyEnter)
				d.sees(c.after)
				d.leave()
				if now, err := os.ReadFile(path); err != nil || !bytes.Equal(now, was) {
					t.Errorf("%v, the session is\n%s", err, now)
				}
				if kept, err := os.ReadFile(path + ".damaged"); err != nil || !bytes.Equal(kept, cut) {
					t.Errorf("%v, kept is\n%s", err, kept)
				}
			})
		})
	}
}

// TestSessionCutBetweenLinesIsNotTakenForWhole: a file that lost its last lines
// alone still is a session. It can be gone on with, or the last good copy taken,
// and looking at it takes nothing.
func TestSessionCutBetweenLinesIsNotTakenForWhole(t *testing.T) {
	for _, key := range []string{"1", "2"} {
		synctest.Test(t, func(t *testing.T) {
			dir := t.TempDir()
			path := writeSession(t, dir, example(t, "1-good-kit.toml"))
			ed, _, err := openAt(t, dir, time.Now).Edit(path)
			if err != nil {
				t.Fatal(err)
			}
			ed.Close()
			was, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			cut := was[:bytes.LastIndexByte(was[:len(was)-1], '\n')+1]
			if _, err := sessions.Decode("", cut); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(path, cut, 0o600); err != nil {
				t.Fatal(err)
			}
			d := sitAt(t, dir, 44, 20)
			d.typed("2")
			inBox(t, d.model.View(), 44, 20)
			d.sees("This file is damaged", "it was cut", "1  take the last good copy", "2  go on with the file as it is")
			d.typed(key)
			want := cut
			if key == "1" {
				want = was
				d.press(tea.KeyEnter)
			}
			if d.m().screen != onAsk {
				t.Errorf("after %s:\n%s", key, d.model.View())
			}
			d.leave()
			if now, err := os.ReadFile(path); err != nil || !bytes.Equal(now, want) {
				t.Errorf("after %s: %v\n%s", key, err, now)
			}
			var out strings.Builder
			d = sitAt(t, dir, 80, 24)
			lines := "resume\n1\nfile\nquit\n"
			if key == "2" { // it still is damaged
				lines = "resume\n1\nyes\nfile\nquit\n"
			}
			if err := RunPlain(Options{Store: d.store, Now: d.now, In: strings.NewReader(lines), Out: &out}); err != nil {
				t.Error(err)
			}
			if strings.Contains(lines, "yes") != strings.Contains(out.String(), "\n\"yes\" is none of them.\n") {
				t.Errorf("line by line, what is no answer is not told:\n%s", &out)
			}
			if asks := strings.Contains(out.String(), "Or file, to go on"); asks != (key == "2") || !strings.Contains(out.String(), "Left; all is saved.") {
				t.Errorf("line by line, after %s:\n%s", key, &out)
			}
		})
	}
}

// TestEditedFileIsToldByItsFault: a slip of an editor is told with its line, and the
// copy from before it is there for the taking.
func TestEditedFileIsToldByItsFault(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		dir := t.TempDir()
		path, was := cutSession(t, dir)
		if err := os.WriteFile(path, bytes.Replace(was, []byte("place"), []byte("plaice"), 1), 0o600); err != nil {
			t.Fatal(err)
		}
		d := sitAt(t, dir, 80, 24)
		d.typed("2")
		d.sees("line ", "session.plaice", "did you mean session.place?", "mended by hand")
		d.leave()
	})
}

// TestTakingTwiceTakesOnce presses the key again before the disk has answered, and
// takes while another program has the session.
func TestTakingTwiceTakesOnce(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		dir := t.TempDir()
		path, was := cutSession(t, dir)
		if err := os.WriteFile(path, was, 0o600); err != nil {
			t.Fatal(err)
		}
		other, _, err := openAt(t, dir, time.Now).Edit(path)
		if err != nil {
			t.Fatal(err)
		}
		defer other.Close()
		if err := os.WriteFile(path, was[:len(was)/2], 0o600); err != nil {
			t.Fatal(err)
		}
		d := sitAt(t, dir, 80, 24)
		d.typed("21")
		d.sees("Not taken: is being edited by process", "1  take the last good copy")
		d.leave()
	})
	synctest.Test(t, func(t *testing.T) {
		dir := t.TempDir()
		cutSession(t, dir)
		d := sitAt(t, dir, 80, 24)
		d.typed("2")
		m := d.m()
		one := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("1")}
		first, second := m.damagedKey(one), m.damagedKey(one)
		if first == nil || second != nil {
			t.Error("taken twice")
		}
		d.model = *m
		d.run(first)
		d.sees("The last good copy was taken")
		d.leave()
	})
}

func TestDamagedLineByLine(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		dir := t.TempDir()
		path, was := cutSession(t, dir)
		say := func(in string) string {
			t.Helper()
			var out strings.Builder
			d := sitAt(t, dir, 80, 24)
			if err := RunPlain(Options{Store: d.store, Demo: d.m().opts.Demo, Now: d.now, In: strings.NewReader(in), Out: &out}); err != nil {
				t.Error(err)
			}
			return out.String()
		}
		has := func(out string, want ...string) {
			t.Helper()
			for _, w := range want {
				if !strings.Contains(out, w) {
					t.Errorf("no %q in\n%s", w, out)
				}
			}
		}
		has(say("resume\n1\nwhat\nback\nquit\n"), "1: 2026-05-07 09:00, Ash, damaged; there is a last good copy", "it was cut", "There is a last good copy, of ", "Type take for the last good copy")
		has(say("past\nis:bad\n1\nback\nback\nquit\n"), "There is a last good copy, of ", "Type take for")
		if now, err := os.ReadFile(path); err != nil || bytes.Equal(now, was) {
			t.Errorf("taken unasked: %v", err)
		}
		has(say("resume\n1\ntake\nquit\n"), "The last good copy was taken", "is kept in "+filepath.Base(path)+".damaged", "Unit that you read and type in", "Left; all is saved.")
		if now, err := os.ReadFile(path); err != nil || !bytes.Equal(now, was) {
			t.Errorf("%v, the session is\n%s", err, now)
		}
	})
}

// TestEveryAnswerReachesTheCopy: what is typed is in the last good copy as soon as
// nobody waits for the disk, in both modes, and not only at the end.
func TestEveryAnswerReachesTheCopy(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := sit(t, 80, 24)
		d.burst("11Ash\r")
		path := filepath.Join(d.store.LastGoodPath(), filepath.Base(d.m().saver.editor.Path))
		synctest.Wait()
		f, err := sessions.ReadFile(path, nil)
		if err != nil || f.Session.Climber != "Ash" {
			t.Errorf("the copy: %v, %+v", err, f)
		}
		d.leave()
	})
}
