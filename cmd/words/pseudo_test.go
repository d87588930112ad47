package main

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.com/hangtape/internal/words"
)

// The letters of pseudo texts.
var otherLetters = strings.NewReplacer(strings.Fields(
	"a á b ƀ c ç d đ e é f ƒ g ğ h ħ i í j ĵ k ķ l ł m ɱ n ñ o ó p ƥ q ɋ r ř s š t ŧ u ú v ʋ w ŵ x ẋ y ý z ž " +
		"A Á B Ɓ C Ç D Đ E É F Ƒ G Ğ H Ħ I Í J Ĵ K Ķ L Ł M Ṁ N Ñ O Ó P Ƥ Q Ɋ R Ř S Š T Ŧ U Ú V Ʋ W Ŵ X Ẋ Y Ý Z Ž")...)

// What stays in them: values, and what people type or look up in English.
var staysInText = regexp.MustCompile(`%[-+#0]*(?:\*|\d+)?(?:\.(?:\*|\d+))?[a-zA-Z%]|\{\d+\}|\{[a-z]+|--[a-z-]+|\bhangtape( [a-z]+)?|\b(mm|cm|kN|kg|lbf)\b`)

// pseudo is a text as if in another language: other letters, and a third more of them.
func pseudo(english string) string {
	inner := strings.TrimSpace(english)
	before, after, _ := strings.Cut(english, inner)
	b := strings.Builder{}
	from := 0
	for _, at := range staysInText.FindAllStringIndex(inner, -1) {
		b.WriteString(otherLetters.Replace(inner[from:at[0]]) + inner[at[0]:at[1]])
		from = at[1]
	}
	b.WriteString(otherLetters.Replace(inner[from:]))
	return before + b.String() + strings.Repeat("ẋ", (len(inner)+2)/3) + after
}

// programs builds the program in English and with pseudo texts.
func programs(t *testing.T) (english, other string) {
	t.Helper()
	dir := t.TempDir()
	english, other = filepath.Join(dir, "english"), filepath.Join(dir, "other")
	p, err := repository()
	if err != nil {
		t.Fatal(err)
	}
	all := p.Texts()
	for i := range all {
		all[i].Translation = pseudo(all[i].English)
	}
	file := filepath.Join(dir, "pseudo.toml")
	if err := words.Write(file, "", all); err != nil {
		t.Fatal(err)
	}
	if _, err := build(p, file, other); err != nil {
		t.Fatal(err)
	}
	if said, err := exec.Command("go", "build", "-o", english, "../hangtape").CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, said)
	}
	return english, other
}

// A ran program is what it said and how it ended.
type ran struct {
	out  string
	code int
}

// hangtape runs a program in a home of its own in dir.
func hangtape(t *testing.T, program, dir, in string, args ...string) ran {
	t.Helper()
	c := exec.Command(program, args...)
	c.Dir = dir
	c.Env = append(os.Environ(), "LC_ALL=C.UTF-8", "COLUMNS=100", "HOME="+dir, "XDG_DATA_HOME="+filepath.Join(dir, "data"), "XDG_CACHE_HOME="+filepath.Join(dir, "cache"), "HANGTAPE_DIR="+filepath.Join(dir, "sessions"))
	c.Stdin = strings.NewReader(in)
	out, err := c.CombinedOutput()
	if err != nil && c.ProcessState == nil {
		t.Fatal(err)
	}
	return ran{string(out), c.ProcessState.ExitCode()}
}

// answers are a session line by line, until after the first lengths.
const answers = "new\n\nAnn Example\nIna Example\nOak\n\n\n1\n\n11.4\n2\n12\n40\n?\nverdicts\nsteps\nback\nskip\nnext\nx\nview\nquit\n"

