package runs

import (
	"math"

	"example.com/hangtape/cmd/trial/instructor"
	"example.com/hangtape/cmd/trial/truth"
	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// Told is what the tool says of one end.
type Told struct {
	Margin, U, Shift float64
	Verdict          rules.Verdict
}

// Off is how far the truth lies from what was told, in standard uncertainties;
// NaN where there is none.
func (t Told) Off(trueMargin float64) float64 {
	if !(t.U > 0) {
		return math.NaN()
	}
	return (trueMargin - t.Margin - t.Shift) / t.U
}

// Judged is what the tool says of every end beside what is so, in the truth's
// order of ends.
type Judged struct {
	Told [truth.NumEnds]Told
	True truth.Margins
}

// Verdict is the worst verdict of a check's ends.
func (j *Judged) Verdict(ends []int) rules.Verdict {
	worst := rules.Pass
	for _, e := range ends {
		if v := j.Told[e].Verdict; rank(v) < rank(worst) {
			worst = v
		}
	}
	return worst
}

func rank(v rules.Verdict) int {
	for i, w := range []rules.Verdict{rules.Fail, rules.Unknown, rules.Tight, rules.Pass} {
		if v == w {
			return i
		}
	}
	return -1
}

// assess judges the session; a fitting that cannot be is read again where its
// faults say so, which is what the instructor would do.
func (b *Bench) assess(s *instructor.Session) *rules.Assessment {
	for range 5 {
		faults := s.Fit.Faults()
		if len(faults) == 0 {
			break
		}
		for _, f := range faults {
			for _, key := range f.Keys {
				s.Retake(key)
			}
		}
	}
	return rules.Assess(&s.Fit, b.Limits)
}

// settle judges the session and reads again, twice at most, what its findings name.
func (b *Bench) settle(s *instructor.Session) *rules.Assessment {
	a := b.assess(s)
	for range 2 {
		again := doubted(a.Report("").Findings)
		if len(again) == 0 {
			break
		}
		for _, key := range again {
			s.Retake(key)
		}
		a = b.assess(s)
	}
	return a
}

// doubted are the readings that findings ask for again.
func doubted(findings []rules.Finding) []string {
	var keys []string
	for _, f := range findings {
		switch f.Name {
		case "out-of-domain", "outside-survey", "heavy", "bridge-nearly-straight":
		default:
			keys = append(keys, f.Inputs...)
		}
	}
	return fit.SortKeys(keys)
}

// judged holds the assessment against the truth.
func (b *Bench) judged(a *rules.Assessment, s *instructor.Session) Judged {
	var j Judged
	j.True = s.World().Margins(s.Kit, &b.limits)
	for e := range rules.NumEnds {
		r := a.End(e)
		j.Told[b.ends[e]] = Told{r.Margin, r.U, r.Shift, r.Verdict}
	}
	return j
}

// misses are the musts that lengths and the rope above can mend and that truly
// miss, an end each.
func (b *Bench) misses(s *instructor.Session) []int {
	m := s.World().Margins(s.Kit, &b.limits)
	return mendable(m.Misses())
}
