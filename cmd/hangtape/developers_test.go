package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// What DEVELOPERS.md points to is there.
func TestDevelopersPointsToWhatThereIs(t *testing.T) {
	doc, err := os.ReadFile("../../DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	paths := regexp.MustCompile("`((?:fit|rules|sessions|tui|cmd|testdata)/[^` ]+)`").FindAllStringSubmatch(string(doc), -1)
	if len(paths) < 80 {
		t.Errorf("only %d paths were found", len(paths))
	}
	for _, p := range paths {
		path := strings.ReplaceAll(p[1], "format-N", "format-*")
		if found, err := filepath.Glob(filepath.Join("../..", filepath.FromSlash(path))); err != nil || len(found) == 0 {
			t.Errorf("there is no %s", p[1])
		}
	}
}

// Every part of it that its first lines name is there, in their order.
func TestDevelopersContents(t *testing.T) {
	data, err := os.ReadFile("../../DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	contents, doc, _ := strings.Cut(strings.ReplaceAll(string(data), "\r\n", "\n"), "\n## ")
	anchors := regexp.MustCompile(`\]\(#([a-z-]+)\)`).FindAllStringSubmatch(contents, -1)
	headings := strings.Split("## "+doc, "\n## ")
	if len(anchors) != len(headings) {
		t.Fatalf("%d parts are named, there are %d", len(anchors), len(headings))
	}
	for i, a := range anchors {
		heading, _, _ := strings.Cut(strings.TrimPrefix(headings[i], "## "), "\n")
		if got := strings.ReplaceAll(strings.ToLower(heading), " ", "-"); got != a[1] {
			t.Errorf("part %d is %q and named %q", i+1, got, a[1])
		}
	}
}

// Every sentence of the program stands in a file that the part on words names.
func TestDevelopersNamesWhereWordsAre(t *testing.T) {
	data, err := os.ReadFile("../../DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	_, doc, _ := strings.Cut(string(data), "\n## Words")
	doc, _, _ = strings.Cut(doc, "\n## ")
	var named []string
	for _, p := range regexp.MustCompile("`([a-z]+/[^` ]+\\.go)`").FindAllStringSubmatch(doc, -1) {
		named = append(named, p[1])
	}
	used := map[string]bool{}
	for _, part := range []string{"fit", "rules", "sessions", "tui", "internal", "cmd/hangtape", "cmd/sheet"} {
		err := fs.WalkDir(os.DirFS("../.."), part, func(file string, d fs.DirEntry, err error) error {
			switch {
			case err != nil:
				return err
			case d.IsDir() && slices.Contains([]string{"testdata", "surveygen", "limitsgen", "sessionstest", "flowtest", "docpart", "golden"}, d.Name()):
				return fs.SkipDir
			case path.Ext(file) != ".go" || strings.HasSuffix(file, "_test.go"):
				return nil
			}
			i := slices.IndexFunc(named, func(p string) bool { ok, _ := path.Match(p, file); return ok })
			if i >= 0 {
				used[named[i]] = true
			} else if s := sentenceIn(t, file); s != "" {
				t.Errorf("%s says %s, and is not named", file, s)
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	for _, p := range named {
		if !used[p] {
			t.Errorf("%s is named and not there", p)
		}
	}
}

// sentenceIn is a text of three words or more in a file, but for what only
// programmers see; "" where there is none.
func sentenceIn(t *testing.T, file string) (found string) {
	t.Helper()
	parsed, err := parser.ParseFile(token.NewFileSet(), filepath.Join("../..", filepath.FromSlash(file)), nil, parser.SkipObjectResolution)
	if err != nil {
		t.Fatal(err)
	}
	words := regexp.MustCompile(`\pL{2,}[^\pL]* [^\pL]*\pL{2,}[^\pL]* [^\pL]*\pL{2,}`)
	ast.Inspect(parsed, func(n ast.Node) bool {
		if c, ok := n.(*ast.CallExpr); ok {
			if f, ok := c.Fun.(*ast.Ident); ok && f.Name == "panic" {
				return false
			}
		}
		if lit, ok := n.(*ast.BasicLit); ok && lit.Kind == token.STRING && words.MatchString(lit.Value) {
			found = lit.Value
		}
		return true
	})
	return found
}
