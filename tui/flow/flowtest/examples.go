package flowtest

import (
	"os"
	"path/filepath"
	"testing"

	"example.com/hangtape/sessions"
)

// Examples are the finished sessions in a folder, by the names of their files.
func Examples(t testing.TB, dir string) map[string]*sessions.Session {
	t.Helper()
	out := map[string]*sessions.Session{}
	paths, err := filepath.Glob(filepath.Join(dir, "*.toml"))
	if err != nil || len(paths) == 0 {
		t.Fatal("no examples", err)
	}
	for _, p := range paths {
		data, err := os.ReadFile(p)
		if err != nil {
			t.Fatal(err)
		}
		s, err := sessions.Decode(p, data)
		if err != nil {
			t.Fatal(err)
		}
		out[filepath.Base(p)] = s
	}
	return out
}
