package words

import (
	"errors"
	"go/ast"
	"go/token"
	"go/types"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"golang.org/x/tools/go/packages"
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
// the order of their paths, and tells the root of the repository in which dir
// lies. What the compiler knows of libraries comes from the Go tool.
func load(dir string) (root string, all []*source, err error) {
	c := &packages.Config{Dir: dir, Mode: packages.NeedName | packages.NeedModule | packages.NeedImports | packages.NeedDeps}
	program, err := loaded(c, module+"cmd/hangtape")
	if err != nil {
		return "", nil, err
	}
	var own []string
	packages.Visit(program, nil, func(p *packages.Package) {
		if p.Module != nil && p.Module.Main {
			own, root = append(own, p.PkgPath), p.Module.Dir
		}
	})
	c.Mode = packages.NeedName | packages.NeedCompiledGoFiles | packages.NeedImports | packages.NeedSyntax | packages.NeedTypes | packages.NeedTypesInfo
	found, err := loaded(c, own...)
	if err != nil {
		return "", nil, err
	}
	slices.SortFunc(found, func(a, b *packages.Package) int { return strings.Compare(a.PkgPath, b.PkgPath) })
	for _, p := range found {
		for i, file := range p.Syntax {
			name := p.CompiledGoFiles[i]
			text, err := os.ReadFile(name)
			if err != nil {
				return "", nil, err
			}
			all = append(all, &source{path: path.Join(strings.TrimPrefix(p.PkgPath, module), filepath.Base(name)), text: text, fset: p.Fset, file: file, info: p.TypesInfo})
		}
	}
	return root, all, nil
}

// loaded are the packages, all without errors of their own.
func loaded(c *packages.Config, paths ...string) ([]*packages.Package, error) {
	found, err := packages.Load(c, paths...)
	if err != nil {
		return nil, err
	}
	var wrong []error
	for _, p := range found {
		for _, e := range p.Errors {
			wrong = append(wrong, e)
		}
	}
	return found, errors.Join(wrong...)
}
