package tui

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"testing"
	"testing/synctest"
	"time"

	"example.com/hangtape/fit"
)

// TestQuestionedReading types a slip: it is asked about and stays in the field;
// Enter twice takes it as it is, since one may be out of habit, typing another replaces it, and so it is with a value
// that cannot be at all.
func TestQuestionedReading(t *testing.T) {
	for name, c := range map[string]struct {
		at, typed, then string // as burst takes them
		asks            string
		want            float64 // of the last reading
	}{
		"taken as it is":     {"climber.thigh_mm", "346\r", "\r\r", "Perhaps two digits swapped (436 mm)?", 346},
		"put right":          {"climber.thigh_mm", "346\r", "<<<436\r", "standard deviations", 436},
		"another typed":      {"climber.thigh_mm", "346\r", "436\r", "standard deviations", 436},
		"another slip":       {"climber.thigh_mm", "346\r", "<<<643\r\r\r", "standard deviations", 643},
		"inches":             {"kit.foot_loop.length_mm", "40\r", "\r\r", "Perhaps 40 in and not mm (1016 mm)?", 40},
		"marks swapped":      {"hangs.1.left_hitch_top_mm", "1450\r", "\r\r", "swapped with left loop top", 1450},
		"a repeat too far":   {"hangs.1.nose_mm", "1300\r", "\r\r", "Two readings of nose lie", 1300},
		"typed over":         {"climber.thigh_mm", "436\r", "^346\r346\r", "", 346},
		"an Enter of habit":  {"climber.thigh_mm", "346\r\r", "436\r", "still in question", 436},
		"a correction":       {"climber.thigh_mm", "436\r", "^<<<<<<<346\r\r\r", "", 346},
		"one that fits once": {"climber.thigh_mm", "436\r", "", "", 436},
	} {
		t.Run(name, func(t *testing.T) {
			synctest.Test(t, func(t *testing.T) {
				dir := t.TempDir()
				s := example(t, "1-good-kit.toml")
				s.Fit.Laid[fit.Thigh], s.Fit.Laid[fit.FootLoop] = nil, nil
				s.Fit.Hangs[0].Heights[fit.LeftHitchTop] = nil
				writeSession(t, dir, s)
				d := sitAt(t, dir, 80, 24)
				d.typed("2")
				d.goTo(d.place(c.at))
				d.burst(c.typed)
				view := strings.Join(strings.Fields(d.model.View()), " ")
				typed := strings.TrimRight(c.typed, "\r")
				if c.asks != "" && (!strings.Contains(view, c.asks) || !strings.Contains(view, "takes it as it is") || d.m().flow.Text() != typed) {
					t.Errorf("not asked %q, or the text is gone:\n%s", c.asks, d.model.View())
				}
				a := d.m().flow.Ask()
				d.burst(c.then)
				values := a.Values(&d.m().flow.Draft, "mm")
				if len(values) == 0 || values[len(values)-1] != a.Show(c.want, "mm") {
					t.Errorf("taken: %v, want %v last", values, c.want)
				}
				d.leave()
				if got := len(d.only().Fit.Hangs); got != len(s.Fit.Hangs) {
					t.Error("the file does not read back")
				}
			})
		})
	}
}

// TestQuestionedLineByLine asks and is answered in lines.
func TestQuestionedLineByLine(t *testing.T) {
	for in, want := range map[string]string{"346\n\n\n": "346", "346\n\n436\n": "436", "346\n436\n": "436", "346\n346\n": "346", "346\nback\n": ""} {
		dir := t.TempDir()
		s := example(t, "1-good-kit.toml")
		s.Fit.Laid[fit.Thigh] = nil
		path := writeSession(t, dir, s)
		o := Options{Store: openAt(t, dir, func() time.Time { return s.Started }), Now: func() time.Time { return s.Started }, Out: io.Discard}
		m := Model{opts: o}
		opened := m.resume(path)().(openedMsg)
		var out bytes.Buffer
		o.Out = &out
		p := newPlain(o)
		p.open(opened)
		at, ok := p.flow.Find("climber.thigh_mm")
		if !ok {
			t.Fatal("no thigh")
		}
		p.flow.At = at
		for line := range strings.Lines(in) {
			p.answer(strings.TrimSpace(line))
		}
		if err := p.editor.Close(); err != nil {
			t.Fatal(err)
		}
		got := ""
		for _, v := range theOnly(t, p.opts.Store).Session.Fit.Laid[fit.Thigh] {
			got += fmt.Sprint(v)
		}
		if got != want || !strings.Contains(out.String(), "Perhaps two digits swapped (436 mm)?") {
			t.Errorf("%q: %q, want %q\n%s", in, got, want, out.String())
		}
	}
}
