package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strings"
	"testing"
)

// Package variables are tables: made once, never changed. Held by name: what a
// function assigns to, or to a part of, is no variable of its package.
func TestNoGlobalsThatChange(t *testing.T) {
	for _, part := range []string{"fit", "rules", "sessions", "tui", "cmd/hangtape", "cmd/sheet"} {
		err := filepath.WalkDir(filepath.Join("../..", part), func(dir string, d fs.DirEntry, err error) error {
			if err != nil || !d.IsDir() || d.Name() == "testdata" {
				return err
			}
			return noGlobalsThatChange(t, dir)
		})
		if err != nil {
			t.Fatal(err)
		}
	}
}

func noGlobalsThatChange(t *testing.T, dir string) error {
	files, err := filepath.Glob(filepath.Join(dir, "*.go"))
	if err != nil {
		return err
	}
	var parsed []*ast.File
	set := token.NewFileSet()
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(set, file, nil, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		parsed = append(parsed, f)
	}
	globals := map[string]bool{}
	for _, f := range parsed {
		for _, d := range f.Decls {
			if g, ok := d.(*ast.GenDecl); ok && g.Tok == token.VAR {
				declares(g, globals)
			}
		}
	}
	for _, f := range parsed {
		for _, d := range f.Decls {
			if fn, ok := d.(*ast.FuncDecl); ok && fn.Body != nil {
				for _, at := range assigns(fn, globals) {
					t.Errorf("%s: a variable of the package is changed", set.Position(at))
				}
			}
		}
	}
	return nil
}

// declares notes the names that n and what is in it declares.
func declares(n ast.Node, names map[string]bool) {
	ast.Inspect(n, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.FuncLit:
			return false
		case *ast.ValueSpec:
			for _, name := range n.Names {
				names[name.Name] = true
			}
		}
		return true
	})
}

// assigns are the places where fn assigns to one of the names, or to a part of
// it, that it does not declare itself.
func assigns(fn *ast.FuncDecl, names map[string]bool) []token.Pos {
	own := map[string]bool{}
	note := func(e ast.Expr) {
		if id, ok := e.(*ast.Ident); ok {
			own[id.Name] = true
		}
	}
	var assigned []ast.Expr
	ast.Inspect(fn, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.Field:
			for _, name := range n.Names {
				own[name.Name] = true
			}
		case *ast.ValueSpec:
			for _, name := range n.Names {
				own[name.Name] = true
			}
		case *ast.RangeStmt:
			if n.Tok == token.DEFINE {
				note(n.Key)
				note(n.Value)
			}
		case *ast.IncDecStmt:
			assigned = append(assigned, n.X)
		case *ast.AssignStmt:
			for _, e := range n.Lhs {
				if n.Tok == token.DEFINE {
					note(e)
				} else {
					assigned = append(assigned, e)
				}
			}
		}
		return true
	})
	var out []token.Pos
	for _, e := range assigned {
		if id := root(e); id != nil && names[id.Name] && !own[id.Name] {
			out = append(out, id.Pos())
		}
	}
	return out
}

// root is the variable that e is a part of; nil for what is no variable's.
func root(e ast.Expr) *ast.Ident {
	for {
		switch x := e.(type) {
		case *ast.Ident:
			return x
		case *ast.IndexExpr:
			e = x.X
		case *ast.SelectorExpr:
			e = x.X
		case *ast.StarExpr:
			e = x.X
		case *ast.ParenExpr:
			e = x.X
		default:
			return nil
		}
	}
}
