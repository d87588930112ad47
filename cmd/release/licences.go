package main

import (
	"fmt"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

// licences is the licence of the program, of Go and of every library that a
// binary for one of these platforms holds: they ask for their words to go with
// each copy.
func licences(of []platform) (string, error) {
	root, err := goSays(nil, "env", "GOROOT")
	if err != nil {
		return "", err
	}
	dirs := map[string]string{"go": strings.TrimSpace(root)}
	for _, p := range of {
		list, err := goSays(p.env(), "list", "-deps", "-f", "{{with .Module}}{{if not .Main}}{{.Path}} {{.Version}}\t{{.Dir}}{{end}}{{end}}", "./cmd/hangtape")
		if err != nil {
			return "", err
		}
		for line := range strings.Lines(list) {
			if module, dir, ok := strings.Cut(strings.TrimSpace(line), "\t"); ok {
				dirs[module] = dir
			}
		}
	}
	own, err := licencesIn(".")
	if err != nil {
		return "", err
	}
	b := strings.Builder{}
	b.WriteString("hangtape\n\n" + own)
	for _, module := range slices.Sorted(maps.Keys(dirs)) {
		text, err := licencesIn(dirs[module])
		if err != nil {
			return "", fmt.Errorf("%s: %w", module, err)
		}
		b.WriteString("\n----\n" + module + "\n\n" + text)
	}
	return b.String(), nil
}

// licencesIn is the texts of the licences in a folder, or else what its README
// says.
func licencesIn(dir string) (string, error) {
	for _, pattern := range []string{"LICEN[SC]E*", "COPYING*", "README*"} {
		names, err := filepath.Glob(filepath.Join(dir, pattern))
		if err != nil {
			return "", err
		}
		var texts []string
		for _, name := range names {
			text, err := os.ReadFile(name)
			if err != nil {
				return "", err
			}
			texts = append(texts, strings.TrimRight(string(text), "\n")+"\n")
		}
		if len(texts) > 0 {
			return strings.Join(texts, "\n"), nil
		}
	}
	return "", fmt.Errorf("no licence in %s", dir)
}

// goSays is what a command of the Go tool answers.
func goSays(env []string, args ...string) (string, error) {
	c := exec.Command("go", args...) //nolint:gosec // no shell; the words are this file's own
	c.Env = append(os.Environ(), env...)
	out, err := c.Output()
	if err != nil {
		return "", fmt.Errorf("go %s: %w", args[0], err)
	}
	return string(out), nil
}
