package runs

import (
	"math"
	"slices"
	"strings"

	"example.com/hangtape/cmd/trial/instructor"
	"example.com/hangtape/cmd/trial/truth"
	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// BlunderSizes are the sizes tried, in standard deviations of what the other
// readings say of the one that is spoilt.
var BlunderSizes = []float64{2, 3, 4, 5, 6, 8}

// Blunder is a session read without a blunder, then with a single one of each
// size.
type Blunder struct {
	FalseAlarms []string // names of the findings in the clean session
	Tried       bool     // there was a reading that others say something of, and no alarm about it yet
	Spoilt      fit.Reading
	Noticed     []bool // by size: a new finding names the spoilt reading
	Blamed      []bool // by size: it names it first
	Repeats     bool   // a repeat 30 mm from another was noticed
}

// Blunder runs one.
func (b *Bench) Blunder(body truth.Body) Blunder {
	w := b.world(body)
	d := b.dice(body, streamBlunder)
	plan := instructor.FullPlan
	plan.Blunders = 0
	s := b.session(d, &w, plan)
	s.ReadAll()
	var r Blunder
	clean := b.assess(s).Report("").Findings
	for _, f := range clean {
		if f.Name != "outside-survey" && f.Name != "out-of-domain" {
			r.FalseAlarms = append(r.FalseAlarms, f.Name)
		}
	}
	r.Repeats = b.noticesRepeat(s, d)

	quiet := slices.DeleteFunc(checkable(&s.Fit), func(c checked) bool { return named(clean, s.Key(c.reading)) })
	if len(quiet) == 0 {
		return r
	}
	pick := quiet[d.IntN(len(quiet))]
	sign := 1 - 2*float64(d.IntN(2))
	r.Tried, r.Spoilt = true, pick.reading
	for _, size := range BlunderSizes {
		by := sign * size * pick.sd
		s.Shift(pick.reading, by)
		noticed, first := b.notices(s, pick.reading)
		r.Noticed, r.Blamed = append(r.Noticed, noticed), append(r.Blamed, first)
		s.Shift(pick.reading, -by)
	}
	return r
}

// notices says whether a finding names the reading, and one names it first. What
// cannot be at all is noticed and named.
func (b *Bench) notices(s *instructor.Session, r fit.Reading) (noticed, first bool) {
	key := s.Key(r)
	if faults := s.Fit.Faults(); len(faults) > 0 {
		return true, slices.Contains(faults[0].Keys, key)
	}
	found := rules.Assess(&s.Fit, b.Limits).Report("").Findings
	first = slices.ContainsFunc(found, func(f rules.Finding) bool { return len(f.Inputs) > 0 && f.Inputs[0] == key })
	return named(found, key), first
}

// named says whether a finding names the key.
func named(findings []rules.Finding, key string) bool {
	return slices.ContainsFunc(findings, func(f rules.Finding) bool { return slices.Contains(f.Inputs, key) })
}

// noticesRepeat sets one repeat of a reading 30 mm from another and says whether
// that was noticed.
func (b *Bench) noticesRepeat(s *instructor.Session, d truth.Dice) bool {
	list := s.Fit.Laid[fit.Thigh]
	if d.Chance(0.5) {
		list = s.Fit.Hangs[0].Heights[fit.Nose]
	}
	kept := list[0]
	defer func() { list[0] = kept }()
	list[0] = list[1] + 30
	for _, f := range rules.Assess(&s.Fit, b.Limits).Report("").Findings {
		if f.Name == "repeats-disagree" {
			return true
		}
	}
	return false
}

// A checked reading is one of which others say something.
type checked struct {
	reading fit.Reading
	sd      float64 // how sure they are of it, a standard uncertainty
}

// checkable are the readings of which others say something, with the smallest
// standard uncertainty with which any of them does.
func checkable(f *fit.Fitting) []checked {
	if len(f.Faults()) > 0 {
		return nil
	}
	m := fit.NewModel(f, fit.Options{})
	p := m.Propagate(fit.NumOffsets+fit.NumLikely, func(x []float64, s *fit.State, out []float64) {
		for o := range fit.NumOffsets {
			out[o] = m.Disagreement(fit.Offset(o), x, s)
		}
		for l := range fit.NumLikely {
			out[fit.NumOffsets+l] = m.Offset(fit.Likely(l), x, s)
		}
	})
	least := map[fit.Reading]float64{}
	note := func(r fit.Reading, out int) {
		u, _ := p.U(out)
		if old, ok := least[r]; u > 0 && !math.IsNaN(p.Values[out]) && (!ok || u < old) {
			least[r] = u
		}
	}
	for o := range fit.NumOffsets {
		note(fit.Offset(o).Reading(), o)
	}
	for l := range fit.NumLikely {
		note(fit.Likely(l).Reading(), fit.NumOffsets+l)
	}
	var list []checked
	for r, sd := range least {
		list = append(list, checked{r, sd})
	}
	slices.SortFunc(list, func(a, b checked) int { return strings.Compare(a.reading.String(), b.reading.String()) })
	return list
}
