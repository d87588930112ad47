package words

import (
	"go/ast"
	"go/types"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"
)

// repository is the program as it stands here, read once.
var repository = sync.OnceValues(func() (*Program, error) { return Load(".") })

// Where contracts are told apart by a slot, a slot that needs none is a slip, and
// one that holds a sentence hides words from a translation.
func TestContracts(t *testing.T) {
	p, err := repository()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range append(slices.Clone(contracts), theirs...) {
		if !slices.ContainsFunc(p.all, func(u *use) bool { return u.in(c) && forms.MatchString(u.english) == slices.Contains(theirs, c) }) {
			t.Errorf("nothing needs the line %s", c)
		}
	}
	sentence := regexp.MustCompile(`\pL{2,}[^\pL]* [^\pL]*\pL{2,}[^\pL]* [^\pL]*\pL{2,}`)
	none := slotList("panic", "compared", "index", "field github.com/spf13/cobra.Command.*", "param rules.*.also", "var rules.part*", "var tui/flow.notedAs", "var tui/flow.shortSaid", "var sessions.header", "var sessions.piecesHeader",
		"param cmd/sheet.htmlPage.*", "* @ cmd/sheet/html.go newHTMLPage", "* @ sessions/signoff.go Session.RulesDigest", "* @ sessions/lock.go Store.takeLock")
	for _, u := range p.all {
		if u.contract() && sentence.MatchString(u.english) && u.named != "sessions.Kind" && !slices.ContainsFunc(none, u.in) {
			t.Errorf("%s: %q is told as a contract (%s, %s)", u.where, u.english, u.slot, u.named)
		}
	}
}

// A value that programs read, with a Word for people, is told by its Word.
func TestPeopleAreToldTheWord(t *testing.T) {
	p, err := repository()
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range p.files {
		ast.Inspect(s.file, func(n ast.Node) bool {
			c, ok := n.(*ast.CallExpr)
			if !ok || !strings.HasPrefix(s.callee(c.Fun), "fmt.") {
				return true
			}
			for _, a := range c.Args {
				if word, _, _ := types.LookupFieldOrMethod(s.info.TypeOf(a), true, nil, "Word"); word != nil {
					t.Errorf("%s: %s is told as it is", s.fset.Position(a.Pos()), s.typeName(s.info.TypeOf(a)))
				}
			}
			return true
		})
	}
}
