package advice

import (
	"math"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

// advising is the adviser on an example, after put has had its way with it.
func advising(t *testing.T, name string, put func(*fit.Fitting)) *adviser {
	t.Helper()
	file, err := sessions.ReadFile("../../testdata/sessions/examples/"+name+".toml", nil)
	if err != nil {
		t.Fatal(err)
	}
	s := file.Session.Clone()
	put(&s.Fit)
	sub := newSubject("", &s.Fit, s.RulesFor(), rules.MarkMetric)
	ps := pieces(&s.Fit, sub.assessed.Model(), rules.MarkMetric)
	return newAdviser([]*subject{sub}, &ps, 0)
}

func asItIs(*fit.Fitting) {}

// sameLengths says whether two plans of a chooser set the same lengths.
func sameLengths(h *chooser, p, q *plan) bool {
	a, b := h.lengths(p), h.lengths(q)
	for k, v := range a {
		if b[k] != v {
			return false
		}
	}
	return len(a) == len(b)
}

// Where the tables take a must for better met than the full model does, they are
// set right, and the plan is the one of tables that are right.
func TestTablesThatAreOffAreSetRight(t *testing.T) {
	h := advising(t, "2-one-must-fails", asItIs).chooser
	want, ok := h.settle(h.leastChange)
	if !ok || want.set == 0 {
		t.Fatalf("no change: %+v", want)
	}
	off := advising(t, "2-one-must-fails", asItIs).chooser
	for _, d := range off.musts {
		d.more.margin += 6
	}
	if hasty, ok := off.leastChange(); !ok || sameLengths(off, &hasty, &want) {
		t.Fatalf("the tables are not off: %+v", hasty)
	}
	got, ok := off.settle(off.leastChange)
	if !ok || off.stopped || !sameLengths(off, &got, &want) {
		t.Errorf("set to %v, want %v", off.lengths(&got), off.lengths(&want))
	}
}

// Where the tables are off at a plan they are set right there, in all that they say.
func TestTablesAreSetRightWhereTheyAreOff(t *testing.T) {
	a := advising(t, "2-one-must-fails", asItIs)
	h := a.chooser
	for _, d := range h.musts {
		d.more = sum{6, 40, 0.5}
	}
	p, ok := h.leastChange()
	if !ok || h.agree(&p) {
		t.Fatalf("the tables are not off: %+v", p)
	}
	full := a.subjects[0].sums(a.subjects[0].f, h.lengths(&p))
	for _, d := range append(append([]*demand(nil), h.musts...), h.shoulds...) {
		got, want := d.at(&p.c), full[d.e]
		if off := got.minus(want); math.Abs(off.margin)+math.Abs(off.variance)+math.Abs(off.shift) > 1e-6 {
			t.Errorf("%s at %q: %g, by the full model %g", d.e.Check(), d.e.At(), got, want)
		}
	}
}

// A plan that the full model never agrees with is no answer, and the search says
// that it was stopped.
func TestPlanThatNeverHoldsIsNoAnswer(t *testing.T) {
	h := advising(t, "2-one-must-fails", asItIs).chooser
	var p plan
	for i := range h.ps {
		if h.ps[i] != nil && h.ps[i].id == fit.PieceTether {
			p.set |= 1 << i
			p.c[i] = 1 // as short as can be, where it stops the thigh short of level already
		}
	}
	p.demands = h.musts
	asked := 0
	if _, ok := h.settle(func() (plan, bool) { asked++; return p, true }); ok || !h.stopped || asked != mostSettling {
		t.Errorf("answered: %t, stopped: %t, after %d times", ok, h.stopped, asked)
	}
}

// Of plans that meet as many shoulds the cheapest is best, then the one with the
// most to spare, then the one that moves least.
func TestWhichPlanIsBetter(t *testing.T) {
	for _, c := range []struct {
		p, q plan
		want bool
	}{
		{plan{cost: 1, ratio: 1, moved: 9}, plan{cost: 2, ratio: 5, moved: 1}, true},
		{plan{cost: 2, ratio: 5, moved: 1}, plan{cost: 1, ratio: 1, moved: 9}, false},
		{plan{ratio: 2, moved: 9}, plan{ratio: 1, moved: 1}, true},
		{plan{ratio: 1, moved: 1}, plan{ratio: 2, moved: 9}, false},
		{plan{ratio: 1, moved: 1}, plan{ratio: 1 + 1e-12, moved: 9}, true},
		{plan{ratio: 1, moved: 9}, plan{ratio: 1 - 1e-12, moved: 1}, false},
		{plan{ratio: 1, moved: 1}, plan{ratio: 1, moved: 1}, false},
	} {
		if got := c.p.betterThan(&c.q); got != c.want {
			t.Errorf("%+v is better than %+v: %t", c.p, c.q, got)
		}
	}
}

// Where no should can be met beside the musts there is a best fit all the same:
// the cheapest change, with the most to spare.
func TestBestFitWhereNoShouldCanBeMet(t *testing.T) {
	for _, name := range []string{"1-good-kit", "2-one-must-fails"} {
		h := advising(t, name, asItIs).chooser
		h.shoulds = nil
		least, ok := h.settle(h.leastChange)
		best, found := h.settle(h.bestFit)
		if !ok || !found || best.cost != least.cost || best.ratio < least.ratio {
			t.Errorf("%s: best fit %t %+v, least change %t %+v", name, found, best, ok, least)
		}
	}
}

// A search that has gone as far as it may says that it was stopped, and found nothing.
func TestSearchIsStoppedAtItsCap(t *testing.T) {
	h := advising(t, "1-good-kit", asItIs).chooser
	for nodes, stopped := range map[int]bool{mostNodes - 1: false, mostNodes: true} {
		q := &search{ps: h.ps, demands: h.musts, moved: math.Inf(1), nodes: nodes}
		q.from(0, runs{}, 0)
		if q.stopped != stopped || q.found == stopped {
			t.Errorf("after %d steps: stopped %t, found %t", nodes, q.stopped, q.found)
		}
	}
}

// The option that moves a piece least comes first, then those on either side.
func TestNearestOptionsFirst(t *testing.T) {
	p := &piece{from: 112, marks: []float64{100, 105, 110, 115, 120}}
	q := &search{ps: &[fit.NumPieces]*piece{p}}
	for _, c := range []struct {
		from float64
		left run
		want []int
	}{
		{112, run{1, 5}, []int{3, 4, 2, 5, 1}},
		{113, run{1, 5}, []int{4, 3, 5, 2, 1}},
		{112, run{4, 5}, []int{4, 5}},
		{112, run{1, 2}, []int{2, 1}},
		{90, run{1, 3}, []int{1, 2, 3}},
		{130, run{3, 5}, []int{5, 4, 3}},
		{110, run{1, 5}, []int{3, 2, 4, 1, 5}},
	} {
		p.from = c.from
		got := q.nearest(0, c.left)
		if len(got) != len(c.want) {
			t.Errorf("from %g: %v, want %v", c.from, got, c.want)
			continue
		}
		for i := range got {
			if got[i] != c.want[i] {
				t.Errorf("from %g: %v, want %v", c.from, got, c.want)
				break
			}
		}
	}
}

// Every way to take some of a number, once each.
func TestEachWayToTakeSome(t *testing.T) {
	for _, c := range []struct{ n, k, want int }{{4, 2, 6}, {4, 0, 1}, {4, 4, 1}, {5, 3, 10}, {0, 0, 1}, {2, 3, 0}} {
		seen := map[string]bool{}
		each(c.n, c.k, func(taken []int) {
			key := ""
			for _, i := range taken {
				key += string(rune('a' + i))
			}
			seen[key] = true
		})
		if len(seen) != c.want {
			t.Errorf("%d of %d: %d ways, want %d", c.k, c.n, len(seen), c.want)
		}
	}
}

// Marks at the ends of a run at which a demand is unknown are left out, but for
// the last one; unknown ones between known ones stay.
func TestMarksOutOfTheDomainAreLeftOut(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		margins []float64
		want    run
	}{
		{[]float64{1, 2, 3}, run{1, 3}}, {[]float64{nan, 2, 3}, run{2, 3}}, {[]float64{1, 2, nan}, run{1, 2}}, {[]float64{nan, nan, 3, nan}, run{3, 3}},
		{[]float64{1, nan, 3}, run{1, 3}}, {[]float64{nan, nan}, run{2, 2}},
	} {
		tm := &term{options: make([]sum, 1, 9)}
		for _, v := range c.margins {
			tm.options = append(tm.options, sum{margin: v})
		}
		d := &demand{t: &tables{}}
		d.t.terms[0][0] = tm
		left := runs{{1, len(c.margins)}, {1, 2}}
		(&search{set: 1, demands: []*demand{d}}).keepDomain(&left)
		if left[0] != c.want || left[1] != (run{1, 2}) {
			t.Errorf("%v: %v, want %v", c.margins, left, c.want)
		}
	}
}

// Where nothing is known of what has to pass nothing passes, and where it becomes
// unknown on the way the edge is that of the domain.
func TestWindowsEndWithTheDomain(t *testing.T) {
	a := advising(t, "1-good-kit", func(f *fit.Fitting) { f.Kit.Pieces[fit.PieceFootLoop].Bounds = [2]float64{50, 1500} })
	sub := a.subjects[0]
	ends := rules.GardaLowReach.Ends()[:1]
	s := sub.assessed.State()
	reaches := s.Thigh - s.Ahead // the least that a loop has to span with the thigh level
	track := func(lo, to, hi float64) *track {
		m := sub.changed(lengths{fit.PieceFootLoop: to})
		return newTrack(m, &sub.limits, fit.PieceFootLoop, lo, to, hi)
	}
	if w, ok := track(50, 60, 100).passing(ends); ok {
		t.Errorf("a loop of 50 to 100 mm passes: %v", w)
	}
	tr := track(50, s.FootLoop, 1500)
	if got := tr.edge(tr.now, tr.lo, nil, ends); math.Abs(got-reaches) > 1 {
		t.Errorf("known down to %g mm, want %g", got, reaches)
	}
}
