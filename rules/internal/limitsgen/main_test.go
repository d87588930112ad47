package main

import (
	"bytes"
	"os"
	"strings"
	"testing"
)

// The generated file is what limits.toml says now.
func TestGeneratedLimitsAreCurrent(t *testing.T) {
	src, err := os.ReadFile("../../limits.toml")
	if err != nil {
		t.Fatal(err)
	}
	want, err := generate(src)
	if err != nil {
		t.Fatal(err)
	}
	got, err := os.ReadFile("../../limits_gen.go")
	if err != nil {
		t.Fatal(err)
	}
	// Git may have checked it out with other line ends.
	if got = bytes.ReplaceAll(got, []byte("\r\n"), []byte("\n")); !bytes.Equal(got, want) {
		t.Error("rules/limits_gen.go is not what rules/limits.toml says: run go generate ./rules")
	}
}

func TestGenerateRefuses(t *testing.T) {
	const good = "[a-b]\ntitle = \"t\"\ndefault = 1\nunit = \"mm\"\nbounds = [0, 2]\nwhy = \"w\"\nsource = \"s\"\n"
	if _, err := generate([]byte(good)); err != nil {
		t.Fatalf("a good table was refused: %v", err)
	}
	for _, c := range []struct{ name, old, new, want string }{
		{"a misspelt key", "bounds", "bound", "unknown key a-b.bound"},
		{"no title", `"t"`, `""`, "title"},
		{"no reason", `"w"`, `""`, "why"},
		{"no source", `"s"`, `""`, "source"},
		{"a default outside its bounds", "default = 1", "default = 3", "outside its bounds"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := generate([]byte(strings.Replace(good, c.old, c.new, 1)))
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("got error %v, want one about %q", err, c.want)
			}
		})
	}
}
