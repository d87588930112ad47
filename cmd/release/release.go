package main

import (
	"archive/tar"
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"strings"

	"example.com/hangtape/internal/words"
)

var versionForm = regexp.MustCompile(`^\d+\.\d+\.\d+(-[0-9A-Za-z.-]+)?$`)

// A builder builds the program of a release.
type builder struct {
	version     string
	overlay     string // file for go build of the source in another language; "" in English
	linkerFlags string // that say whose words these are; "" in English
}

// translate makes b build with the words of a file, whose source is written to
// work.
func (b *builder) translate(file, work string) error {
	p, err := words.Load(".")
	if err != nil {
		return err
	}
	t, err := p.Read(file)
	if err != nil {
		return err
	}
	b.linkerFlags = " " + t.Flag()
	b.overlay, err = t.Overlay(work)
	return err
}

// release builds for all platforms, or for one of them alone, into dir; with the
// words of a translation where one is named.
func release(version, dir, only, translation string) error {
	if !versionForm.MatchString(version) {
		return fmt.Errorf("version %q; accepted is X.Y.Z, as 1.0.0 or 1.0.0-rc.1", version)
	}
	b := &builder{version: version}
	if translation != "" {
		work, err := os.MkdirTemp("", "hangtape-words-")
		if err != nil {
			return err
		}
		defer func() { _ = os.RemoveAll(work) }() // only scratch
		if err := b.translate(translation, work); err != nil {
			return err
		}
	}
	if err := os.MkdirAll(dir, 0o755); err != nil { //nolint:gosec // handed out: everybody may read it
		return err
	}
	var built []string
	for _, p := range platforms {
		if only != "" && only != p.String() {
			continue
		}
		name := p.file(version)
		if err := b.build(p, filepath.Join(dir, name)); err != nil {
			return err
		}
		built = append(built, name)
	}
	if len(built) == 0 {
		return fmt.Errorf("platform %q; accepted is one of %v", only, platforms)
	}
	help, err := b.helpFiles(dir)
	if err != nil {
		return err
	}
	return sums(dir, append(built, help))
}

// build is one static binary without the paths of this machine in it.
func (b *builder) build(p platform, out string) error {
	c := exec.Command("go", "build", "-trimpath", "-buildvcs=auto", "-overlay="+b.overlay, "-ldflags", "-s -w -X main.version="+b.version+b.linkerFlags, "-o", out, "./cmd/hangtape") //nolint:gosec // no shell; the words are this file's, the release's version and a file's name
	c.Env = append(os.Environ(), p.env()...)
	if said, err := c.CombinedOutput(); err != nil {
		return fmt.Errorf("%s: %w\n%s", p, err, said)
	}
	return nil
}

// helpFiles packs completions and manual pages, which a binary for this machine
// makes from its own commands, with the licences, and returns the archive's name.
func (b *builder) helpFiles(dir string) (string, error) {
	work, err := os.MkdirTemp("", "hangtape-release-")
	if err != nil {
		return "", err
	}
	defer func() { _ = os.RemoveAll(work) }() // only scratch
	program := filepath.Join(work, "hangtape")
	if err := b.build(platform{runtime.GOOS, runtime.GOARCH}, program); err != nil {
		return "", err
	}
	files := filepath.Join(work, "help")
	if said, err := exec.Command(program, "man", filepath.Join(files, "man1")).CombinedOutput(); err != nil { //nolint:gosec // just built
		return "", fmt.Errorf("manual pages: %w\n%s", err, said)
	}
	if err := os.MkdirAll(filepath.Join(files, "completions"), 0o700); err != nil {
		return "", err
	}
	for _, shell := range []string{"bash", "zsh", "fish", "powershell"} {
		script, err := exec.Command(program, "completion", shell).Output() //nolint:gosec // just built
		if err == nil {
			err = os.WriteFile(filepath.Join(files, "completions", "hangtape."+shell), script, 0o600)
		}
		if err != nil {
			return "", fmt.Errorf("completion for %s: %w", shell, err)
		}
	}
	texts, err := licences(platforms)
	if err == nil {
		err = os.WriteFile(filepath.Join(files, "LICENCES"), []byte(texts), 0o600)
	}
	if err != nil {
		return "", fmt.Errorf("licences: %w", err)
	}
	name := "hangtape_" + b.version + "_help.tar.gz"
	return name, pack(files, filepath.Join(dir, name))
}

// pack writes the files under root into an archive that depends on their names
// and contents alone.
func pack(root, out string) error {
	var b bytes.Buffer
	zip := gzip.NewWriter(&b)
	t := tar.NewWriter(zip)
	err := fs.WalkDir(os.DirFS(root), ".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := fs.ReadFile(os.DirFS(root), path)
		if err != nil {
			return err
		}
		if err := t.WriteHeader(&tar.Header{Name: path, Mode: 0o644, Size: int64(len(text))}); err != nil {
			return err
		}
		_, err = t.Write(text)
		return err
	})
	if err := errors.Join(err, t.Close(), zip.Close()); err != nil {
		return err
	}
	return handOut(out, b.Bytes())
}

// sums writes SHA256SUMS, which sha256sum -c reads.
func sums(dir string, names []string) error {
	var b strings.Builder
	for _, name := range names {
		text, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			return err
		}
		fmt.Fprintf(&b, "%x  %s\n", sha256.Sum256(text), name)
	}
	return handOut(filepath.Join(dir, "SHA256SUMS"), []byte(b.String()))
}

// handOut writes a file of the release.
func handOut(name string, text []byte) error {
	return os.WriteFile(name, text, 0o644) //nolint:gosec // who takes a release has to be able to read it
}
