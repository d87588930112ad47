package tally

import (
	"math"

	"example.com/hangtape/cmd/trial/runs"
	"example.com/hangtape/cmd/trial/truth"
	"example.com/hangtape/rules"
)

// Bands are those of |true margin| over u, by their upper ends; the last has none.
var Bands = [...]float64{1, 2, 3, math.Inf(1)}

// Verdicts counts what was told against what is so, a check each.
type Verdicts struct {
	FalsePass [rules.NumChecks]Share // of the told passes, those that truly fail
	FalseFail [rules.NumChecks]Share // of the told fails, those that truly hold
	Tight     [rules.NumChecks]Share // of all
	ByBand    [rules.NumChecks][len(Bands)]Share
}

// endsOf are the ends of each check.
var endsOf = func() (of [rules.NumChecks][]int) {
	for e, end := range truth.Ends {
		c, _ := rules.CheckNamed(end.Check)
		of[c] = append(of[c], e)
	}
	return of
}()

func (v *Verdicts) add(j *runs.Judged) {
	for c, ends := range endsOf {
		holds, nearest := true, math.Inf(1)
		for _, e := range ends {
			holds = holds && j.True.Holds(e)
			nearest = math.Min(nearest, math.Abs(j.True[e])/j.Told[e].U)
		}
		told := j.Verdict(ends)
		v.Tight[c].Add(told == rules.Tight)
		switch told {
		case rules.Pass:
			v.FalsePass[c].Add(!holds)
			for b, upper := range Bands {
				if nearest <= upper {
					v.ByBand[c][b].Add(!holds)
					break
				}
			}
		case rules.Fail:
			v.FalseFail[c].Add(holds)
		}
	}
}

// Musts adds up a share over the musts.
func Musts(of *[rules.NumChecks]Share) Share {
	var sum Share
	for c, s := range of {
		if rules.CheckID(c).Info().Kind == rules.Must {
			sum.K, sum.N = sum.K+s.K, sum.N+s.N
		}
	}
	return sum
}

// covered is the half-width, in standard uncertainties, that holds 95 %.
const covered = 1.96

func (s *Scale) cover(j *runs.Judged) {
	near := false
	for e := range truth.Ends {
		off := j.Told[e].Off(j.True[e])
		if math.IsNaN(off) {
			continue
		}
		s.Coverage[e].Add(math.Abs(off) <= covered)
		s.Off[e] = append(s.Off[e], off)
		near = near || truth.Ends[e].Must && truth.Ends[e].Movable && math.Abs(j.True[e]) <= 3*j.Told[e].U
	}
	s.Near.Add(near)
}
