package flow_test

import (
	"strings"
	"testing"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/flow"
	"example.com/hangtape/tui/flow/flowtest"
)

var noon = time.Date(2026, 5, 7, 12, 0, 0, 0, time.UTC)

// at is st at the question with that key.
func at(t testing.TB, st flow.State, key string) flow.State {
	t.Helper()
	return st.Do(flow.GoTo{Place: mustFind(t, &st, key)})
}

// told is st after text was typed and entered there.
func told(st flow.State, text string) flow.State {
	return st.Do(flow.Typed{Text: text}).Do(flow.Enter{Now: noon})
}

// An amount that is odd is asked about before it is taken, once.
func TestOddAmount(t *testing.T) {
	for key, c := range map[string]struct{ odd, asks, fine string }{
		"rope.least_above_mm": {"3", "was it metres?", "3 m"},
		"rope.drill_above_mm": {"7", "was it metres?", "7000"},
		"climber.mass_kg":     {"185", "was it pounds?", "84"},
	} {
		st := at(t, inReview(t, flowtest.Examples(t, examples)["1-good-kit.toml"]), key)
		st = st.Do(flow.Older{})
		before := st.Saves
		st = told(st, c.odd)
		if st.Said.Kind != flow.Doubted || !strings.Contains(st.Said.Text, c.asks) || st.Saves != before {
			t.Errorf("%s %s: said %q", key, c.odd, st.Said.Text)
		}
		if again := st.Do(flow.Enter{Now: noon}); again.Said.Kind != flow.Taken {
			t.Errorf("%s %s entered again: said %q", key, c.odd, again.Said.Text)
		}
		if st = told(st, c.fine); st.Said.Kind != flow.Taken {
			t.Errorf("%s %s: said %q", key, c.fine, st.Said.Text)
		}
	}
}

// A drill that runs goes on, whatever the purpose is now.
func TestRunningDrillOfAReCheck(t *testing.T) {
	s := flowtest.Examples(t, examples)["1-good-kit.toml"].Clone()
	s.Purpose, s.Drill = sessions.ReCheck, &sessions.Drill{Started: noon}
	if st := flow.Start(*s, flow.Config{Judge: (*sessions.Session).Judge}); st.Ask().Key != "drill.steps.load-low" {
		t.Errorf("somebody hangs in the drill, and %s is asked", st.Ask().Key)
	}
}

// What was seen in the drill is asked about while the climber still hangs there.
func TestDrillDisagreesAtOnce(t *testing.T) {
	s := flowtest.Examples(t, examples)["1-good-kit.toml"].Clone()
	s.Purpose = sessions.FirstFitting
	s.Drill = &sessions.Drill{Started: noon, Steps: []sessions.DrillStep{
		{Name: "load-low", Held: fit.Yes}, {Name: "ease-left", Held: fit.Yes}, {Name: "ease-right", Held: fit.Yes}, {Name: "ease-both", Held: fit.Yes}}}
	st := at(t, flow.Start(*s, flow.Config{Judge: (*sessions.Session).Judge}), "drill.steps.ease-both.garda_mm")
	if title := st.Ask().Title; !strings.HasPrefix(title, "Ease both hitches: ") {
		t.Errorf("the question does not say of which step: %q", title)
	}
	st = told(st, "900")
	if st.Said.Kind != flow.Doubted || !strings.Contains(st.Said.Text, "is expected") {
		t.Errorf("said %q", st.Said.Text)
	}
}

// What a piece cannot be, and who tied what nobody tied, is passed over.
func TestNoBoundsOfWhatIsFixed(t *testing.T) {
	st := inReview(t, flowtest.Examples(t, examples)["1-good-kit.toml"])
	st = picked(t, at(t, st, "kit.foot_loop.change"), "fixed")
	if key := st.Ask().Key; key != "kit.foot_loop.tied" {
		t.Errorf("fixed, and %s is asked", key)
	}
	if st = st.Do(flow.Enter{Now: noon}); st.Ask().Key == "kit.foot_loop.tied_by" {
		t.Error("who tied it is asked, and nobody said when")
	}
	if st = picked(t, at(t, st, "kit.foot_loop.change"), "re-tie"); st.Ask().Key != "kit.foot_loop.cord_mm" {
		t.Errorf("re-tie, and %s is asked", st.Ask().Key)
	}
}

// The review says what comes before the sign-off, and of the first hang that it is
// the first.
func TestReviewNamesWhatComesNext(t *testing.T) {
	s := flowtest.Examples(t, examples)["1-good-kit.toml"].Clone()
	if st := inReview(t, s); !has(&st, "sign off, the ground drill first") || !has(&st, "another hang") {
		t.Errorf("%+v", st.Options())
	}
	s.Fit.Hangs = nil
	if st := inReview(t, s); !has(&st, "the first hang") || has(&st, "sign off, ") {
		t.Errorf("%+v", st.Options())
	}
}

// A drill that was seen through is not on the way to the sign-off again.
func TestDrillOnceIsEnough(t *testing.T) {
	s := flowtest.Examples(t, examples)["1-good-kit.toml"].Clone()
	s.Drill = &sessions.Drill{Started: noon, Done: noon.Add(time.Minute), Steps: []sessions.DrillStep{
		{Name: "load-low", Held: fit.Yes}, {Name: "ease-left", Held: fit.Yes}, {Name: "ease-right", Held: fit.Yes}, {Name: "ease-both", Held: fit.Yes},
		{Name: "hang-on-tether", Held: fit.Yes, KneeFree: fit.Yes, HandsReach: fit.Yes}, {Name: "stand-up", Held: fit.Yes, CameBackUp: fit.Yes}, {Name: "free-garda", Held: fit.Yes}}}
	if st := picked(t, inReview(t, s), "sign off"); st.Ask().Key != "session.notes" {
		t.Errorf("the way leads to %s", st.Ask().Key)
	}
	s.Drill.Steps[3].Garda = fit.Some(900)
	if st := picked(t, inReview(t, s), "sign off"); st.Ask().Key != "drill.start" {
		t.Errorf("with a drill that disagrees the way leads to %s", st.Ask().Key)
	}
}

