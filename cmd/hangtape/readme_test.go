package main

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

var readmeCall = regexp.MustCompile("(?m)^```\n\\$ hangtape (.*)\n((?s:.*?))^```$")

// The answers that the README shows are what the program says now, in empty
// folders and one call after the other; with -update they are written
// afresh.
func TestReadmeShowsRealAnswers(t *testing.T) {
	path, err := filepath.Abs("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	readme := strings.ReplaceAll(string(data), "\r\n", "\n")
	dir := t.TempDir()
	t.Chdir(t.TempDir()) // for the files that the README names
	calls := 0
	now := readmeCall.ReplaceAllStringFunc(readme, func(block string) string {
		calls++
		args := readmeCall.FindStringSubmatch(block)[1]
		var out, complaints bytes.Buffer
		w := testWorld(&out, &complaints, dir)
		switch code := run(strings.Fields(args), w); code {
		case exitDone, exitFails, exitShort: // answers all
		default:
			t.Errorf("hangtape %s: exit %d, %s", args, code, &complaints)
		}
		return "```\n$ hangtape " + args + "\n" + out.String() + "```"
	})
	if calls == 0 {
		t.Fatal("the README shows no call")
	}
	if *update {
		err = os.WriteFile(path, []byte(now), 0o644)
	} else if now != readme {
		t.Error("the README's answers are not what the program says: go test ./cmd/hangtape -update")
	}
	if err != nil {
		t.Error(err)
	}
}

// readmeLine is a call that the README tells people to type, without its answer.
var readmeLine = regexp.MustCompile(`(?m)^(?:\./hangtape|go run \./cmd/hangtape)(.*)$`)

func TestReadmeCommandsWork(t *testing.T) {
	data, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	calls := readmeLine.FindAllStringSubmatch(string(data), -1)
	if len(calls) == 0 {
		t.Fatal("the README tells no call")
	}
	dir := t.TempDir()
	t.Chdir(t.TempDir())
	for _, call := range calls {
		var args []string
		for _, word := range strings.Fields(call[1]) {
			if files, _ := filepath.Glob(word); strings.Contains(word, "*") {
				args = append(args, files...)
			} else {
				args = append(args, word)
			}
		}
		var out, complaints bytes.Buffer
		switch code := run(args, testWorld(&out, &complaints, dir)); code {
		case exitDone, exitFails, exitShort:
		default:
			t.Errorf("%s: exit %d, %s", call[0], code, &complaints)
		}
	}
}
