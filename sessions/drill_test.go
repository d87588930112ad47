package sessions

import (
	"strings"
	"testing"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// A drill was of the kit as it was then: a change that nobody had hung on by then
// makes it stale.
func TestDrillIsStaleOnceTheKitIsChanged(t *testing.T) {
	f, err := ReadFile("../testdata/sessions/examples/5-two-hangs-one-change.toml", nil)
	if err != nil {
		t.Fatal(err)
	}
	s := f.Session
	h := s.Fit.Hangs
	between, after := h[0].Started.Add(time.Minute), h[1].Started.Add(time.Hour)
	for _, c := range []struct {
		name  string
		drill Drill
		more  bool // a change after the last hang
		stale bool
	}{
		{"before the change was hung on", Drill{Started: between}, false, true},
		{"after it", Drill{Started: after}, false, false},
		{"by hand, before", Drill{Done: between}, false, true},
		{"another change since", Drill{Started: after}, true, true},
		{"no times", Drill{}, true, false},
	} {
		s := s.Clone()
		s.Drill = &c.drill
		if c.more {
			s.Fit.Changes = append(s.Fit.Changes, fit.Change{Piece: fit.PieceTether, To: 120, AfterHang: 2})
		}
		r := s.DrillReview()
		if said := strings.Contains(strings.Join(r.Words("mm"), "\n"), "changed since"); r.Stale != c.stale || said != c.stale || r.Verdict != rules.Unknown {
			t.Errorf("%s: stale %t, said %t, %s", c.name, r.Stale, said, r.Verdict)
		}
	}
	s.Drill = nil
	if s.DrillReview() != nil {
		t.Error("a review of no drill")
	}
}
