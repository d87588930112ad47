package advice

import (
	"math"
	"slices"

	"example.com/hangtape/fit"
)

// A search looks for options of the pieces of a set that meet all demands.
//
// Every margin grows or shrinks steadily with the length of a piece, so what one
// demand leaves of a piece is one run of its marks, found by halving. A run that
// comes out empty ends the branch. The search is exact on the marks, within its
// cap.
type search struct {
	ps      *[fit.NumPieces]*piece
	set     set
	demands []*demand
	least   bool // of movement: look on for the choice that moves least

	nodes   int
	stopped bool
	found   bool
	best    choice
	moved   float64 // mm in all, of best
}

// mostNodes caps one search.
const mostNodes = 60_000

// A run is the options of a piece that are left, from lo to hi.
type run struct{ lo, hi int }

type runs [fit.NumPieces]run

// find looks for a choice that meets the demands by changing just the pieces of
// s: any one, or, with least, the one that moves least in all.
func find(ps *[fit.NumPieces]*piece, s set, demands []*demand, least bool) *search {
	q := &search{ps: ps, set: s, least: least, moved: math.Inf(1)}
	var left runs
	for i := range left {
		if s.has(i) {
			left[i] = run{1, len(ps[i].marks)}
		}
	}
	for _, d := range demands {
		if d.movedBy(s) {
			q.demands = append(q.demands, d)
		} else if !d.met(&choice{}) {
			return q
		}
	}
	q.keepDomain(&left)
	q.from(0, left, 0)
	return q
}

// keepDomain takes from the runs the marks at their ends that lie out of the
// domain of a demand.
func (q *search) keepDomain(left *runs) {
	for _, d := range q.demands {
		for i := range left {
			tm := d.t.terms[i][d.output]
			if tm == nil || !q.set.has(i) {
				continue
			}
			r := &left[i]
			for r.lo < r.hi && math.IsNaN(tm.options[r.lo].margin) {
				r.lo++
			}
			for r.hi > r.lo && math.IsNaN(tm.options[r.hi].margin) {
				r.hi--
			}
		}
	}
}

// from settles the pieces from place i on; so far they have moved by moved.
func (q *search) from(i int, left runs, moved float64) {
	if q.nodes++; q.nodes > mostNodes {
		q.stopped = true
	}
	if q.stopped || q.found && !q.least || !q.tighten(i, &left) {
		return
	}
	for ; i < len(left) && left[i].lo == left[i].hi; i++ {
		moved += q.move(i, left[i].lo)
	}
	if i == len(left) {
		if moved < q.moved {
			q.found, q.moved = true, moved
			for k := range left {
				q.best[k] = left[k].lo
			}
		}
		return
	}
	if moved+q.leastMove(i, &left) >= q.moved {
		return
	}
	if !q.least {
		if end := q.dominant(i, left[i]); end != 0 {
			left[i] = run{end, end}
			q.from(i, left, moved)
			return
		}
	}
	rest := q.leastMove(i+1, &left)
	for _, k := range q.nearest(i, left[i]) {
		m := moved + q.move(i, k)
		if m+rest >= q.moved {
			return // the others are further away still
		}
		next := left
		next[i] = run{k, k}
		q.from(i, next, moved)
	}
}

// move is how far option k takes the piece at place i.
func (q *search) move(i, k int) float64 {
	if k == unchanged {
		return 0
	}
	return math.Abs(q.ps[i].marks[k-1] - q.ps[i].from)
}

// leastMove is the least that the pieces from place i on have to move.
func (q *search) leastMove(i int, left *runs) float64 {
	total := 0.0
	for ; i < len(left); i++ {
		if left[i].lo == unchanged {
			continue
		}
		p := q.ps[i]
		k := nearestMark(p, left[i])
		total += q.move(i, k)
	}
	return total
}

// nearestMark is the option of the run that moves the piece least.
func nearestMark(p *piece, r run) int {
	k, _ := slices.BinarySearch(p.marks, p.from)
	k++ // the option of the first mark not below
	if k > 1 && (k > len(p.marks) || p.from-p.marks[k-2] < p.marks[k-1]-p.from) {
		k--
	}
	return min(max(k, r.lo), r.hi)
}

// nearest are the options of a run, those that move the piece least first.
func (q *search) nearest(i int, r run) []int {
	list := make([]int, 0, r.hi-r.lo+1)
	k := nearestMark(q.ps[i], r)
	list = append(list, k)
	for lo, hi := k-1, k+1; lo >= r.lo || hi <= r.hi; {
		switch {
		case lo < r.lo || hi <= r.hi && q.move(i, hi) < q.move(i, lo):
			list = append(list, hi)
			hi++
		default:
			list = append(list, lo)
			lo--
		}
	}
	return list
}

// dominant is the end of the run that is best for every demand the piece has a
// part in, 0 where they pull both ways.
func (q *search) dominant(i int, r run) int {
	up, down := false, false
	for _, d := range q.demands {
		up = up || d.signs[i] > 0 && q.open(d, i)
		down = down || d.signs[i] < 0 && q.open(d, i)
	}
	switch {
	case up && down:
		return 0
	case up:
		return r.hi
	}
	return r.lo
}

// open says whether a piece after place i has a part in d as well; without one
// the run at i has d's word already.
func (q *search) open(d *demand, i int) bool {
	for k := i + 1; k < len(d.signs); k++ {
		if d.signs[k] != 0 && q.set.has(k) {
			return true
		}
	}
	return false
}
