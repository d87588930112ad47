package flow_test

import (
	"bytes"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"example.com/hangtape/fit"
	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/flow"
	"example.com/hangtape/tui/flow/flowtest"
)

const examples = "../../testdata/sessions/examples"

// inReview is the flow of an example at its review.
func inReview(t testing.TB, s *sessions.Session) flow.State {
	t.Helper()
	s = s.Clone()
	s.Purpose = sessions.FirstFitting
	st := flow.Start(*s, flow.Config{Judge: (*sessions.Session).Judge})
	at, ok := st.Find("review")
	if !ok {
		t.Fatal("no review")
	}
	return st.Do(flow.GoTo{Place: at})
}

// picked is st after the option that starts with word, and the advice where that
// asks for it.
func picked(t testing.TB, st flow.State, word string) flow.State {
	t.Helper()
	for i, o := range st.Options() {
		if strings.HasPrefix(o.Word, word) {
			st = st.Do(flow.Pick{Option: i, Now: time.Date(2026, 5, 7, 9, 0, 0, 0, time.UTC)})
			if st.Unadvised() {
				st = st.Do(flow.Advised{Answer: st.Advise()})
			}
			return st
		}
	}
	t.Fatalf("%s has no option %q: %+v", st.Ask().Key, word, st.Options())
	return st
}

func has(st *flow.State, word string) bool {
	for _, o := range st.Options() {
		if strings.HasPrefix(o.Word, word) {
			return true
		}
	}
	return false
}

// TestAdviceIsOfferedOnTheGround offers advice where a must is short of pass and
// nobody hangs, and nowhere else.
func TestAdviceIsOfferedOnTheGround(t *testing.T) {
	all := flowtest.Examples(t, examples)
	good, bad := inReview(t, all["1-good-kit.toml"]), inReview(t, all["2-one-must-fails.toml"])
	aloft := all["2-one-must-fails.toml"].Clone()
	aloft.Fit.Hangs[len(aloft.Fit.Hangs)-1].Ended = time.Time{}
	hanging := inReview(t, aloft)
	if has(&good, "what to change") || !has(&bad, "what to change") || has(&hanging, "what to change") || has(&hanging, "what if") || !has(&good, "what if") {
		t.Errorf("offered: %v, %v, %v", good.Options(), bad.Options(), hanging.Options())
	}
}

// TestTakenBack notes an answer as changes, and takes it back: the file is what
// it was.
func TestTakenBack(t *testing.T) {
	st := inReview(t, flowtest.Examples(t, examples)["2-one-must-fails.toml"])
	before := sessions.Encode(&st.Session)
	st = picked(t, picked(t, st, "what to change"), "best fit")
	n := len(st.Session.Fit.Changes)
	if n == 0 || st.Ask().Key != "set" {
		t.Fatalf("%d changes, at %s", n, st.Ask().Key)
	}
	for _, c := range st.Session.Fit.Changes {
		if c.AfterHang != 1 || !c.From.Known || c.To == c.From.V {
			t.Errorf("noted %+v", c)
		}
	}
	// another answer before anybody hangs takes the place of the first
	again := picked(t, picked(t, st.Do(flow.GoTo{Place: mustFind(t, &st, "review")}), "what if"), "leave")
	if again = again.Do(flow.Apply{To: map[fit.Piece]float64{fit.PieceBackupBridge: 620}}); len(again.Session.Fit.Changes) != n {
		t.Errorf("a second answer for the same piece: %+v", again.Session.Fit.Changes)
	}
	st = picked(t, st, "no: leave")
	if got := sessions.Encode(&st.Session); !bytes.Equal(got, before) || st.Ask().Key != "review" {
		t.Errorf("taken back at %s:\n%s", st.Ask().Key, got)
	}
}

func mustFind(t testing.TB, st *flow.State, key string) flow.Place {
	t.Helper()
	p, ok := st.Find(key)
	if !ok {
		t.Fatalf("nothing asks for %s", key)
	}
	return p
}

