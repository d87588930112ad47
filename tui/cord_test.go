package tui

import (
	"bytes"
	"fmt"
	"os"
	"reflect"
	"strings"
	"testing"
	"testing/synctest"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/fit"
	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/flow"
)

// TestCordToCutStandsWhereALengthIsTied: beside the length of a piece that is tied
// anew, as it is typed; by what the pieces that were tied have taught; not where
// it slides.
func TestCordToCutStandsWhereALengthIsTied(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		s := roomy(t)
		tether := &s.Fit.Kit.Pieces[fit.PieceTether]
		tether.Change, tether.Cord = fit.ReTie, fit.Some(8)
		d := begin(t, s, "2")
		said := func() string {
			s, a := &d.m().flow, d.m().flow.Ask()
			for _, l := range append(besideOf(s, a), proseOf(s, a)...) {
				if strings.HasPrefix(l, "To tie it: ") {
					return l
				}
			}
			return ""
		}
		d.goTo(d.place("changes.1.piece"))
		d.typed("6") // the tether
		d.typed("178")
		const first = "To tie it: cut 1140 mm of 8 mm cord for a backup tether of 178 mm."
		if got := said(); got != first {
			t.Errorf("said %q, want %q", got, first)
		}
		view := strings.Join(strings.Fields(d.model.View()), " ")
		if !strings.Contains(view, first) {
			t.Errorf("not shown:\n%s", view)
		}
		d.press(tea.KeyEsc)
		d.typed("2") // the main bridge, which slides
		d.typed("1100")
		if got := said(); got != "" {
			t.Errorf("of a piece that slides: %q", got)
		}
		d.goTo(d.place("kit.tether.change"))
		if !strings.HasPrefix(said(), "To tie it: cut ") {
			t.Errorf("beside the piece: %q", said())
		}
		d.leave()

		c := fit.StandardCord(fit.CordTether)
		c.Finished, c.Diameter, c.Tail = 182, 8, 0
		for range 4 {
			if err := d.store.AddPiece(sessions.TiedPiece{On: d.clock.Truncate(24 * time.Hour), TiedCord: fit.TiedCord{Cord: c, Cut: 1000, Tails: 300}}); err != nil {
				t.Fatal(err)
			}
		}
		d = sitAt(t, d.store.Dir(), 80, 24)
		d.typed("2")
		d.goTo(d.place("changes.1.piece"))
		d.typed("6")
		d.typed("178")
		if got := said(); got == first || !strings.HasPrefix(got, "To tie it: cut ") {
			t.Errorf("after four pieces: %q", got)
		}
		d.leave()
	})
}

// retied is a session whose tether was re-tied at 150 mm after its hang and laid on,
// in a wizard that asks how long its cord was cut.
func retied(t *testing.T) *sessions.Session {
	s := roomy(t)
	tether := &s.Fit.Kit.Pieces[fit.PieceTether]
	tether.Change, tether.Cord = fit.ReTie, fit.Some(8)
	s.Fit.Changes = []fit.Change{{Piece: fit.PieceTether, From: fit.Some(130), To: 150, AfterHang: 1, Measured: []float64{152}}}
	return s
}

// TestAPieceThatWasTiedIsKept: cut, finished, tails, cord and knots go to the pieces
// of the folder, once; what is cut next follows from them. What cannot be is refused,
// and what could not be written is asked for again.
func TestAPieceThatWasTiedIsKept(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := begin(t, retied(t), "2")
		d.goTo(d.place("tied.tether.cut_mm"))
		if view := d.model.View(); !strings.Contains(view, "To tie it: cut ") {
			t.Errorf("what was told to cut is not shown:\n%s", view)
		}
		d.typed("300")
		d.press(tea.KeyEnter)
		d.typed("290")
		d.press(tea.KeyEnter)
		d.option("double fisherman's bend, clipped in")
		if said := d.m().flow.Said.Text; !strings.HasPrefix(said, "not kept: the length that was cut is 300 mm; accepted is more than ") {
			t.Errorf("said %q", said)
		}
		d.goTo(d.place("tied.tether.cut_mm"))
		d.press(tea.KeyUp)
		for range "300 mm" {
			d.press(tea.KeyBackspace)
		}
		d.typed("1130")
		d.press(tea.KeyEnter)
		d.goTo(d.place("tied.tether"))

		path := d.store.PiecesPath()
		if err := os.WriteFile(path, []byte("no pieces"), 0o600); err != nil {
			t.Fatal(err)
		}
		d.option("double fisherman's bend, clipped in")
		if said := d.m().flow.Said.Text; !strings.HasPrefix(said, "the piece of cord: ") {
			t.Errorf("a file of pieces that cannot be read: %q", said)
		}
		if err := os.Remove(path); err != nil {
			t.Fatal(err)
		}
		cut := d.m().flow.CordFor(fit.PieceTether, 178)
		d.goTo(d.place("tied.tether"))
		d.option("double fisherman's bend, clipped in")
		if said := d.m().flow.Said.Text; !strings.HasPrefix(said, "kept with your own pieces: the backup tether, whose knots took 536 mm, ") {
			t.Errorf("said %q", said)
		}
		if now := d.m().flow.CordFor(fit.PieceTether, 178); now == cut {
			t.Errorf("it teaches nothing: %q", now)
		}
		for _, key := range []string{"tied.tether.cut_mm", "tied.tether.both_tails_mm", "tied.tether"} {
			if _, ok := d.m().flow.Find(key); ok {
				t.Errorf("%s is asked again", key)
			}
		}
		d.leave()
		c := fit.StandardCord(fit.CordTether)
		c.Finished, c.Diameter, c.Tail, c.Hitch = 152, 8, 0, fit.NoKnot
		want := []sessions.TiedPiece{{On: d.clock.Truncate(24 * time.Hour), TiedCord: fit.TiedCord{Cord: c, Cut: 1130, Tails: 290}}}
		if got, err := d.store.Pieces(); err != nil || !reflect.DeepEqual(got, want) {
			t.Errorf("kept %+v, %v; want %+v", got, err, want)
		}
	})
}

