package advice_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/advice"
)

// unknown is a number that nobody knows.
var unknown = rules.Num(math.NaN())

func TestChangesInWords(t *testing.T) {
	window := &[2]float64{1200.2, 1259.9}
	for _, c := range []struct {
		change advice.Change
		unit   string
		want   string
	}{
		{advice.Change{Piece: "main_bridge", From: 1160, To: 1215, Window: window, How: "slides", Cost: 1}, "mm",
			"lengthen the main bridge by 55 mm, from 1160 to 1215 mm; anything from 1201 to 1259 mm will do (slides, work 1)"},
		{advice.Change{Piece: "main_bridge", From: 1215, To: 1160, Window: window, How: "slides", Cost: 1}, "cm",
			"shorten the main bridge by 5.5 cm, from 121.5 to 116.0 cm; anything from 120.1 to 125.9 cm will do (slides, work 1)"},
		{advice.Change{Piece: "tether", From: 101.6, To: 127, How: "re-tie", Cost: 3}, "in",
			"lengthen the backup tether by 1 in, from 4 to 5 in (re-tie, work 3)"},
		{advice.Change{Piece: "tether", From: unknown, To: 127, Each: []rules.Num{120, 130}, How: "re-tie", Cost: 3}, "mm",
			"set the backup tether to 127 mm (re-tie, work 3)"},
		{advice.Change{Piece: "rope_above", From: 2500, To: 4050}, "mm", "stay at least 4.1 m below the union, not 2.5 m (practice, no work)"},
		{advice.Change{Piece: "rope_above", From: unknown, To: 4050}, "in", "stay at least 13.3 ft below the union (practice, no work)"},
		{advice.Change{Piece: "no_such_piece", From: 10, To: 20, How: "slides", Cost: 1}, "mm",
			"lengthen the no such piece by 10 mm, from 10 to 20 mm (slides, work 1)"},
	} {
		if got := c.change.Words(c.unit); got != c.want {
			t.Errorf("%q\nwant %q", got, c.want)
		}
	}
}

// A window is told rounded inwards: what is told of it will do.
func TestWindowsAreRoundedInwards(t *testing.T) {
	sixteenth := 25.4 / 16
	for _, c := range []struct {
		window [2]float64
		unit   string
		lo, hi float64
	}{
		{[2]float64{100.1, 200.9}, "mm", 101, 200},
		{[2]float64{100, 200}, "cm", 100, 200},
		{[2]float64{100, 200}, "in", 63 * sixteenth, 125 * sixteenth},
	} {
		if lo, hi := advice.Inwards(c.window, c.unit); lo != c.lo || hi != c.hi {
			t.Errorf("%v in %s: %v to %v, want %v to %v", c.window, c.unit, lo, hi, c.lo, c.hi)
		}
	}
}

// A length that has to be reached is told no shorter than it is: 32 mm are a little
// more than 1 1/4 in, 340 mm a little more than 13 3/8 in.
func TestLengthsThatHaveToBeReachedAreToldRoundedUp(t *testing.T) {
	c := advice.Conflict{Cause: "geometry", Checks: []string{"a"}, Easing: &advice.Easing{Limit: rules.MostDrop, By: 32}}
	if got := c.Words("in"); !strings.Contains(got, "eased by 1 5/16 in,") {
		t.Errorf("easing: %q", got)
	}
	b := advice.OddBound{Piece: fit.PieceMainBridge, From: 500, Bounds: [2]float64{300, 1600}, Least: 340}
	if got := b.Words("in"); !strings.Contains(got, "its rings keep it at 13 7/16 in or more") {
		t.Errorf("bounds: %q", got)
	}
}

// Cord is told once for each piece that is tied anew, and for no other.
func TestCordForWhatIsTiedAnew(t *testing.T) {
	tie := advice.Change{Piece: "tether", To: 127, How: "re-tie"}
	slide, rope := advice.Change{Piece: "main_bridge", To: 900, How: "slides"}, advice.Change{Piece: "rope_above", To: 4000}
	loop := advice.Change{Piece: "foot_loop", To: 1000, How: "re-tie"}
	cord := func(p fit.Piece, finished float64) string {
		if p == fit.PieceFootLoop {
			return "" // none can be tied
		}
		return p.Key()
	}
	if got := advice.CordWords(cord, []advice.Change{slide, tie, rope}, []advice.Change{tie, loop}); !slices.Equal(got, []string{"tether"}) {
		t.Errorf("told %q", got)
	}
	if got := advice.CordWords(nil, []advice.Change{tie}); got != nil {
		t.Errorf("without a model of cord: %q", got)
	}
	if p, ok := tie.ReTied(); p != fit.PieceTether || !ok {
		t.Errorf("%v %t", p, ok)
	}
}

