package words

import (
	"encoding/json"
	"go/ast"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// Overlay writes the translated sources to dir, and beside them the file that
// go build -overlay takes, whose name it returns.
func (t *Translation) Overlay(dir string) (string, error) {
	by := map[*source][]*use{}
	for _, u := range t.program.uses {
		if _, ok := t.of[u]; ok {
			by[u.source] = append(by[u.source], u)
		}
	}
	replace := map[string]string{}
	for s, uses := range by {
		path, err := filepath.Abs(filepath.Join(t.program.Root, filepath.FromSlash(s.path)))
		if err != nil {
			return "", err
		}
		to := filepath.Join(dir, strings.ReplaceAll(s.path, "/", "-"))
		if err := os.WriteFile(to, []byte(t.rendered(s, uses, 0, len(s.text))), 0o600); err != nil {
			return "", err
		}
		replace[path] = to
	}
	text, err := json.Marshal(map[string]any{"Replace": replace})
	if err != nil {
		return "", err
	}
	name := filepath.Join(dir, "overlay.json")
	return name, os.WriteFile(name, text, 0o600)
}

// rendered is a part of a source with its uses translated, which come in the
// order in which they begin, the outer one first.
func (t *Translation) rendered(s *source, uses []*use, from, to int) string {
	var b strings.Builder
	for _, u := range uses {
		begin, end := s.at(u.node.Pos()), s.at(u.node.End())
		if begin < from || end > to {
			continue
		}
		b.Write(s.text[from:begin])
		b.WriteString(t.expression(s, u, uses))
		from = end
	}
	b.Write(s.text[from:to])
	return b.String()
}

var place = regexp.MustCompile(`\{\d+\}`)

// expression is a use in its other language.
func (t *Translation) expression(s *source, u *use, uses []*use) string {
	given := slices.DeleteFunc(slices.Clone(u.leaves), func(e ast.Expr) bool { _, literal := e.(*ast.BasicLit); return literal })
	text := t.of[u]
	var parts []string
	add := func(literal string) {
		if literal != "" || len(given) == 0 {
			parts = append(parts, strconv.Quote(literal))
		}
	}
	from := 0
	for _, at := range place.FindAllStringIndex(text, -1) {
		add(text[from:at[0]])
		n, _ := strconv.Atoi(text[at[0]+1 : at[1]-1])
		e := given[n-1]
		parts = append(parts, t.rendered(s, uses, s.at(e.Pos()), s.at(e.End())))
		from = at[1]
	}
	add(text[from:])
	return strings.Join(parts, " + ")
}

func (s *source) at(p token.Pos) int { return s.fset.Position(p).Offset }
