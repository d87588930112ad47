package tui

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/synctest"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/drill"
	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/flow"
)

// roomy is a session whose musts hold, with room under the boots.
func roomy(t testing.TB) *sessions.Session {
	s := example(t, "1-good-kit.toml")
	s.Purpose = sessions.FirstFitting
	for i := range s.Fit.Hangs[0].Heights[fit.Ground] {
		s.Fit.Hangs[0].Heights[fit.Ground][i] -= 500
	}
	return s
}

// drilled answers the questions of the drill from its gate on, as they come: what
// is seen, what is typed. It ends at the first one that has no answer.
func (d *desk) drilled(answers map[string]string) {
	d.t.Helper()
	for n := 0; d.m().flow.Step().ID == flow.DrillStep; n++ {
		s := &d.m().flow
		key := strings.TrimPrefix(s.Ask().Key, "drill.")
		answer, ok := answers[key]
		switch {
		case n > 60:
			d.t.Fatalf("stuck at %s: %s", key, s.Said.Text)
		case !ok && s.Ask().Kind == flow.Choice && strings.HasPrefix(key, "steps."):
			answer = "1"
		case !ok && s.Ask().Kind == flow.Choice:
			return
		}
		d.clock = d.clock.Add(20 * time.Second)
		d.typed(answer)
		if s.Ask().Kind != flow.Choice {
			d.press(tea.KeyEnter)
		}
		if d.m().flow.Said.Kind == flow.Doubted { // it is meant
			d.press(tea.KeyEnter)
		}
		delete(answers, key)
	}
}

// drillTo starts the drill and sees all until a question of it.
func (d *desk) drillTo(key string) {
	d.t.Helper()
	d.typed("1")
	for n := 0; d.m().flow.Ask().Key != key; n++ {
		if n > 60 {
			d.t.Fatalf("%s is not asked", key)
		}
		if d.m().flow.Ask().Kind == flow.Choice {
			d.typed("1")
		} else {
			d.press(tea.KeyEnter)
		}
	}
}

// TestDrill walks the drill through, its clock running, and finds what was seen in
// the file; a stop leads to getting down, and stands against the sign-off.
func TestDrill(t *testing.T) {
	taut := roomy(t).DrillPlan().Steps[3].Expect[0].Value
	for name, c := range map[string]struct {
		answers map[string]string
		down    string // said before the climber comes down
		verdict rules.Verdict
		against string // the sign-off, whatever is noted; empty: nothing
		shows   string
	}{
		"as expected": {map[string]string{"steps.load-low.sag_mm": "65", "steps.ease-left.drop_mm": "15", "steps.ease-both.garda_mm": fmt.Sprintf("%.0f", taut)},
			"The drill is through", rules.Pass, "", "PASS: all was seen"},
		"the Garda hitch elsewhere": {map[string]string{"steps.ease-both.garda_mm": fmt.Sprintf("%.0f", taut+60)},
			"The drill is through", rules.Tight, "", "has given, or a knot still sets"},
		"it did not hold": {map[string]string{"steps.ease-right": "3"}, "Stopped: Ease the right hitch", rules.Fail, "FAILED", "did not hold"},
		"the knee jammed": {map[string]string{"steps.hang-on-tether.knee_free": "2"}, "The second person helps at once", rules.Fail, "FAILED", "deg"},
		"something else":  {map[string]string{"steps.stand-up": "3"}, "Stopped: Stand up", rules.Unknown, "", "Not seen, or not told: Stand up"},
		"sank too far":    {map[string]string{"steps.ease-left.drop_mm": "60"}, "Stopped: Ease the left hitch", rules.Fail, "FAILED", "sank 60 mm"},
	} {
		t.Run(name, func(t *testing.T) {
			synctest.Test(t, func(t *testing.T) {
				d := begin(t, roomy(t), "2")
				d.goTo(d.place("review"))
				d.typed("1")
				if view := d.model.View(); !strings.Contains(view, "is the climber up?") {
					t.Fatalf("the drill does not follow the review:\n%s", view)
				}
				up := d.clock
				d.typed("1")
				d.drilled(c.answers)
				if view := strings.Join(strings.Fields(d.model.View()), " "); !strings.Contains(view, c.down) || !strings.Contains(view, "Hanging ") {
					t.Fatalf("before coming down no %q, or no clock:\n%s", c.down, d.model.View())
				}
				d.drilled(map[string]string{"down": "1", "note": "watched from the ground"})
				if view := strings.Join(strings.Fields(d.model.View()), " "); !strings.Contains(view, c.shows) || strings.Contains(view, "Hanging ") {
					t.Errorf("after it no %q, or the clock runs:\n%s", c.shows, d.model.View())
				}
				spoken := c.verdict == rules.Fail || c.verdict == rules.Tight
				if head := reviewOf(&d.m().flow)[0].text; strings.Contains(head, ", but the drill") != spoken {
					t.Errorf("the drill came to %s, the review begins with %q", c.verdict, head)
				}
				d.typed("1")
				d.press(tea.KeyEnter)
				d.typed("it is accepted")
				d.press(tea.KeyEnter)
				d.typed("demo instructor")
				d.press(tea.KeyEnter)
				d.typed("1")
				view := d.model.View()
				d.leave()
				s := d.only()
				if r := s.Drill; r == nil || !r.Done.After(r.Started) || r.Started.Before(up.Truncate(time.Second)) || !strings.Contains(r.Note, "watched from the ground") {
					t.Errorf("the file has %+v", r)
				}
				if r := s.DrillReview(); r == nil || r.Verdict != c.verdict {
					t.Errorf("the file's drill is %+v, want %s", r, c.verdict)
				}
				if signed := s.SignOff != nil; signed != (c.against == "") || !strings.Contains(view, c.against) {
					t.Errorf("signed: %t\n%s", signed, view)
				}
			})
		})
	}
}

