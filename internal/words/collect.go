package words

import (
	"fmt"
	"go/ast"
	"go/token"
	"go/types"
	"strconv"
	"strings"
)

// use is one place where a text stands.
type use struct {
	*source
	english string
	where   string // file and declaration
	slot    string
	node    ast.Expr
	leaves  []ast.Expr // literals and values, in order
	named   string     // the type, where it is one of its own
}

// uses finds all texts of a file, contracts among them, in their order.
func (s *source) uses() []*use {
	var all []*use
	var stack []ast.Node
	ast.Inspect(s.file, func(n ast.Node) bool {
		switch n := n.(type) {
		case nil:
			stack = stack[:len(stack)-1]
			return true
		case *ast.ImportSpec:
			return false
		case ast.Expr:
			if u := s.use(n, stack); u != nil {
				all = append(all, u)
			}
		}
		stack = append(stack, n)
		return true
	})
	return all
}

// use is the text that begins with n, nil where none does.
func (s *source) use(n ast.Expr, stack []ast.Node) *use {
	if lit, ok := n.(*ast.BasicLit); !s.isSum(n) && (!ok || lit.Kind != token.STRING) {
		return nil
	}
	above := len(stack) - 1
	for ; above > 0; above-- {
		if _, ok := stack[above].(*ast.ParenExpr); !ok {
			break
		}
	}
	if _, tag := stack[above].(*ast.Field); tag || s.isSum(stack[above]) {
		return nil // a sum is one text
	}
	u := &use{source: s, node: n}
	s.flatten(n, &u.leaves)
	var text strings.Builder
	values := 0
	for _, l := range u.leaves {
		if lit, ok := l.(*ast.BasicLit); ok {
			v, _ := strconv.Unquote(lit.Value) // the compiler took it
			text.WriteString(v)
		} else {
			values++
			fmt.Fprintf(&text, "{%d}", values)
		}
	}
	u.english = text.String()
	if !hasWords(u.english) {
		return nil
	}
	full := append(append([]ast.Node{}, stack...), n)
	u.slot = s.slot(full)
	u.where = s.path + " " + decl(full)
	if named, ok := s.info.TypeOf(n).(*types.Named); ok {
		u.named = s.objectName(named.Obj())
	}
	return u
}

// isSum says whether n puts texts together.
func (s *source) isSum(n ast.Node) bool {
	sum, ok := n.(*ast.BinaryExpr)
	if !ok || sum.Op != token.ADD {
		return false
	}
	b, ok := s.info.TypeOf(sum).Underlying().(*types.Basic)
	return ok && b.Info()&types.IsString != 0
}

// flatten lists what a sum of texts is put together from.
func (s *source) flatten(n ast.Expr, to *[]ast.Expr) {
	n = ast.Unparen(n)
	if s.isSum(n) {
		sum := n.(*ast.BinaryExpr)
		s.flatten(sum.X, to)
		s.flatten(sum.Y, to)
		return
	}
	*to = append(*to, n)
}
