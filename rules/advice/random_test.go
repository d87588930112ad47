package advice_test

import (
	"flag"
	"math"
	"math/rand/v2"
	"path/filepath"
	"strings"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/advice"
	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/sessionstest"
)

var drawn = flag.Int("sessions", 40, "how many random sessions are advised")

// Whatever was read and told, the advice sets lengths on marks and within bounds
// and says what they do, or says why no lengths would do.
func TestRandomSessionsAreAdvisedSoundly(t *testing.T) {
	files, err := filepath.Glob("../../testdata/sessions/[eo]*/*.toml")
	if err != nil || len(files) == 0 {
		t.Fatal("no sessions", err)
	}
	draw := rand.New(rand.NewPCG(3, 4))
	bytes := make([]byte, 64)
	for i := range *drawn {
		if i%10_000 == 9_999 {
			t.Logf("%d sessions", i+1)
		}
		name := files[draw.IntN(len(files))]
		f, err := sessions.ReadFile(name, nil)
		if err != nil {
			t.Fatal(err)
		}
		changes := bytes[:4*draw.IntN(len(bytes)/4)]
		for i := range changes {
			changes[i] = byte(draw.Uint32())
		}
		s := sessionstest.Changed(f.Session, changes)
		s.Fit.Started = s.Started
		if len(s.Fit.Faults()) > 0 {
			continue
		}
		mark := rules.MarkMetric
		if draw.IntN(3) == 0 {
			mark = rules.MarkInch
		}
		if advised(t, s, mark); t.Failed() {
			t.Fatalf("%s with the changes %q, on marks %g apart:\n%s", name, changes, mark, sessions.Encode(s))
		}
	}
}

// An answer less than a tenth of a millimetre from where its checks stop passing
// is itself in the window that is told around it.
func TestWindowHoldsItsAnswer(t *testing.T) {
	f, err := sessions.ReadFile("../../testdata/sessions/oracle/07-fail-1-hang-1-change.toml", nil)
	if err != nil {
		t.Fatal(err)
	}
	s := sessionstest.Changed(f.Session, []byte("{B|\x1a}r\x921\xd1\n\x8ev\xbe\xbf\xed\xa65%\xa0\xd6"))
	s.Fit.Started = s.Started
	advised(t, s, rules.MarkInch)
}

// advised fails where the advice for s does not hold together.
func advised(t *testing.T, s *sessions.Session, mark float64) {
	t.Helper()
	a := advice.Advise(s.ID, &s.Fit, s.RulesFor(), mark)
	if a.LeastChange.Feasible == (a.Conflict != nil) && !a.StoppedEarly {
		t.Errorf("feasible: %v, and a conflict %+v", a.LeastChange.Feasible, a.Conflict)
	}
	if a.BestFit.Feasible && !a.LeastChange.Feasible {
		t.Error("a best fit without a least change")
	}
	for _, o := range []advice.Outcome{a.LeastChange, a.BestFit} {
		outcome(t, s, &o, mark)
	}
	if c := a.Conflict; c != nil {
		for _, unit := range []string{"mm", "cm", "in"} {
			words(t, c.Words(unit))
		}
	}
	if a.Sooner != nil {
		words(t, a.Sooner.Words(a.LeastChange.Cost))
		if a.Sooner.Cost >= a.LeastChange.Cost || len(a.Sooner.Readings) == 0 {
			t.Errorf("sooner %+v in place of work %d", a.Sooner, a.LeastChange.Cost)
		}
	}
	sense := advice.Sensitivities(&s.Fit, s.RulesFor())
	for e := range rules.NumEnds {
		for _, slope := range sense.Of(e) {
			words(t, slope.Words(e.Check().UnitAt(e.At()), "in"))
		}
	}
	if again := advice.Advise(s.ID, &s.Fit, s.RulesFor(), mark); !advice.SameChanges(again.LeastChange.Changes, a.LeastChange.Changes) || !advice.SameChanges(again.BestFit.Changes, a.BestFit.Changes) {
		t.Error("advised twice it comes out otherwise")
	}
}

func outcome(t *testing.T, s *sessions.Session, o *advice.Outcome, mark float64) {
	t.Helper()
	cost := 0
	for i := range o.Changes {
		c := &o.Changes[i]
		cost += c.Cost
		for _, unit := range []string{"mm", "in"} {
			words(t, c.Words(unit))
		}
		if c.Piece == "rope_above" {
			continue
		}
		var piece *fit.PieceInfo
		for p := range fit.NumPieces {
			if p.Key() == c.Piece {
				piece = &s.Fit.Kit.Pieces[p]
			}
		}
		marks := c.To / mark
		if piece == nil || piece.Change == fit.Fixed || c.To < piece.Bounds[0]-1e-6 || c.To > piece.Bounds[1]+1e-6 || math.Abs(marks-math.Round(marks)) > 1e-6 {
			t.Errorf("%+v of %+v", c, piece)
		}
		if w := c.Window; w != nil && (w[0] > c.To+1e-6 || w[1] < c.To-1e-6) {
			t.Errorf("%+v has a window %v", c, *w)
		}
	}
	if o.Feasible && o.Cost > cost || !o.Feasible && len(o.Changes) > 0 {
		t.Errorf("work %d of %d: %+v", o.Cost, cost, o)
	}
	for _, c := range o.Checks {
		known := true
		for _, v := range []rules.Num{c.Margin, c.U, c.Guard} {
			known = known && v.Known() && !math.IsInf(float64(v), 0)
		}
		if known == (c.Verdict == rules.Unknown) {
			t.Errorf("%+v", c)
		}
	}
}

// words fails where text is not words about numbers that are some.
func words(t *testing.T, text string) {
	t.Helper()
	if !strings.Contains(text, " ") || strings.Contains(text, "NaN") || strings.Contains(text, "Inf") || strings.Contains(text, "%!") {
		t.Errorf("said: %q", text)
	}
}
