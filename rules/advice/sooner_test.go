package advice

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"testing"

	"example.com/hangtape/fit"
)

// uncertain are advisers on kits that fall short for want of readings, each must
// harder to meet by so much.
func uncertain(t *testing.T, harder float64) map[string]*adviser {
	t.Helper()
	list := map[string]*adviser{}
	for _, name := range []string{"1-good-kit", "3-stature-only", "5-two-hangs-one-change"} {
		a := advising(t, name, func(f *fit.Fitting) {
			wide(f)
			for _, p := range []fit.Piece{fit.PieceHitchLeft, fit.PieceHitchRight, fit.PieceMainBridge} {
				f.Kit.Pieces[p].Change = fit.Fixed
			}
		})
		for _, d := range a.chooser.musts {
			d.more.margin -= harder
		}
		list[fmt.Sprintf("%s, %g mm harder", name, harder)] = a
	}
	return list
}

// What would do sooner is the cheapest set that some readings let pass, and of
// those of one cost the one that takes the fewest; cheaper than what is asked.
func TestSoonerIsTheCheapestThenTheFewestReadings(t *testing.T) {
	seen := 0
	all := uncertain(t, 0)
	maps.Copy(all, uncertain(t, 4)) // where a cheaper set takes more readings than a dearer one
	for name, a := range all {
		h, candidates := a.chooser, a.subjects[0].assessed.Readable()
		for _, below := range []int{1, 3, 9} {
			var want *Sooner
			for _, s := range h.sets {
				c := s.cost(h.ps)
				if c >= below {
					continue
				}
				keys := a.readingsFor(s, candidates, mostReadings)
				if keys != nil && (want == nil || c < want.Cost || c == want.Cost && len(keys) < len(want.Readings)) {
					want = &Sooner{c, keys}
				}
			}
			got := a.sooner(below)
			switch {
			case (got == nil) != (want == nil):
				t.Errorf("%s, below %d: %+v, want %+v", name, below, got, want)
			case got != nil:
				seen++
				if got.Cost != want.Cost || len(got.Readings) != len(want.Readings) {
					t.Errorf("%s, below %d: %+v, want %+v", name, below, got, want)
				}
			}
		}
	}
	if seen < 2 {
		t.Errorf("%d would do sooner: too few", seen)
	}
}

// The reading taken first is the one that brings a set nearest to passing,
// whatever the order in which readings are looked at; without it, or with fewer
// readings than are needed, nothing is told.
func TestFirstReadingIsTheOneThatHelpsMost(t *testing.T) {
	helped, none := 0, 0
	for name, a := range uncertain(t, 0) {
		candidates := a.subjects[0].assessed.Readable()
		for _, s := range few(a.chooser) {
			begin := func() *trial {
				tr := &trial{a: a, set: s, musts: a.chooser.musts, f: a.subjects[0].f}
				if !tr.start() {
					return nil
				}
				return tr
			}
			tr := begin()
			if tr == nil || tr.plan.ratio >= 1 {
				continue
			}
			before, most := tr.plan.ratio, math.Inf(-1)
			for _, c := range candidates {
				if musts, helps := tr.with(c.Fitting()); helps {
					if p, ok := tr.best(musts); ok {
						most = max(most, p.ratio)
					}
				}
			}
			k := tr.liftMost(candidates)
			if most <= before+1e-3 {
				if none++; k >= 0 {
					t.Errorf("%s/%06b: %s lifts %g to %g", name, s, candidates[k].Key, before, tr.plan.ratio)
				}
				continue
			}
			helped++
			if k < 0 || tr.plan.ratio < most-1e-3 {
				t.Errorf("%s/%06b: reading %d lifts %g to %g, the best to %g", name, s, k, before, tr.plan.ratio, most)
				continue
			}
			first := append(slices.Clone(candidates[k:k+1]), slices.Delete(slices.Clone(candidates), k, k+1)...)
			if i := begin().liftMost(first); i != 0 {
				t.Errorf("%s/%06b: looked at first, %s is not taken", name, s, first[0].Key)
			}
			keys := a.readingsFor(s, candidates, mostReadings)
			if n := len(keys); n > 0 {
				if again := a.readingsFor(s, first, n); !slices.Equal(again, keys) {
					t.Errorf("%s/%06b: %v, in another order %v", name, s, keys, again)
				}
				if fewer := a.readingsFor(s, candidates, n-1); fewer != nil {
					t.Errorf("%s/%06b: %v, with one fewer %v", name, s, keys, fewer)
				}
			}
		}
	}
	if helped < 5 || none < 1 {
		t.Errorf("%d helped and %d not: too few", helped, none)
	}
}

// Where it is not known how sure the musts are, no reading is said to make them so.
func TestNothingIsSoonerWhereUncertaintyIsUnknown(t *testing.T) {
	a := advising(t, "1-good-kit", wide)
	for _, d := range a.chooser.musts {
		d.more.variance = math.NaN()
	}
	all := a.chooser.sets[len(a.chooser.sets)-1]
	if keys := a.readingsFor(all, a.subjects[0].assessed.Readable(), mostReadings); keys != nil {
		t.Errorf("%v", keys)
	}
}
