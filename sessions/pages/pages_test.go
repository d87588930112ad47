package pages

import (
	"crypto/rand"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/compare"
	"example.com/hangtape/sessions/history"
	"example.com/hangtape/sessions/records"
)

var now = time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)

// all are sessions of every kind: in order, out of the domain, with gaps, with
// changes, with a drill and a sign-off.
func all(t testing.TB) []*sessions.File {
	t.Helper()
	names, err := filepath.Glob("../../testdata/sessions/*/*.toml")
	if err != nil || len(names) < 20 {
		t.Fatal(names, err)
	}
	var files []*sessions.File
	for _, name := range append(names, "../../testdata/sessions/full.toml") {
		f, err := sessions.ReadFile(name, nil)
		if err != nil {
			t.Fatal(err)
		}
		f.Name = filepath.Base(name)
		files = append(files, f)
	}
	return files
}

// inWidth fails where a line is wider than the page, holds a line's end, or ends
// in blanks.
func inWidth(t testing.TB, lines []string, width int) {
	t.Helper()
	for _, l := range lines {
		if utf8.RuneCountInString(l) > width || strings.ContainsAny(l, "\n\t") || strings.HasSuffix(l, " ") {
			t.Errorf("%d letters on a page of %d: %q", utf8.RuneCountInString(l), width, l)
		}
	}
}

func TestPagesKeepTheirWidth(t *testing.T) {
	files := all(t)
	for i, f := range files {
		c, err := compare.Of(f, files[(i+1)%len(files)])
		if err != nil {
			t.Fatal(f.Name, err)
		}
		for _, width := range []int{44, 80} {
			look := Look{Width: width, Unit: []string{"mm", "cm", "in"}[i%3]}
			lines, err := Show(f, now, look)
			if err != nil {
				t.Fatal(f.Name, err)
			}
			inWidth(t, lines, width)
			inWidth(t, Compare(c, look), width)
			inWidth(t, Changes(c, look), width)
		}
	}
}

func TestWhatPeopleTypedIsCleaned(t *testing.T) {
	f := all(t)[0]
	s := f.Session.Clone()
	s.Climber, s.Place, s.Notes, s.KitLabel, s.Instructor = "bad", "bad", "bad\nbad\ttoo", "bad", "bad"
	s.Tied[0] = sessions.Tied{On: now, By: "bad"}
	s.Drill = &sessions.Drill{Note: "bad", Steps: []sessions.DrillStep{{Name: "bad"}}}
	s.SignOff = &sessions.SignOff{By: "bad", Note: "bad", Outcome: "pass"}
	dirty := &sessions.File{Name: "bad", Session: s}
	look := Look{Width: 80, Unit: "mm", Clean: func(s string) string { return strings.ReplaceAll(s, "bad", "good") }}
	shown, err := Show(dirty, now, look)
	if err != nil {
		t.Fatal(err)
	}
	c, err := compare.Of(f, dirty)
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range append(shown, Compare(c, look)...) {
		if strings.Contains(l, "bad") {
			t.Error(l)
		}
	}
	if n := strings.Count(strings.Join(shown, "\n"), "good"); n < 12 {
		t.Errorf("only %d of what people typed is shown", n)
	}
}

// A session whose readings cannot be true together is shown all the same.
func TestShowOfWhatCannotBe(t *testing.T) {
	f := all(t)[0]
	s := f.Session.Clone()

	s.Fit.Hangs[0].Heights[fit.Nose] = []float64{1}
	lines, err := Show(&sessions.File{Name: "x.toml", Data: f.Data, Session: s}, now, Look{Width: 80, Unit: "mm"})
	if err == nil || len(lines) < 20 || lines[0] != "x.toml: cannot be judged" {
		t.Error(err, lines)
	}
}

func TestHistoryKeepsItsWidth(t *testing.T) {
	dir := t.TempDir()
	for _, f := range all(t) {
		data := regexp.MustCompile(`(?m)^climber = .*$`).ReplaceAll(f.Data, []byte(`climber = "one"`))
		if err := os.WriteFile(filepath.Join(dir, f.Name), data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	st, err := sessions.OpenStore(dir, time.Now, rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	list, err := records.Scan(st)
	if err != nil || len(list.Climbers()) != 1 {
		t.Fatal(err, list.Climbers())
	}
	h, errs := history.Load(st, list, &list.Climbers()[0], now)
	if len(errs) > 0 || len(h.Sessions) < 20 {
		t.Fatal(errs, len(h.Sessions))
	}
	for _, width := range []int{44, 80} {
		for _, unit := range []string{"mm", "cm", "in"} {
			inWidth(t, History(h, Look{Width: width, Unit: unit}), width)
		}
	}
	for _, l := range History(h, Look{Width: 80, Unit: "mm", ASCII: true}) {
		if strings.ContainsAny(l, "█▌▐│┊") {
			t.Errorf("%q is not ASCII", l)
		}
	}
}

func TestBars(t *testing.T) {
	unicode, ascii := newPage(Look{}).signs(), newPage(Look{ASCII: true}).signs()
	nan := rules.Num(math.NaN())
	for _, c := range []struct {
		lo, hi, margin, guard float64
		want, plain           string
	}{
		{0, 10, 10, 0, "│██████████", "|##########"},
		{0, 10, 5, 7, "│█████  ┊  ", "|#####  :  "},
		{0, 10, 2.5, 2.5, "│██┊       ", "|##:       "},
		{0, 10, 4.5, 0, "│████▌     ", "|#####     "},
		{-5, 5, -5, 2, "█████│  ┊  ", "#####|  :  "},
		{-5, 5, -1.5, 0, "   ▐█│     ", "   ##|     "},
		{-5, 5, 0, 0, "     │     ", "     |     "},
		{-10, 0, -10, 0, "██████████│", "##########|"},
		{0, 0, 0, 0, "│          ", "|          "},
	} {
		s := barScale{c.lo, c.hi, 11}
		if got := s.bar(rules.Num(c.margin), rules.Num(c.guard), unicode); got != c.want {
			t.Errorf("%+v: %q", c, got)
		}
		if got := s.bar(rules.Num(c.margin), rules.Num(c.guard), ascii); got != c.plain {
			t.Errorf("%+v: %q", c, got)
		}
	}
	if got := (barScale{0, 10, 11}).bar(3, nan, unicode); got != "│███       " {
		t.Errorf("%q", got)
	}
}