func TestReadingsToTakeSoonerInWords(t *testing.T) {
	keys := []string{"climber.thigh_mm", "rope.ahead_mm"}
	read := "once these are read three times afresh, one after the other: " + rules.InputName(keys[0]) + "; " + rules.InputName(keys[1])
	for cost, want := range map[int]string{
		0: "nothing would have to change, in place of work 6, " + read,
		2: "a change of work 2 would do, in place of work 6, " + read,
	} {
		if got := (&advice.Sooner{Cost: cost, Readings: keys}).Words(6); got != want {
			t.Errorf("%q\nwant %q", got, want)
		}
	}
}

func TestWordsOfConflicts(t *testing.T) {
	for want, c := range map[string]advice.Conflict{
		"no length lies within the bounds of all for: " + rules.InputName("kit.tether"): {Cause: "geometry", Bounds: []string{"kit.tether.bounds_mm"}},
		"no lengths within the bounds meet slip-drop, however well they are measured":   {Cause: "geometry", Checks: []string{"slip-drop"}},
		"no lengths within the bounds meet slip-drop and slip-force together, however well they are measured; other bounds for one of these would do: " + rules.InputName("kit.tether"): {
			Cause: "geometry", Checks: []string{"slip-drop", "slip-force"}, Bounds: []string{"kit.tether.bounds_mm"}},
		"no lengths within the bounds meet a, however well they are measured; so would the limit most-drop eased by 2.5 cm, which is the school's to decide": {
			Cause: "geometry", Checks: []string{"a"}, Easing: &advice.Easing{Limit: rules.MostDrop, By: 25}},
		"no lengths within the bounds meet b, however well they are measured; so would the limit most-flexion eased by 4 deg, which is the school's to decide": {
			Cause: "geometry", Checks: []string{"b"}, Easing: &advice.Easing{Limit: rules.MostFlexion, By: 4}},
		"there are lengths that meet every must, but not surely enough": {Cause: "uncertainty"},
		"there are lengths that meet a, b and c together, but not surely enough; read three times afresh: " + rules.InputName("climber.thigh_mm"): {
			Cause: "uncertainty", Checks: []string{"a", "b", "c"}, Next: []string{"climber.thigh_mm"}, Pieces: []string{"tether"}},
		"there are lengths that meet a, but not surely enough; what limits it is how closely these can be set: " + rules.InputName("kit.tether"): {
			Cause: "uncertainty", Checks: []string{"a"}, Pieces: []string{"tether"}},
	} {
		if got := c.Words("cm"); got != want {
			t.Errorf("%q\nwant %q", got, want)
		}
	}
}

func TestChecksInBriefAndTheMustsThatAreShort(t *testing.T) {
	checks := []advice.Check{
		{Name: "slip-drop", Verdict: rules.Fail, Margin: -12, U: 4, At: "above"},
		{Name: "slip-force", Verdict: rules.Unknown},
		{Name: "tether-stops-knee", Verdict: rules.Unknown},
		{Name: "hitch-top-reach", Verdict: rules.Pass},
		{Name: "hitch-wraps", Verdict: rules.Fail},
	}
	if got := checks[0].Brief("cm"); got != "FAIL -1.2 cm" {
		t.Errorf("in brief: %q", got)
	}
	var names []string
	for _, c := range advice.ShortMusts(checks, []string{"slip-force"}) {
		names = append(names, c.Name)
	}
	var want []string
	for i, c := range checks {
		id, _ := rules.CheckNamed(c.Name)
		if id.Info().Kind == rules.Must && i != 1 && i != 3 {
			want = append(want, c.Name)
		}
	}
	if !slices.Equal(names, want) || len(want) < 2 {
		t.Errorf("short: %q, want %q", names, want)
	}
}

func TestSameChanges(t *testing.T) {
	a := []advice.Change{{Piece: "tether", To: 120, Cost: 3}}
	for want, b := range map[bool][]advice.Change{true: {{Piece: "tether", To: 120}}, false: {{Piece: "tether", To: 121}}} {
		if got := advice.SameChanges(a, b); got != want {
			t.Errorf("%v and %v: %t", a, b, got)
		}
	}
	if advice.SameChanges(a, []advice.Change{{Piece: "foot_loop", To: 120}}) || advice.SameChanges(a, nil) {
		t.Error("another piece, or none, is no same change")
	}
}
