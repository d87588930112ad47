package rules_test

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.com/hangtape/sessions"
)

// The examples were computed from the model by an independent implementation;
// whoever breaks one has changed what the program says of a real fitting.
const examples = "../testdata/sessions/examples"

func TestExamples(t *testing.T) { compareAnswers(t, examples) }

// compareAnswers holds the program to the answers beside the sessions in dir.
func compareAnswers(t *testing.T, dir string) {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(dir, "*.check.json"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no answers in %s: %v", dir, err)
	}
	for _, file := range files {
		base := strings.TrimSuffix(file, ".check.json")
		t.Run(filepath.Base(base), func(t *testing.T) {
			var want answer
			data, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			if err := json.Unmarshal(data, &want); err != nil {
				t.Fatal(err)
			}
			got := judgeFile(t, base+".toml")
			for _, d := range differences(got, want) {
				t.Error(d)
			}
		})
	}
}

// judgeFile puts a session file through the rules and their JSON.
func judgeFile(t *testing.T, file string) (got answer) {
	t.Helper()
	f, err := sessions.ReadFile(file, nil)
	if err != nil {
		t.Fatal(err)
	}
	report, err := f.Judge()
	if err != nil {
		t.Fatal(err)
	}
	data, err := json.Marshal(report)
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(data, &got); err != nil {
		t.Fatal(err)
	}
	return got
}

// answer is what the JSON of a check promises, read without the package's own
// types; numbers are nil where they are null. Texts are free.
type answer struct {
	Format   int             `json:"format"`
	ID       string          `json:"id"`
	Outcome  string          `json:"outcome"`
	Inputs   []answerValue   `json:"inputs"`
	Poses    []answerValue   `json:"poses"`
	Checks   []answerCheck   `json:"checks"`
	Findings []answerFinding `json:"findings"`
	Next     []answerNext    `json:"next"`
}

type answerValue struct {
	Name   string   `json:"name"`
	Value  *float64 `json:"value"`
	U      *float64 `json:"u"`
	Unit   string   `json:"unit"`
	Origin string   `json:"origin"`
}

type answerCheck struct {
	Name    string   `json:"name"`
	Group   string   `json:"group"`
	Kind    string   `json:"kind"`
	Verdict string   `json:"verdict"`
	At      string   `json:"at"`
	Has     *float64 `json:"has"`
	Needs   *float64 `json:"needs"`
	Margin  *float64 `json:"margin"`
	U       *float64 `json:"u"`
	Shift   *float64 `json:"shift"`
	Guard   *float64 `json:"guard"`
	Unit    string   `json:"unit"`
	Missing []string `json:"missing"`
}

type answerFinding struct {
	Name   string   `json:"name"`
	Inputs []string `json:"inputs"`
}

type answerNext struct {
	Check     string   `json:"check"`
	Reading   string   `json:"reading"`
	UNow      *float64 `json:"u_now"`
	UThen     *float64 `json:"u_then"`
	GuardThen *float64 `json:"guard_then"`
}

// differences lists in what got is not want: words exactly, numbers within
// tolerance. Entries are matched by name, so that one that is missing is told
// as missing; the order of checks is compared too, of the rest it is free. A
// check that the answers do not know is newer than they are: its own tests hold it.
func differences(got, want answer) []string {
	d := &diff{}
	newer := func(check string) bool {
		return !slices.ContainsFunc(want.Checks, func(c answerCheck) bool { return c.Name == check })
	}
	got.Checks = slices.DeleteFunc(slices.Clone(got.Checks), func(c answerCheck) bool { return newer(c.Name) })
	got.Next = slices.DeleteFunc(slices.Clone(got.Next), func(n answerNext) bool { return newer(n.Check) })
	d.same("format", got.Format, want.Format)
	d.same("id", got.ID, want.ID)
	d.same("outcome", got.Outcome, want.Outcome)

	units := map[string]string{}
	match(d, "input", got.Inputs, want.Inputs, func(v answerValue) string { return v.Name }, d.value)
	match(d, "pose", got.Poses, want.Poses, func(v answerValue) string { return v.Name }, d.value)
	match(d, "check", got.Checks, want.Checks, func(c answerCheck) string { return c.Name },
		func(at string, g, w answerCheck) {
			units[w.Name] = w.Unit
			d.check(at, g, w)
		})
	d.same("order of checks", checkNames(got), checkNames(want))
	match(d, "finding", got.Findings, want.Findings,
		func(f answerFinding) string { return f.Name + " " + strings.Join(f.Inputs, " ") },
		func(string, answerFinding, answerFinding) {})
	match(d, "next", got.Next, want.Next, func(n answerNext) string { return n.Check + " <- " + n.Reading },
		func(at string, g, w answerNext) {
			unit := units[w.Check]
			d.number(at+" u_now", unit, g.UNow, w.UNow)
			d.number(at+" u_then", unit, g.UThen, w.UThen)
			d.number(at+" guard_then", unit, g.GuardThen, w.GuardThen)
		})
	return d.told
}

