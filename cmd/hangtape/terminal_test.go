//go:build unix

package main

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/creack/pty"
)

// firstFrame is on the first screen, and nowhere else before it.
const firstFrame = "Checks lengths only"

// program builds the program as people have it and returns its path.
func program(tb testing.TB) string {
	tb.Helper()
	path := filepath.Join(tb.TempDir(), "hangtape")
	if out, err := exec.Command("go", "build", "-o", path, ".").CombinedOutput(); err != nil {
		tb.Fatalf("go build: %v\n%s", err, out)
	}
	return path
}

// silent is the program on a terminal that answers no query.
type silent struct {
	tb  testing.TB
	cmd *exec.Cmd
	tty *os.File
	out bytes.Buffer
}

func startSilent(tb testing.TB, path, home string) *silent {
	tb.Helper()
	s := &silent{tb: tb, cmd: exec.Command(path)}
	s.cmd.Env = []string{"TERM=xterm-256color", "COLORTERM=truecolor", "LANG=C.UTF-8", "HOME=" + home, "HANGTAPE_DIR=" + filepath.Join(home, "sessions")}
	tty, err := pty.StartWithSize(s.cmd, &pty.Winsize{Rows: 24, Cols: 80})
	if err != nil {
		tb.Fatal(err)
	}
	s.tty = tty
	tb.Cleanup(s.kill)
	return s
}

// kill ends the program where it still runs; that it was killed is no news.
func (s *silent) kill() {
	_ = s.cmd.Process.Kill()
	_ = s.cmd.Wait()
	_ = s.tty.Close()
}

// waitFor reads until the output has text; a terminal that stays silent for
// half a minute will not say it any more.
func (s *silent) waitFor(text string) {
	s.tb.Helper()
	buf := make([]byte, 4096)
	for !bytes.Contains(s.out.Bytes(), []byte(text)) {
		if err := s.tty.SetReadDeadline(time.Now().Add(30 * time.Second)); err != nil {
			s.tb.Fatal(err)
		}
		n, err := s.tty.Read(buf)
		s.out.Write(buf[:n])
		if err != nil {
			s.tb.Fatalf("%v before %q came; so far:\n%q", err, text, s.out.String())
		}
	}
}

// A program that asks the terminal waits for the answer, and a terminal that
// gives none stalls the start by seconds.
func TestStartAsksTheTerminalNothing(t *testing.T) {
	s := startSilent(t, program(t), t.TempDir())
	s.waitFor(firstFrame)
	for name, query := range map[string]string{
		"colours":           "]11;?",
		"foreground":        "]10;?",
		"cursor position":   "\x1b[6n",
		"device attributes": "\x1b[c",
		"its version":       "\x1b[>0q",
		"key protocol":      "\x1b[?u",
		"synchronised mode": "\x1b[?2026$p",
	} {
		if strings.Contains(s.out.String(), query) {
			t.Errorf("asks for %s: %q", name, s.out.String())
		}
	}
	if _, err := s.tty.WriteString("\x03"); err != nil {
		t.Fatal(err)
	}
	err := s.cmd.Wait()
	if failed := (*exec.ExitError)(nil); errors.As(err, &failed) {
		t.Errorf("ctrl+c ends with exit %d, want 0", failed.ExitCode())
	}
}

// BenchmarkStart is from the start of the process to its first frame, on a
// terminal that answers nothing.
func BenchmarkStart(b *testing.B) {
	path, home := program(b), b.TempDir()
	for b.Loop() {
		s := startSilent(b, path, home)
		s.waitFor(firstFrame)
		s.kill()
	}
}
