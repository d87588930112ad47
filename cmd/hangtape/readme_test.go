package main

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/hangtape/sessions"
)

// readmeCall is a call that the README shows with its answer, which head may
// cut short.
var readmeCall = regexp.MustCompile("(?m)^```\n\\$ hangtape (.*?)( \\| head -n (\\d+))?\n((?s:.*?))^```$")

// The answers that the README shows are what the program says now, in empty
// folders and one call after the other; with -update they are written
// afresh.
func TestReadmeShowsRealAnswers(t *testing.T) {
	path, err := filepath.Abs("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	readme := readReadme(t)
	dir := t.TempDir()
	t.Chdir(t.TempDir()) // for the files that the README names
	calls := 0
	now := readmeCall.ReplaceAllStringFunc(readme, func(block string) string {
		calls++
		found := readmeCall.FindStringSubmatch(block)
		answer := answerOf(t, strings.Fields(found[1]), dir)
		if found[2] != "" {
			n, err := strconv.Atoi(found[3])
			if err != nil {
				t.Fatal(err)
			}
			answer = strings.Join(slices.Collect(strings.Lines(answer))[:n], "")
		}
		return "```\n$ hangtape " + found[1] + found[2] + "\n" + answer + "```"
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

// readmeLine is a call that the README tells people to type, on a line of its
// own or within a sentence.
var readmeLine = regexp.MustCompile("(?m)^(?:\\./hangtape)(.*)$|`(?:\\./hangtape|hangtape|go run \\./cmd/hangtape)( [^`]*)?`")

// readmeWords are what the README's placeholders may stand for.
var readmeWords = strings.NewReplacer(
	"FILE", "try-out/a-good-kit.toml", "compare A B", "compare try-out/a-good-kit.toml try-out/b-short-bridge.toml",
	"CLIMBER", "demo climber A", "CHECK", "garda-release-room", "LIMIT", "least-over", "NAME", "hip",
	"> sessions.csv", "", "forget", "forget --yes",
)

func TestReadmeCommandsWork(t *testing.T) {
	calls := readmeLine.FindAllStringSubmatch(readReadme(t), -1)
	if len(calls) < 20 {
		t.Errorf("the README tells %d calls", len(calls))
	}
	for _, call := range calls {
		dir := filepath.Join(t.TempDir(), "sessions")
		answerOf(t, []string{"demo", dir}, dir)
		t.Chdir(t.TempDir())
		args := strings.Fields(readmeWords.Replace(call[1] + call[2]))
		switch {
		case len(args) == 1 && args[0] != "explain" && args[0] != "version":
			args = append(args, "--help") // the name of a command, and no call
		case len(args) == 0 || args[0] != "demo":
			answerOf(t, []string{"demo", "try-out"}, dir)
		}
		answerOf(t, args, dir)
	}
}

// answerOf is what the program says to a call, which has to be an answer.
func answerOf(t *testing.T, args []string, dir string) string {
	t.Helper()
	var out, complaints bytes.Buffer
	switch code := run(args, testWorld(&out, &complaints, dir)); code {
	case exitDone, exitFails, exitShort: // answers all
	default:
		t.Errorf("hangtape %s: exit %d, %s", args, code, &complaints)
	}
	return out.String()
}

// The part of a session that the README shows is one that the program reads.
func TestReadmePartOfASessionIsRead(t *testing.T) {
	_, rest, ok := strings.Cut(readReadme(t), "```\n[[hangs]]")
	part, _, ok2 := strings.Cut(rest, "```")
	if !ok || !ok2 {
		t.Fatal("the README shows no part of a session")
	}
	const head = "format = 1\n[session]\nid = \"01KR0TVZ00B18KMSWGEJB4H4XD\"\n[tape]\nclass = \"II\"\ndivision_mm = 1\n[[hangs]]"
	if _, err := sessions.Decode("part.toml", []byte(head+part)); err != nil {
		t.Error(err)
	}
}

func readReadme(t *testing.T) string {
	t.Helper()
	data, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	return strings.ReplaceAll(string(data), "\r\n", "\n")
}
