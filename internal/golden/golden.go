// Package golden holds what is told to what was told, read and found good
// before: for tests alone.
package golden

import (
	"os"
	"strings"
	"testing"
)

// Hold compares got, line by line, with the golden file at path; with update it
// writes that afresh.
func Hold(t *testing.T, path, got string, update bool) {
	t.Helper()
	if update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	is, want := strings.Split(got, "\n"), strings.Split(string(data), "\n")
	heading := ""
	for i := range min(len(is), len(want)) {
		if strings.HasPrefix(is[i], "# ") {
			heading = is[i] + ", "
		}
		if is[i] != want[i] {
			t.Errorf("%s:%d: %sis %q, want %q (-update writes it afresh)", path, i+1, heading, is[i], want[i])
		}
	}
	if len(is) != len(want) {
		t.Errorf("%s: %d lines, want %d", path, len(is), len(want))
	}
}
