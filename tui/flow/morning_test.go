package flow

import (
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/sessions"
)

// TestCarry takes the kit to the next student, and nothing of the first.
func TestCarry(t *testing.T) {
	e := followed()
	e.Climber, e.Instructor, e.Place, e.KitLabel, e.InspectedBy, e.Inspected = "Ash", "Lee", "oak", "kit 2", "Lee", e.Started
	var s sessions.Session
	s.ID, s.Started, s.Purpose = "01KPFXRYR03M4T5W6X7Y8Z9A0D", e.Started.Add(2*time.Hour), sessions.FirstFitting
	Carry(&s, e)
	if s.Climber != "" || s.Follows != "" || s.Instructor != "Lee" || s.Place != "oak" || s.KitLabel != "kit 2" || s.InspectedBy != "Lee" || len(s.Fit.Hangs) != 0 {
		t.Errorf("carried: %+v", s)
	}
	for r := range fit.NumReadings {
		key, list := fit.LaidKey(r), s.Fit.Laid[r]
		kept := slices.ContainsFunc(s.Fit.Kept, func(k fit.Kept) bool { return k.Key == key && k.Session == e.ID && k.Taken.Equal(e.Started) })
		want := strings.HasPrefix(key, "kit.") && !r.IsHeight() && r != fit.FootLoop // which was set and not laid on since
		if kept != want || (len(list) > 0) != want {
			t.Errorf("%s: %v, kept %v, want %v", key, list, kept, want)
		}
	}
	if got := s.Fit.Laid[fit.MainBridge]; !slices.Equal(got, []float64{703}) {
		t.Errorf("main bridge %v, want it as it was laid on last", got)
	}
	next := e.Started.AddDate(0, 0, 1)
	s = sessions.Session{Started: next}
	Carry(&s, e)
	if s.InspectedBy != "" {
		t.Error("yesterday's inspection counts today")
	}
}

// TestKitSince says where another session has moved a piece of the shared kit.
func TestKitSince(t *testing.T) {
	nine := time.Date(2026, 5, 7, 9, 0, 0, 0, time.UTC)
	with := func(id, climber, kit string, at time.Time, bridge float64) *sessions.Session {
		var s sessions.Session
		s.ID, s.Climber, s.KitLabel, s.Started, s.Unit = id, climber, kit, at, sessions.MM
		s.Fit.Laid[fit.MainBridge] = []float64{bridge}
		s.Fit.Kit.Pieces[fit.PieceMainBridge].Present = true
		s.Fit.Hangs = []fit.Hang{{Started: at.Add(10 * time.Minute), Ended: at.Add(15 * time.Minute)}}
		return &s
	}
	set := func(s *sessions.Session, to float64) *sessions.Session {
		s.Fit.Changes = []fit.Change{{Piece: fit.PieceMainBridge, To: to, AfterHang: 1}}
		return s
	}
	for name, c := range map[string]struct {
		here, other *sessions.Session
		says        string
	}{
		"as it was":          {with("A", "Ash", "kit 2", nine, 1080), with("B", "Birk", "kit 2", nine.Add(time.Hour), 1084), ""},
		"set for another":    {with("A", "Ash", "kit 2", nine, 1080), set(with("B", "Birk", "Kit  2", nine, 1080), 1150), "for Birk the main bridge was set to 1150 mm"},
		"another kit":        {with("A", "Ash", "kit 2", nine, 1080), set(with("B", "Birk", "kit 3", nine, 1080), 1150), ""},
		"no name on the bag": {with("A", "Ash", "", nine, 1080), set(with("B", "Birk", "", nine, 1080), 1150), ""},
		"set here later":     {set(with("A", "Ash", "kit 2", nine.Add(time.Hour), 1080), 1150), set(with("B", "Birk", "kit 2", nine, 1080), 1100), ""},
		"laid on otherwise":  {with("A", "Ash", "kit 2", nine, 1080), with("B", "", "kit 2", nine.Add(time.Minute), 1150), "for another climber the main bridge"},
	} {
		st := State{Draft: Draft{Session: *c.here}, Config: Config{Others: []*sessions.Session{c.here, c.other}}}
		got := strings.Join(st.KitSince(), "\n")
		if (got == "") != (c.says == "") || !strings.Contains(got, c.says) {
			t.Errorf("%s: %q, want %q", name, got, c.says)
		}
	}
	birk, cleo := set(with("B", "Birk", "kit 2", nine.Add(time.Hour), 1080), 1150), with("C", "Cleo", "kit 2", nine.Add(2*time.Hour), 1150)
	cleo.Fit.Kept = []fit.Kept{{Key: "kit.main_bridge.length_mm", Session: "B", Taken: birk.Started}}
	three := State{Draft: Draft{Session: *with("A", "Ash", "kit 2", nine, 1080)}, Config: Config{Others: []*sessions.Session{birk, cleo}}}
	if got := strings.Join(three.KitSince(), "\n"); !strings.Contains(got, "for Birk the main bridge was set to 1150 mm") {
		t.Errorf("%q does not name the one for whom it was set, but who took it over", got)
	}
	carried := with("B", "Birk", "", nine, 1080)
	carried.Fit.Kept = []fit.Kept{{Key: "kit.main_bridge.length_mm", Session: "A"}}
	st := State{Draft: Draft{Session: *with("A", "Ash", "", nine, 1080)}, Config: Config{Others: []*sessions.Session{set(carried, 1150)}}}
	if len(st.KitSince()) != 1 {
		t.Error("a kit that was taken over without a name is not known again")
	}
}
