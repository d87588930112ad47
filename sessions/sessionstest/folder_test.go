package sessionstest

import (
	"os"
	"testing"

	"example.com/hangtape/sessions"
)

func TestSessionsAreFullSizeDistinctAndRight(t *testing.T) {
	const n = 60
	paths, err := Write(t.TempDir(), n)
	if err != nil || len(paths) != n {
		t.Fatalf("%d paths, %v", len(paths), err)
	}
	again := map[string]bool{}
	outcomes := map[string]int{}
	for _, path := range paths {
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if len(data) < 3000 || again[string(data)] {
			t.Errorf("%s: %d bytes, there already: %v", path, len(data), again[string(data)])
		}
		again[string(data)] = true
		s, err := sessions.Decode(path, data)
		if err != nil {
			t.Fatal(err)
		}
		r, err := s.Bare()
		if err != nil {
			t.Fatal(err)
		}
		outcomes[string(r.Outcome)]++
	}
	if len(outcomes) < 3 {
		t.Errorf("all come out alike: %v", outcomes)
	}
}

func TestDamagedFilesAreNoSessionsAnyMore(t *testing.T) {
	paths, err := Write(t.TempDir(), 2*Ways)
	if err != nil {
		t.Fatal(err)
	}
	errs := map[string]int{}
	for n, path := range paths {
		if err := Damage(path, n); err != nil {
			t.Fatal(err)
		}
		if _, err := sessions.ReadFile(path, nil); err == nil {
			t.Errorf("way %d: still a session", n%Ways)
		} else {
			errs[err.Error()]++
		}
	}
	if len(errs) != len(paths) { // each names its file
		t.Errorf("%d different errors for %d files", len(errs), len(paths))
	}
}
