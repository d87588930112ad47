package fit_test

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.com/hangtape/fit"
)

func TestPlanSpools(t *testing.T) {
	for _, c := range []struct {
		name  string
		spool float64
		wants []fit.Want
		left  []float64
		exact bool
	}{
		{"one piece", 50000, []fit.Want{{Count: 1, Length: 1145}}, []float64{48855}, true},
		{"just fits", 7620, []fit.Want{{Count: 3, Length: 2540}}, []float64{0}, true},
		{"two where first-fit decreasing takes three", 10, []fit.Want{{2, 4}, {4, 3}}, []float64{0, 0}, true},
		{"the longer leftover", 10, []fit.Want{{1, 6}, {1, 5}, {1, 3}}, []float64{1, 5}, true},
		{"nothing", 10, nil, nil, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, err := fit.PlanSpools(c.spool, c.wants)
			if err != nil {
				t.Fatal(err)
			}
			if !slices.Equal(p.Leftover, c.left) || p.Exact != c.exact || p.Least != len(c.left) {
				t.Errorf("got %+v, want leftovers %v", p, c.left)
			}
		})
	}
}

func TestPlanSpoolsRefuses(t *testing.T) {
	for _, c := range []struct {
		spool float64
		wants []fit.Want
	}{
		{0, nil},
		{math.NaN(), nil},
		{100, []fit.Want{{1, 101}}},
		{100, []fit.Want{{0, 10}}},
		{100, []fit.Want{{1, 0}}},
		{100, []fit.Want{{1, math.NaN()}}},
		{100, []fit.Want{{math.MaxInt, 1}}},
	} {
		if p, err := fit.PlanSpools(c.spool, c.wants); err == nil {
			t.Errorf("%v %v: no error, plan %v", c.spool, c.wants, p)
		}
	}
}

// Every way to put up to seven pieces on spools is tried: none has fewer spools,
// or as few and a longer single leftover.
func TestPlanSpoolsAgainstEveryWay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		const spool = 20
		var pieces []float64
		var wants []fit.Want
		for range rapid.IntRange(1, 7).Draw(t, "pieces") {
			l := float64(rapid.IntRange(1, spool).Draw(t, "length"))
			pieces = append(pieces, l)
			wants = append(wants, fit.Want{Count: 1, Length: l})
		}
		fewest, longest := len(pieces)+1, 0.0
		var try func(int, []float64)
		try = func(i int, left []float64) {
			if i == len(pieces) {
				l := slices.Max(left)
				if len(left) < fewest || len(left) == fewest && l > longest {
					fewest, longest = len(left), l
				}
				return
			}
			for j := range left {
				if left[j] >= pieces[i] {
					next := slices.Clone(left)
					next[j] -= pieces[i]
					try(i+1, next)
				}
			}
			try(i+1, append(slices.Clone(left), spool-pieces[i]))
		}
		try(0, nil)

		p, err := fit.PlanSpools(spool, wants)
		if err != nil {
			t.Fatal(err)
		}
		if !p.Exact || len(p.Spools) != fewest || slices.Max(p.Leftover) != longest {
			t.Fatalf("%v on spools of %v: got %+v, want %d spools and a leftover of %v", pieces, spool, p, fewest, longest)
		}
		checkPlan(t, spool, pieces, p)
	})
}

// Where the search is cut short the plan still holds every piece, and its bound
// is no more than its spools.
func TestPlanSpoolsCutShort(t *testing.T) {
	var pieces []float64
	var wants []fit.Want
	for i := range 60 {
		l := 300 + math.Mod(float64(i)*617.3, 401)
		pieces = append(pieces, l)
		wants = append(wants, fit.Want{Count: 1, Length: l})
	}
	p, err := fit.PlanSpools(1000, wants)
	if err != nil {
		t.Fatal(err)
	}
	if p.Exact {
		t.Error("sixty pieces of different length: said to be exact")
	}
	if p.Least > len(p.Spools) || p.Least < 1 {
		t.Errorf("at least %d spools, but the plan has %d", p.Least, len(p.Spools))
	}
	checkPlan(t, 1000, pieces, p)
}

// checkPlan holds p against the pieces that were wanted.
func checkPlan(t interface{ Errorf(string, ...any) }, spool float64, pieces []float64, p fit.SpoolPlan) {
	var cut []float64
	for i, s := range p.Spools {
		sum := p.Leftover[i]
		for _, l := range s {
			sum += l
		}
		if math.Abs(sum-spool) > 1e-6 || p.Leftover[i] < -1e-6 {
			t.Errorf("spool %d: pieces %v and leftover %v are not %v", i, s, p.Leftover[i], spool)
		}
		cut = append(cut, s...)
	}
	want := slices.Clone(pieces)
	slices.Sort(want)
	slices.Sort(cut)
	if !slices.Equal(cut, want) {
		t.Errorf("cut %v, want %v", cut, want)
	}
}
