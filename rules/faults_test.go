package rules_test

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"
)

// A seeded fault is a plausible slip in the engine and the test that has to
// notice it. Each is a file under testdata/faults: a line that says what is
// wrong, the file with the text as it is, "becomes" with the faulty text, and
// "caught by" with a package and one of its tests. The fault is laid over the
// source for one run of that test; nothing on disk changes.
func TestSeededFaultsAreCaught(t *testing.T) {
	if _, err := exec.LookPath("go"); err != nil {
		t.Skip("no go command to build the faults with")
	}
	root, err := filepath.Abs("..")
	if err != nil {
		t.Fatal(err)
	}
	files, err := filepath.Glob(filepath.Join(root, "testdata", "faults", "*.txt"))
	if err != nil || len(files) < 20 {
		t.Fatalf("%d seeded faults (%v), want at least 20", len(files), err)
	}
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txt"), func(t *testing.T) {
			t.Parallel()
			a, err := txtar.ParseFile(file)
			if err != nil {
				t.Fatal(err)
			}
			if len(a.Files) != 3 || a.Files[1].Name != "becomes" || a.Files[2].Name != "caught by" {
				t.Fatal("want the file that is at fault, then becomes, then caught by")
			}
			caughtBy := strings.Fields(string(a.Files[2].Data))
			if len(caughtBy) != 2 {
				t.Fatal("want a package and a test under caught by")
			}
			overlay := seed(t, root, a.Files[0], a.Files[1])
			if testing.Short() {
				t.Skip("builds a test binary for every fault")
			}
			cmd := exec.Command("go", "test", "-overlay", overlay, "-vet=off", "-count=1", "-run", "^"+caughtBy[1]+"$", caughtBy[0])
			cmd.Dir = root
			out, err := cmd.CombinedOutput()
			switch {
			case err == nil:
				t.Errorf("%s did not notice: %s", caughtBy[1], bytes.TrimSpace(a.Comment))
			case !bytes.Contains(out, []byte("--- FAIL: "+caughtBy[1])):
				t.Errorf("%s could not be run with the fault in place:\n%s", caughtBy[1], out)
			}
		})
	}
}

// seed writes source with its old text, which must stand there once, replaced,
// and the overlay that puts it in the place of the file; it returns the
// overlay's path.
func seed(t *testing.T, root string, old, faulty txtar.File) string {
	path := filepath.Join(root, filepath.FromSlash(old.Name))
	source, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	was, becomes := bytes.TrimSuffix(old.Data, []byte("\n")), bytes.TrimSuffix(faulty.Data, []byte("\n"))
	if n := bytes.Count(source, was); n != 1 {
		t.Fatalf("%s holds the text %d times, want once: the fault has to follow the source", old.Name, n)
	}
	dir := t.TempDir()
	seeded, overlay := filepath.Join(dir, "seeded.go"), filepath.Join(dir, "overlay.json")
	if err := os.WriteFile(seeded, bytes.Replace(source, was, becomes, 1), 0o600); err != nil {
		t.Fatal(err)
	}
	replace, err := json.Marshal(map[string]map[string]string{"Replace": {path: seeded}})
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(overlay, replace, 0o600); err != nil {
		t.Fatal(err)
	}
	return overlay
}
