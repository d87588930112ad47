package words

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// said is a program that says all kinds of texts.
const said = `package main

import "fmt"

type verdict string

const pass verdict = "pass"

func main() {
	piece, length := "main-bridge", 1100
	fmt.Println("the " + piece + " is " + fmt.Sprint(length, " mm long") + ".")
	fmt.Printf("%s at %d of %d\n", "step", 1, 12)
	fmt.Println(string(pass), "left" /* what is left */)
	side()
	fmt.Println("{has above|under} it"[20:])
	if piece == "foot loop" {
		panic("no foot loop here")
	}
}

func side() { fmt.Println("left") }
`

// program is said in a repository of its own.
func program(t *testing.T) *Program {
	t.Helper()
	root := t.TempDir()
	for name, text := range map[string]string{"go.mod": "module example.com/hangtape\n", "cmd/hangtape/main.go": said} {
		file := filepath.Join(root, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(file), 0o700); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	p, err := Load(root)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestTexts(t *testing.T) {
	var got []string
	for _, text := range program(t).Texts() {
		got = append(got, text.English+" <"+strings.Join(text.Where, ", ")+"> "+strings.Join(text.Values, " "))
	}
	want := []string{
		"the {1} is {2}. <cmd/hangtape/main.go main> {1} {2}",
		" mm long <cmd/hangtape/main.go main> ",
		"%s at %d of %d\n <cmd/hangtape/main.go main> %[1]s %[2]d %[3]d",
		"step <cmd/hangtape/main.go main> ",
		"left <cmd/hangtape/main.go main, cmd/hangtape/main.go side> ",
		"{has above|under} it <cmd/hangtape/main.go main> {has",
	}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

// Values change places, one word has two meanings, what is not translated and
// what is a contract stays.
func TestTranslatedProgram(t *testing.T) {
	p := program(t)
	tr, err := p.Translate("de.toml", []Text{
		{English: "the {1} is {2}.", Translation: "{2} hat die {1}."},
		{English: " mm long", Translation: " mm Länge"},
		{English: "%s at %d of %d\n", Translation: "von %[3]d %[2]d: %[1]s\n"},
		{English: "step"},
		{English: "left", Where: []string{"cmd/hangtape/main.go main"}, Translation: "übrig"},
		{English: "left", Where: []string{"cmd/hangtape/main.go side"}, Translation: "links"},
	})
	if err != nil {
		t.Fatal(err)
	}
	if want := "words of de.toml, 2 of 6 texts are not translated"; tr.String() != want {
		t.Errorf("got %q, want %q", tr, want)
	}
	overlay, err := tr.Overlay(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	c := exec.Command("go", "run", "-overlay", overlay, "./cmd/hangtape")
	c.Dir = p.Root
	got, err := c.CombinedOutput()
	if want := "1100 mm Länge hat die main-bridge.\nvon 12 1: step\npass übrig\nlinks\n\n"; err != nil || string(got) != want {
		t.Errorf("%v: got\n%s\nwant\n%s", err, got, want)
	}
}

func TestTranslationThatCannotBe(t *testing.T) {
	p := program(t)
	for _, c := range []struct {
		name  string
		texts []Text
		want  string
	}{
		{"a text that the program does not say", []Text{{English: "stepp", Translation: "x"}}, `english = "stepp": the program has no such text; update the file: go run ./cmd/words update de.toml`},
		{"other verbs", []Text{{English: "%s at %d of %d\n", Translation: "%s: %d\n"}}, "has %[1]s %[2]d; accepted is each of %[1]s %[2]d %[3]d"},
		{"a verb that changed places untold", []Text{{English: "%s at %d of %d\n", Translation: "%d/%d %s\n"}}, "has %[1]d %[2]d %[3]s"},
		{"a value that there is not", []Text{{English: "the {1} is {2}.", Translation: "{1} {3}."}}, "has {1} {3}; accepted is each of {1} {2}"},
		{"a percent sign that is taken for a verb", []Text{{English: "step", Translation: "100%d"}}, "has %[1]d; accepted is each of no values"},
		{"a control character", []Text{{English: "step", Translation: "Sch\x1britt"}}, `the control character '\x1b'`},
		{"a line that the English text does not end", []Text{{English: "step", Translation: "Sch\nritt"}}, `the control character '\n'`},
		{"a space that keeps words apart", []Text{{English: " mm long", Translation: "mm lang"}}, "begins or ends with other spaces"},
		{"one word in place of two", []Text{{English: "{has above|under} it", Translation: "{has über} ihm"}}, "other braces"},
		{"twice for one place", []Text{{English: "step", Translation: "a"}, {English: "step", Translation: "b"}}, "stands there 2 times; accepted is once, or each with the where that it is for"},
		{"a place that there is not", []Text{
			{English: "left", Where: []string{"main.go"}, Translation: "a"},
			{English: "left", Where: []string{"cmd/hangtape/main.go side"}, Translation: "b"},
		}, `where is "main.go"; accepted is one of ["cmd/hangtape/main.go main" "cmd/hangtape/main.go side"]`},
		{"twice, each for the same place", []Text{
			{English: "left", Where: []string{"cmd/hangtape/main.go side"}, Translation: "a"},
			{English: "left", Where: []string{"cmd/hangtape/main.go side"}, Translation: "b"},
		}, `is translated twice for "cmd/hangtape/main.go side"`},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := p.Translate("de.toml", c.texts)
			if err == nil || !strings.HasPrefix(err.Error(), "de.toml: ") || !strings.Contains(err.Error(), c.want) {
				t.Errorf("got error %v, want one about %q", err, c.want)
			}
		})
	}
}

// An old translation keeps what the program still says, with the meanings that
// were told apart, and tells what it no longer says.
func TestUpdate(t *testing.T) {
	left := func(where, text string) Text {
		return Text{English: "left", Where: []string{"cmd/hangtape/main.go " + where}, Translation: text}
	}
	updated, gone := program(t).Update([]Text{{English: "step", Translation: "Schritt"}, {English: "stop", Translation: "Halt"}, {English: "go"}, left("main", "übrig"), left("side", "links")})
	var got []string
	for _, u := range updated {
		got = append(got, u.English+"="+u.Translation)
	}
	if want := "the {1} is {2}.=| mm long=|%s at %d of %d\n=|step=Schritt|left=übrig|left=links|{has above|under} it="; strings.Join(got, "|") != want {
		t.Errorf("got %q, want %q", strings.Join(got, "|"), want)
	}
	if len(gone) != 1 || gone[0].Translation != "Halt" {
		t.Errorf("gone are %v", gone)
	}
}

func TestFileOfTexts(t *testing.T) {
	name := filepath.Join(t.TempDir(), "de.toml")
	all := []Text{{English: "a \"b\"\n\tc ±", Where: []string{"x.go f"}, Values: []string{"%[1]s"}, Translation: "ü"}, {English: "d", Where: []string{}}}
	if err := Write(name, "head\nsecond\n", all); err != nil {
		t.Fatal(err)
	}
	got, err := Read(name)
	if err != nil || len(got) != 2 || got[0].English != all[0].English || got[0].Translation != "ü" || got[0].Where[0] != "x.go f" || got[1].English != "d" {
		t.Errorf("%v: %+v", err, got)
	}
	if err := os.WriteFile(name, []byte("[[text]]\nenglisch = \"a\"\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := Read(name); err == nil || !strings.Contains(err.Error(), `key "text.englisch"; accepted under [[text]] is english, where, values, translation`) {
		t.Errorf("got %v", err)
	}
}