// TestDownNowInTheDrill stops the drill's clock, and says where it was stopped.
func TestDownNowInTheDrill(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := begin(t, roomy(t), "2")
		d.goTo(d.place("review"))
		d.typed("1")
		d.typed("11") // up, loaded low
		d.press(tea.KeyEnter)
		d.typed("1") // left hitch eased
		d.press(tea.KeyEnter)
		d.clock = d.clock.Add(time.Minute)
		d.typed("d")
		if view := d.model.View(); !strings.Contains(view, "Is the climber on the ground?") || strings.Contains(view, "Hanging ") {
			t.Fatalf("not on the way down:\n%s", view)
		}
		d.typed("2") // still up after all
		if s := d.m().flow; !s.Drilling() || s.Ask().Key != "drill.steps.ease-right" {
			t.Fatalf("at %s, drilling %t", s.Ask().Key, s.Drilling())
		}
		d.typed("d")
		d.typed("1")
		if key := d.m().flow.Ask().Key; key != "drill.result" {
			t.Errorf("at %s", key)
		}
		d.leave()
		if note := d.only().Drill.Note; note != "Stopped at Ease the right hitch: down at once." {
			t.Errorf("note %q", note)
		}
	})
}

// TestDrillIsResumed goes on where the drill was when the program ended, its clock
// still right.
func TestDrillIsResumed(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		s := roomy(t)
		d := begin(t, s, "2")
		s.Drill = &sessions.Drill{Started: d.clock.Add(-3 * time.Minute), Steps: []sessions.DrillStep{{Name: drill.LoadLow, Held: fit.Yes}, {Name: drill.EaseLeft, Held: fit.Yes}}}
		d.leave()
		d = begin(t, s, "2")
		if key, view := d.m().flow.Ask().Key, d.model.View(); key != "drill.steps.ease-right" || !strings.Contains(view, "Hanging 3:0") {
			t.Errorf("at %s\n%s", key, view)
		}
		d.leave()
	})
}

