package rules_test

import (
	"errors"
	"flag"
	"math"
	"math/rand/v2"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/sessionstest"
)

var (
	drawn    = flag.Int("sessions", 1000, "how many random sessions are judged")
	drawSeed = flag.Uint64("seed", 1, "which random sessions")
)

// Whatever is read and told, as far as a file can say it, the answer is what
// cannot be, in words, or a report whose every verdict follows from its margin
// and guard, whose numbers are numbers, and in which everything that is unknown
// says why.
func FuzzJudge(f *testing.F) {
	bases := finished(f)
	for i := range bases {
		f.Add(uint8(i), []byte{})
	}
	for what := range byte(18) { // every kind of change, large and small
		f.Add(what, []byte{what, 17 * what, 0x40, 0x08, what, 5 * what, 0xB1, 0x41, what, 3, 0x01, 0x02})
	}
	f.Fuzz(func(t *testing.T, base uint8, changes []byte) { judgedSoundly(t, bases[int(base)%len(bases)], changes) })
}

// The same of sessions drawn at random: far more of them in the same time than
// a fuzzer tries, as nothing counts which code they reach.
func TestRandomSessionsAreJudgedSoundly(t *testing.T) {
	bases, draw := finished(t), rand.New(rand.NewPCG(*drawSeed, 2))
	bytes := make([]byte, 160)
	for i := range *drawn {
		if i%500_000 == 499_999 {
			t.Logf("%d sessions", i+1)
		}
		changes := bytes[:4*draw.IntN(len(bytes)/4)]
		for i := range changes {
			changes[i] = byte(draw.Uint32())
		}
		base := draw.IntN(len(bases))
		if judgedSoundly(t, bases[base], changes); t.Failed() {
			t.Fatalf("of session %d with the changes %q", base, changes)
		}
	}
}

// finished are the sessions that random ones start from.
func finished(t testing.TB) []*sessions.Session {
	var all []*sessions.Session
	for _, dir := range []string{"examples", "oracle"} {
		files, err := filepath.Glob("../testdata/sessions/" + dir + "/*.toml")
		if err != nil || len(files) == 0 {
			t.Fatal("no sessions", err)
		}
		for _, name := range files {
			f, err := sessions.ReadFile(name, nil)
			if err != nil {
				t.Fatal(err)
			}
			all = append(all, f.Session)
		}
	}
	return all
}

func judgedSoundly(t *testing.T, base *sessions.Session, changes []byte) {
	s := sessionstest.Changed(base, changes)
	s.Fit.Started = s.Started
	limits := s.RulesFor()
	report, err := rules.Judge("", &s.Fit, limits)
	if faults := s.Fit.Faults(); len(faults) > 0 {
		var impossible *rules.Impossible
		if !errors.As(err, &impossible) || report != nil || len(impossible.Faults) != len(faults) {
			t.Fatalf("%v, want what cannot be: %v", err, faults)
		}
		for _, x := range faults {
			if len(x.Keys) == 0 || !isSentence(x.Text) {
				t.Errorf("a fault without words: %+v", x)
			}
		}
		return
	}
	if err != nil {
		t.Fatalf("nothing is impossible, and yet: %v", err)
	}
	sound(t, report)
	if len(changes) > 0 && changes[0] == 0 { // now and then: the same again, of a fitting that has not changed
		if again, _ := rules.Judge("", &s.Fit, limits); again == nil || shown(again) != shown(report) {
			t.Error("judged twice it comes out otherwise")
		}
	}
	if t.Failed() {
		t.Logf("%s", sessions.Encode(s))
	}
}

// shown is what a report says, as one text.
func shown(r *rules.Report) string {
	var b strings.Builder
	for _, c := range r.Checks {
		b.WriteString(c.Name + string(c.Verdict) + c.At + c.Text + rules.MarginWords(c, "mm") + strings.Join(c.Missing, ","))
	}
	for _, f := range r.Findings {
		b.WriteString(f.Name + f.Text)
	}
	for _, n := range r.Next {
		b.WriteString(n.Check + n.Reading)
	}
	return b.String()
}

// isSentence says whether text is words about numbers that are some.
func isSentence(text string) bool {
	return strings.Contains(text, " ") && !strings.Contains(text, "NaN") && !strings.Contains(text, "Inf") && !strings.Contains(text, "%!")
}

