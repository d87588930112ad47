package tui

import (
	"bytes"
	"strings"
	"testing"
	"testing/synctest"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/fit"
	"example.com/hangtape/sessions"
)

// byClimber are the sessions of the folder by their climbers.
func byClimber(t *testing.T, store *sessions.Store) map[string]*sessions.Session {
	t.Helper()
	out := map[string]*sessions.Session{}
	for _, f := range filesIn(t, store) {
		out[f.Session.Climber] = f.Session
	}
	return out
}

// TestMorning has three students on one kit: the second is begun while the first
// hangs, the third after; each is where it was left, with what was typed, and a
// piece that is moved for one is told to the others.
func TestMorning(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		dir := t.TempDir()
		first := example(t, "1-good-kit.toml")
		first.Purpose, first.Climber, first.KitLabel = sessions.FirstFitting, "Ash", "kit 2"
		first.Started = time.Date(2026, 5, 7, 7, 0, 0, 0, time.UTC)
		writeSession(t, dir, first)
		d := sitAt(t, dir, 80, 24)
		d.typed("2")
		d.goTo(d.place("hang"))
		d.typed("1")  // Ash is up
		d.typed("52") // and half a hip
		d.press(tea.KeyCtrlO)
		d.typed("1") // the next student
		m := d.m()
		if len(m.seats) != 1 || m.flow.Session.Climber != "" || m.flow.Session.KitLabel != "kit 2" || len(m.flow.Session.Fit.Laid[fit.FootLoop]) == 0 || len(m.flow.Session.Fit.Laid[fit.Thigh]) != 0 {
			t.Fatalf("%d aside, %+v", len(m.seats), m.flow.Session)
		}
		d.clock = d.clock.Add(80 * time.Second)
		d.typed("1Birk")
		d.press(tea.KeyEnter)
		if view := d.model.View(); !strings.Contains(view, "Ash hangs 1:20") {
			t.Errorf("who hangs is not said:\n%s", view)
		}
		started := d.clock
		d.clock = d.clock.Add(5 * time.Minute)
		d.send(tickMsg{})
		if view := d.model.View(); !strings.Contains(view, "Ash hangs 6:20: time for a break") {
			t.Errorf("no break is suggested:\n%s", view)
		}
		d.clock = started
		d.press(tea.KeyCtrlO)
		if view := d.model.View(); !strings.Contains(view, "2  Ash HANGS, 1:20") {
			t.Errorf("not offered:\n%s", view)
		}
		d.typed("2") // back to Ash
		if m := d.m(); m.flow.Session.Climber != "Ash" || m.flow.Text() != "52" || !strings.Contains(d.model.View(), "> 52") {
			t.Errorf("not as it was left: %q\n%s", m.flow.Text(), d.model.View())
		}
		d.clock = d.clock.Add(time.Minute)
		d.typed("d")
		d.typed("1")
		d.typed("2") // another hang
		d.typed("2") // for which the main bridge
		d.typed("1200")
		d.press(tea.KeyEnter)
		d.press(tea.KeyCtrlO)
		d.typed("2") // to Birk
		d.goTo(d.place("review"))
		if view := strings.Join(strings.Fields(d.model.View()), " "); !strings.Contains(view, "Kit changed since: for Ash the main bridge was set to 1200 mm") {
			t.Errorf("not told that the kit has changed:\n%s", d.model.View())
		}
		d.leave()
		all := byClimber(t, d.store)
		if len(all) != 2 || len(all["Ash"].Fit.Changes) != 1 || all["Birk"] == nil {
			t.Errorf("saved: %+v", all)
		}

		d2 := sitAt(t, dir, 80, 24) // the next start has both, and says the same from the folder alone
		d2.typed("2")
		d2.press(tea.KeyEnter)
		d2.goTo(d2.place("review"))
		if got := d2.m().flow.Session.Climber; got != "Birk" || !strings.Contains(d2.model.View(), "Kit changed since") {
			t.Errorf("%s:\n%s", got, d2.model.View())
		}
		d2.leave()
	})
}

