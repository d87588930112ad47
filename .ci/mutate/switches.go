package main

import (
	"bytes"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"go/types"
	"os"
	"slices"
)

// A mutant is one change to one sign of the source.
type mutant struct {
	id        int
	pkg, file string
	line, col int
	kind      string

	// What can be switched while the program runs has no now. A constant has
	// to be compiled anew, with now instead of the was bytes at offset.
	offset, was int
	now         string
}

func (m *mutant) String() string { return fmt.Sprintf("%s:%d:%d", m.file, m.line, m.col) }

// edit replaces was bytes at offset.
type edit struct {
	offset, was int
	now         string
}

// source is one file with its mutants and the edits that make them switches.
type source struct {
	pkg, file string
	text      []byte
	fset      *token.FileSet
	info      *types.Info
	next      *int
	mutants   []*mutant
	edits     []edit
	stack     []ast.Node
}

var calls = map[token.Token]string{
	token.ADD: "Add", token.SUB: "Sub", token.MUL: "Mul", token.QUO: "Quo", token.REM: "Rem",
	token.LSS: "Lss", token.LEQ: "Leq", token.GTR: "Gtr", token.GEQ: "Geq",
}

var swaps = map[token.Token]string{
	token.ADD: "-", token.SUB: "+", token.MUL: "/", token.QUO: "*", token.REM: "*",
}

var boundaries = map[token.Token]string{token.LSS: "<=", token.LEQ: "<", token.GTR: ">=", token.GEQ: ">"}

var negations = map[token.Token]string{
	token.LSS: ">=", token.LEQ: ">", token.GTR: "<=", token.GEQ: "<", token.EQL: "!=", token.NEQ: "==",
}

func (s *source) at(p token.Pos) int { return s.fset.Position(p).Offset }

func (s *source) mutant(kind string, pos token.Pos, sign token.Token, now string) int {
	*s.next++
	p := s.fset.Position(pos)
	m := &mutant{id: *s.next, pkg: s.pkg, file: s.file, line: p.Line, col: p.Column, kind: kind}
	if s.constant() {
		m.offset, m.was, m.now = p.Offset, len(sign.String()), now
	}
	s.mutants = append(s.mutants, m)
	return m.id
}

func (s *source) edit(from token.Pos, was int, now string) {
	if !s.constant() {
		s.edits = append(s.edits, edit{s.at(from), was, now})
	}
}

// constant says whether the node on top has to stay one for the compiler.
func (s *source) constant() bool {
	for i, n := range s.stack {
		switch n := n.(type) {
		case *ast.GenDecl:
			if n.Tok == token.CONST {
				return true
			}
		case *ast.ArrayType:
			return true
		case *ast.KeyValueExpr:
			if i+1 < len(s.stack) && s.stack[i+1] == n.Key && s.info.Types[n.Key].Value != nil {
				return true
			}
		}
	}
	return false
}

// of names the type, where it is one that an untyped constant could become.
func of(t types.Type) string {
	switch t := types.Default(t).(type) {
	case *types.Basic:
		return "[" + t.Name() + "]"
	case *types.TypeParam:
		return "[" + t.Obj().Name() + "]"
	}
	return ""
}

func (s *source) visit(n ast.Node) bool {
	if n == nil {
		s.stack = s.stack[:len(s.stack)-1]
		return true
	}
	s.stack = append(s.stack, n)
	switch n := n.(type) {
	case *ast.BinaryExpr:
		s.binary(n)
	case *ast.UnaryExpr:
		if n.Op == token.SUB {
			id := s.mutant("negative", n.OpPos, n.Op, "+")
			s.edit(n.OpPos, 1, fmt.Sprintf("mutant.Neg%s(%d, ", of(s.info.TypeOf(n)), id))
			s.edit(n.End(), 0, ")")
		}
	case *ast.IncDecStmt:
		id := s.mutant("step", n.TokPos, n.Tok, "")
		s.edit(n.TokPos, 2, fmt.Sprintf("%c= mutant.Step(%d, %s)", n.Tok.String()[0], id, s.text[s.at(n.X.Pos()):s.at(n.X.End())]))
	}
	return true
}

func (s *source) binary(n *ast.BinaryExpr) {
	id, operand := 0, s.info.TypeOf(n.X)
	if s.info.Types[n.X].Value != nil {
		operand = s.info.TypeOf(n.Y)
	}
	switch n.Op {
	case token.ADD, token.SUB, token.MUL, token.QUO, token.REM:
		if b, ok := operand.Underlying().(*types.Basic); ok && b.Info()&types.IsString != 0 {
			return // strings can only be put together
		}
		operand = s.info.TypeOf(n)
		id = s.mutant("arithmetic", n.OpPos, n.Op, swaps[n.Op])
	case token.LSS, token.LEQ, token.GTR, token.GEQ:
		id = s.mutant("boundary", n.OpPos, n.Op, boundaries[n.Op])
		s.mutant("negation", n.OpPos, n.Op, negations[n.Op])
	case token.EQL, token.NEQ:
		id = s.mutant("negation", n.OpPos, n.Op, negations[n.Op])
		s.edit(n.Pos(), 0, fmt.Sprintf("mutant.Not(%d, ", id))
		s.edit(n.End(), 0, ")")
		return
	default:
		return
	}
	s.edit(n.Pos(), 0, fmt.Sprintf("mutant.%s%s(%d, ", calls[n.Op], of(operand), id))
	s.edit(n.OpPos, len(n.Op.String()), ",")
	s.edit(n.End(), 0, ")")
}

// switches finds the mutants of the files of a package, whose imports are read
// by how, and writes the files with switches to the paths that where gives.
func switches(pkg string, files []string, how types.Importer, next *int, where func(string) string) ([]*mutant, error) {
	fset := token.NewFileSet()
	var parsed []*ast.File
	var all []*mutant
	for _, f := range files {
		a, err := parser.ParseFile(fset, f, nil, parser.SkipObjectResolution)
		if err != nil {
			return nil, err
		}
		parsed = append(parsed, a)
	}
	info := &types.Info{Types: map[ast.Expr]types.TypeAndValue{}, Defs: map[*ast.Ident]types.Object{}, Uses: map[*ast.Ident]types.Object{}}
	if _, err := (&types.Config{Importer: how}).Check(pkg, fset, parsed, info); err != nil {
		return nil, err
	}
	for i, a := range parsed {
		text, err := os.ReadFile(files[i])
		if err != nil {
			return nil, err
		}
		s := &source{pkg: pkg, file: files[i], text: text, fset: fset, info: info, next: next}
		ast.Inspect(a, s.visit)
		all = append(all, s.mutants...)
		if err := os.WriteFile(where(files[i]), s.with(a.Name.End()), 0o600); err != nil {
			return nil, err
		}
	}
	return all, nil
}

// with is the text after its edits. At one place calls close before others
// open, and these in the order of the walk, the outer one first.
func (s *source) with(named token.Pos) []byte {
	if len(s.edits) == 0 {
		return s.text
	}
	rank := func(e edit) int {
		if e.now == ")" {
			return 2 * e.offset
		}
		return 2*e.offset + 1
	}
	slices.SortStableFunc(s.edits, func(a, b edit) int { return rank(a) - rank(b) })
	var out bytes.Buffer
	from := s.at(named)
	out.Write(s.text[:from])
	out.WriteString("; import \"example.com/hangtape/internal/mutant\"")
	for _, e := range s.edits {
		out.Write(s.text[from:e.offset])
		out.WriteString(e.now)
		from = e.offset + e.was
	}
	out.Write(s.text[from:])
	return out.Bytes()
}
