package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

const module = "example.com/hangtape/"

// arrows says what each part of the program may import beside the standard
// library and itself: first our own packages, then libraries. Generators (main
// packages outside cmd) and tests are free.
var arrows = map[string][]string{
	"internal": {"github.com/BurntSushi/toml", "golang.org/x/tools"}, // words
	"fit":      {"gonum.org/v1/gonum"},
	"rules":    {module + "fit", module + "internal", "gonum.org/v1/gonum"},
	"sessions": {module + "fit", module + "rules", module + "internal", "github.com/BurntSushi/toml", "github.com/oklog/ulid/v2", "github.com/gofrs/flock", "golang.org/x/sys", "golang.org/x/text", "github.com/mattn/go-runewidth"},
	"tui": {
		module + "fit", module + "rules", module + "sessions", module + "internal",
		"github.com/charmbracelet/", "github.com/muesli/termenv", "github.com/mattn/go-runewidth", "github.com/rivo/uniseg",
	},
	"cmd": {
		module, "github.com/spf13/cobra", "github.com/spf13/pflag", "github.com/adrg/xdg", "github.com/mattn/go-isatty", "golang.org/x/term", "gonum.org/v1/",
		"codeberg.org/go-pdf/fpdf", "codeberg.org/go-fonts/liberation", "golang.org/x/image", "golang.org/x/text", "github.com/mattn/go-runewidth"},
}

// Of the standard library, fit and rules compute and read no files; nothing
// here ever talks to a network.
var forbidden = map[string][]string{
	"fit":      {"os", "io/fs", "path/filepath", "net", "syscall", "log"},
	"rules":    {"os", "io/fs", "path/filepath", "net", "syscall", "log"},
	"sessions": {"net", "flag", "log"},
	"tui":      {"net", "flag", "log", "os/exec"},
	"cmd":      {"net", "flag", "log"},
}

// onlyCmd are the doors to the process, which only cmd/hangtape may open; what
// it finds there it passes on.
var onlyCmd = map[string]bool{
	"os.Exit": true, "os.Args": true, "os.Getenv": true, "os.LookupEnv": true, "os.Environ": true,
	"os.UserHomeDir": true, "os.UserConfigDir": true, "os.UserCacheDir": true, "os.Stdin": true, "os.Stdout": true, "os.Stderr": true,
	"time.Now": true, "time.Since": true, "time.Until": true,
}

func TestArrows(t *testing.T) {
	files := sourceFiles(t, "../..")
	if len(files) < 10 {
		t.Fatalf("only %d source files found", len(files))
	}
	huh := map[string]bool{}
	for name, f := range files {
		part, _, _ := strings.Cut(name, "/")
		allowed, known := arrows[part]
		if !known {
			t.Errorf("%s: a part of the program without a line in arrows", name)
			continue
		}
		for _, spec := range f.Imports {
			path, _ := strconv.Unquote(spec.Path.Value)
			if strings.HasPrefix(path, "github.com/charmbracelet/huh") {
				huh[name] = true
			}
			switch {
			case !strings.Contains(path, "."):
				if under(path, forbidden[part]) {
					t.Errorf("%s imports %s: %s does without", name, path, part)
				}
			case strings.HasPrefix(path, module+part), under(path, allowed):
			default:
				t.Errorf("%s imports %s: not an arrow of %s", name, path, part)
			}
		}
		if part != "cmd" {
			for _, door := range doors(f) {
				t.Errorf("%s uses %s: cmd/hangtape passes it in", name, door)
			}
		}
	}
	if len(huh) > 1 {
		t.Errorf("huh is imported by more than one file: %v", huh)
	}
}

// sourceFiles parses every Go file of the program itself, by slashed path.
func sourceFiles(t *testing.T, root string) map[string]*ast.File {
	t.Helper()
	files := map[string]*ast.File{}
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && path != root && (d.Name() == "testdata" || strings.HasPrefix(d.Name(), ".")) {
			return fs.SkipDir
		}
		if !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return nil
		}
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		name, err := filepath.Rel(root, path)
		name = filepath.ToSlash(name)
		if f.Name.Name != "main" || strings.HasPrefix(name, "cmd/") {
			files[name] = f
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// under says whether an import path is one of these or lies below one.
func under(path string, of []string) bool {
	for _, p := range of {
		if path == p || strings.HasPrefix(path, strings.TrimSuffix(p, "/")+"/") {
			return true
		}
	}
	return false
}

// doors are the names of onlyCmd that f uses.
func doors(f *ast.File) (used []string) {
	ast.Inspect(f, func(n ast.Node) bool {
		if s, ok := n.(*ast.SelectorExpr); ok {
			if x, ok := s.X.(*ast.Ident); ok && onlyCmd[x.Name+"."+s.Sel.Name] {
				used = append(used, x.Name+"."+s.Sel.Name)
			}
		}
		return true
	})
	return used
}
