package fit

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// A Want is a number of pieces of one length.
type Want struct {
	Count  int     // of pieces
	Length float64 // mm
}

// A SpoolPlan is which pieces to cut from which spool.
type SpoolPlan struct {
	Spools   [][]float64 // mm, the pieces of each spool, longest first
	Leftover []float64   // mm, what remains of each spool
	Least    int         // no plan has fewer spools
	Exact    bool        // no plan has fewer spools, or as few and a longer single leftover
}

const (
	spoolSteps     = 500_000 // bounds the search, to about a tenth of a second
	maxSpoolPieces = 1000    // bounds what is planned at once
	spoolSlack     = 1e-6    // mm, forgives rounding in sums of lengths
)

// PlanSpools lays pieces out on spools of one length, in mm: on as few spools
// as can be and, among those plans, with the longest leftover in one piece, so
// that what remains is of use. It starts from first-fit decreasing and searches
// on by branch and bound; where the search is cut short the plan is the best one
// found, and Exact says whether it is still known to be best. The error says which
// length or count is refused, and what is accepted.
func PlanSpools(spool float64, wants []Want) (SpoolPlan, error) {
	if !(spool > 0) || math.IsInf(spool, 0) {
		return SpoolPlan{}, fmt.Errorf("a spool of %s mm cannot be: more than 0", num(spool))
	}
	var pieces []float64
	var total float64
	for _, w := range wants {
		if w.Count < 1 || w.Count > maxSpoolPieces-len(pieces) {
			return SpoolPlan{}, fmt.Errorf("%d pieces of %s mm cannot be: 1 or more, and %d in all at most", w.Count, num(w.Length), maxSpoolPieces)
		}
		if !(w.Length > 0) || w.Length > spool+spoolSlack {
			return SpoolPlan{}, fmt.Errorf("a piece of %s mm does not come out of a spool of %s mm", num(w.Length), num(spool))
		}
		for range w.Count {
			pieces = append(pieces, w.Length)
			total += w.Length
		}
	}
	slices.SortFunc(pieces, func(a, b float64) int { return cmp.Compare(b, a) })
	s := &spoolSearch{
		spool:  spool,
		pieces: pieces,
		least:  int(math.Ceil(total/spool - 1e-9)),
		at:     make([]int, len(pieces)),
		steps:  spoolSteps,
	}
	s.firstFit()
	s.place(0)
	return s.plan(), nil
}

// A spoolSearch goes through the ways to put pieces on spools.
type spoolSearch struct {
	spool  float64
	pieces []float64 // longest first
	least  int       // spools that the sum of the pieces needs

	at    []int     // the spool of each piece placed so far
	left  []float64 // what is left of each spool in use
	steps int       // that may still be taken

	best     []int     // at of the best plan so far
	bestLeft []float64 // left of it
}

// firstFit puts every piece, longest first, on the first spool with room.
func (s *spoolSearch) firstFit() {
	var left []float64
	at := make([]int, len(s.pieces))
	for i, p := range s.pieces {
		j := slices.IndexFunc(left, func(l float64) bool { return l >= p-spoolSlack })
		if j < 0 {
			j, left = len(left), append(left, s.spool)
		}
		left[j] -= p
		at[i] = j
	}
	s.best, s.bestLeft = at, left
}

// done says that no plan can be better than the best one: it has as few spools
// as the sum of the pieces needs, and all but one of them are used up.
func (s *spoolSearch) done() bool {
	if len(s.bestLeft) > s.least {
		return false
	}
	var sum float64
	for _, l := range s.bestLeft {
		sum += l
	}
	return longest(s.bestLeft) >= sum-spoolSlack
}

// longest is the longest of the lengths; 0 of none.
func longest(lengths []float64) (most float64) {
	for _, l := range lengths {
		most = max(most, l)
	}
	return most
}

// place tries every spool for piece i and all after it. It never opens more spools
// than the best plan has.
func (s *spoolSearch) place(i int) {
	if s.done() || s.steps <= 0 {
		return
	}
	s.steps--
	if i == len(s.pieces) {
		if len(s.left) < len(s.bestLeft) || longest(s.left) > longest(s.bestLeft)+spoolSlack {
			s.best, s.bestLeft = slices.Clone(s.at), slices.Clone(s.left)
		}
		return
	}
	like := i > 0 && s.pieces[i] == s.pieces[i-1]
	first := 0
	if like {
		first = s.at[i-1] // like pieces in one order only
	}
	for j := first; j < len(s.left); j++ {
		if s.left[j] < s.pieces[i]-spoolSlack {
			continue
		}
		if !like && slices.Contains(s.left[:j], s.left[j]) {
			continue // like spools in one order only
		}
		s.left[j] -= s.pieces[i]
		s.at[i] = j
		s.place(i + 1)
		s.left[j] += s.pieces[i]
	}
	if len(s.left) < len(s.bestLeft) {
		s.left = append(s.left, s.spool-s.pieces[i])
		s.at[i] = len(s.left) - 1
		s.place(i + 1)
		s.left = s.left[:len(s.left)-1]
	}
}

// plan tells the best one.
func (s *spoolSearch) plan() SpoolPlan {
	p := SpoolPlan{
		Spools:   make([][]float64, len(s.bestLeft)),
		Leftover: s.bestLeft,
		Least:    s.least,
		Exact:    s.steps > 0 || s.done(),
	}
	if p.Exact {
		p.Least = len(s.bestLeft)
	}
	for i, j := range s.best {
		p.Spools[j] = append(p.Spools[j], s.pieces[i])
	}
	return p
}
