package main

import (
	"bytes"
	"os"
	"path/filepath"
	"sync"
	"testing"

	"example.com/hangtape/internal/words"
)

// repository is the program as it stands here, read once.
var repository = sync.OnceValues(func() (*words.Program, error) { return words.Load(".") })

func TestEnglishIsCurrent(t *testing.T) {
	now := filepath.Join(t.TempDir(), "english.toml")
	p, err := repository()
	if err != nil {
		t.Fatal(err)
	}
	if err := writeEnglish(p, now); err != nil {
		t.Fatal(err)
	}
	want, err := os.ReadFile(now)
	if err != nil {
		t.Fatal(err)
	}
	got, err := os.ReadFile("english.toml")
	if err != nil {
		t.Fatal(err)
	}
	// Git may have checked it out with other line ends.
	if got = bytes.ReplaceAll(got, []byte("\r\n"), []byte("\n")); !bytes.Equal(got, want) {
		t.Error("cmd/words/english.toml is not what the source says: run go generate ./cmd/words")
	}
}