func checkNames(a answer) string {
	var names []string
	for _, c := range a.Checks {
		names = append(names, c.Name)
	}
	return strings.Join(names, " ")
}

type diff struct{ told []string }

func (d *diff) tell(format string, args ...any) {
	d.told = append(d.told, fmt.Sprintf(format, args...))
}

func (d *diff) same(at string, got, want any) {
	if got != want {
		d.tell("%s: got %v, want %v", at, got, want)
	}
}

func (d *diff) value(at string, g, w answerValue) {
	d.same(at+" unit", g.Unit, w.Unit)
	d.same(at+" origin", g.Origin, w.Origin)
	d.number(at, w.Unit, g.Value, w.Value)
	d.number(at+" u", w.Unit, g.U, w.U)
}

func (d *diff) check(at string, g, w answerCheck) {
	d.same(at+" group", g.Group, w.Group)
	d.same(at+" kind", g.Kind, w.Kind)
	d.same(at+" verdict", g.Verdict, w.Verdict)
	d.same(at+" at", g.At, w.At)
	d.same(at+" unit", g.Unit, w.Unit)
	d.number(at+" has", w.Unit, g.Has, w.Has)
	d.number(at+" needs", w.Unit, g.Needs, w.Needs)
	d.number(at+" margin", w.Unit, g.Margin, w.Margin)
	d.number(at+" u", w.Unit, g.U, w.U)
	d.number(at+" shift", w.Unit, g.Shift, w.Shift)
	d.number(at+" guard", w.Unit, g.Guard, w.Guard)
	if g.Missing == nil {
		d.tell("%s missing: null, want a list", at)
	}
	d.same(at+" missing", strings.Join(g.Missing, " "), strings.Join(w.Missing, " "))
}

func (d *diff) number(at, unit string, got, want *float64) {
	if !near(unit, got, want) {
		d.tell("%s: got %s, want %s %s", at, show(got), show(want), unit)
	}
}

// near says whether two numbers agree: 0.05 mm or degrees, 0.005 kN (also kg
// and per cent), 0.0005 of a ratio, or 0.1 %. Unknown agrees with unknown only.
func near(unit string, got, want *float64) bool {
	if got == nil || want == nil {
		return got == want
	}
	least := map[string]float64{"mm": 0.05, "deg": 0.05, "kN": 0.005, "kg": 0.005, "%": 0.005, "": 0.0005}
	return math.Abs(*got-*want) <= max(least[unit], 0.001*math.Abs(*want))
}

func show(f *float64) string {
	if f == nil {
		return "null"
	}
	return fmt.Sprint(*f)
}

// match pairs the entries of two lists by name and tells those without a pair.
func match[T any](d *diff, what string, got, want []T, name func(T) string, compare func(at string, got, want T)) {
	if got == nil {
		d.tell("%s: the list is null", what)
	}
	for _, w := range want {
		i := slices.IndexFunc(got, func(g T) bool { return name(g) == name(w) })
		if i < 0 {
			d.tell("%s %s: missing", what, name(w))
			continue
		}
		compare(what+" "+name(w), got[i], w)
		got = slices.Delete(slices.Clone(got), i, i+1)
	}
	for _, g := range got {
		d.tell("%s %s: not expected", what, name(g))
	}
}

func TestNear(t *testing.T) {
	v := func(f float64) *float64 { return &f }
	for _, c := range []struct {
		unit      string
		got, want *float64
		near      bool
	}{
		{"mm", v(12.84), v(12.8), true},
		{"mm", v(12.86), v(12.8), false},
		{"mm", v(1000.9), v(1000), true},
		{"mm", v(1001.1), v(1000), false},
		{"kN", v(3.004), v(3), true},
		{"kN", v(3.006), v(3), false},
		{"", v(0.0004), v(0), true},
		{"", v(0.0006), v(0), false},
		{"mm", nil, nil, true},
		{"mm", nil, v(0), false},
		{"mm", v(0), nil, false},
	} {
		if got := near(c.unit, c.got, c.want); got != c.near {
			t.Errorf("near(%q, %s, %s) = %v", c.unit, show(c.got), show(c.want), got)
		}
	}
}