// sound fails where a report does not hold together.
func sound(t *testing.T, r *rules.Report) {
	outOfDomain := slices.ContainsFunc(r.Findings, func(f rules.Finding) bool { return f.Name == "out-of-domain" })
	for _, f := range r.Findings {
		if f.Name == "" || !isSentence(f.Text) || len(f.Inputs) == 0 || slices.Contains(f.Inputs, "") {
			t.Errorf("finding %+v", f)
		}
	}
	if len(r.Checks) != int(rules.NumChecks) {
		t.Fatalf("%d checks", len(r.Checks))
	}
	for i := range r.Checks {
		soundCheck(t, &r.Checks[i], outOfDomain)
	}
	if r.Outcome != rules.Outcome(r.Checks) {
		t.Errorf("outcome %s", r.Outcome)
	}
	for _, list := range [][]rules.Value{r.Inputs, r.Poses} {
		for _, v := range list {
			value, u := float64(v.Value), float64(v.U)
			if v.Name == "" || math.IsInf(value, 0) || math.IsInf(u, 0) || u < 0 || !v.Value.Known() && v.U.Known() {
				t.Errorf("%+v", v)
			}
		}
	}
	for _, n := range r.Next {
		c := check(t, r, n.Check)
		switch {
		case n.Reading == "":
			t.Errorf("next for %s: no reading", n.Check)
		case c.Verdict == rules.Unknown:
			if n.UNow.Known() || n.UThen.Known() || n.GuardThen.Known() || !slices.Contains(c.Missing, n.Reading) {
				t.Errorf("next for %s, which is unknown for want of %v: %+v", n.Check, c.Missing, n)
			}
		case n.UNow != c.U || !(n.UThen >= 0) || math.IsInf(float64(n.UThen), 0) || !(n.GuardThen >= 0) || math.IsInf(float64(n.GuardThen), 0) || c.Verdict == rules.Pass:
			t.Errorf("next for %s, which is %s with u %v and guard %v: %+v", n.Check, c.Verdict, c.U, c.Guard, n)
		}
	}
}

func soundCheck(t *testing.T, c *rules.Check, outOfDomain bool) {
	has, needs, margin := float64(c.Has), float64(c.Needs), float64(c.Margin)
	if c.Name == "" || !isSentence(c.Text) || c.Missing == nil || slices.Contains(c.Missing, "") {
		t.Errorf("%+v", c)
	}
	if c.Verdict == rules.Unknown {
		switch {
		case c.Has.Known() || c.Margin.Known() || c.U.Known() || c.Shift.Known() || c.Guard.Known():
			t.Errorf("%s is unknown with numbers: %+v", c.Name, c)
		case len(c.Missing) == 0 && !outOfDomain:
			t.Errorf("%s at %q is unknown, and nothing says why", c.Name, c.At)
		case !strings.HasPrefix(c.Text, "not known: "):
			t.Errorf("%s is unknown: %s", c.Name, c.Text)
		}
		return
	}
	for _, x := range []float64{has, needs, margin, float64(c.U), float64(c.Shift), float64(c.Guard)} {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			t.Fatalf("%s is %s by what is no number: %+v", c.Name, c.Verdict, c)
		}
	}
	if guard := rules.Guard(rules.GuardFactor, float64(c.U), float64(c.Shift)); c.U < 0 || float64(c.Guard) != guard {
		t.Errorf("%s has guard %v of u %v and shift %v", c.Name, c.Guard, c.U, c.Shift)
	}
	if d := math.Abs(has - needs); math.Abs(math.Abs(margin)-d) > 1e-9*max(1, math.Abs(has), math.Abs(needs)) {
		t.Errorf("%s has %v, needs %v and a margin of %v", c.Name, has, needs, margin)
	}
	plain := rules.Pass
	switch {
	case margin < 0:
		plain = rules.Fail
	case c.Margin < c.Guard:
		plain = rules.Tight
	}
	capped := plain == rules.Pass && c.Verdict == rules.Tight && c.Kind == rules.Must && len(c.Missing) > 0
	if c.Verdict != plain && !capped {
		t.Errorf("%s is %s with margin %v and guard %v", c.Name, c.Verdict, c.Margin, c.Guard)
	}
	if c.Blocks && c.Kind != rules.Must || c.Verdict == rules.Fail && c.Kind == rules.Must && !c.Blocks {
		t.Errorf("%s is %s, and blocks: %v", c.Name, c.Verdict, c.Blocks)
	}
}
