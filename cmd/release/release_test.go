package main

import (
	"crypto/sha256"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestRefusesAVersionOrPlatformThatIsNone(t *testing.T) {
	for _, version := range []string{"", "1", "1.0", "v1.0.0", "1.0.0 ", "1.0.0; rm"} {
		if release(version, t.TempDir(), "", "") == nil {
			t.Errorf("version %q was taken", version)
		}
	}
	if err := release("1.0.0", t.TempDir(), "plan9/mips", ""); err == nil {
		t.Error("an unknown platform was taken")
	}
}

func TestRefusesATranslationThatIsNone(t *testing.T) {
	file := filepath.Join(t.TempDir(), "de.toml")
	if err := os.WriteFile(file, []byte("[[text]]\nenglish = \"Cautionz\"\ntranslation = \"Warnungen\"\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := release("1.0.0", t.TempDir(), "", file); err == nil || !strings.Contains(err.Error(), `de.toml: english = "Cautionz": the program has no such text`) {
		t.Errorf("got %v", err)
	}
}

func TestEveryPlatformHasAFileOfItsOwn(t *testing.T) {
	seen := map[string]platform{}
	for _, p := range platforms {
		name := p.file("1.0.0")
		if other, twice := seen[name]; twice {
			t.Errorf("%v and %v are both %s", p, other, name)
		}
		seen[name] = p
	}
	if _, ok := seen["hangtape_1.0.0_windows_amd64.exe"]; !ok {
		t.Error("Windows runs no file without .exe")
	}
}

// TestAnArchiveDependsOnItsFilesAlone: not on where or when they were written.
func TestAnArchiveDependsOnItsFilesAlone(t *testing.T) {
	var archives [2][]byte
	for i := range archives {
		root := t.TempDir()
		for _, name := range []string{"man1/b.1", "man1/a.1", "completions/c"} {
			path := filepath.Join(root, name)
			if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(path, []byte(name), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		out := filepath.Join(t.TempDir(), "x.tar.gz")
		if err := pack(root, out); err != nil {
			t.Fatal(err)
		}
		var err error
		if archives[i], err = os.ReadFile(out); err != nil {
			t.Fatal(err)
		}
	}
	if string(archives[0]) != string(archives[1]) {
		t.Error("the same files make two archives")
	}
}

func TestSumsAreThoseOfTheFiles(t *testing.T) {
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "a"), []byte("text"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := sums(dir, []string{"a"}); err != nil {
		t.Fatal(err)
	}
	got, err := os.ReadFile(filepath.Join(dir, "SHA256SUMS"))
	if want := fmt.Sprintf("%x  a\n", sha256.Sum256([]byte("text"))); err != nil || string(got) != want {
		t.Errorf("got %q, %v, want %q", got, err, want)
	}
}

// Whoever gets a binary gets the words of all that is in it.
func TestLicencesGoWithEveryCopy(t *testing.T) {
	t.Chdir("../..")
	texts, err := licences(platforms[:1])
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"the hangtape authors", "The Go Authors", "github.com/spf13/cobra v", "Apache License", "SIL OPEN FONT LICENSE", "gonum.org/v1/plot v"} {
		if !strings.Contains(texts, want) {
			t.Errorf("the licences do not tell %q", want)
		}
	}
	if _, err := licencesIn(t.TempDir()); err == nil {
		t.Error("a library without a licence was taken")
	}
}
