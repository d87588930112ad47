package sheet_test

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/hangtape/cmd/sheet"
	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

// subject is a session file to be told in unit.
func subject(t *testing.T, file, unit string) sheet.Subject {
	t.Helper()
	f, err := sessions.ReadFile(file, nil)
	if err != nil {
		t.Fatal(err)
	}
	return judged(t, f.Session, unit)
}

func judged(t *testing.T, s *sessions.Session, unit string) sheet.Subject {
	t.Helper()
	r, err := s.Judge()
	if err != nil {
		t.Fatal(err)
	}
	return sheet.Subject{Session: s, Report: r, Unit: unit, Zone: time.UTC, Cord: fit.LearnCord(nil)}
}

// files are the example sessions, the demo and one with every key there is.
func files(t *testing.T) []string {
	t.Helper()
	var all []string
	for _, pattern := range []string{"../../testdata/sessions/examples/*.toml", "../../sessions/demo/*.toml", "../../testdata/sessions/full.toml"} {
		found, err := filepath.Glob(pattern)
		if err != nil || len(found) == 0 {
			t.Fatalf("%s: %v, %d files", pattern, err, len(found))
		}
		all = append(all, found...)
	}
	return all
}

// crowded is a session with as much to say as can be.
func crowded(t *testing.T, unit string) sheet.Subject {
	t.Helper()
	s := subject(t, "../../testdata/sessions/full.toml", unit).Session
	s.Climber = "王小明 Ünïcödé " + strings.Repeat("Longname", 20)
	s.Instructor = strings.Repeat("W", 120)
	s.Notes = strings.Repeat("a note that goes on and on, ", 60)
	s.SignOff.Note = strings.Repeat("watched, ", 40)
	s.Limits = map[rules.Limit]float64{}
	for l := range rules.NumLimits {
		s.Limits[l] = l.Info().Bounds[1]
	}
	return judged(t, s, unit)
}

// Nothing leaves the paper or lies on anything else, and nothing is set smaller
// than 9 points.
func checkDrawing(t *testing.T, d *sheet.Drawing) {
	t.Helper()
	paper := sheet.Box{Left: 20, Top: 20, Right: d.W - 20, Bottom: d.H - 20}
	for i, x := range d.Texts {
		if x.Size < 9 {
			t.Errorf("%q is set in %g points", x.S, x.Size)
		}
		if !x.Box().Within(paper) {
			t.Errorf("%q at %v leaves the paper %v", x.S, x.Box(), paper)
		}
		for _, y := range d.Texts[:i] {
			if x.Box().Meets(y.Box()) {
				t.Errorf("%q lies on %q", x.S, y.S)
			}
		}
	}
	for _, p := range d.Paths {
		if !p.Box().Within(paper) {
			t.Errorf("a path at %v leaves the paper %v", p.Box(), paper)
		}
	}
}

func TestACardIsOnePageWithoutOverlaps(t *testing.T) {
	for _, file := range files(t) {
		for _, unit := range []string{"mm", "cm", "in"} {
			for _, paper := range sheet.Papers() {
				t.Run(fmt.Sprintf("%s %s %s", filepath.Base(file), unit, paper.Name), func(t *testing.T) {
					s := subject(t, file, unit)
					s.Session.Climber += " with a name that is longer than most names are"
					pages, missing := sheet.NewCard(s).Pages(paper)
					if len(pages) != 1 || len(missing) != 0 {
						t.Errorf("%d pages, %q cannot be drawn", len(pages), missing)
					}
					for _, d := range pages {
						checkDrawing(t, d)
					}
				})
			}
		}
	}
}

// Readings that contradict each other, and a kit that fits nowhere, leave it at one
// page.
func TestABadFittingIsOnePage(t *testing.T) {
	s := subject(t, "../../sessions/demo/b-short-bridge.toml", "mm").Session
	s.Notes = strings.Repeat("a note that goes on and on, ", 20)
	h := &s.Fit.Hangs[0].Heights
	s.Fit.Laid[fit.Thigh], s.Fit.Laid[fit.Shin] = []float64{455, 411}, []float64{430, 470}
	h[fit.Nose], h[fit.KneeLevel], h[fit.GardaTaut] = []float64{1705, 1751}, []float64{1181, 1256}, []float64{1736, 1708}
	s.Limits = map[rules.Limit]float64{rules.ConnectorClearance: 40, rules.MostDrop: 350, rules.PeakForce: 4, rules.ReleaseRoom: 62}
	bad := judged(t, s, "mm")
	if len(bad.Report.Findings) < 6 {
		t.Fatalf("only %d findings", len(bad.Report.Findings))
	}
	for _, paper := range sheet.Papers() {
		pages, _ := sheet.NewCard(bad).Pages(paper)
		if len(pages) != 1 {
			t.Errorf("%s: %d pages", paper.Name, len(pages))
		}
		for _, d := range pages {
			checkDrawing(t, d)
		}
	}
}

