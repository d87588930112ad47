package sheet_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/hangtape/cmd/sheet"
	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

// At both ends of a told window the musts that lengths move pass, and a little
// beyond, within the piece's bounds, one does not.
func TestWindowsAreWhatTheModelSays(t *testing.T) {
	s := subject(t, goodKit, "mm")
	c := sheet.NewCard(s)
	f, limits := &s.Session.Fit, s.Session.RulesFor()
	passes := func(p fit.Piece, mm float64) bool {
		for _, k := range rules.Assess(f.Changed(map[fit.Piece]float64{p: mm}), limits).PlainChecks() {
			if k.Kind == rules.Must && k.Verdict != rules.Pass {
				return false
			}
		}
		return true
	}
	for p, n := range c.Lengths {
		var lo, hi float64
		if _, err := fmt.Sscanf(n.Window, "%f to %f mm", &lo, &hi); err != nil {
			t.Fatalf("%s: window %q: %v", n.Piece, n.Window, err)
		}
		bounds := f.Kit.Pieces[p].Bounds
		for _, end := range []struct{ at, beyond, bound float64 }{{lo, lo - 2, bounds[0]}, {hi, hi + 2, bounds[1]}} {
			if !passes(fit.Piece(p), end.at) {
				t.Errorf("%s at %g mm does not pass", n.Piece, end.at)
			}
			if math.Abs(end.at-end.bound) > 1 && passes(fit.Piece(p), end.beyond) {
				t.Errorf("%s still passes at %g mm, out of %s", n.Piece, end.beyond, n.Window)
			}
		}
	}
}

// A length that passes as it was read, and would not surely if it were tied anew,
// is not told to be wrong; and a piece to be tied whose cord nobody told says so.
func TestLengthsThatPassAsTheyAre(t *testing.T) {
	s := subject(t, goodKit, "mm").Session.Clone()
	s.Fit.Laid[fit.Tether] = []float64{122, 122}
	for _, r := range []fit.Reading{fit.GardaTaut} {
		for i := range s.Fit.Hangs[0].Heights[r] {
			s.Fit.Hangs[0].Heights[r][i] += 12
		}
	}
	c := sheet.NewCard(judged(t, s, "mm"))
	tether, loop := c.Lengths[fit.PieceTether], c.Lengths[fit.PieceFootLoop]
	if c.Outcome != rules.Pass || !strings.HasSuffix(tether.Told(), " mm if set anew") {
		t.Errorf("%s: tether %s", c.Outcome, tether.Told())
	}
	if loop.Cut != "cord not told" {
		t.Errorf("foot loop: cord to cut %q", loop.Cut)
	}
}

// A label in inches and a mass in pounds are told as exactly as they are known.
func TestAboutIsRounded(t *testing.T) {
	s := subject(t, goodKit, "in").Session.Clone()
	s.Fit.Rope.Diameter, s.Fit.Mass = fit.Some(7.0/16*25.4), fit.Some(185/2.20462)
	about := strings.Join(sheet.NewCard(judged(t, s, "in")).About, "\n")
	for _, want := range []string{"rope 11.11 mm", "83.91 kg with"} {
		if !strings.Contains(about, want) {
			t.Errorf("%q is not in\n%s", want, about)
		}
	}
}

func TestNoWindowIsToldWhileAMustWaits(t *testing.T) {
	for _, n := range sheet.NewCard(subject(t, "../../sessions/demo/c-on-the-ground.toml", "mm")).Lengths {
		if strings.ContainsAny(n.Window, "0123456789") {
			t.Errorf("%s: window %s", n.Piece, n.Window)
		}
	}
}

