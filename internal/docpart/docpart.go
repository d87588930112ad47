// Package docpart holds parts of the documents to what the code says: for tests
// alone.
package docpart

import (
	"os"
	"strings"
	"testing"
)

// Hold compares parts of the document at path, each between two comments,
//
//	<!-- NAME: from SOURCE, go test ./PACKAGE -update -->
//	<!-- NAME: end -->
//
// with what they have to be; with update it writes them afresh. from is what the
// first comment says after the name.
func Hold(t *testing.T, path, from string, parts map[string]string, update bool) {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	doc := strings.ReplaceAll(string(data), "\r\n", "\n")
	for name, want := range parts {
		begin, end := "<!-- "+name+": "+from+" -->\n", "<!-- "+name+": end -->\n"
		before, rest, ok := strings.Cut(doc, begin)
		got, after, ok2 := strings.Cut(rest, end)
		if !ok || !ok2 {
			t.Fatalf("%s has no part for %s", path, name)
		}
		if got != want && !update {
			t.Errorf("%s: the part on %s is not what the code says: %s", path, name, from)
		}
		doc = before + begin + want + end + after
	}
	if update {
		if err := os.WriteFile(path, []byte(doc), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}