// TestSignThenNext signs one and begins the next on the same kit.
func TestSignThenNext(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		dir := t.TempDir()
		s := example(t, "1-good-kit.toml")
		s.Purpose, s.Climber = sessions.FirstFitting, "Ash"
		writeSession(t, dir, s)
		d := sitAt(t, dir, 80, 24)
		d.typed("2")
		d.goTo(d.place("session.notes"))
		d.press(tea.KeyEnter, tea.KeyEnter)
		d.typed("Lee")
		d.press(tea.KeyEnter)
		d.typed("2")
		if m := d.m(); d.quit || m.flow.Session.ID == s.ID || len(m.flow.Session.Fit.Kept) == 0 || m.flow.Ask().Key != "session.purpose" || len(m.seats) != 0 {
			t.Fatalf("no next student:\n%s", d.model.View())
		}
		d.typed("1Birk")
		d.press(tea.KeyEnter)
		d.leave()
		all := byClimber(t, d.store)
		if all["Ash"].SignOff == nil || all["Birk"] == nil || all["Birk"].SignOff != nil {
			t.Errorf("signed: %+v, next: %+v", all["Ash"].SignOff, all["Birk"])
		}
	})
}

// TestMorningLineByLine does the same in lines.
func TestMorningLineByLine(t *testing.T) {
	dir := t.TempDir()
	s := example(t, "1-good-kit.toml")
	s.Purpose, s.Climber = sessions.FirstFitting, "Ash"
	writeSession(t, dir, s)
	now := func() time.Time { return s.Started.Add(time.Hour) }
	store := openAt(t, dir, now)
	in := "resume\n1\nstudents\nstudent 9\nstudent 1\n1\nBirk\n\n\nstudents\nback\nstudent 2\nverdicts\n"
	var out bytes.Buffer
	if err := RunPlain(Options{Store: store, Now: now, In: strings.NewReader(in), Out: &out}); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"student 1: the next student, same tape, rope and kit.", `"9" is none of them.`, "The next student, no name yet.", "student 2: Ash, open at: ", "\nAsh.\n", "Left; all is saved."} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("no %q in\n%s", want, out.String())
		}
	}
	if all := byClimber(t, store); all["Birk"] == nil || len(all["Birk"].Fit.Kept) == 0 {
		t.Errorf("saved: %+v", all)
	}
}

// A next student is asked from the first question on, also where the session
// before has nothing of the kit yet.
func TestNextStudentBeforeTheKitIsRead(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := sit(t, 44, 20)
		d.typed("1" + "1Ash")
		d.press(tea.KeyEnter)
		d.typed("Birk")
		d.press(tea.KeyEnter, tea.KeyCtrlO)
		d.typed("1")
		if s := &d.m().flow; s.Ask().Key != "session.purpose" || s.Session.Instructor != "Birk" {
			t.Errorf("the next student of %q begins at %s", s.Session.Instructor, s.Ask().Key)
		}
		d.press(tea.KeyCtrlO)
		if view := d.model.View(); !strings.Contains(view, "2  Ash, open at: Place") || !strings.Contains(view, "Esc back") {
			t.Errorf("students:\n%s", view)
		}
		d.leave()
	})
}

// A next student is led past what tape, rope and kit have told already, to the
// body; it is there to go to, and what was set since is asked for.
func TestNextStudentIsAskedForTheBody(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		dir := t.TempDir()
		first := example(t, "1-good-kit.toml")
		first.Purpose, first.KitLabel, first.Follows = sessions.FirstFitting, "kit 2", ""
		first.Fit.Changes = append(first.Fit.Changes, fit.Change{Piece: fit.PieceTether, From: fit.Some(135), To: 150, AfterHang: 1})
		writeSession(t, dir, first)
		d := sitAt(t, dir, 44, 20)
		d.typed("2")
		d.press(tea.KeyCtrlO)
		d.typed("1" + "1Birk")
		var asked []string
		for d.press(tea.KeyEnter); d.m().flow.Ask().Key != "climber.stature_mm" && len(asked) < 20; d.press(tea.KeyEnter) {
			asked = append(asked, d.m().flow.Ask().Key)
		}
		if got := strings.Join(asked, " "); got != "kit.inspected_by kit.tether.length_mm" {
			t.Errorf("asked for %s", got)
		}
		d.goTo(d.place("kit.main_bridge.length_mm"))
		d.leave()
	})
}
