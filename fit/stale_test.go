package fit_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/hangtape/fit"
)

// TestStale says which readings a change makes stale, in the hang to come and in
// one that has read some of them again.
func TestStale(t *testing.T) {
	bridge := fit.Change{Piece: fit.PieceMainBridge, To: 1060, AfterHang: 1}
	foot := fit.Change{Piece: fit.PieceFootLoop, To: 1000, AfterHang: 1}
	tether := fit.Change{Piece: fit.PieceTether, To: 140, AfterHang: 1}
	backup := fit.Change{Piece: fit.PieceBackupBridge, To: 520, AfterHang: 1}
	left := fit.Change{Piece: fit.PieceHitchLeft, To: 300, AfterHang: 1}
	laid := tether
	laid.Measured = []float64{139}
	later := tether
	later.AfterHang = 2
	noKnee := everyReading()
	delete(noKnee, fit.KneeLevel)
	for _, c := range []struct {
		name    string
		first   readings
		second  readings // nil: nobody hung again
		changes []fit.Change
		hang    int
		want    string
	}{
		{"nothing changed", everyReading(), nil, nil, 1, ""},
		{"main bridge", everyReading(), nil, []fit.Change{bridge}, 1,
			"hangs.2.connector_top_mm 0, hangs.2.connector_bottom_mm 0, hangs.2.left_loop_top_mm 0, hangs.2.left_hitch_top_mm 0, hangs.2.right_loop_top_mm 0, hangs.2.right_hitch_top_mm 0, changes.1.measured_mm 0"},
		{"a loop under a new main bridge", everyReading(), nil, []fit.Change{left, bridge}, 1,
			"hangs.2.connector_top_mm 0, hangs.2.connector_bottom_mm 0, hangs.2.left_loop_top_mm 0 1, hangs.2.left_hitch_top_mm 0 1, hangs.2.right_loop_top_mm 0, hangs.2.right_hitch_top_mm 0, changes.2.measured_mm 0"},
		{"foot loop", everyReading(), nil, []fit.Change{foot}, 1, "hangs.2.garda_level_mm 3, hangs.2.knee_level_mm 3, changes.1.measured_mm 3"},
		{"foot loop, no knee", noKnee, nil, []fit.Change{foot}, 1, "hangs.2.garda_level_mm 3, changes.1.measured_mm 3"},
		{"tether and backup bridge", everyReading(), nil, []fit.Change{backup, tether}, 1, "hangs.2.garda_taut_mm 4 5, changes.2.measured_mm 4, changes.1.measured_mm 5"},
		{"laid on again", everyReading(), nil, []fit.Change{laid}, 1, "hangs.2.garda_taut_mm 4"},
		{"no pose was read", everyLength(), nil, []fit.Change{foot, tether}, 1, "changes.1.measured_mm 3, changes.2.measured_mm 4"},
		{"read again", everyReading(), readings{fit.GardaTaut: {1986}}, []fit.Change{laid}, 2, ""},
		{"what the second hang had to read", everyReading(), readings{fit.GardaTaut: {1986}}, []fit.Change{laid}, 1, "hangs.2.garda_taut_mm 4"},
		{"half of it read", everyReading(), readings{fit.GardaLevel: {1930}}, []fit.Change{foot, laid}, 2, "hangs.3.garda_taut_mm 4, changes.1.measured_mm 3"},
		{"changed after the hang that is asked of", everyReading(), readings{fit.Hip: {1500}}, []fit.Change{later}, 1, ""},
		{"changed twice", everyReading(), readings{fit.GardaTaut: {1986}}, []fit.Change{laid, later}, 2, "hangs.3.garda_taut_mm 4, changes.2.measured_mm 4"},
	} {
		f := fitting(c.first)
		if c.second != nil {
			f.Hangs = append(f.Hangs, fitting(c.second).Hangs[0])
		}
		f.Changes = c.changes
		var got []string
		for _, s := range f.Stale(c.hang) {
			got = append(got, s.Key+" "+strings.Trim(fmt.Sprint(pieceNumbers(s.Pieces)), "[]"))
		}
		if g := strings.Join(got, ", "); g != c.want {
			t.Errorf("%s: stale are %q, want %q", c.name, g, c.want)
		}
	}
}

func pieceNumbers(list []fit.Piece) []int {
	out := make([]int, len(list))
	for i, p := range list {
		out[i] = int(p)
	}
	return out
}

// TestStaleIsPredicted draws hangs and changes: the heights that are stale before
// the next hang are those for which the model has a prediction, and once a hang
// has read them all none of them is.
func TestStaleIsPredicted(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := fitting(everyReading())
		f.Hangs = f.Hangs[:0]
		for n := rapid.IntRange(1, 3).Draw(t, "hangs"); len(f.Hangs) < n; {
			h := fitting(everyReading()).Hangs[0]
			for r := range fit.NumReadings {
				if r.IsHeight() && r != fit.Hip && rapid.IntRange(0, 2).Draw(t, r.String()) == 0 {
					h.Heights[r] = nil
				}
			}
			f.Hangs = append(f.Hangs, h)
		}
		for range rapid.IntRange(0, 4).Draw(t, "changes") {
			p := fit.Piece(rapid.IntRange(0, int(fit.NumPieces)-1).Draw(t, "piece"))
			f.Changes = append(f.Changes, fit.Change{Piece: p, To: 700, AfterHang: rapid.IntRange(1, len(f.Hangs)).Draw(t, "after")})
		}
		m := fit.NewModel(f, fit.Options{})
		var want, got []fit.Reading
		for i := range m.Inputs {
			in := &m.Inputs[i]
			if in.Origin == fit.Predicted && in.Change == 0 && m.HangOf(in.Reading) == in.Hang && !in.Hidden {
				want = append(want, in.Reading)
			}
		}
		again := fit.Hang{}
		again.Heights[fit.Hip] = []float64{1500}
		for _, s := range f.Stale(len(f.Hangs)) {
			if s.Reading.IsHeight() {
				got = append(got, s.Reading)
				again.Heights[s.Reading] = []float64{1900}
			}
		}
		slices.Sort(want)
		if !slices.Equal(got, want) {
			t.Fatalf("stale are %v, predicted are %v", got, want)
		}
		f.Hangs = append(f.Hangs, again)
		for _, s := range f.Stale(len(f.Hangs)) {
			if s.Reading.IsHeight() {
				t.Fatalf("%s is stale after it was read again", s.Reading)
			}
		}
	})
}