// demoAnswers go to many places of the demo climber's session, drill and trial of
// lengths among them, and past then to what was fitted before.
const demoAnswers = "demo\nverdicts\nview\nsteps\n? hitch-top-reach\n? thigh\nsettle\nstudents\n1\n\nback\ngo 3\n870\n?\nskip\nskip\nnext\nview\n" +
	"go 13\n1\nback\n9999\nabc\n1 2\ndown\n1\ngo 15\n?\n1\ngo 16\n1\n1\ngo 17\n1\n1\n?\n2\nquit\n"

// pastAnswers look at the demo's sessions as past fittings, then begin a re-tune.
const pastAnswers = "past\ndue\ncords\ndemo\n1\ncompare 1 2\nhistory 1\nback\nearlier\n1\n2\n1\n?\n1\n2\nquit\n"

// In another language people read nothing in English, and programs the same as
// ever. What is told here as English is missing from the file of words, and what
// moved should not be in it: see internal/words/contract.go.
func TestPseudoTranslation(t *testing.T) {
	if testing.Short() {
		t.Skip("builds the program twice")
	}
	english, other := programs(t)
	here, there := t.TempDir(), t.TempDir()
	if got := hangtape(t, english, here, "", "demo", "demo"); got.code != 0 {
		t.Fatal(got.out)
	}
	demo := func(name string) string { return filepath.Join("demo", name+".toml") }
	good, short := demo("a-good-kit"), demo("b-short-bridge")
	for _, args := range [][]string{
		{"version"},
		{"check", good}, {"check", "--unit", "in", short}, {"check", demo("c-on-the-ground")}, {"check", good, short},
		{"advise", short}, {"advise", good, short}, {"drill", good}, {"show", good}, {"show", short}, {"compare", good, demo("d-half-a-year-later")},
		{"list", "--dir", "demo"}, {"list", "--cords", "--dir", "demo"}, {"history", "--dir", "demo"}, {"history", "--dir", "demo", "demo climber A"},
		{"card", "--format", "text", good}, {"card", "--format", "text", short}, {"cut", "hitch", "--finished", "330", "--cord", "8", "--rope", "11.4", "--wraps", "6"},
		{"cut", "bridge", "--finished", "1200", "--cord", "10"}, {"cut", "3x2000", "4x1500", "--spool", "10m"},
		{"explain"}, {"explain", "hitch-cord-bite"}, {"explain", "least-loop"}, {"explain", "thigh"}, {"explain", "gain"}, {"explain", "out-of-domain"}, {"explain", "start"},
		{"explain", "slip-drop", "--file", good}, {"export", "--columns"},
		{"check", "none.toml"}, {"chekc"}, {"explain", "hitch-cord-gripp"}, {"cut", "tether"}, {"check"}, {"list", "verdict:good", "--dir", "demo"},
	} {
		want, got := hangtape(t, english, here, "", args...), hangtape(t, other, here, "", args...)
		if got.code != want.code {
			t.Errorf("%q: exit code %d, in English %d", args, got.code, want.code)
		}
		for line := range strings.SplitSeq(got.out, "\n") {
			if stray := inEnglish(line, args...); len(stray) > 0 {
				t.Errorf("%q: %q in %s", args, stray, line)
			}
		}
	}
	for _, args := range [][]string{
		{"check", "--json", good, short}, {"advise", "--json", short}, {"advise", "--json", good, short}, {"drill", "--json", good},
		{"compare", "--json", good, demo("d-half-a-year-later")}, {"list", "--json", "--dir", "demo"}, {"list", "--cords", "--json", "--dir", "demo"},
		{"history", "--json", "--dir", "demo", "demo climber A"}, {"export", "--dir", "demo"}, {"export", "--format", "json", "--dir", "demo"},
		{"cut", "bridge", "--finished", "1200", "--cord", "10", "--json"}, {"cut", "3x2000", "--spool", "10m", "--json"},
	} {
		want, got := hangtape(t, english, here, "", args...), hangtape(t, other, here, "", args...)
		if got.code != want.code || forPrograms(t, got.out) != forPrograms(t, want.out) {
			t.Errorf("%q: exit code %d and\n%s\nin English %d and\n%s", args, got.code, forPrograms(t, got.out), want.code, forPrograms(t, want.out))
		}
	}
	want, got := hangtape(t, english, here, answers), hangtape(t, other, there, answers)
	if got.code != want.code {
		t.Errorf("the wizard: exit code %d, in English %d", got.code, want.code)
	}
	elsewhere := t.TempDir()
	if got := hangtape(t, english, elsewhere, "", "demo", "sessions"); got.code != 0 {
		t.Fatal(got.out)
	}
	for _, out := range []string{got.out, hangtape(t, other, t.TempDir(), demoAnswers).out, hangtape(t, other, elsewhere, pastAnswers).out} {
		if len(out) < 5000 {
			t.Errorf("the wizard says only %s", out)
		}
		for line := range strings.SplitSeq(out, "\n") {
			if stray := inEnglish(line, "back"); len(stray) > 0 {
				t.Errorf("the wizard: %q in %s", stray, line)
			}
		}
	}
	if here, there := saved(t, here), saved(t, there); here != there {
		t.Errorf("saved as\n%s\nin English\n%s", there, here)
	}
}

