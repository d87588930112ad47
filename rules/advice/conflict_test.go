package advice_test

import (
	"slices"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/advice"
)

// eachChoice calls do with every choice of marks of every set, until it says
// stop.
func (w *whole) eachChoice(do func(set int, at []float64) bool) {
	at := make([]float64, len(w.free))
	for set := range 1 << len(w.free) {
		var try func(i int) bool
		try = func(i int) bool {
			for ; i < len(w.free) && set&(1<<i) == 0; i++ {
			}
			if i == len(w.free) {
				return do(set, at)
			}
			for _, v := range w.free[i].marks {
				if at[i] = v; !try(i + 1) {
					return false
				}
			}
			return true
		}
		if !try(0) {
			return
		}
	}
}

// meets says whether some choice meets the checks named, as ok has it.
func (w *whole) meets(names []string, ok func(set int, at []float64) [rules.NumEnds]bool) bool {
	all := w.ends(rules.Must, 1<<len(w.free)-1)
	found := false
	w.eachChoice(func(set int, at []float64) bool {
		met := ok(set, at)
		found = !slices.ContainsFunc(all, func(e rules.End) bool {
			return slices.Contains(names, e.Check().String()) && !met[e]
		})
		return !found
	})
	return found
}

// A conflict's checks cannot be met together, and without any one of them the
// others can: in the lengths alone where the cause is geometry, with their guards
// where it is uncertainty.
func TestConflictsAreIrreducible(t *testing.T) {
	sessions, seen := 30, map[string]int{}
	if *long {
		sessions = 500
	}
	for n := range sessions {
		f := madeUpWith(t, n)
		a := advice.Advise("", f, rules.DefaultLimits(), rules.MarkMetric)
		if a.Conflict == nil {
			continue
		}
		seen[a.Conflict.Cause]++
		w := newWhole(f, rules.DefaultLimits(), rules.MarkMetric)
		exact := func(set int, at []float64) (met [rules.NumEnds]bool) {
			for e, m := range w.margins(set, at) {
				met[e] = m >= -1e-9
			}
			return met
		}
		guarded := func(set int, at []float64) (met [rules.NumEnds]bool) {
			for e, r := range w.ratios(set, at) {
				met[e] = r >= 1
			}
			return met
		}
		ok := exact
		if a.Conflict.Cause == "uncertainty" {
			ok = guarded
		}
		checks := a.Conflict.Checks
		if len(checks) == 0 || w.meets(checks, ok) {
			t.Errorf("session %d: %v can be met together (%s)", n, checks, a.Conflict.Cause)
		}
		for i := range checks {
			if rest := slices.Delete(slices.Clone(checks), i, i+1); !w.meets(rest, ok) {
				t.Errorf("session %d: %v cannot be met together even without %s (%s)", n, rest, checks[i], a.Conflict.Cause)
			}
		}
		if a.Conflict.Cause == "uncertainty" {
			var names []string
			for _, e := range w.ends(rules.Must, 1<<len(w.free)-1) {
				names = append(names, e.Check().String())
			}
			if !w.meets(names, exact) {
				t.Errorf("session %d: no lengths do, but the cause is uncertainty", n)
			}
			if len(a.Conflict.Next)+len(a.Conflict.Pieces) == 0 {
				t.Errorf("session %d: neither a reading nor a piece to look at", n)
			}
		}
	}
	if seen["geometry"] < 3 || seen["uncertainty"] < 1 {
		t.Errorf("too few conflicts: %v", seen)
	}
}

// feasible says whether some set passes.
func feasible(f *fit.Fitting, l rules.Limits) bool {
	return advice.Advise("", f, l, rules.MarkMetric).LeastChange.Feasible
}

// Wider bounds of the pieces that a conflict names do, those of the others not.
func TestConflictsNameTheBoundsInTheWay(t *testing.T) {
	seen := map[bool]int{}
	limits := rules.DefaultLimits()
	for n := range 60 {
		f := madeUpWith(t, n)
		a := advice.Advise("", f, limits, rules.MarkMetric)
		if a.Conflict == nil || a.Conflict.Cause != "geometry" {
			continue
		}
		for p := range fit.NumPieces {
			if f.Kit.Pieces[p].Change == fit.Fixed {
				continue
			}
			g := *f
			g.Kit.Pieces[p].Bounds = [2]float64{1, 5000}
			told := slices.Contains(a.Conflict.Bounds, "kit."+p.Key()+".bounds_mm")
			if seen[told]++; told != feasible(&g, limits) {
				t.Errorf("session %d: freeing %s, told %v", n, p.Key(), told)
			}
		}
	}
	if seen[true] < 2 || seen[false] < 3 {
		t.Errorf("too few bounds seen: %v", seen)
	}
}

// A limit eased by what a conflict says does, and by a unit less does not.
func TestConflictsSayTheLeastEasing(t *testing.T) {
	strict := rules.DefaultLimits().With(map[rules.Limit]float64{
		rules.ReachReserve: 60, rules.ConnectorClearance: 100, rules.ReleaseRoom: 150, rules.LeastOver: 40, rules.MostFlexion: 90,
	})
	seen := map[rules.Limit]int{}
	for n := range 60 {
		f := madeUp(t, n)
		a := advice.Advise("", f, strict, rules.MarkMetric)
		if a.Conflict == nil || a.Conflict.Easing == nil {
			continue
		}
		e := a.Conflict.Easing
		seen[e.Limit]++
		does := func(by float64) bool {
			eased := strict
			if e.Limit == rules.MostFlexion {
				eased[e.Limit] += by
			} else {
				eased[e.Limit] -= by
			}
			if eased.Faults() != nil {
				t.Errorf("session %d: %s must not be eased by %g", n, e.Limit, by)
			}
			return feasible(f, eased)
		}
		if !does(e.By) || does(e.By-1) {
			t.Errorf("session %d: %s eased by %g is not the least that does", n, e.Limit, e.By)
		}
	}
	if len(seen) < 2 {
		t.Errorf("too few easings seen: %v", seen)
	}
}
