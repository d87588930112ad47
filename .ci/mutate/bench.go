package main

import (
	"bytes"
	_ "embed"
	"encoding/json"
	"errors"
	"fmt"
	"go/importer"
	"go/token"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"time"
)

const module = "example.com/hangtape/"

// packages are changed, and tested by their own tests.
var packages = []string{"fit", "rules", "rules/drill", "rules/nearest", "rules/plausible", "rules/advice"}

// also are the tests of other packages that hold a package to what it says.
var also = map[string][]string{"fit": {"rules"}}

// slow are tests that run only on what the quick ones do not notice.
var slow = map[string]string{
	"fit":          "^(TestTrimmingCoversWhatItSays|TestLearnCordAgainstWeightedDraws|TestPropagationAgainstDraws|TestPlanSpoolsCutShort)$",
	"rules":        "^(TestNothingPassesTooSurelyNearTheEdgeOfTheDomain|TestRandomSessionsAreJudgedSoundly|TestTapeZeroNeverMatters)$",
	"rules/drill":  "^TestRefusedWhereTheTetherCannotComeTaut$",
	"rules/advice": "^Test(Conflicts|Random|Answers|Shared|OneShares|NothingBetter|SoonerWould|WhatIfFrames|Windows$)",
}

// drawn are the flags of the packages that test with drawn inputs: the same
// draws for every mutant, and no time spent on the smallest that fails.
var drawn = map[string][]string{
	"fit":   {"-rapid.seed=1", "-rapid.nofailfile", "-rapid.shrinktime=1ms"},
	"rules": {"-rapid.seed=1", "-rapid.nofailfile", "-rapid.shrinktime=1ms"},
}

//go:embed switch.go.txt
var switchText []byte

// bench is where the changed program is built and tried.
type bench struct {
	dir     string
	overlay map[string]string // from a source file to the one that is built in its place
	quick   bool
	timeout time.Duration
}

func (b *bench) binary(pkg string) string {
	return filepath.Join(b.dir, strings.ReplaceAll(pkg, "/", "-")+".test")
}

// prepare finds the mutants and writes the sources with all of them.
func (b *bench) prepare() ([]*mutant, error) {
	root, err := filepath.Abs(".")
	if err != nil {
		return nil, err
	}
	args := []string{"list", "-json=ImportPath,GoFiles,Export", "-export", "-deps"}
	for _, p := range packages {
		args = append(args, "./"+p)
	}
	out, err := exec.Command("go", args...).Output()
	if err != nil {
		return nil, err
	}
	type listed struct {
		ImportPath, Export string
		GoFiles            []string
	}
	known := map[string]listed{}
	for d := json.NewDecoder(bytes.NewReader(out)); ; {
		var l listed
		if err := d.Decode(&l); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			return nil, err
		}
		known[l.ImportPath] = l
	}
	how := importer.ForCompiler(token.NewFileSet(), "gc", func(path string) (io.ReadCloser, error) {
		return os.Open(known[path].Export)
	})
	where := func(file string) string {
		w := filepath.Join(b.dir, strings.ReplaceAll(file, "/", "-"))
		b.overlay[filepath.Join(root, file)] = w
		return w
	}
	if err := os.WriteFile(where("internal/mutant/switch.go"), switchText, 0o600); err != nil {
		return nil, err
	}
	var all []*mutant
	next := 0
	for _, p := range packages {
		var files []string
		for _, f := range known[module+p].GoFiles {
			files = append(files, filepath.Join(p, f))
		}
		some, err := switches(p, files, how, &next, where)
		if err != nil {
			return nil, err
		}
		all = append(all, some...)
	}
	return all, nil
}

func (b *bench) build(pkg string, overlay map[string]string, to string) error {
	text, err := json.Marshal(map[string]any{"Replace": overlay})
	if err != nil {
		return err
	}
	if err := os.WriteFile(to+".json", text, 0o600); err != nil {
		return err
	}
	out, err := exec.Command("go", "test", "-c", "-vet=off", "-overlay", to+".json", "-ldflags=-s -w", "-o", to, "./"+pkg).CombinedOutput()
	if err != nil {
		return fmt.Errorf("%s: %w\n%s", pkg, err, out)
	}
	return nil
}

// judge says what became of a mutant, and which test noticed it.
func (b *bench) judge(m *mutant) (verdict, by string) {
	if m.now != "" {
		return b.rebuilt(m)
	}
	for _, p := range append([]string{m.pkg}, also[m.pkg]...) {
		if by, late := b.tests(p, b.binary(p), m.id); late {
			return "timed out", p
		} else if by != "" {
			return "killed", by
		}
	}
	return "lived", ""
}

// rebuilt judges the change of a constant by the tests of its own package.
func (b *bench) rebuilt(m *mutant) (verdict, by string) {
	path, err := filepath.Abs(m.file)
	if err != nil {
		return "not tried", err.Error()
	}
	text, err := os.ReadFile(path)
	if err != nil {
		return "not tried", err.Error()
	}
	text = slices.Replace(text, m.offset, m.offset+m.was, []byte(m.now)...)
	to := filepath.Join(b.dir, fmt.Sprintf("%d.test", m.id))
	if err := os.WriteFile(to+".go", text, 0o600); err != nil {
		return "not tried", err.Error()
	}
	if err := b.build(m.pkg, map[string]string{path: to + ".go"}, to); err != nil {
		return "not viable", ""
	}
	defer os.Remove(to)
	switch by, late := b.tests(m.pkg, to, 0); {
	case late:
		return "timed out", m.pkg
	case by != "":
		return "killed", by
	}
	return "lived", ""
}

// tests runs the quick tests of a package, then the slow ones.
func (b *bench) tests(pkg, binary string, id int) (by string, late bool) {
	if slow[pkg] == "" {
		return b.test(pkg, binary, id)
	}
	if by, late := b.test(pkg, binary, id, "-test.skip="+slow[pkg]); late || by != "" || b.quick {
		return by, late
	}
	return b.test(pkg, binary, id, "-test.run="+slow[pkg])
}

var failed = regexp.MustCompile(`(?m)^\s*--- FAIL: (\S+)`)

// test runs a test binary and says which test failed first, or that it took too
// much of the processor's time, which a busy machine does not add to. A change
// that asks for ever more memory is held to 8 GB.
func (b *bench) test(pkg, binary string, id int, flags ...string) (by string, late bool) {
	flags = append([]string{"-test.short", "-test.failfast", "-test.timeout=0"}, append(flags, drawn[pkg]...)...)
	held := fmt.Sprintf(`ulimit -v 8000000; ulimit -t %.0f; exec "$@"`, math.Ceil(b.timeout.Seconds()))
	c := exec.Command("sh", append([]string{"-c", held, "sh", binary}, flags...)...)
	c.Dir, c.Env = pkg, append(os.Environ(), fmt.Sprint("MUTANT=", id))
	out, err := c.CombinedOutput()
	if err == nil {
		return "", false
	}
	if p := c.ProcessState; !p.Exited() && p.UserTime()+p.SystemTime() > b.timeout*9/10 {
		return pkg, true
	}
	if f := failed.FindSubmatch(out); f != nil {
		return pkg + "." + string(f[1]), false
	}
	line, _, _ := strings.Cut(strings.TrimSpace(string(out)), "\n")
	return pkg + ": " + line, false
}