func TestRopeAbove(t *testing.T) {
	for _, c := range []struct {
		name, unit, want string
		change           func(*sessions.Session)
	}{
		{"passes", "mm", "Holds only with at least 3.0 m of rope above.", func(*sessions.Session) {}},
		{"in feet, rounded up", "in", "Holds only with at least 9.9 ft of rope above.", func(*sessions.Session) {}},
		{"too short", "mm", "Holds only with at least 2.6 m of rope above; with 0.5 m slip-force is fail.", func(s *sessions.Session) { s.Fit.Rope.LeastAbove = fit.Some(500) }},
		{"too heavy for any", "mm", "Holds with no length of rope above: the peak of the catch is too high (slip-force fail with 3.0 m).",
			func(s *sessions.Session) {
				s.Fit.Mass, s.Limits = fit.Some(210), map[rules.Limit]float64{rules.PeakForce: 4}
			}},
		{"not told", "mm", "How much rope above it needs is not known: tell the least rope above.", func(s *sessions.Session) { s.Fit.Rope.LeastAbove = fit.Number{} }},
	} {
		s := subject(t, goodKit, c.unit).Session
		c.change(s)
		if got := sheet.NewCard(judged(t, s, c.unit)).Rope; got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

func TestMarks(t *testing.T) {
	s := subject(t, "../../testdata/sessions/examples/5-two-hangs-one-change.toml", "mm")
	if got, want := sheet.NewCard(s).Marks, []string{"UNFINISHED", "PREDICTED: 1 reading not taken since a change of backup bridge"}; !slices.Equal(got, want) {
		t.Errorf("marks %q, want %q", got, want)
	}
	s.Session.Finished, s.Session.Fit.Changes = s.Session.Started.Add(time.Hour), nil
	if got := sheet.NewCard(judged(t, s.Session, "mm")).Marks; len(got) > 0 {
		t.Errorf("marks %q of a finished session of today", got)
	}
	if got := sheet.NewCard(subject(t, goodKit, "mm")).Marks; got[0] != "DEMO: all data are invented" {
		t.Errorf("marks %q of a demo", got)
	}
}

func TestWhoSigned(t *testing.T) {
	s := subject(t, "../../sessions/demo/b-short-bridge.toml", "mm")
	if got := sheet.NewCard(s).Sign; got.Signed || got.Head != "NOT SIGNED" || got.Lines[0] != "Held up by hitch-top-reach, garda-release-room." {
		t.Errorf("%+v", got)
	}
	s = subject(t, goodKit, "mm")
	s.Session.Sign("somebody", "watched it", time.Date(2026, 4, 18, 9, 50, 0, 0, time.UTC), s.Report)
	want := []string{"by somebody, 2026-04-18 09:50, as PASS", "Note: watched it"}
	if got := sheet.NewCard(judged(t, s.Session, "mm")).Sign; !got.Signed || !slices.Equal(got.Lines, want) {
		t.Errorf("%+v", got)
	}
	s.Session.SignOff.Checks[0].Verdict = rules.Fail
	if got := sheet.NewCard(judged(t, s.Session, "mm")).Sign; got.Lines[2] != "JUDGED DIFFERENTLY TODAY: 1 check" {
		t.Errorf("%+v", got)
	}
}

func TestDrill(t *testing.T) {
	if got := sheet.NewCard(subject(t, goodKit, "mm")).Drill; !slices.Equal(got, []string{"NOT DONE"}) {
		t.Errorf("%q", got)
	}
	s := subject(t, goodKit, "in").Session
	s.Drill = &sessions.Drill{
		Done: time.Date(2026, 4, 18, 9, 44, 0, 0, time.UTC), Note: "in the  rain",
		Steps: []sessions.DrillStep{{Name: "ease-left", Held: fit.Yes, Drop: fit.Some(25.4)}, {Name: "ease-both", Held: fit.No, KneeFree: fit.Yes}},
	}
	got := sheet.NewCard(judged(t, s, "in")).Drill
	want := []string{"FAIL, 2026-04-18, in the rain", "ease-left: held, sank 1 in", "ease-both: DID NOT HOLD, knee free"}
	if !slices.Equal(got[:3], want) || !strings.HasPrefix(got[len(got)-1], "NOT SEEN, or not told: ") {
		t.Errorf("%q, want %q and what was not seen", got, want)
	}
}

// A tight must that rests on a prediction says so.
func TestPredictedVerdictsSaySo(t *testing.T) {
	c := sheet.NewCard(subject(t, "../../testdata/sessions/full.toml", "mm"))
	i := slices.IndexFunc(c.Musts, func(l sheet.Check) bool { return l.Name == "hitch-top-reach" })
	if got := c.Musts[i]; got.Word() != "TIGHT" || !strings.HasSuffix(got.Told(), ", predicted") {
		t.Errorf("%s %s", got.Word(), got.Told())
	}
}

func TestAStudentStandsInTheClassOnce(t *testing.T) {
	at := func(climber string, hour int) sheet.Subject {
		s := subject(t, goodKit, "mm")
		s.Session.Climber, s.Session.Started = climber, time.Date(2026, 4, 18, hour, 0, 0, 0, time.UTC)
		s.Session.KitLabel = fmt.Sprintf("of %d o'clock", hour)
		return s
	}
	c := sheet.NewClass("2026-04-18", []sheet.Subject{at("Zoe", 9), at("anna", 15), at("Anna ", 11), at("", 8), at("", 12)})
	var got []string
	for _, r := range c.Rows {
		got = append(got, strings.TrimSpace(r.Climber)+": "+r.About[strings.Index(r.About, "UNFINISHED"):])
	}
	want := []string{
		"(no name told): UNFINISHED, kit of 8 o'clock", "(no name told): UNFINISHED, kit of 12 o'clock",
		"anna: UNFINISHED, latest of 2, kit of 15 o'clock", "Zoe: UNFINISHED, kit of 9 o'clock",
	}
	if !slices.Equal(got, want) {
		t.Errorf("rows %q, want %q", got, want)
	}
	if c.At.Hour() != 8 {
		t.Errorf("dated %s", c.At)
	}
}
