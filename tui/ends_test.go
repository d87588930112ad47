//go:build unix

package tui

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// TestEnds ends the wizard in a real terminal in every way but its own, with one
// answer given and another half typed: the terminal is restored, and the answer
// that was given is on disk.
func TestEnds(t *testing.T) {
	needTmux(t)
	for name, c := range map[string]struct {
		end   func(p pane, dir, pidFile string)
		says  string
		spoil bool // the terminal cannot be restored
	}{
		"a hang-up":         {func(p pane, _, pid string) { p.signal(pid, syscall.SIGHUP) }, "ENDED 0", false},
		"a request to end":  {func(p pane, _, pid string) { p.signal(pid, syscall.SIGTERM) }, "ENDED 0", false},
		"an interrupt":      {func(p pane, _, pid string) { p.signal(pid, syscall.SIGINT) }, "ENDED 0", false},
		"killed":            {func(p pane, _, pid string) { p.signal(pid, syscall.SIGKILL) }, "ENDED 137", true},
		"a fault in update": {func(p pane, dir, _ string) { p.fault(breaks(dir, "update")) }, "ENDED 4", false},
		"a fault in view":   {func(p pane, dir, _ string) { p.fault(breaks(dir, "view")) }, "ENDED 4", false},
		"a fault, command":  {func(p pane, dir, _ string) { p.fault(breaks(dir, "command")) }, "ENDED 4", false},
		"Ctrl-C":            {func(p pane, _, _ string) { p.keys("C-c") }, "ENDED 0", false},
		"stopped a while":   {func(p pane, _, pid string) { p.stop(pid) }, "GONE 0", false},
		"suspended for now": {func(p pane, _, _ string) { p.suspend() }, "GONE 0", false},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			dir := t.TempDir()
			pidFile := filepath.Join(dir, "pid")
			p := newPane(t)
			p.keys(fmt.Sprintf("%s=%s sh -c 'echo $$ > %s; exec %s'; echo EN''DED $?", wizardEnv, dir, pidFile, os.Args[0]), "Enter")
			p.sees("new fitting")
			p.keys("1")
			p.sees("Why does the climber hang")
			p.keys("1")
			p.sees("The name that the session is kept")
			p.keys("-l", "Ash")
			p.keys("Enter")
			p.sees("Who measures")
			p.keys("-l", "half a na")
			p.sees("> half a na")
			c.end(p, dir, pidFile)
			p.sees(c.says)
			if !c.spoil {
				p.restored()
				if said := p.tmux("capture-pane", "-p", "-S", "-"); strings.Contains(said, "Ash") || strings.Contains(said, "half a na") {
					t.Errorf("who climbs is left on the terminal:\n%s", said)
				}
			}
			store := openAt(t, dir, time.Now)
			f := theOnly(t, store)
			if f.Session.Climber != "Ash" {
				t.Fatalf("on disk: %+v", f.Session)
			}
			ed, _, err := store.Edit(f.Name)
			if err != nil {
				t.Fatalf("it is still held: %v", err)
			}
			if err := ed.Close(); err != nil {
				t.Error(err)
			}
		})
	}
}

// fault breaks the wizard down at its next message.
func (p pane) fault(file string) {
	p.t.Helper()
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		p.t.Fatal(err)
	}
}

// stop stops the wizard from outside, so that the shell writes over its screen, and
// goes on: the screen is drawn anew.
func (p pane) stop(pidFile string) {
	p.t.Helper()
	p.signal(pidFile, syscall.SIGSTOP)
	p.sees("ENDED 147")                 // 128 + SIGSTOP
	p.keys("fg; echo GO''NE $?", "C-j") // the shell takes the terminal as it finds it
	p.sees("Who measures")
	p.keys("-l", "me")
	p.sees("> half a name")
	if shown := p.tmux("capture-pane", "-p"); strings.Contains(shown, "ENDED") {
		p.t.Errorf("what the shell wrote still stands there:\n%s", shown)
	}
	p.keys("C-c")
}

// suspend stops the wizard, sees the shell and its own screen, and goes on.
func (p pane) suspend() {
	p.t.Helper()
	p.keys("C-z")
	p.sees("ENDED 148") // stopped, 128 + SIGTSTP
	p.restored()
	p.keys("fg; echo GO''NE $?", "Enter")
	p.sees("> half a na")
	p.keys("-l", "me")
	p.sees("> half a name")
	p.keys("C-c")
}
