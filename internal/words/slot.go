package words

import (
	"fmt"
	"go/ast"
	"go/token"
	"go/types"
	"strings"
)

// slot says where a text goes that stands at the end of the stack: into which
// field, parameter, variable or result, as "field rules.Topic.Name". Lists of
// texts go where the list goes.
func (s *source) slot(stack []ast.Node) string {
	for i := len(stack) - 1; i > 0; i-- {
		if said := s.step(stack[:i+1]); said != "" {
			return said
		}
	}
	return "nowhere"
}

// step is the slot of the node at the end of the stack in its parent; "" where
// it is that of the parent itself.
func (s *source) step(stack []ast.Node) string {
	n, parents := stack[len(stack)-1], stack[:len(stack)-1]
	switch p := parents[len(parents)-1].(type) {
	case *ast.BinaryExpr:
		if p.Op != token.ADD {
			return "compared"
		}
	case *ast.CaseClause:
		return "compared"
	case *ast.IndexExpr:
		if p.Index == n {
			return "index"
		}
	case *ast.KeyValueExpr:
		return s.element(p, n, parents[len(parents)-2])
	case *ast.CompositeLit:
		if t, ok := under(s.info.TypeOf(p)).(*types.Struct); ok {
			for i, e := range p.Elts {
				if e == n {
					return "field " + s.typeName(s.info.TypeOf(p)) + "." + t.Field(i).Name()
				}
			}
		}
	case *ast.CallExpr:
		return s.argument(p, n)
	case *ast.ReturnStmt:
		return "result " + s.function(parents)
	case *ast.AssignStmt:
		for i, r := range p.Rhs {
			if r == n && i < len(p.Lhs) {
				return s.target(p.Lhs[i], parents)
			}
		}
	case *ast.ValueSpec:
		for i, v := range p.Values {
			if v == n && i < len(p.Names) {
				return s.target(p.Names[i], parents)
			}
		}
	case *ast.RangeStmt:
		if p.Value != nil {
			return s.target(p.Value.(*ast.Ident), parents)
		}
	}
	return ""
}

// element is the slot of a key or a value of a composite literal.
func (s *source) element(p *ast.KeyValueExpr, n, of ast.Node) string {
	lit := of.(*ast.CompositeLit)
	t := s.info.TypeOf(lit)
	switch under(t).(type) {
	case *types.Struct:
		return "field " + s.typeName(t) + "." + p.Key.(*ast.Ident).Name
	case *types.Map:
		if p.Key == n {
			return "index"
		}
	}
	return ""
}

// argument is the slot of an argument of a call.
func (s *source) argument(p *ast.CallExpr, n ast.Node) string {
	fun := ast.Unparen(p.Fun)
	if s.info.Types[fun].IsType() {
		return ""
	}
	sig, ok := s.info.TypeOf(fun).(*types.Signature)
	if id, is := fun.(*ast.Ident); is {
		if _, is := s.info.Uses[id].(*types.Builtin); is {
			if id.Name == "panic" {
				return "panic"
			}
			return ""
		}
	}
	if !ok {
		return ""
	}
	for i, a := range p.Args {
		if a == n {
			params := sig.Params()
			v := params.At(min(i, params.Len()-1))
			return "param " + s.callee(fun) + "." + v.Name()
		}
	}
	return ""
}

// callee names what is called.
func (s *source) callee(fun ast.Expr) string {
	switch f := fun.(type) {
	case *ast.IndexExpr:
		return s.callee(f.X)
	case *ast.IndexListExpr:
		return s.callee(f.X)
	case *ast.Ident:
		return s.objectName(s.info.Uses[f])
	case *ast.SelectorExpr:
		if sel := s.info.Selections[f]; sel != nil {
			return s.typeName(sel.Recv()) + "." + f.Sel.Name
		}
		return s.objectName(s.info.Uses[f.Sel])
	}
	return "func"
}

// target is the slot of what is assigned to.
func (s *source) target(lhs ast.Expr, parents []ast.Node) string {
	switch l := lhs.(type) {
	case *ast.Ident:
		o := s.info.Defs[l]
		if o == nil {
			o = s.info.Uses[l]
		}
		if o != nil && o.Parent() == o.Pkg().Scope() {
			return "var " + s.objectName(o)
		}
		return "var " + s.function(parents) + "." + l.Name
	case *ast.SelectorExpr:
		return "field " + s.typeName(s.info.TypeOf(l.X)) + "." + l.Sel.Name
	case *ast.IndexExpr:
		return s.target(l.X, parents)
	case *ast.StarExpr:
		return s.target(l.X, parents)
	}
	return "var " + s.function(parents)
}

// function names the function or declaration around a node.
func (s *source) function(stack []ast.Node) string { return s.pkg() + "." + decl(stack) }

// decl is the name of the top-level declaration that holds the node at the end of
// the stack.
func decl(stack []ast.Node) string {
	for i, n := range stack {
		switch d := n.(type) {
		case *ast.FuncDecl:
			if d.Recv != nil {
				t := d.Recv.List[0].Type
				if star, ok := t.(*ast.StarExpr); ok {
					t = star.X
				}
				if x, ok := t.(*ast.IndexExpr); ok {
					t = x.X
				}
				return fmt.Sprintf("%s.%s", t.(*ast.Ident).Name, d.Name.Name)
			}
			return d.Name.Name
		case *ast.GenDecl:
			if spec, ok := stack[i+1].(*ast.ValueSpec); ok {
				return spec.Names[0].Name
			}
		}
	}
	return ""
}

func (s *source) pkg() string {
	return s.path[:strings.LastIndexByte(s.path, '/')]
}

func (s *source) objectName(o types.Object) string {
	if o == nil || o.Pkg() == nil {
		return "func"
	}
	return strings.TrimPrefix(o.Pkg().Path(), module) + "." + o.Name()
}

func (s *source) typeName(t types.Type) string {
	if p, ok := t.(*types.Pointer); ok {
		t = p.Elem()
	}
	if n, ok := t.(*types.Named); ok {
		return s.objectName(n.Obj())
	}
	return s.pkg() + ".struct"
}

func under(t types.Type) types.Type {
	if p, ok := t.Underlying().(*types.Pointer); ok {
		t = p.Elem()
	}
	return t.Underlying()
}