// inEnglish are the words of a line that are no names, which stay: what was typed,
// data, keys, checks, commands, symbols.
func inEnglish(line string, typed ...string) []string {
	return slices.DeleteFunc(plain.FindAllString(names.ReplaceAllString(line, " "), -1), func(w string) bool {
		return slices.Contains(stay, w) || slices.Contains(typed, w)
	})
}

var names = regexp.MustCompile(strings.Join([]string{
	`Ann Example|Ina Example|Oak|demo (climber|beech|instructor|kit) ?\w*|\bdemo$|^ *climber [A-D]`, // data
	`[\w./*]*[./_:-][\w./*-]*|01[0-9A-Z]{8,}|hangtape( [a-z]+)?|"[a-z]+"`,                           // keys, checks, paths, ids, commands
	`^  [a-z]+  +|\([^( ]+ [a-z]+\)|^[a-z]+$`,                                                       // what explain and export list
	`pass, tight, fail, unknown`,                                                                    // what list takes
	`((thigh|shin|hip|nose), )+`,                                                                    // topics that a check leads to
	`\(devel\) \(words of pseudo.toml, 0 of \d+ texts are not translated|░ ?\w+`,
}, "|"))

var (
	plain = regexp.MustCompile(`[A-Za-z]{2,}`)
	stay  = strings.Fields("mm cm in ft kN kg lbf deg check")
)

// forPrograms is JSON without what it says to people, and other answers as they are.
func forPrograms(t *testing.T, out string) string {
	t.Helper()
	d := json.NewDecoder(strings.NewReader(out))
	var b bytes.Buffer
	for d.More() {
		var v any
		if err := d.Decode(&v); err != nil {
			return out
		}
		text, err := json.MarshalIndent(withoutSentences(v), "", " ")
		if err != nil {
			t.Fatal(err)
		}
		b.Write(text)
	}
	return b.String()
}

// sentences are the keys of JSON under which people are told something.
var sentences = strings.Fields("text what do see stop then slack before cautions title left_out")

func withoutSentences(v any) any {
	switch v := v.(type) {
	case map[string]any:
		if _, ok := v["knot"]; ok {
			delete(v, "origin") // where its coefficient comes from
		}
		for key := range v {
			if v[key] = withoutSentences(v[key]); slices.Contains(sentences, key) {
				delete(v, key)
			}
		}
	case []any:
		for i := range v {
			v[i] = withoutSentences(v[i])
		}
	}
	return v
}

var changing = regexp.MustCompile(`(?m)^(id|started|finished) = .*$`)

// saved is the one session in dir, without its id and times.
func saved(t *testing.T, dir string) string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(dir, "sessions", "*.toml"))
	if err != nil || len(files) != 1 {
		t.Fatalf("%v: saved are %v", err, files)
	}
	text, err := os.ReadFile(files[0])
	if err != nil {
		t.Fatal(err)
	}
	return changing.ReplaceAllString(string(text), "$1")
}