// TestDrillLineByLine walks it in lines: slack refuses the easing, and where the
// school asks for the drill one that was not seen whole needs a note.
func TestDrillLineByLine(t *testing.T) {
	dir := t.TempDir()
	s := roomy(t)
	if err := os.WriteFile(filepath.Join(dir, s.ID+".toml"), sessions.Encode(s), 0o600); err != nil {
		t.Fatal(err)
	}
	now := func() time.Time { return s.Started.AddDate(0, 0, 1) }
	school := sessions.DefaultSchool()
	school.RequireDrill = true
	var out bytes.Buffer
	o := Options{Store: openAt(t, dir, now), School: school, Now: now, Out: &out}
	review := 0
	st := flow.Start(*s, flow.Config{Judge: (*sessions.Session).Judge})
	for i, g := range st.Asked() {
		if g.Title == "Review" {
			review = i + 1
		}
	}
	lines := []string{"resume", "1", fmt.Sprintf("go %d", review), "sign off, the ground drill first", "up now: start the clock",
		"", "seen: it held", "62", // load low
		"2", "1", "15", // ease left: too much slack, then seen
		"4", // ease right: something else
		"1", "", "1", "", "", "demo instructor", "1", "back", "back", "the branch moved: drill at the next hang", "demo instructor", "1"}
	o.In = strings.NewReader(strings.Join(lines, "\n") + "\n")
	if err := RunPlain(o); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		"To be seen: both hitches hold without creeping.", "Expected: sag of the rope as it takes the load: ",
		"Not taken: not eased: take up the slack first.", "Stopped: Ease the right hitch.", "2. Second person: go to the climber",
		"UNKNOWN: not all was seen", "Not seen, or not told: Ease the right hitch; Ease both hitches",
		"Not taken: not signed: the drill was not seen whole",
	} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("not said: %q in\n%s", want, out.String())
		}
	}
	if f := latest(t, o.Store); f.SignOff == nil || f.SignOff.Note == "" {
		t.Errorf("not signed with its note:\n%s", out.String())
	}
}

// TestASlipOfTheHandIsMended: a drop that was typed wrong stops the drill, and once
// it is put right the drill goes on.
func TestASlipOfTheHandIsMended(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := begin(t, roomy(t), "2")
		d.goTo(d.place("review"))
		d.typed("1")
		d.drillTo("drill.steps.ease-left.drop_mm")
		d.typed("150")
		d.press(tea.KeyEnter)
		if key := d.m().flow.Ask().Key; key != "drill.down" {
			t.Fatalf("at %s", key)
		}
		d.typed("2") // still up: it was 15
		d.press(tea.KeyUp)
		for range "150 mm" {
			d.press(tea.KeyBackspace)
		}
		d.typed("15")
		d.press(tea.KeyEnter, tea.KeyEnter)
		if s := d.m().flow; s.Ask().Key != "drill.steps.ease-right" || s.Session.Drill.Steps[1].Drop.V != 15 {
			t.Errorf("at %s, sank %v", s.Ask().Key, s.Session.Drill.Steps[1].Drop)
		}
		d.leave()
	})
}

// TestForceAndRehearsalAreRead: from the drill's gate and from its end, in the words
// of the plan; the height of a climb is counted in moves and kept nowhere.
func TestForceAndRehearsalAreRead(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		s := roomy(t)
		plan := s.DrillPlan()
		d := begin(t, s, "2")
		d.goTo(d.place("review"))
		d.typed("1")
		shows := func(words ...string) {
			t.Helper()
			said := strings.Join(d.m().prose, "\n")
			for _, w := range words {
				if !strings.Contains(said, w) {
					t.Errorf("%s does not tell %q:\n%s", d.m().flow.Ask().Key, w, said)
				}
			}
		}
		d.option("the force")
		shows(append(append(plan.Force.StayWords("mm"), plan.Force.DropWords("mm")...), plan.Paths.Words()...)...)
		shows(plan.Force.PeakWords("mm")...)
		if view := d.model.View(); !strings.Contains(view, plan.Force.Chart(80, "mm", false)[2]) {
			t.Errorf("no chart:\n%s", view)
		}
		d.typed("1")
		d.option("one move")
		shows(plan.Rehearsal.Words("mm")...)
		d.typed("1")
		d.typed("12 m")
		d.press(tea.KeyEnter)
		moves := plan.Rehearsal.Climb(12000, "mm").In("mm")
		shows(moves)
		if said := d.m().flow.Said.Text; said != moves {
			t.Errorf("said %q", said)
		}
		d.typed("2")
		if key := d.m().flow.Ask().Key; key != "drill.start" {
			t.Errorf("back leads to %s", key)
		}
		d.drillTo("drill.down")
		d.option("one move")
		shows(moves)
		if view := d.model.View(); !strings.Contains(view, "Hanging ") {
			t.Errorf("no clock:\n%s", view)
		}
		d.typed("2")
		d.typed("d")
		d.typed("1")
		d.option("the force")
		d.typed("1")
		if key := d.m().flow.Ask().Key; key != "drill.result" {
			t.Errorf("back leads to %s", key)
		}
		d.leave()
		if s := d.only(); s.Drill.Note != "" || s.DrillReview().Verdict != rules.Pass {
			t.Errorf("a drill seen through is told as stopped: %+v", s.Drill)
		}
	})
}

