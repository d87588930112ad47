//go:build unix

package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/hangtape/sessions"
)

var long = flag.Bool("long", false, "kill the wizard at every moment of a session in place of a few, and press 100,000 keys")

// script is a session as it is typed: what each answer leads to on the screen, and
// what it leaves in the file.
var script = []struct{ keys, shows, file string }{
	{"1", "Why does the climber hang", ""},
	{"1", "The name that the session is kept", `purpose = "first-fitting"`},
	{"Ash\r", "Who measures", `climber = "Ash"`},
	{"Bea\r", "The tree or the site", `instructor = "Bea"`},
	{"tree\r", "Unit that you read", `place = "tree"`},
	{"2", "Accuracy class", `unit = "cm"`},
	{"1", "Smallest division", `class = "I"`},
	{"2 mm\r", "Do laid lengths start", `division_mm = 2`},
	{"2", "Diameter of the rope", `hook = false`},
	{"11\r", "Elongation of the rope", `diameter_mm = 11`},
	{"2.1\r", "Least rope", `elongation_percent = 2.1`},
}

// A moment is when the wizard is killed: so many keys into an answer of the
// script, at once after the last of them or once the screen shows what follows.
type moment struct {
	answer, keys int
	shown        bool
}

func moments() []moment {
	var all []moment
	for i, s := range script {
		for k := range len(s.keys) {
			all = append(all, moment{i, k + 1, false})
		}
		if i < len(script)-1 {
			all = append(all, moment{i, len(s.keys), true})
		}
	}
	return all
}

// TestKilledWizardLosesNoAnswerButTheLast kills the program as people have it, in
// a terminal, and starts it again: what it showed as answered is there but for the
// last answer, nothing is torn, nothing is left behind, and it goes on.
func TestKilledWizardLosesNoAnswerButTheLast(t *testing.T) {
	path, times, step := program(t), 1, 6
	if *long {
		times, step = 20, 1
	}
	all := moments()
	killed := 0
	for n := 0; n < len(all)*times; n += step {
		m := all[n%len(all)]
		what := fmt.Sprintf("killed in answer %d after %d keys, shown %v", m.answer, m.keys, m.shown)
		home := t.TempDir()
		dir := filepath.Join(home, "sessions")
		s := startSilent(t, path, home)
		s.waitFor(firstFrame)
		for i, a := range script[:m.answer+1] {
			keys := a.keys
			if i == m.answer {
				keys = keys[:m.keys]
			}
			if _, err := s.tty.WriteString(keys); err != nil {
				t.Fatal(err)
			}
			if i < m.answer || m.shown {
				s.waitFor(a.shows)
			}
		}
		s.kill()
		killed++
		sure := m.answer - 1 // answers that have to be there
		if m.shown {
			sure++
		}
		file := wholeFile(t, what, dir)
		for i, a := range script[:max(0, sure)] {
			if !strings.Contains(file, a.file) {
				t.Errorf("%s: answer %d is lost: no %s in\n%s", what, i, a.file, file)
			}
		}
		again := startSilent(t, path, home)
		again.waitFor(firstFrame)
		if strings.Contains(file, `climber = "Ash"`) {
			again.waitFor("resume Ash")
		}
		again.kill()
		left, err := filepath.Glob(filepath.Join(dir, ".*.tmp"))
		if err != nil || len(left) > 0 {
			t.Errorf("%s: left behind: %v, %v", what, left, err)
		}
	}
	t.Logf("killed at %d moments", killed)
}

// wholeFile is the one session of a folder, which has to be whole; empty where
// there is none.
func wholeFile(t *testing.T, what, dir string) string {
	t.Helper()
	names, err := filepath.Glob(filepath.Join(dir, "*.toml"))
	if err != nil || len(names) > 1 {
		t.Fatalf("%s: %v, %v", what, names, err)
	}
	if len(names) == 0 {
		return ""
	}
	data, err := os.ReadFile(names[0])
	if err == nil {
		_, err = sessions.Decode(names[0], data)
	}
	if err != nil {
		t.Errorf("%s: %v\n%s", what, err, data)
	}
	return string(data)
}
