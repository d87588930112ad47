package words

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"slices"
	"strings"
)

const module = "example.com/hangtape/"

// source is one file of the program.
type source struct {
	path string // slashed, from the root of the repository
	text []byte
	fset *token.FileSet
	file *ast.File
	info *types.Info
}

// load reads the packages that the program is built of, with their types, in
// the order of their paths. What the compiler knows of libraries it gets from
// the Go tool.
func load(root string) ([]*source, error) {
	c := exec.Command("go", "list", "-json=ImportPath,Dir,GoFiles,Export,Module", "-export", "-deps", "./cmd/hangtape")
	c.Dir = root
	var said bytes.Buffer
	c.Stderr = &said
	out, err := c.Output()
	if err != nil {
		return nil, fmt.Errorf("go list: %w\n%s", err, said.Bytes())
	}
	type listed struct {
		ImportPath, Dir, Export string
		GoFiles                 []string
		Module                  *struct{ Main bool }
	}
	exports := map[string]string{}
	var own []listed
	for d := json.NewDecoder(bytes.NewReader(out)); ; {
		var l listed
		if err := d.Decode(&l); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			return nil, err
		}
		exports[l.ImportPath] = l.Export
		if l.Module != nil && l.Module.Main {
			own = append(own, l)
		}
	}
	slices.SortFunc(own, func(a, b listed) int { return strings.Compare(a.ImportPath, b.ImportPath) })
	fset := token.NewFileSet()
	how := importer.ForCompiler(fset, "gc", func(path string) (io.ReadCloser, error) { return os.Open(exports[path]) })
	var all []*source
	for _, l := range own {
		info := &types.Info{Types: map[ast.Expr]types.TypeAndValue{}, Defs: map[*ast.Ident]types.Object{}, Uses: map[*ast.Ident]types.Object{}, Selections: map[*ast.SelectorExpr]*types.Selection{}}
		var files []*ast.File
		for _, name := range l.GoFiles {
			file := filepath.Join(l.Dir, name)
			text, err := os.ReadFile(file)
			if err != nil {
				return nil, err
			}
			parsed, err := parser.ParseFile(fset, file, text, parser.SkipObjectResolution)
			if err != nil {
				return nil, err
			}
			files = append(files, parsed)
			all = append(all, &source{path: path.Join(strings.TrimPrefix(l.ImportPath, module), name), text: text, fset: fset, file: parsed, info: info})
		}
		if _, err := (&types.Config{Importer: how}).Check(l.ImportPath, fset, files, info); err != nil {
			return nil, err
		}
	}
	return all, nil
}