// TestForceIsToldWhileAMustFails, and says what is missing where it is not known.
func TestForceIsToldWhileAMustFails(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		for name, mass := range map[string]fit.Number{"FAIL": fit.Some(84), "UNKNOWN": {}} {
			s := example(t, "2-one-must-fails.toml")
			s.Purpose, s.Fit.Mass = sessions.FirstFitting, mass
			d := begin(t, s, "2")
			d.goTo(d.place(flow.ForceKey))
			view := d.model.View()
			if chart := strings.Contains(view, "█"); chart != mass.Known || !mass.Known && !strings.Contains(view, drill.ForceNotKnown) {
				t.Errorf("%s:\n%s", name, view)
			}
			d.leave()
		}
	})
}

// TestDrillThatTheSchoolRequires is said before the drill and until it was seen, and
// keeps the fitting from being signed without it or a note.
func TestDrillThatTheSchoolRequires(t *testing.T) {
	const says = "The school requires this drill"
	for _, required := range []bool{true, false} {
		st := flow.Start(*roomy(t), flow.Config{Judge: (*sessions.Session).Judge, NeedDrill: required})
		at, _ := st.Find("drill.start")
		st = st.Do(flow.GoTo{Place: at})
		if got := strings.Contains(strings.Join(proseOf(&st, st.Ask()), "\n"), says); got != required {
			t.Errorf("required %t, said %t", required, got)
		}
		if got := strings.Contains(st.Options()[1].Word, "with a note"); got != required {
			t.Errorf("required %t: %q", required, st.Options()[1].Word)
		}
		var review strings.Builder
		for _, l := range reviewOf(&st) {
			review.WriteString(l.text)
		}
		if got := strings.Contains(review.String(), "Ground drill. Not done yet, and the school requires it."); got != required {
			t.Errorf("required %t, the review says it: %t", required, got)
		}
		st.SignBy = "demo instructor"
		if against := strings.Join(st.Against(), "\n"); strings.Contains(against, "requires the drill") != required {
			t.Errorf("required %t, against it %q", required, against)
		}
		if st.SignNote = "the branch moved"; len(st.Against()) > 0 {
			t.Errorf("with a note: %q", st.Against())
		}
	}
}

// TestPagesAreTurnedWhereverMoreIsTold: in a low window the key that the last line
// names turns to the rest of any question, and leads nowhere else.
func TestPagesAreTurnedWhereverMoreIsTold(t *testing.T) {
	for key, to := range map[string]func(*desk){
		"set":         func(d *desk) { d.short(); d.option("what to change"); d.option("least change") },
		flow.ForceKey: func(d *desk) { d.short(); d.goTo(d.place(flow.ForceKey)) },
	} {
		synctest.Test(t, func(t *testing.T) {
			d := sit(t, 44, 20)
			to(d)
			first := d.model.View()
			if !strings.Contains(first, "-- PgDn: ") {
				t.Fatalf("%s fits:\n%s", key, first)
			}
			d.press(tea.KeyPgDown)
			if now := d.m().flow.Ask().Key; now != key || d.model.View() == first {
				t.Errorf("PgDn at %s: at %s\n%s", key, now, d.model.View())
			}
			d.press(tea.KeyPgUp)
			if d.model.View() != first {
				t.Errorf("PgUp at %s:\n%s", key, d.model.View())
			}
			d.leave()
		})
	}
}
