package rules_test

import (
	"math"
	"strings"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

func TestNamesOfInputs(t *testing.T) {
	for key, want := range map[string]string{
		"hangs.2.hip_mm":             "hip point, hang 2",
		"changes.1.to_mm":            "length set in change 1",
		"changes.12.measured_mm":     "length after change 12, laid on again",
		"changes.1.piece":            "changes.1.piece",
		"climber.thigh_mm":           "thigh",
		"climber.mass_kg":            "climber's mass",
		"kit.tether.cord_mm":         "backup tether, cord diameter",
		"hangs.1.no_such_reading_mm": "hangs.1.no_such_reading_mm",
		"no dots":                    "no dots",
	} {
		if got := rules.InputName(key); got != want {
			t.Errorf("%s is %q, want %q", key, got, want)
		}
	}
	for p := range fit.NumPieces {
		if rules.PieceName(p) == "" {
			t.Errorf("piece %v has no name", p)
		}
	}
	for r := range fit.NumReadings {
		if r.Info().Mark == "" {
			t.Errorf("nobody is told where %v is read", r)
		}
	}
}

// TestEndsKnowTheirCheck: every end of every check leads back to it, under the
// name that answers tell.
func TestEndsKnowTheirCheck(t *testing.T) {
	seen := map[rules.End]bool{}
	for c := range rules.NumChecks {
		for i, e := range c.Ends() {
			if e.Check() != c || seen[e] || (e.At() == "") != (len(c.Ends()) == 1) {
				t.Errorf("end %d of %v: check %v, at %q", i, c, e.Check(), e.At())
			}
			seen[e] = true
		}
		if got, ok := rules.CheckNamed(c.String()); !ok || got != c {
			t.Errorf("%v is found as %v", c, got)
		}
	}
	if len(seen) != int(rules.NumEnds) {
		t.Errorf("%d ends belong to a check, there are %d", len(seen), rules.NumEnds)
	}
	if rules.NumEnds.Check() != rules.NumChecks {
		t.Error("an end that is none has a check")
	}
	if _, ok := rules.CheckNamed("no-such-check"); ok {
		t.Error("a check that is none was found")
	}
	if got := rules.Sentence(rules.Check{Name: "no-such-check"}, "mm"); got != "" {
		t.Errorf("a check that is none says %q", got)
	}
}

func TestTheDecidingEndIsTheOneThatIsTold(t *testing.T) {
	a := rules.Assess(goodFitting(), rules.DefaultLimits())
	for c := range rules.NumChecks {
		if told := a.Check(c).At; a.Deciding(c).At() != told {
			t.Errorf("%v: %q decides, %q is told", c, a.Deciding(c).At(), told)
		}
	}
}

func TestWhatCannotBeIsNotJudged(t *testing.T) {
	f := goodFitting()
	*list(f, fit.Thigh), *list(f, fit.Nose) = []float64{0}, []float64{1}
	r, err := rules.Judge("", f, rules.DefaultLimits())
	if r != nil || err == nil {
		t.Fatalf("got %v, %v", r, err)
	}
	if lines := strings.Split(err.Error(), "\n"); len(lines) != 2 || !strings.HasPrefix(lines[0], "climber.thigh_mm: thigh is 0 mm") {
		t.Errorf("got %q", lines)
	}
}

func TestHeadingsOfTheTopics(t *testing.T) {
	for kind, want := range map[rules.TopicKind]string{
		rules.Chapter: "Handbook", rules.CheckTopic: "Checks", rules.LabelTopic: "Told, or read off a label",
		rules.PostureTopic: "Postures: what nobody reads", rules.PoseTopic: "Poses: what is computed", rules.TermTopic: "Terms",
	} {
		if got := kind.Heading(); got != want {
			t.Errorf("%s is headed %q, want %q", kind, got, want)
		}
	}
	for _, topic := range rules.Topics() {
		if !strings.Contains(strings.Join(headings(), "\n"), topic.Kind.Heading()) {
			t.Errorf("%s is of kind %q, which is not listed", topic.Name, topic.Kind)
		}
	}
}

func headings() []string {
	var out []string
	for _, k := range rules.TopicKinds() {
		out = append(out, k.Heading())
	}
	return out
}

func TestUnknownIsADash(t *testing.T) {
	nan := math.NaN()
	for _, got := range []string{rules.FormatLength(nan, "in"), rules.FormatValue(nan, 1, "mm"), rules.FormatPM(nan, nan, "kN")} {
		if got != "-" {
			t.Errorf("unknown is written %q", got)
		}
	}
}

// TestCautionsAreWholeAndSaidOnce: each is a sentence of its own.
func TestCautionsAreWholeAndSaidOnce(t *testing.T) {
	for _, list := range [][]string{rules.Cautions(), rules.VerdictCautions(), rules.CordCautions(), rules.GettingDown()} {
		seen := map[string]bool{}
		for _, c := range list {
			if !strings.HasSuffix(c, ".") || seen[c] {
				t.Errorf("%q is said twice or no sentence", c)
			}
			seen[c] = true
		}
		if len(list) == 0 {
			t.Error("a list of cautions is empty")
		}
	}
}
