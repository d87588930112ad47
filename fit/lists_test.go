package fit_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.com/hangtape/fit"
)

// Every list that a fitting holds is passed once, in the order of the session
// file, and no empty one.
func TestEachListInTheOrderOfTheFile(t *testing.T) {
	f := fitting(everyReading())
	f.Hangs = append(f.Hangs, fit.Hang{})
	f.Hangs[1].Heights[fit.Hip], f.Hangs[1].Heights[fit.GardaTaut] = []float64{1500}, []float64{1976}
	f.Changes = []fit.Change{{Piece: fit.PieceTether, Measured: []float64{180}}, {Piece: fit.PieceTether, To: 170}, {Piece: fit.PieceTether, Measured: []float64{160}}}
	var keys []string
	f.EachList(func(key string, values []float64) {
		if len(values) == 0 {
			t.Errorf("%s is empty", key)
		}
		keys = append(keys, key)
	})
	if n := int(fit.NumReadings) + 2 + 2; len(keys) != n {
		t.Errorf("%d lists, want %d", len(keys), n)
	}
	first := slices.IndexFunc(keys, func(k string) bool { return strings.HasPrefix(k, "hangs.1.") })
	if sorted := fit.SortKeys(slices.Clone(keys[first:])); !slices.Equal(sorted, keys[first:]) {
		t.Errorf("%q\nwant %q", keys[first:], sorted)
	}
	if (&fit.Fitting{}).EachList(func(key string, _ []float64) { t.Errorf("%s of an empty fitting", key) }); first < 1 {
		t.Errorf("no lengths before the heights: %q", keys)
	}
}

// A reading taken on trial stands in a copy alone, and takes the place of what
// was kept of an earlier session.
func TestReadingsOnTrialStandInACopy(t *testing.T) {
	f := fitting(readings{fit.Hip: {1490, 1510}, fit.Tether: {150}})
	f.Kept = []fit.Kept{{Key: fit.LaidKey(fit.Tether)}, {Key: fit.LaidKey(fit.FootLoop)}}
	f.Changes = []fit.Change{{Piece: fit.PieceTether, To: 170}}
	was := fmt.Sprintf("%+v", f)

	laid := f.WithLaid(fit.Tether, 160, 3)
	if got := laid.Laid[fit.Tether]; !slices.Equal(got, []float64{160, 160, 160}) {
		t.Errorf("laid on: %v", got)
	}
	if len(laid.Kept) != 1 || laid.Kept[0].Key != fit.LaidKey(fit.FootLoop) {
		t.Errorf("kept: %+v, want the foot loop alone", laid.Kept)
	}
	if got := f.WithHeight(0, fit.Nose, 700, 2).Hangs[0].Heights[fit.Nose]; !slices.Equal(got, []float64{2200, 2200}) {
		t.Errorf("nose 700 above a hip at 1500: %v", got)
	}
	coming := f.WithHeight(2, fit.Nose, 700, 1).Hangs
	if len(coming) != 3 || !slices.Equal(coming[2].Heights[fit.Hip], []float64{1490, 1510}) || !slices.Equal(coming[2].Heights[fit.Nose], []float64{2200}) {
		t.Errorf("in a hang to come: %+v", coming)
	}
	if got := (&fit.Fitting{}).WithHeight(0, fit.Nose, 700, 1).Hangs; len(got) != 1 || !slices.Equal(got[0].Heights[fit.Nose], []float64{700}) {
		t.Errorf("where nobody hung: %+v", got)
	}
	if got := f.LaidOn(0, 172, 2).Changes[0].Measured; !slices.Equal(got, []float64{172, 172}) {
		t.Errorf("set, and laid on: %v", got)
	}
	for key, want := range map[string]func(g *fit.Fitting) []float64{
		"kit.tether.length_mm": func(g *fit.Fitting) []float64 { return g.Laid[fit.Tether] },
		"hangs.1.hip_mm":       func(g *fit.Fitting) []float64 { return g.Hangs[0].Heights[fit.Hip] },
		"changes.1.to_mm":      func(g *fit.Fitting) []float64 { return g.Changes[0].Measured },
	} {
		in := input(fit.NewModel(f, fit.Options{}), key)
		if got := want(f.Repeated(&in, 4)); !slices.Equal(got, slices.Repeat([]float64{in.V}, 4)) {
			t.Errorf("%s four times: %v, want %g", key, got, in.V)
		}
	}
	if now := fmt.Sprintf("%+v", f); now != was {
		t.Errorf("the fitting itself is now %s\nit was %s", now, was)
	}
}

// Each piece is set to its own length, the last one as the others.
func TestChangedSetsEveryPiece(t *testing.T) {
	to := map[fit.Piece]float64{}
	for p := range fit.NumPieces {
		to[p] = 200 + float64(p)
	}
	f := fitting(everyLength())
	changed := f.Changed(to)
	if len(f.Changes) != 0 || len(changed.Changes) != int(fit.NumPieces) {
		t.Fatalf("%d changes, and %d in the fitting itself", len(changed.Changes), len(f.Changes))
	}
	m, s := stateOf(changed)
	for p, want := range to {
		if got := m.Length(p, s); got != want {
			t.Errorf("%s is %g, want %g", p.Key(), got, want)
		}
	}
}
