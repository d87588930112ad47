package tui

import (
	"bytes"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"testing/synctest"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/flow"
	"example.com/hangtape/tui/flow/flowtest"
)

// A climb is the second hang of the climber of an example: which heights the tape
// would show, hung as high as before, on the kit as it is set.
type climb struct{ was, now *fit.State }

// read is what the tape shows of r, in mm.
func (c climb) read(r fit.Reading) string {
	const hip = 1200
	v := c.now.Standing(r)
	switch r {
	case fit.Hip:
		v = 0
	case fit.KneeLevel:
		v = c.was.KneeAtLevel
	}
	return strconv.Itoa(int(hip + v + 0.5))
}

// round types one whole round by way of say and tells which readings were asked
// for in the second hang.
type rounder struct {
	state func() *flow.State
	pick  func(word string) // takes the option that starts with word
	say   func(text string) // types a line and Enter
}

// fromReviewToSigned takes the best fit, lays the tape on each piece again, hangs
// and reads what is asked, and signs. It returns the keys that were asked aloft.
func (r rounder) fromReviewToSigned(t *testing.T) (aloft []string) {
	t.Helper()
	r.pick("what to change")
	r.pick("best fit")
	r.pick("set")
	var c climb
	for n := 0; !r.state().Left; n++ {
		s := r.state()
		if n > 100 || s.Said.Kind == flow.Refused {
			t.Fatalf("stuck at %s: %s", s.Ask().Key, s.Said.Text)
		}
		a := s.Ask()
		slot := s.Slot(a)
		told := a.Kind != flow.Choice && a.Told(&s.Draft) > 0
		switch {
		case told && s.Step().Phase != flow.Close:
			r.say("")
		case a.Key == "changes.measured_mm":
			i, _ := strconv.Atoi(strings.Split(slot, ".")[1])
			r.say(strconv.FormatFloat(s.Session.Fit.Changes[i-1].To, 'f', -1, 64))
		case a.Key == "hang":
			f := s.Session.Fit
			c = climb{state(fitBefore(&f)), state(&f)}
			r.pick("up now")
		case a.Reading.IsHeight() && a.Kind == flow.Reading && s.Step().Phase == flow.Aloft:
			aloft = append(aloft, slot)
			r.say(c.read(a.Reading))
		case a.Key == "down":
			r.pick("down")
		case a.Key == "review":
			r.pick("sign off")
		case a.Key == "sign_off.by":
			r.say("demo instructor")
		case a.Key == "sign_off":
			r.pick("sign")
		default:
			r.say("")
		}
	}
	return aloft
}

func fitBefore(f *fit.Fitting) *fit.Fitting {
	g := *f
	g.Changes = nil
	return &g
}

func state(f *fit.Fitting) *fit.State {
	m := fit.NewModel(f, fit.Options{})
	var s fit.State
	m.Current(&s)
	return &s
}

// failing is a session whose musts fail, and can be set right.
func failing(t *testing.T) *sessions.Session {
	t.Helper()
	s := flowtest.Examples(t, exampleDir)["2-one-must-fails.toml"]
	s.Purpose, s.SignOff, s.Finished = sessions.FirstFitting, nil, time.Time{}
	return s
}

func put(t *testing.T, dir string, s *sessions.Session) {
	t.Helper()
	if err := os.WriteFile(filepath.Join(dir, s.ID+".toml"), sessions.Encode(s), 0o600); err != nil {
		t.Fatal(err)
	}
}

// TestFromAdviceToSigned goes from the review of a kit that fails over an answer,
// its setting, a second hang with few readings and the review to a signed file, on
// the full screen and line by line, and finds the same file.
func TestFromAdviceToSigned(t *testing.T) {
	want := failing(t)
	var full, lines *sessions.Session
	var aloft [2][]string
	synctest.Test(t, func(t *testing.T) {
		dir := t.TempDir()
		put(t, dir, want)
		d := sitAt(t, dir, 80, 24)
		d.typed("2")
		d.goTo(d.place("review"))
		r := rounder{
			state: func() *flow.State { return &d.m().flow },
			pick:  func(word string) { d.typed(strconv.Itoa(optionNamed(t, &d.m().flow, word))) },
			say:   func(text string) { d.typed(text); d.press(tea.KeyEnter) },
		}
		aloft[0] = r.fromReviewToSigned(t)
		d.leave()
		full = d.only()
	})
	{
		dir := t.TempDir()
		put(t, dir, want)
		now := func() time.Time { return time.Date(2026, 5, 7, 9, 0, 0, 0, time.UTC) }
		store := openAt(t, dir, now)
		var out bytes.Buffer
		p := newPlain(Options{Store: store, Now: now, In: strings.NewReader("resume\n1\n"), Out: &out})
		if !p.start() {
			t.Fatal(out.String())
		}
		review, _ := p.flow.Find("review")
		p.do(flow.GoTo{Place: review})
		r := rounder{
			state: func() *flow.State { return &p.flow },
			pick:  func(word string) { p.ask(); p.answer(strconv.Itoa(optionNamed(t, &p.flow, word))) },
			say:   func(text string) { p.ask(); p.answer(text) },
		}
		p.ask()
		p.answer("3")
		p.ask() // the advice is worked out and said
		for _, w := range []string{"PREDICTED", "Best fit", "tether-lets-thigh-level: now FAIL"} {
			if !strings.Contains(out.String(), w) {
				t.Errorf("%q is not said:\n%s", w, out.String())
			}
		}
		p.answer("back")
		aloft[1] = r.fromReviewToSigned(t)
		if err := p.editor.Close(); err != nil || p.unsaved != nil {
			t.Fatal(err, p.unsaved)
		}
		lines = theOnly(t, store).Session
	}
	full.Finished, lines.Finished = time.Time{}, time.Time{}
	if g, w := string(sessions.Encode(full)), string(sessions.Encode(lines)); g != w {
		t.Errorf("full screen:\n%s\nline by line:\n%s", g, w)
	}
	if len(full.Fit.Changes) == 0 || full.SignOff == nil || full.SignOff.Outcome != rules.Pass {
		t.Errorf("signed: %+v, changes %+v", full.SignOff, full.Fit.Changes)
	}
	var stale []string
	for _, s := range full.Fit.Stale(1) {
		if s.Reading.IsHeight() {
			stale = append(stale, s.Key)
		}
	}
	if got, want := strings.Join(aloft[0], " "), "hangs.2.hip_mm "+strings.Join(stale, " "); got != want || strings.Join(aloft[1], " ") != got {
		t.Errorf("the second hang asked for %s and %s, want %s", got, aloft[1], want)
	}
}

func optionNamed(t testing.TB, s *flow.State, word string) int {
	t.Helper()
	for i, o := range s.Options() {
		if strings.HasPrefix(o.Word, word) {
			return i + 1
		}
	}
	t.Fatalf("%s has no option %q", s.Ask().Key, word)
	return 0
}
