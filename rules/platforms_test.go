package rules_test

import (
	"flag"
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"example.com/hangtape/internal/golden"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

// Every platform gives the same verdicts, the same words and, to 0.01, the same
// numbers: the golden file is one for all of them. Processors differ in the last
// bit, as some multiply and add in one step.
func TestEveryPlatformAnswersTheSame(t *testing.T) {
	var b strings.Builder
	for _, dir := range []string{"examples", "oracle"} {
		files, err := filepath.Glob("../testdata/sessions/" + dir + "/*.toml")
		if err != nil || len(files) == 0 {
			t.Fatal("no sessions", err)
		}
		for _, name := range files {
			f, err := sessions.ReadFile(name, nil)
			if err != nil {
				t.Fatal(err)
			}
			r, err := f.Judge()
			if err != nil {
				t.Fatal(err)
			}
			fmt.Fprintf(&b, "%s: %s\n", filepath.Base(name), r.Outcome)
			writeRounded(&b, r, dir == "examples")
		}
	}
	golden.Hold(t, "testdata/platforms.golden", b.String(), flag.Lookup("update").Value.String() == "true") // the package's own flag
}

// writeRounded writes what is told in r, with its numbers to 0.01, and with its
// sentences where words is true.
func writeRounded(b *strings.Builder, r *rules.Report, words bool) {
	for _, c := range r.Checks {
		fmt.Fprintf(b, "%s %s %q %.2f u %.2f guard %.2f %v\n", c.Verdict, c.Name, c.At, c.Margin+0, c.U, c.Guard, c.Missing)
		if words {
			fmt.Fprintln(b, c.Text)
		}
	}
	for _, list := range [][]rules.Value{r.Inputs, r.Poses} {
		for _, v := range list {
			fmt.Fprintf(b, "%s %s %.2f u %.2f %s\n", v.Origin, v.Name, v.Value+0, v.U, v.Unit)
		}
	}
	for _, f := range r.Findings {
		fmt.Fprintln(b, f.Name, f.Inputs)
		if words {
			fmt.Fprintln(b, f.Text)
		}
	}
	for _, n := range r.Next {
		fmt.Fprintf(b, "next for %s: %s, u %.2f, guard %.2f\n", n.Check, n.Reading, n.UThen, n.GuardThen)
	}
}
