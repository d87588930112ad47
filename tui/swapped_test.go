package tui

import (
	"bytes"
	"os"
	"strings"
	"testing"
	"testing/synctest"
)

// TestFileSwappedUnderTheWizard lets a sync client take away, cut, replace or bring
// back the file of the session that is open: the answer is never written over it
// unasked, is said to be not saved, stays, and is saved by the one key that says so.
func TestFileSwappedUnderTheWizard(t *testing.T) {
	for name, c := range map[string]struct {
		swap func(path string, was []byte) error
		says string
		mend func(path string) error // before it can be saved; nil where the key is enough
	}{
		"taken away":       {func(path string, _ []byte) error { return os.Remove(path) }, "The file is gone", nil},
		"cut in half":      {func(path string, was []byte) error { return os.WriteFile(path, was[:len(was)/2], 0o600) }, "The file has changed", nil},
		"emptied":          {func(path string, _ []byte) error { return os.WriteFile(path, nil, 0o600) }, "The file has changed", nil},
		"a login page":     {func(path string, _ []byte) error { return os.WriteFile(path, []byte("<html>log in</html>"), 0o600) }, "The file has changed", nil},
		"another format":   {func(path string, _ []byte) error { return os.WriteFile(path, []byte("format = 9\n"), 0o600) }, "The file has changed", nil},
		"with another end": {func(path string, was []byte) error { return os.WriteFile(path, append(was, "# synced\n"...), 0o600) }, "The file has changed", nil},
		"replaced by a folder": {func(path string, _ []byte) error {
			if err := os.Remove(path); err != nil {
				return err
			}
			return os.Mkdir(path, 0o700)
		}, "is a folder", os.Remove},
		"too large": {func(path string, was []byte) error {
			return os.WriteFile(path, append(was, bytes.Repeat([]byte("#\n"), 1<<18)...), 0o600)
		}, "256 kB", os.Remove},
	} {
		t.Run(name, func(t *testing.T) {
			synctest.Test(t, func(t *testing.T) {
				d := sit(t, 80, 24)
				d.burst("11Ash\r")
				path := d.m().saver.editor.Path
				was, err := os.ReadFile(path)
				if err != nil {
					t.Fatal(err)
				}
				if err := c.swap(path, was); err != nil {
					t.Fatal(err)
				}
				d.burst("Bea\r")
				if view := strings.Join(strings.Fields(d.model.View()), " "); !strings.Contains(view, c.says) {
					t.Errorf("not said:\n%s", d.model.View())
				}
				if now, err := os.ReadFile(path); err == nil && bytes.Contains(now, []byte("Bea")) {
					t.Errorf("written over:\n%s", now)
				}
				if c.mend != nil {
					if err := c.mend(path); err != nil {
						t.Fatal(err)
					}
					d.burst("tree\r") // the next answer tries again, and asks
				}
				if name == "taken away" {
					d.burst("2") // there is nothing to take
				}
				d.burst("1")
				f, err := d.store.Load(path)
				if err != nil || f.Session.Climber != "Ash" || f.Session.Instructor != "Bea" {
					t.Errorf("not kept: %v, %+v\n%s", err, f, d.model.View())
				}
				d.leave()
			})
		})
	}
}
