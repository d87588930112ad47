package main

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"
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
		w := &world{
			in:  strings.NewReader(""),
			out: &output{w: &out},
			err: &complaints,
			now: func() time.Time { return time.Date(2026, 4, 18, 9, 0, 0, 0, time.UTC) },
			env: func(name string) string { return map[string]string{"HANGTAPE_DIR": dir}[name] },
		}
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
