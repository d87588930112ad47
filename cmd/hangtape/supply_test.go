//go:build unix

package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// goTool runs a command of the Go tool from the top folder.
func goTool(t *testing.T, env []string, args ...string) string {
	t.Helper()
	c := exec.Command("go", args...)
	c.Dir = "../.."
	c.Env = append(os.Environ(), env...)
	out, err := c.Output()
	if err != nil {
		t.Fatalf("go %v: %v", args, err)
	}
	return string(out)
}

// platforms are those that the program is built for, as far as they differ in
// what is linked.
var platforms = []string{"linux", "darwin", "windows"}

// licences are told by their own words, in the order in which they are looked for.
var licences = []struct{ name, words string }{
	{"MPL-2.0", "Mozilla Public License"},
	{"CC-BY-4.0", "Creative Commons Attribution 4.0"},
	{"Apache-2.0", "Apache License"},
	{"FTL", "FreeType License"},
	{"BSD-3-Clause", "Neither the name of"},
	{"BSD-2-Clause", "Redistribution and use in source and binary forms"},
	{"MIT", "Permission is hereby granted, free of charge"},
}

// TestEveryModuleIsListedWithItsLicence holds the table of DEVELOPERS.md against
// what is built, on every platform.
func TestEveryModuleIsListedWithItsLicence(t *testing.T) {
	text, err := os.ReadFile("../../DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	listed := map[string]string{}
	for _, row := range regexp.MustCompile(`(?m)^\| ([a-z.]+\.[a-z]+/[^ ]+) \| ([^|]+) \| [^|]+ \|$`).FindAllStringSubmatch(string(text), -1) {
		listed[row[1]] = row[2]
	}
	built := map[string]string{} // the folder of each
	for _, platform := range platforms {
		out := goTool(t, []string{"GOOS=" + platform, "CGO_ENABLED=0"}, "list", "-deps", "-test", "-f", "{{with .Module}}{{if not .Main}}{{.Path}}\t{{.Dir}}{{end}}{{end}}", "./...")
		for line := range strings.Lines(out) {
			if path, dir, ok := strings.Cut(strings.TrimSpace(line), "\t"); ok {
				built[path] = dir
			}
		}
	}
	if len(built) < 30 {
		t.Fatalf("only %d modules are built: %v", len(built), built)
	}
	for path, dir := range built {
		told, ok := listed[path]
		if !ok {
			t.Errorf("%s is built in, and DEVELOPERS.md does not list it", path)
			continue
		}
		if is := licenceIn(t, dir); is != "" && !strings.Contains(told, is) {
			t.Errorf("%s is told to be under %s; its text is that of %s", path, told, is)
		} else if is == "" && !strings.Contains(told, "README") {
			t.Errorf("%s has no licence that is known; told is %s", path, told)
		}
	}
	for path := range listed {
		if _, ok := built[path]; !ok {
			t.Errorf("DEVELOPERS.md lists %s, and nothing is built from it", path)
		}
	}
	direct := goTool(t, nil, "list", "-m", "-f", "{{if not .Indirect}}{{if not .Main}}{{.Path}}{{end}}{{end}}", "all")
	for _, path := range strings.Fields(direct) {
		if _, ok := listed[path]; !ok {
			t.Errorf("go.mod asks for %s, and DEVELOPERS.md does not list it", path)
		}
	}
}

// licenceIn is the licence of a module by its text; empty where there is none.
func licenceIn(t *testing.T, dir string) string {
	t.Helper()
	for _, pattern := range []string{"LICEN[SC]E", "LICEN[SC]E.*", "COPYING"} {
		names, err := filepath.Glob(filepath.Join(dir, pattern))
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range names {
			text, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			plain := strings.Join(strings.Fields(string(text)), " ")
			for _, l := range licences {
				if strings.Contains(plain, l.words) {
					return l.name
				}
			}
		}
	}
	return ""
}

// TestNothingCanDial looks for what opens a socket among the functions that the
// linker kept.
func TestNothingCanDial(t *testing.T) {
	symbols := goTool(t, nil, "tool", "nm", program(t))
	if !strings.Contains(symbols, " main.main\n") || !strings.Contains(symbols, " os.OpenFile\n") {
		t.Fatal("the symbols of the program cannot be read")
	}
	opens := regexp.MustCompile(`(?m) (net\.(\(\*(Dialer|Resolver|ListenConfig|sysDialer|conn)\)|Dial|Listen|Lookup|socket|internetSocket).*|syscall\.(connect|socket|bind|Socket|Connect|Bind|listen|sendto)|net/http\..*|crypto/tls\..*|golang.org/x/sys/unix\.(Connect|Socket))$`)
	for _, found := range opens.FindAllString(symbols, -1) {
		t.Errorf("the program holds%s", found)
	}
}

// TestWhoImportsNet names the packages that bring in net, or start programs.
func TestWhoImportsNet(t *testing.T) {
	allowed := map[string][]string{
		"net":     {"github.com/spf13/pflag", "golang.org/x/sys/windows"}, // for flags that take addresses, and names of its calls
		"os/exec": {"github.com/atotto/clipboard", "github.com/charmbracelet/bubbletea", "github.com/charmbracelet/colorprofile", "github.com/charmbracelet/huh"},
	}
	for _, platform := range platforms {
		out := goTool(t, []string{"GOOS=" + platform, "CGO_ENABLED=0"}, "list", "-deps", "-f", "{{if not .Standard}}{{.ImportPath}} {{join .Imports \" \"}}{{end}}", "./cmd/hangtape")
		for line := range strings.Lines(out) {
			words := strings.Fields(line)
			if len(words) == 0 {
				continue
			}
			for _, imported := range words[1:] {
				switch {
				case imported == "net/url" || imported == "net/netip": // they read addresses and open nothing
				case strings.HasPrefix(imported+"/", "net/") || imported == "os/exec" || imported == "crypto/tls" || imported == "plugin":
					if !slices.Contains(allowed[imported], words[0]) {
						t.Errorf("%s: %s imports %s", platform, words[0], imported)
					}
				}
			}
		}
	}
}
