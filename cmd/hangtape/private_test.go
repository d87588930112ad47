//go:build unix

package main

import (
	"bytes"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// shellWith runs the program as a process of its own, under a mask that keeps
// nobody out.
func shellWith(t *testing.T, home, input string, args ...string) (stdout, stderr string) {
	t.Helper()
	c := exec.Command("sh", append([]string{"-c", `umask 0; exec hangtape "$@"`, "hangtape"}, args...)...)
	c.Env = []string{"PATH=" + os.Getenv("PATH"), "HOME=" + home, "HANGTAPE_DIR=" + filepath.Join(home, "sessions"), "TMPDIR=" + filepath.Join(home, "tmp")}
	c.Stdin = strings.NewReader(input)
	var out, complaints bytes.Buffer
	c.Stdout, c.Stderr = &out, &complaints
	if err := c.Run(); err != nil {
		t.Fatalf("%v: %v\n%s", args, err, &complaints)
	}
	return out.String(), complaints.String()
}

// TestNobodyElseCanReadWhatIsWritten lets the program write all that it writes,
// under a mask that lets everybody in: sessions, their last good copies, pieces,
// cache, locks, sheets.
func TestNobodyElseCanReadWhatIsWritten(t *testing.T) {
	home := t.TempDir()
	if err := os.Mkdir(filepath.Join(home, "tmp"), 0o700); err != nil {
		t.Fatal(err)
	}
	sheets := filepath.Join(home, "sheets")
	if err := os.Mkdir(sheets, 0o700); err != nil {
		t.Fatal(err)
	}
	demo := filepath.Join(home, "demo")
	shellWith(t, home, "", "demo", demo)
	shellWith(t, home, "new\n1\nAsh\nquit\n", "--plain")
	shellWith(t, home, "demo\nquit\n", "--plain")
	shellWith(t, home, "", "cut", "--tied", "tether", "--cut", "1120", "--finished", "180", "--both-tails", "300", "--cord", "8")
	shellWith(t, home, "", "list")
	for _, name := range []string{"a.txt", "a.svg", "a.html", "a.pdf"} {
		shellWith(t, home, "", "card", "-o", filepath.Join(sheets, name), filepath.Join(demo, "a-good-kit.toml"))
	}
	files := 0
	err := filepath.WalkDir(home, func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		info, err := d.Info()
		if err != nil {
			return err
		}
		if !d.IsDir() {
			files++
		}
		if name != home && info.Mode().Perm()&0o077 != 0 {
			t.Errorf("%s has mode %v", strings.TrimPrefix(name, home), info.Mode())
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, made := range []string{"sessions/pieces.toml", "sessions/.locks", "sessions/.last-good", "sessions/demo/a-good-kit.toml", "sheets/a.pdf", "demo/a-good-kit.toml"} {
		if _, err := os.Stat(filepath.Join(home, made)); err != nil {
			t.Errorf("was to be made: %v", err)
		}
	}
	if left, err := os.ReadDir(filepath.Join(home, "tmp")); err != nil || len(left) > 0 {
		t.Errorf("left among the temporary files: %v, %v", left, err)
	}
	if files < 12 {
		t.Errorf("only %d files were written", files)
	}
}
