package flow

import (
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/sessions"
)

// TestNewsNameQuestions holds the table of news to the questions: each stale key
// is asked for somewhere, and each length that can be kept goes stale by
// something.
func TestNewsNameQuestions(t *testing.T) {
	asked, stale := map[string]bool{}, map[string]bool{}
	for _, step := range Steps() {
		for _, a := range step.Asks {
			asked[a.Key] = true
		}
	}
	for _, n := range allNews() {
		for _, key := range n.stale {
			if stale[key] = true; !asked[key] {
				t.Errorf("%s makes %s stale, and nothing asks for it", n.name, key)
			}
		}
		if n.why == "" || strings.ContainsAny(n.name, ",:.") {
			t.Errorf("%q: no reason, or a name that the notes cannot hold", n.name)
		}
	}
	for r := range fit.NumReadings {
		if key := fit.LaidKey(r); !r.IsHeight() && fit.CanKeep(key) && !stale[key] {
			t.Errorf("nothing makes %s stale: it has to stand in climberNews or kitNews", key)
		}
	}
}

// followed is an earlier session with a length for everything and two changes:
// one that was laid on again, one that was not.
func followed() *sessions.Session {
	var s sessions.Session
	s.ID, s.Started, s.Unit, s.Purpose = "01KPFXRYR03M4T5W6X7Y8Z9A0B", time.Date(2026, 4, 18, 9, 0, 0, 0, time.UTC), sessions.MM, sessions.FirstFitting
	s.Fit.Hangs = make([]fit.Hang, 1)
	for r := range fit.NumReadings {
		if !r.IsHeight() {
			s.Fit.Laid[r] = []float64{500 + float64(r)}
		}
	}
	s.Fit.Kept = []fit.Kept{{Key: "climber.thigh_mm", Session: "01KPFXRYR03M4T5W6X7Y8Z9A0C", Taken: s.Started.AddDate(0, -2, 0)}}
	s.Fit.Rope.Diameter, s.Fit.Kit.Pieces[fit.PieceTether].Cord = fit.Some(11.4), fit.Some(8)
	for p := range fit.NumPieces {
		s.Fit.Kit.Pieces[p].Present = true
	}
	s.Fit.Changes = []fit.Change{
		{Piece: fit.PieceMainBridge, To: 700, Measured: []float64{703}, AfterHang: 1},
		{Piece: fit.PieceFootLoop, To: 900, AfterHang: 1},
	}
	return &s
}

func reTune() *Draft {
	d := &Draft{Followed: followed()}
	Follow(&d.Session, d.Followed)
	return d
}

func turnOn(d *Draft, name string) {
	for _, n := range allNews() {
		if n.name == name {
			d.turn(n)
		}
	}
}

// TestWhatIsNew holds what a few news make stale, what is kept and from when.
func TestWhatIsNew(t *testing.T) {
	d := reTune()
	turnOn(d, "tether")
	turnOn(d, "boots")
	turnOn(d, "grown")
	turnOn(d, "grown")
	if want := "New since 2026-04-18: tether, boots."; d.Session.Notes != want {
		t.Errorf("notes %q, want %q", d.Session.Notes, want)
	}
	if f := &d.Session.Fit; f.Kit.Pieces[fit.PieceTether].Cord.Known || !f.Rope.Diameter.Known {
		t.Error("the label of the old tether's cord stands, or the rope's does not")
	}
	d.keepAll()
	var kept, left []string
	for _, k := range d.Session.Fit.Kept {
		kept = append(kept, k.Key)
		want := d.Followed.Started
		if k.Key == "climber.thigh_mm" {
			want = d.Followed.Fit.Kept[0].Taken
		}
		if !k.Taken.Equal(want) {
			t.Errorf("%s kept from %v, want %v", k.Key, k.Taken, want)
		}
	}
	for r := range fit.NumReadings {
		if !r.IsHeight() && len(d.Session.Fit.Laid[r]) == 0 {
			left = append(left, fit.LaidKey(r))
		}
	}
	if want := []string{"climber.shin_mm", "climber.waist_mm", "rope.ahead_mm", "kit.garda.to_tether_mm", "kit.foot_loop.length_mm", "kit.tether.length_mm"}; !slices.Equal(left, want) {
		t.Errorf("to be laid on: %v, want %v", left, want)
	}
	if slices.Contains(kept, "kit.tether.cord_mm") || slices.Contains(kept, "rope.ahead_mm") || len(kept) != len(slices.Compact(slices.Sorted(slices.Values(kept)))) {
		t.Errorf("kept: %v", kept)
	}
	if got := d.Session.Fit.Laid[fit.MainBridge]; !slices.Equal(got, []float64{703}) {
		t.Errorf("main bridge %v: not as it was laid on after the change", got)
	}
	turnOn(d, "tether") // taken back
	if cord := d.Session.Fit.Kit.Pieces[fit.PieceTether].Cord; cord != fit.Some(8) || d.Session.Notes != "New since 2026-04-18: boots." {
		t.Errorf("taken back: cord %v, notes %q", cord, d.Session.Notes)
	}
}

// TestRemarks puts sentences of the program's own into what people have written.
func TestRemarks(t *testing.T) {
	for _, c := range []struct{ notes, said, want string }{
		{"", "New since x: a", "New since x: a."},
		{"wet bark", "New since x: a", "wet bark New since x: a."},
		{"wet. New since x: a. cold", "New since x: b, c", "wet. New since x: b, c. cold"},
		{"New since x: a. cold", "", "cold"},
		{"", "", ""},
	} {
		if got := remarked(c.notes, newSince, c.said); got != c.want {
			t.Errorf("%q with %q: %q, want %q", c.notes, c.said, got, c.want)
		}
	}
}

// TestANewPieceForgetsItsCord: a foot loop that is new is tied of another cord, until
// it is taken back.
func TestANewPieceForgetsItsCord(t *testing.T) {
	e := followed()
	e.Fit.Kit.Pieces[fit.PieceFootLoop].Cord = fit.Some(8)
	d := Draft{Followed: e, Session: *e.Clone()}
	Follow(&d.Session, e)
	for _, want := range []fit.Number{{}, fit.Some(8)} {
		for _, n := range kitNews {
			if n.name == "foot loop" {
				d.turn(n)
			}
		}
		if got := d.Session.Fit.Kit.Pieces[fit.PieceFootLoop].Cord; got != want {
			t.Errorf("new: %q; its cord is %v, want %v", d.newThings(), got, want)
		}
	}
}