// What there is no room for is told shorter, and how much is left out is told too.
func TestACrowdedCardIsOnePage(t *testing.T) {
	for _, paper := range sheet.Papers() {
		s := crowded(t, "in")
		s.Session.Drill.Steps = slices.Repeat(s.Session.Drill.Steps, 12)
		pages, missing := sheet.NewCard(judged(t, s.Session, "in")).Pages(paper)
		if len(pages) != 1 || string(missing) != "小明王" {
			t.Errorf("%s: %d pages, %q cannot be drawn", paper.Name, len(pages), string(missing))
		}
		checkDrawing(t, pages[0])
		var all strings.Builder
		for _, x := range pages[0].Texts {
			all.WriteString(x.S + " ")
		}
		if n := strings.Count(all.String(), "hangtape show tells"); n != 2 {
			t.Errorf("%s: of limits and steps of the drill %d say how many are left out: %s", paper.Name, n, all.String())
		}
	}
}

// A few checks more than there are leave a full card at one page: passes then run
// on.
func TestACardHasRoomForMoreChecks(t *testing.T) {
	c := sheet.NewCard(subject(t, "../../testdata/sessions/full.toml", "mm"))
	i := slices.IndexFunc(c.Musts, func(l sheet.Check) bool { return l.Verdict == rules.Pass })
	c.Musts = append(c.Musts, c.Musts[i], c.Musts[i])
	for _, paper := range sheet.Papers() {
		pages, _ := c.Pages(paper)
		if len(pages) != 1 {
			t.Errorf("%s: %d pages", paper.Name, len(pages))
		}
		checkDrawing(t, pages[0])
		var all strings.Builder
		for _, x := range pages[0].Texts {
			all.WriteString(x.S + " ")
		}
		if n := strings.Count(all.String(), c.Musts[i].Name); n < 3 {
			t.Errorf("%s: %s is told %d times, want 3", paper.Name, c.Musts[i].Name, n)
		}
	}
}

// A card that no fitting makes is set smaller before anything of it is cut.
func TestACardThatIsTooLongIsSetSmaller(t *testing.T) {
	c := sheet.NewCard(subject(t, goodKit, "mm"))
	c.Rope = strings.Repeat("Holds with as much rope above as there is. ", 30)
	for _, paper := range sheet.Papers() {
		pages, _ := c.Pages(paper)
		least := 9.0
		for _, x := range pages[0].Texts {
			least = min(least, x.Size)
			if b := x.Box(); !b.Within(sheet.Box{Left: 20, Top: 20, Right: paper.W - 20, Bottom: paper.H - 20}) {
				t.Errorf("%q at %v leaves the paper", x.S, b)
			}
		}
		if len(pages) != 1 || least == 9 || least < 5 {
			t.Errorf("%d pages, letters of %g points", len(pages), least)
		}
	}
}

func TestAClassFitsOnAPage(t *testing.T) {
	for _, paper := range sheet.Papers() {
		var all []sheet.Subject
		for i := range sheet.ClassPage + 1 {
			s := crowded(t, "in")
			s.Session.Climber = fmt.Sprintf("%c %s", 'A'+i, s.Session.Climber)
			all = append(all, s)
		}
		pages, _ := sheet.NewClass("2026-04-18", all[1:]).Pages(paper)
		if len(pages) != 1 {
			t.Errorf("%s: %d students take %d pages", paper.Name, sheet.ClassPage, len(pages))
		}
		larger := append([]sheet.Subject{}, all...)
		for i := range 3 {
			s := crowded(t, "in")
			s.Session.Climber = fmt.Sprintf("%c %s", 'N'+i, s.Session.Climber)
			larger = append(larger, s)
		}
		if pages, _ := sheet.NewClass("2026-04-18", larger).Pages(paper); len(pages) != 1 {
			t.Errorf("%s: %d students take %d pages", paper.Name, len(larger), len(pages))
		}
		more, _ := sheet.NewClass("2026-04-18", append(all, all...)).Pages(paper)
		for _, d := range append(pages, more...) {
			checkDrawing(t, d)
		}
	}
}
