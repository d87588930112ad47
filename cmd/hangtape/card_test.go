package main

import (
	"bytes"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"
)

// A class is of the day where the computer is: 09:12 UTC is the next day 15
// hours further east.
func TestClassGoesByTheLocalDay(t *testing.T) {
	dir := t.TempDir()
	if code, stderr := call(&bytes.Buffer{}, "demo", dir+"/sessions"); code != exitDone {
		t.Fatal(stderr)
	}
	for _, c := range []struct {
		hours int
		day   string
		want  string
	}{
		{0, "2026-04-18", "demo climber A"},
		{15, "2026-04-19", "demo climber A"},
		{15, "today", "demo climber A"}, // the clock stands at 09:00 UTC of 2026-04-18
		{-10, "2026-04-18", "demo climber B"},
	} {
		var out, complaints bytes.Buffer
		w := testWorld(&out, &complaints, dir+"/sessions")
		now := w.now().In(time.FixedZone("", c.hours*3600))
		w.now = func() time.Time { return now }
		if code := run([]string{"card", "--class", c.day}, w); code != exitDone || !strings.Contains(out.String(), c.want) {
			t.Errorf("%+d h, %s: exit %d, no %s in %q %q", c.hours, c.day, code, c.want, &out, &complaints)
		}
	}
}

func TestNoPDFOnATerminal(t *testing.T) {
	var out, complaints bytes.Buffer
	w := testWorld(&out, &complaints, "")
	w.terminal = true
	if code := run([]string{"card", "--format", "pdf", "x.toml"}, w); code != exitUsage || !strings.Contains(complaints.String(), "not for a terminal; add -o FILE") {
		t.Errorf("exit %d, %q", code, &complaints)
	}
}

// A sheet holds somebody's measures: nobody else reads it, also where a file of
// that name was open to all.
func TestASheetIsPrivate(t *testing.T) {
	dir := t.TempDir()
	name := filepath.Join(dir, "card.html")
	if err := os.WriteFile(name, []byte("old"), 0o644); err != nil {
		t.Fatal(err)
	}
	if code, stderr := call(&bytes.Buffer{}, "card", "-o", name, "../../sessions/demo/a-good-kit.toml"); code != exitDone {
		t.Fatal(stderr)
	}
	info, err := os.Stat(name)
	if err != nil || runtime.GOOS != "windows" && info.Mode().Perm() != 0o600 || info.Size() < 1000 {
		t.Errorf("%v, %v", info, err)
	}
	if left, _ := os.ReadDir(dir); len(left) != 1 {
		t.Errorf("left in the folder: %v", left)
	}
}
