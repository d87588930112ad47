//go:build unix

package tui

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"sync/atomic"
	"syscall"
	"testing"
	"time"

	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/flow/flowtest"
)

// A pane is a real terminal with a shell in it, of a tmux server of its own.
type pane struct {
	t      *testing.T
	server string
}

func (p pane) tmux(args ...string) string {
	p.t.Helper()
	out, err := exec.Command("tmux", append([]string{"-L", p.server, "-f", os.DevNull}, args...)...).CombinedOutput()
	if err != nil {
		p.t.Fatalf("tmux %v: %v\n%s", args, err, out)
	}
	return string(out)
}

// sees waits until the screen shows text.
func (p pane) sees(text string) {
	p.t.Helper()
	for range 1000 {
		if strings.Contains(p.tmux("capture-pane", "-p"), text) {
			return
		}
		time.Sleep(20 * time.Millisecond)
	}
	p.t.Fatalf("never shows %q:\n%s", text, p.tmux("capture-pane", "-p"))
}

func (p pane) keys(keys ...string) { p.tmux(append([]string{"send-keys"}, keys...)...) }

func needTmux(t *testing.T) {
	t.Helper()
	if _, err := exec.LookPath("tmux"); err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("tmux is missing, and CI has to have it")
		}
		t.Skip("tmux is missing: the wizard was not tried in a real terminal")
	}
}

// newPane is a terminal of 80x24 of its own.
func newPane(t *testing.T) pane {
	t.Helper()
	p := pane{t, fmt.Sprintf("hangtape-test-%d-%d", os.Getpid(), panes.Add(1))}
	p.tmux("new-session", "-d", "-x", "80", "-y", "24", "env", "PS1=$ ", "sh", "-i")
	t.Cleanup(func() { p.tmux("kill-server") })
	return p
}

var panes atomic.Int32

// TestRealTerminal goes from the first key to a signed file in a real terminal,
// is resized, killed by a hang-up and resumed on the way, and leaves the
// terminal as it was.
func TestRealTerminal(t *testing.T) {
	needTmux(t)
	dir := t.TempDir()
	s := flowtest.Examples(t, exampleDir)["1-good-kit.toml"]
	s.Purpose = sessions.FirstFitting
	if err := os.WriteFile(filepath.Join(dir, s.ID+".toml"), sessions.Encode(s), 0o600); err != nil {
		t.Fatal(err)
	}
	p := newPane(t)
	pidFile := filepath.Join(dir, "pid") // written by the shell that becomes the wizard
	run := fmt.Sprintf("%s=%s sh -c 'echo $$ > %s; exec %s'; echo EN''DED", wizardEnv, dir, pidFile, os.Args[0])

	p.keys(run, "Enter")
	p.sees("resume " + s.Climber)
	p.keys("2")
	p.sees("And now?")
	p.tmux("resize-window", "-x", "44", "-y", "20")
	p.sees("more lines")
	p.keys("1")
	p.sees("is the climber up")
	p.keys("Enter")
	p.sees("Anything that the next")
	p.keys("Enter")
	p.sees("Note to the sign-off")
	p.keys("Enter")
	p.sees("The name of who answers")
	p.keys("-l", "demo instructor")
	p.sees("> demo instructor")
	p.signal(pidFile, syscall.SIGHUP)
	p.sees("ENDED")
	p.restored()

	p.keys("clear; "+run, "Enter")
	p.sees("resume " + s.Climber)
	p.keys("2")
	p.sees("And now?")
	for _, step := range [][2]string{{"1", "is the climber up"}, {"Enter", "Anything that the next"}, {"Enter", "Note to the sign-off"}, {"Enter", "The name of who answers"}} {
		p.keys(step[0])
		p.sees(step[1])
	}
	p.keys("-l", "demo instructor")
	p.sees("> demo instructor")
	p.keys("Enter")
	p.sees("1 sign")
	p.keys("1")
	p.sees("ENDED")
	p.restored()
	data, err := os.ReadFile(filepath.Join(dir, s.ID+".toml"))
	if err != nil || !strings.Contains(string(data), `by = "demo instructor"`) {
		t.Errorf("not signed: %v\n%s", err, data)
	}
}

// signal sends the wizard a signal; a hang-up closes its line.
func (p pane) signal(pidFile string, sig syscall.Signal) {
	p.t.Helper()
	data, err := os.ReadFile(pidFile)
	if err != nil {
		p.t.Fatal(err)
	}
	pid, err := strconv.Atoi(strings.TrimSpace(string(data)))
	if err != nil {
		p.t.Fatal(err)
	}
	if err := syscall.Kill(pid, sig); err != nil {
		p.t.Fatal(err)
	}
}

// restored fails where the terminal is still that of the wizard.
func (p pane) restored() {
	p.t.Helper()
	if got := strings.TrimSpace(p.tmux("display-message", "-p", "#{alternate_on} #{cursor_flag}")); got != "0 1" {
		p.t.Errorf("alternate screen and cursor are %q, want 0 1", got)
	}
}