// The note to the sign-off says all that it has to answer.
func TestWhatTheNoteIsFor(t *testing.T) {
	s := flowtest.Examples(t, examples)["1-good-kit.toml"].Clone()
	s.Purpose = sessions.FirstFitting
	st := flow.Start(*s, flow.Config{Judge: (*sessions.Session).Judge})
	st = at(t, st, "sign_off.note")
	if why := strings.Join(st.Why(st.Ask()), "\n"); why != "Nothing here needs a note." {
		t.Errorf("with nothing amiss: %s", why)
	}
	r, err := s.Judge()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range r.Checks {
		if c.Name == rules.GardaUnderConnector.String() {
			s.Limits = map[rules.Limit]float64{rules.ConnectorClearance: float64(c.Has) - 1}
		}
	}
	st = at(t, flow.Start(*s, flow.Config{Judge: (*sessions.Session).Judge, NeedDrill: true}), "sign_off.note")
	why := strings.Join(st.Why(st.Ask()), "\n")
	for _, want := range []string{"why is garda-under-connector accepted, which is tight?", "why is there no drill?"} {
		if !strings.Contains(why, want) {
			t.Errorf("%q is not in\n%s", want, why)
		}
	}
}

// The cord of hitch loops tied today is asked for once the first hang has shown
// how long they are, and of the next student no more.
func TestHitchLoopsTiedToday(t *testing.T) {
	s := flowtest.Examples(t, examples)["1-good-kit.toml"].Clone()
	s.Purpose = sessions.FirstFitting
	for _, p := range []fit.Piece{fit.PieceHitchLeft, fit.PieceHitchRight} {
		s.Tied[p] = sessions.Tied{On: s.Started.Truncate(24 * time.Hour)}
		s.Fit.Kit.Pieces[p].Change = fit.ReTie
	}
	s.Fit.Hangs[0].Ended = time.Time{}
	down := func(s *sessions.Session, c flow.Config) string {
		c.Judge = (*sessions.Session).Judge
		st := picked(t, at(t, flow.Start(*s, c), "down"), "down")
		return st.Ask().Key
	}
	if key := down(s, flow.Config{}); key != "tied.hitch_left.cut_mm" {
		t.Errorf("down, and %s is asked", key)
	}
	earlier := s.Clone()
	if key := down(s, flow.Config{Carried: true, Given: earlier}); key != "review" {
		t.Errorf("down with the kit of the student before, and %s is asked", key)
	}
	s.Tied[fit.PieceHitchLeft].On, s.Tied[fit.PieceHitchRight].On = s.Started.AddDate(0, 0, -9), time.Time{}
	if key := down(s, flow.Config{}); key != "review" {
		t.Errorf("down with loops tied before, and %s is asked", key)
	}
}

// Answers stand behind their questions in a list of steps, also those chosen.
func TestQuestionsWithTheirAnswers(t *testing.T) {
	st := inReview(t, flowtest.Examples(t, examples)["1-good-kit.toml"])
	for key, want := range map[string]string{
		"kit.tether":        "Is the backup tether part of the kit? yes",
		"kit.tether.change": "How can its length be changed? re-tie",
		"tape.class":        "Accuracy class of the tape: III",
	} {
		p := mustFind(t, &st, key)
		if got := st.Steps[p.Step].Asks[p.Ask].ToldAs(&st.Draft, sessions.MM); got != want {
			t.Errorf("%s: %q, want %q", key, got, want)
		}
	}
}

// The list of steps counts what can be answered, and no gates.
func TestStepsCountAnswers(t *testing.T) {
	st := inReview(t, flowtest.Examples(t, examples)["1-good-kit.toml"])
	says := map[string]bool{}
	for _, g := range st.Asked() {
		says[g.Says()] = true
	}
	for _, want := range []string{"Review", "Tape, 3 of 3 answered", "Sign-off, 0 of 3 answered"} {
		if !says[want] {
			t.Errorf("%q is not in %v", want, says)
		}
	}
}

// A length that was changed is asked for with the name of its piece.
func TestAChangedLengthSaysWhose(t *testing.T) {
	st := at(t, inReview(t, flowtest.Examples(t, examples)["1-good-kit.toml"]), "changes.1.piece")
	for _, want := range []string{"Of the main bridge, from ", "Set the main bridge to 1100 mm"} {
		if strings.HasPrefix(want, "Of") {
			st = picked(t, st, "main bridge")
		} else {
			st = told(st, "1100")
		}
		if why := strings.Join(st.Why(st.Ask()), "\n"); !strings.HasPrefix(why, want) {
			t.Errorf("%s says %q, want %q", st.Ask().Key, why, want)
		}
	}
}

// The notes of a re-check are what came out of it: the way leads past them.
func TestReCheckAsksForNoNotes(t *testing.T) {
	s := flowtest.Examples(t, examples)["1-good-kit.toml"].Clone()
	e := s.Clone()
	e.ID = "01KR0TVZ00B18KMSWGEJB4H4XE"
	s.Purpose, s.Follows = sessions.ReCheck, e.ID
	st := flow.Start(*s, flow.Config{Judge: (*sessions.Session).Judge, Earlier: e})
	if st = picked(t, at(t, st, "review"), "end the re-check"); st.Ask().Key != "re_check.by" {
		t.Errorf("the way leads to %s", st.Ask().Key)
	}
}
