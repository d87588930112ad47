package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// The numbers are held against the examples where they are computed, in
// package rules; here it is the answer of the command: one line a file, in the
// order of the call, with the verdicts and the exit code.
func TestCheckJSONOfTheExamples(t *testing.T) {
	files, err := filepath.Glob("../../testdata/sessions/examples/*.toml")
	if err != nil || len(files) == 0 {
		t.Fatalf("no examples: %v", err)
	}
	var out bytes.Buffer
	code, stderr := call(&out, append([]string{"check", "--json"}, files...)...)
	if code != exitFails || stderr != "" {
		t.Errorf("exit %d, stderr %q", code, stderr)
	}
	lines := slices.Collect(strings.Lines(out.String()))
	if len(lines) != len(files) {
		t.Fatalf("%d lines for %d files", len(lines), len(files))
	}
	for i, file := range files {
		answer, err := os.ReadFile(strings.TrimSuffix(file, ".toml") + ".check.json")
		if err != nil {
			t.Fatal(err)
		}
		got, want := verdicts(t, []byte(lines[i])), verdicts(t, answer)
		got.Checks = slices.DeleteFunc(got.Checks, func(c checkVerdict) bool { // newer than the examples
			return !slices.ContainsFunc(want.Checks, func(w checkVerdict) bool { return w.Name == c.Name })
		})
		if got, want := fmt.Sprint(got), fmt.Sprint(want); got != want {
			t.Errorf("%s:\n got %s\nwant %s", filepath.Base(file), got, want)
		}
	}
}

// allVerdicts is an answer's outcome with every check's verdict.
type allVerdicts struct {
	ID, Outcome string
	Checks      []checkVerdict
}

type checkVerdict struct{ Name, Verdict, At string }

func verdicts(t *testing.T, answer []byte) (a allVerdicts) {
	t.Helper()
	if err := json.Unmarshal(answer, &a); err != nil {
		t.Fatal(err)
	}
	return a
}
