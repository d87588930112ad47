package tui

import (
	"fmt"
	"slices"
	"strings"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/advice"
	"example.com/hangtape/tui/flow"
)

// predicted is what every number of advice says of itself.
const predicted = "PREDICTED: nothing of it was measured. " + advice.Setting

// An adviceLine is a heading, a text, or a row of a table: a check and what it
// comes to in each column.
type adviceLine struct {
	heading, text string
	cells         []string
}

// An adviceText is the advice as it is read, with the columns of its table.
type adviceText struct {
	lines   []adviceLine
	columns []string
}

func (t *adviceText) head(words string) { t.lines = append(t.lines, adviceLine{heading: words}) }
func (t *adviceText) say(format string, a ...any) {
	t.lines = append(t.lines, adviceLine{text: fmt.Sprintf(format, a...)})
}
func (t *adviceText) list(head string, of []string) {
	if len(of) > 0 {
		t.head(head)
		for _, o := range of {
			t.say("%s", o)
		}
	}
}

// adviceOf is what to change in words, once it is worked out.
func adviceOf(s *flow.State) adviceText {
	var t adviceText
	a, unit := s.Advice, string(s.Session.Unit)
	if a == nil {
		t.say("Working out what to change.")
		return t
	}
	changes := len(a.LeastChange.Changes)+len(a.BestFit.Changes) > 0
	if changes {
		t.head(predicted)
	}
	if a.StoppedEarly {
		t.say("The search was stopped early: there may be a better answer.")
	}
	t.list("Rests on an estimate: lengths to cut and start from, not a fitting", inputNames(a.Estimated))
	if a.Sooner != nil {
		t.list("Read again first", []string{a.Sooner.Words(a.LeastChange.Cost)})
	}
	columns := [][]advice.Check{a.Now}
	switch same := advice.SameChanges(a.LeastChange.Changes, a.BestFit.Changes); {
	case a.Conflict != nil:
		t.conflict(a.Conflict, unit)
	case !changes:
		if !s.Movable() {
			t.list("No length may change", []string{"Every piece is fixed, or nobody has told how far it can be set. Tell it in the kit's steps: slides or re-tie, and the shortest and longest."})
		} else if wait := waitedFor(s.Report); len(wait) > 0 {
			t.list("No length has to change. These readings are waited for", wait)
		} else {
			t.head("No length has to change")
		}
	case same:
		t.outcome("Least change and best fit: the same", &a.LeastChange, unit)
		t.columns, columns = []string{"now", "after"}, append(columns, a.LeastChange.Checks)
	default:
		t.outcome("Least change", &a.LeastChange, unit)
		t.outcome("Best fit", &a.BestFit, unit)
		t.columns, columns = []string{"now", "least change", "best fit"}, append(columns, a.LeastChange.Checks, a.BestFit.Checks)
	}
	t.table(columns, unit)
	if cord := advice.CordWords(s.CordFor, a.LeastChange.Changes, a.BestFit.Changes); len(cord) > 0 {
		t.list(rules.CordHead, append(cord, rules.CordCautions()[0]))
	}
	if a.Conflict == nil {
		t.left(advice.ShortMusts(a.LeastChange.Checks, a.Unknown))
	}
	t.list("Not known for want of a reading", a.Unknown)
	t.list(advice.BoundsHead, advice.BoundWords(a.OddBounds, unit))
	if changes {
		t.say("The window of a piece holds with the others where they are told to be; windows do not add up.")
	}
	for _, c := range append(rules.VerdictCautions(), rules.ShortCaution) {
		t.say("%s", c)
	}
	return t
}

// outcome tells one answer.
func (t *adviceText) outcome(title string, o *advice.Outcome, unit string) {
	t.head(fmt.Sprintf("%s, work %d (predicted)", title, o.Cost))
	for i := range o.Changes {
		t.say("%s", o.Changes[i].Words(unit))
	}
	if len(o.Changes) == 0 {
		t.say("nothing to change")
	}
}

// conflict tells why no set of lengths can pass.
func (t *adviceText) conflict(c *advice.Conflict, unit string) {
	t.head("NO SET OF LENGTHS CAN PASS")
	for _, part := range strings.Split(c.Words(unit), "; ") {
		t.say("%s", part)
	}
}

// table sets the checks side by side: the musts, and what an answer turns.
func (t *adviceText) table(columns [][]advice.Check, unit string) {
	title := "Musts as they are, by margin and guard alone"
	if len(columns) > 1 {
		title = "Checks before and after, by margin and guard alone"
	}
	t.head(title)
	for i := range columns[0] {
		now := &columns[0][i]
		id, _ := rules.CheckNamed(now.Name)
		if id.Info().Kind != rules.Must && !slices.ContainsFunc(columns, func(c []advice.Check) bool { return c[i].Verdict != now.Verdict }) {
			continue
		}
		row := adviceLine{text: now.Name}
		for _, c := range columns {
			row.cells = append(row.cells, c[i].Brief(unit))
		}
		t.lines = append(t.lines, row)
	}
}

// left tells what no length settles, and what would.
func (t *adviceText) left(short []advice.Check) {
	if len(short) == 0 {
		return
	}
	t.head("What no length that may change will settle")
	for _, c := range short {
		id, _ := rules.CheckNamed(c.Name)
		t.say("%s %s: %s", c.Name, c.Verdict.Loud(), id.Info().Do)
	}
}

// waitedFor are the readings that would lift the musts that are short of pass.
func waitedFor(r *rules.Report) []string {
	var keys []string
	for _, c := range r.Checks {
		if c.Kind == rules.Must && c.Verdict != rules.Pass {
			keys = append(keys, c.Missing...)
		}
	}
	return inputNames(fit.SortKeys(keys))
}

func inputNames(keys []string) []string {
	names := make([]string, len(keys))
	for i, k := range keys {
		names[i] = rules.InputName(k)
	}
	return names
}
