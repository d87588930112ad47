package sideview_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/tui/sideview"
)

// Every reading that the side view can show is drawn where it is read, with its
// letter asked for and no height beside it, from the narrowest drawing on.
func TestWhereShowsEveryReading(t *testing.T) {
	shown := 0
	for r := range fit.NumReadings {
		from, to, ok := r.Landmarks()
		for _, o := range []sideview.Options{{Width: sideview.Narrowest, Height: sideview.Lowest, ASCII: true}, {Width: 78, Height: 24}} {
			o.Reading, o.Unit = r, "mm"
			d, drawn := sideview.Where(o)
			if drawn != ok || ok == (sideview.Tape(r) == "") {
				t.Fatalf("%v: drawn %v, told %q", r, drawn, sideview.Tape(r))
			}
			if !ok {
				continue
			}
			shown++
			if from == fit.MarkLoopEnd { // a foot is in it
				from = fit.MarkSole
			}
			for _, m := range []fit.Landmark{from, to} {
				letter, lettered := sideview.Letter(m)
				if at, found := d.Cells[m]; lettered && (!found || []rune(d.Lines[at.Row])[at.Col] != letter) {
					t.Errorf("%v has no %c:\n%s", r, letter, strings.Join(d.Lines, "\n"))
				}
			}
			if text := strings.Join(d.Lines[:len(d.Lines)-1], "\n"); strings.Contains(text, " mm") || !strings.Contains(text, ">") {
				t.Errorf("%v:\n%s", r, text)
			}
			if sh := fit.UsualShape(sideview.PoseFor(r)); len(sh.Clashes()) > 0 || slices.Contains(sh.Estimated[:], true) {
				t.Errorf("%v: the invented kit collides, or is marked as an estimate of somebody", r)
			}
		}
	}
	if shown < 2*20 {
		t.Errorf("only %d drawings", shown)
	}
}
