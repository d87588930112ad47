package main

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
	"github.com/rogpeppe/go-internal/txtar"

	"example.com/hangtape/internal/docpart"
)

// howtos are the worked examples of DEVELOPERS.md: scripts that change a copy of
// the source, run its tests and look at what follows.
const howtos = "../../testdata/howto"

func TestWorkedExamples(t *testing.T) {
	if testing.Short() {
		t.Skip("builds a changed copy of the program for every example")
	}
	root, err := filepath.Abs("../..")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir:                 howtos,
		RequireExplicitExec: true,
		Setup: func(env *testscript.Env) error {
			env.Cd = filepath.Join(env.WorkDir, "house")
			for _, v := range []string{"HOME", "GOCACHE", "GOPATH", "GOMODCACHE", "GOPROXY", "GOSUMDB"} {
				if value, ok := os.LookupEnv(v); ok {
					env.Setenv(v, value)
				}
			}
			env.Setenv("TMPDIR", os.TempDir())
			env.Setenv("GOFLAGS", "-trimpath -vet=off") // what did not change is built once
			return copySource(root, env.Cd)
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){"change": func(ts *testscript.TestScript, _ bool, args []string) {
			for _, edit := range edits(ts.ReadFile(filepath.Join("..", args[0]))) {
				ts.Check(edit.make(ts.MkAbs(edit.file)))
			}
		}},
	})
}

// copySource copies what a checkout holds, links and hidden folders left out.
func copySource(from, to string) error {
	return filepath.WalkDir(from, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		rel, err := filepath.Rel(from, path)
		switch {
		case err != nil:
			return err
		case d.IsDir() && rel != "." && strings.HasPrefix(d.Name(), "."):
			return fs.SkipDir
		case d.IsDir():
			return os.MkdirAll(filepath.Join(to, rel), 0o755)
		case !d.Type().IsRegular():
			return nil
		}
		data, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		return os.WriteFile(filepath.Join(to, rel), data, 0o600)
	})
}

// An edit is one place of a difference: the lines that stand in the file once,
// and those that take their place; a new file has none to begin with.
type edit struct{ file, was, becomes string }

// edits are the places of a difference as diff -u writes it, but that "@@" is
// followed by a remark and not by numbers of lines.
func edits(diff string) []edit {
	var out []edit
	file := ""
	for line := range strings.Lines(diff) {
		switch last := len(out) - 1; {
		case strings.HasPrefix(line, "--- "):
			file = strings.TrimSpace(line[4:])
		case strings.HasPrefix(line, "@@"):
			out = append(out, edit{file: file})
		case line[0] == '-':
			out[last].was += line[1:]
		case line[0] == '+':
			out[last].becomes += line[1:]
		default:
			out[last].was += line[1:]
			out[last].becomes += line[1:]
		}
	}
	return out
}

func (e edit) make(path string) error {
	if e.was == "" {
		return os.WriteFile(path, []byte(e.becomes), 0o600)
	}
	source, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	was, becomes := strings.TrimSuffix(e.was, "\n"), strings.TrimSuffix(e.becomes, "\n")
	if n := strings.Count(string(source), was); n != 1 {
		return fmt.Errorf("%s holds %q %d times, want once: the example has to follow the source", e.file, was, n)
	}
	return os.WriteFile(path, []byte(strings.Replace(string(source), was, becomes, 1)), 0o600)
}

// DEVELOPERS.md quotes the examples as they stand; -update writes them afresh.
func TestWorkedExamplesAreQuoted(t *testing.T) {
	quoted := map[string]string{}
	for _, name := range []string{"reading", "check", "step"} {
		a, err := txtar.ParseFile(filepath.Join(howtos, name+".txtar"))
		if err != nil || len(a.Files) != 1 {
			t.Fatalf("%s: %d files, want the difference alone (%v)", name, len(a.Files), err)
		}
		quoted[name] = "```diff\n" + string(a.Files[0].Data) + "```\n"
	}
	docpart.Hold(t, "../../DEVELOPERS.md", "from testdata/howto, go test ./cmd/hangtape -update", quoted, *update)
}
