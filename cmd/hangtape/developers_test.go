package main

import (
	"os"
	"path/filepath"
	"regexp"
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