// TestRopeAboveIsAgreedTo makes the rope above that an answer counts on the
// session's only once somebody has agreed to it.
func TestRopeAboveIsAgreedTo(t *testing.T) {
	at := func() flow.State {
		st := inReview(t, flowtest.Examples(t, examples)["1-good-kit.toml"])
		st = st.Do(flow.Apply{To: map[fit.Piece]float64{}, RopeAbove: 4000})
		if st.Ask().Key != "set.rope_above" || st.Session.Fit.Rope.LeastAbove.V == 4000 || len(st.Session.Fit.Changes) > 0 {
			t.Fatalf("at %s with %v", st.Ask().Key, st.Session.Fit.Rope.LeastAbove)
		}
		return st
	}
	if st := at(); st.Marked() != 1 {
		t.Error("Enter agrees")
	}
	if st := picked(t, at(), "no"); st.Session.Fit.Rope.LeastAbove.V == 4000 {
		t.Error("taken over unasked")
	}
	if st := picked(t, at(), "yes"); st.Session.Fit.Rope.LeastAbove != fit.Some(4000) {
		t.Errorf("agreed, and it is %v", st.Session.Fit.Rope.LeastAbove)
	}
}

// TestResumeWithLengthsToSet leads back to what was noted and not set when the
// wizard was left.
func TestResumeWithLengthsToSet(t *testing.T) {
	st := inReview(t, flowtest.Examples(t, examples)["2-one-must-fails.toml"])
	st = st.Do(flow.Apply{To: map[fit.Piece]float64{fit.PieceBackupBridge: 620}})
	resumed := flow.Start(st.Session, flow.Config{Judge: (*sessions.Session).Judge})
	if _, ok := resumed.Find("set"); !ok {
		t.Error("nothing asks whether the lengths are set")
	}
	at := mustFind(t, &resumed, "set")
	why := strings.Join(resumed.Why(resumed.Steps[at.Step].Asks[at.Ask]), " ")
	if !strings.Contains(why, "Set the backup bridge to 620 mm") {
		t.Errorf("it says %q", why)
	}
}

// TestTrialChangesNothing moves pieces on trial and leaves: the session is what
// it was, and so is what is told of it.
func TestTrialChangesNothing(t *testing.T) {
	list := flowtest.Examples(t, examples)
	rapid.Check(t, func(rt *rapid.T) {
		s := list[rapid.SampledFrom([]string{"1-good-kit.toml", "2-one-must-fails.toml"}).Draw(rt, "session")]
		st := inReview(t, s)
		before, saves := sessions.Encode(&st.Session), st.Saves
		st = picked(t, st, "what if")
		for range rapid.IntRange(0, 10).Draw(rt, "moves") {
			st = st.Do(flow.TryMarks{
				Piece: fit.Piece(rapid.IntRange(0, int(fit.NumPieces)-1).Draw(rt, "piece")),
				Marks: rapid.IntRange(-40, 40).Draw(rt, "marks"),
			})
		}
		for p, mm := range st.Trial {
			if b := s.Fit.Kit.Pieces[p].Bounds; mm < b[0] || mm > b[1] {
				rt.Fatalf("%v on trial at %g, bounds %v", p, mm, b)
			}
		}
		st = st.Do(flow.EndTrial{})
		if !bytes.Equal(sessions.Encode(&st.Session), before) || st.Saves != saves || len(st.Trial) > 0 || st.Ask().Key != "review" {
			rt.Fatalf("after the trial, at %s:\n%s", st.Ask().Key, sessions.Encode(&st.Session))
		}
	})
}

// TestTrialInWords types a length on trial and hears which verdicts turn, and why
// another is not taken.
func TestTrialInWords(t *testing.T) {
	st := picked(t, inReview(t, flowtest.Examples(t, examples)["2-one-must-fails.toml"]), "what if")
	st = picked(t, st, "backup bridge")
	for _, c := range []struct{ text, says string }{
		{"5000", "accepted is"},
		{"620", "tether-lets-thigh-level: FAIL"},
	} {
		if got := st.Do(flow.Typed{Text: c.text}).Do(flow.Enter{}); !strings.Contains(got.Said.Text, c.says) {
			t.Errorf("%s: %q does not say %q", c.text, got.Said.Text, c.says)
		}
	}
}

// TestRounds tells the verdicts before and after a change.
func TestRounds(t *testing.T) {
	st := inReview(t, flowtest.Examples(t, examples)["2-one-must-fails.toml"])
	if len(st.Rounds) > 0 {
		t.Error("a round without a change")
	}
	before := st.Report.Outcome
	st = st.Do(flow.Apply{To: map[fit.Piece]float64{fit.PieceBackupBridge: 620}})
	st = st.Do(flow.GoTo{Place: mustFind(t, &st, "review")})
	if len(st.Rounds) != 1 || st.Rounds[0].Hung || st.Rounds[0].Before.Outcome != before || st.Rounds[0].After != st.Report {
		t.Fatalf("rounds: %+v", st.Rounds)
	}
}
