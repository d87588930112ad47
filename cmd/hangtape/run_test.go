package main

import (
	"bytes"
	"errors"
	"io"
	"os"
	"os/exec"
	"strings"
	"syscall"
	"testing"
	"time"
)

// call runs the program in this process, on writers of the test's own.
func call(out io.Writer, args ...string) (code int, stderr string) {
	var complaints bytes.Buffer
	return run(args, testWorld(out, &complaints, "")), complaints.String()
}

// testWorld is a world on writers of the test's own, with nothing on standard
// input, sessions in dir, and the same moment at each look at the clock.
func testWorld(out, complaints io.Writer, dir string) *world {
	return &world{
		in:  strings.NewReader(""),
		out: &output{w: out},
		err: complaints,
		now: func() time.Time { return time.Date(2026, 4, 18, 9, 0, 0, 0, time.UTC) },
		env: func(name string) string { return map[string]string{"HANGTAPE_DIR": dir}[name] },
	}
}

// The process itself: a reader that is gone must not end it by a signal, and
// the exit code stays the answer.
func TestClosedPipeKeepsTheExitCode(t *testing.T) {
	r, w, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	r.Close()
	defer w.Close()
	var complaints bytes.Buffer
	c := exec.Command("hangtape", "check", "../../testdata/sessions/examples/2-one-must-fails.toml")
	c.Stdout, c.Stderr = w, &complaints
	_ = c.Run() // its error is the exit code, looked at below
	if code := c.ProcessState.ExitCode(); code != exitFails || complaints.Len() > 0 {
		t.Errorf("exit %d, stderr %q; want %d and nothing", code, &complaints, exitFails)
	}
}

type brokenWriter struct {
	err    error
	writes int
}

func (b *brokenWriter) Write([]byte) (int, error) { b.writes++; return 0, b.err }

func TestClosedPipeIsQuiet(t *testing.T) {
	out := &brokenWriter{err: syscall.EPIPE}
	if code, stderr := call(out, "demo", t.TempDir()); code != exitDone || stderr != "" {
		t.Errorf("exit %d, stderr %q", code, stderr)
	}
	if out.writes != 1 {
		t.Errorf("%d writes into a closed pipe, want 1", out.writes)
	}
}

func TestAnswerThatCannotBeWrittenIsTold(t *testing.T) {
	for _, args := range [][]string{{"version"}, {"--help"}, {"demo", t.TempDir()}} {
		code, stderr := call(&brokenWriter{err: syscall.ENOSPC}, args...)
		if code != exitFile || !strings.Contains(stderr, syscall.ENOSPC.Error()) {
			t.Errorf("%v: exit %d, stderr %q", args, code, stderr)
		}
	}
}

func TestPanicTellsThePlaceAndNothingPersonal(t *testing.T) {
	err := contain(func() error { panic("climber A weighs 84 kg") })
	var e exit
	if !errors.As(err, &e) || e.code != exitFault {
		t.Fatalf("got %#v, want exit %d", err, exitFault)
	}
	if s := err.Error(); !strings.Contains(s, "(run_test.go:") || strings.Contains(s, "84") {
		t.Errorf("message %q", s)
	}
	var nobody *world
	err = contain(func() error { _ = nobody.now(); return nil })
	if err == nil || !strings.Contains(err.Error(), "(run_test.go:") {
		t.Errorf("a fault of the runtime: %v", err)
	}
}

func TestWorseExit(t *testing.T) {
	order := []int{exitDone, exitShort, exitFails, exitFile, exitFault}
	for i, a := range order {
		for j, b := range order {
			if got, want := worse(a, b), order[max(i, j)]; got != want {
				t.Errorf("worse(%d, %d) = %d, want %d", a, b, got, want)
			}
		}
	}
}
