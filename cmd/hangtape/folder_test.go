package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/sessionstest"
)

// inFolder runs a command on a folder of sessions.
func inFolder(t *testing.T, dir string, args ...string) (out, complaints string, code int) {
	t.Helper()
	var o, c bytes.Buffer
	code = run(args, testWorld(&o, &c, dir))
	return o.String(), c.String(), code
}

// A folder in which every fifth file is damaged, each in another way: all the
// others are listed, exported and forgotten as if nothing was.
func TestDamagedFilesStopNothing(t *testing.T) {
	dir := t.TempDir()
	bad := sessionstest.Ways
	paths, err := sessionstest.Write(dir, 5*bad)
	if err != nil {
		t.Fatal(err)
	}
	good := len(paths) - bad
	for n := range bad {
		if err := sessionstest.Damage(paths[5*n], n); err != nil {
			t.Fatal(err)
		}
	}
	summary := fmt.Sprintf("hangtape: %d files cannot be read as a session", bad)
	for range 2 { // without and with the cache
		out, complaints, code := inFolder(t, dir, "list")
		if code != exitFile || !strings.HasPrefix(complaints, summary) ||
			!strings.Contains(out, fmt.Sprintf("\n%d sessions: ", good)) || !strings.Contains(out, fmt.Sprintf("\n%d files that cannot be read as a session\n", bad)) {
			t.Errorf("list: exit %d, %s\n%s", code, complaints, out)
		}
		if strings.Contains(out, "\x1b") {
			t.Error("list: an escape sequence")
		}
	}
	out, complaints, code := inFolder(t, dir, "list", "--json")
	if n := strings.Count(out, `"error":`); code != exitFile || n != bad || strings.Count(out, "\n") != len(paths) {
		t.Errorf("list --json: exit %d, %d errors, %s", code, n, complaints)
	}
	for _, args := range [][]string{{"export"}, {"export", "--anonymous"}, {"export", "--format", "json"}} {
		rows := good
		if args[len(args)-1] != "json" {
			rows++ // the header
		}
		out, complaints, code := inFolder(t, dir, args...)
		if n := strings.Count(out, "\n"); code != exitFile || n != rows || !strings.HasPrefix(complaints, summary) {
			t.Errorf("%v: exit %d, %d lines, want %d, %s", args, code, n, rows, complaints)
		}
	}
	f, err := sessions.ReadFile(paths[1], nil)
	if err != nil {
		t.Fatal(err)
	}
	out, complaints, code = inFolder(t, dir, "forget", "--yes", f.Session.Climber)
	if code != exitDone && code != exitFile || !strings.Contains(out, "session "+filepath.Base(paths[1])) {
		t.Errorf("forget: exit %d, %s\n%s", code, complaints, out)
	}
	if _, err := os.Stat(paths[1]); err == nil {
		t.Error("forget: it is still there")
	}
	if out, _, _ := inFolder(t, dir, "list", "climber:\""+f.Session.Climber+"\""); !strings.HasPrefix(out, "no session") {
		t.Errorf("after forget:\n%s", out)
	}
}