// TestAPieceIsKeptLineByLine, and questioned where it does not fit the others.
func TestAPieceIsKeptLineByLine(t *testing.T) {
	dir := t.TempDir()
	s := retied(t)
	s.Fit.Changes[0].Measured = nil
	writeSession(t, dir, s)
	now := func() time.Time { return s.Started.AddDate(0, 0, 1) }
	var out bytes.Buffer
	o := Options{Store: openAt(t, dir, now), Now: now, Out: &out}
	c := fit.StandardCord(fit.CordTether)
	c.Finished, c.Diameter, c.Tail = 182, 8, 0
	for range 8 {
		if err := o.Store.AddPiece(sessions.TiedPiece{TiedCord: fit.TiedCord{Cord: c, Cut: 1130, Tails: 290}}); err != nil {
			t.Fatal(err)
		}
	}
	st := flow.Start(*s, flow.Config{Judge: (*sessions.Session).Judge})
	set := 0
	for i, g := range st.Asked() {
		if g.Title == "Before the next hang" {
			set = i + 1
		}
	}
	o.In = strings.NewReader(strings.Join([]string{"resume", "1", fmt.Sprint("go ", set), "set: go on", "152", "", "2130", "290", "double fisherman's bend, girth hitch", "quit"}, "\n") + "\n")
	if err := RunPlain(o); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"Every knot dressed and set, tails left long", "Backup tether: cut 2130 mm, finished 152 mm, both tails 290 mm, 8 mm cord.", "kept with your own pieces: the backup tether", "QUESTIONED: "} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("not said: %q in\n%s", want, out.String())
		}
	}
	if all, err := o.Store.Pieces(); err != nil || len(all) != 9 || all[8].Cut != 2130 {
		t.Errorf("%d pieces, %v", len(all), err)
	}
}

// TestTheCordOfAFootLoopIsAskedFor where it is to be tied anew, once: before that each
// usual cord is told.
func TestTheCordOfAFootLoopIsAskedFor(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := begin(t, roomy(t), "2")
		d.goTo(d.place("review"))
		apply := func(to float64) {
			m := d.m()
			cmd := m.do(flow.Apply{To: map[fit.Piece]float64{fit.PieceFootLoop: to}})
			d.model = *m
			d.run(cmd)
		}
		apply(1000)
		if key := d.m().flow.Ask().Key; key != "kit.foot_loop.cord_mm" {
			t.Fatalf("at %s", key)
		}
		said := func() string {
			return strings.Join(d.m().flow.CordToCut(d.m().flow.Ask()), " ")
		}
		if got := said(); got != "To tie it: cut 2370 mm of 6 mm cord, or 2560 mm of 8 mm cord, or 2745 mm of 10 mm cord for a foot loop of 1000 mm." {
			t.Errorf("before it is told: %q", got)
		}
		if goes := d.m().flow.CordGoes(d.m().flow.Ask()); len(goes) > 0 {
			t.Errorf("of a cord that nobody told: %q", goes)
		}
		const eight = "To tie it: cut 2560 mm of 8 mm cord for a foot loop of 1000 mm."
		d.typed("8")
		if got := said(); got != eight {
			t.Errorf("as it is typed: %q", got)
		}
		d.press(tea.KeyEnter)
		if got, key := said(), d.m().flow.Ask().Key; key != "set" || got != eight {
			t.Errorf("at %s: %q", key, got)
		}
		d.typed("?")
		if help := strings.Join(d.m().help, "\n"); !strings.Contains(help, "Where the cord of the foot loop goes, 2560 mm in all") || !strings.Contains(help, "- figure-eight loop: 480 mm, 2 x 30.0 d") {
			t.Errorf("the help does not tell where the cord goes:\n%s", help)
		}
		d.press(tea.KeyEsc)
		d.goTo(d.place("review"))
		if view := strings.Join(strings.Fields(d.model.View()), " "); !strings.Contains(view, eight) {
			t.Errorf("the review does not tell the cord to cut:\n%s", view)
		}
		apply(1005)
		if key := d.m().flow.Ask().Key; key != "set" {
			t.Errorf("asked again: at %s", key)
		}
		d.leave()
		if got := d.only().Fit.Kit.Pieces[fit.PieceFootLoop].Cord; got != fit.Some(8) {
			t.Errorf("the file has %v", got)
		}
	})
}
