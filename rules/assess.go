package rules

import (
	"math"
	"slices"

	"example.com/hangtape/fit"
)

// GuardFactor makes a pass at least 95 % sure: the one-sided 95 % point of the
// normal distribution. Source: guarded acceptance, JCGM 106:2012.
const GuardFactor = 1.645

// TwoSided is how many standard uncertainties hold 95 % on both sides: two values
// that are further apart differ, for all that is known. Source: GUM (JCGM 100)
// table G.1, normal distribution (from memory).
const TwoSided = 1.96

// An Assessment is one fitting under one set of limits, with a verdict on every
// end, not yet told in words.
type Assessment struct {
	f       *fit.Fitting
	m       *fit.Model
	l       *Limits
	s       fit.State // at the inputs' values
	p       *fit.Propagation
	ends    [NumEnds]EndResult
	found   []Finding
	doubted []bool   // by input: named by a finding that doubts it
	onEdge  []string // lengths of poses that are not surely in their domain
	outputs outputs
}

// An EndResult is the verdict on one End, in the unit of its check. What is
// unknown is NaN.
type EndResult struct {
	Has, Needs              float64
	Margin, U, Shift, Guard float64
	Verdict                 Verdict
	Plain                   Verdict  // the verdict on margin and guard alone, whatever they rest on
	RestsOn                 []string // of a must that is not failing: the readings that it should not do without
	Predicted               bool     // a prediction is among what it rests on
	Missing                 []string // keys that would settle it
}

// capped says that the end would pass, but for what it rests on.
func (r *EndResult) capped() bool { return r.Verdict != r.Plain }

// Ratio is margin over guard; see Ratio.
func (r *EndResult) Ratio() float64 { return Ratio(r.Margin, r.Guard) }

// Ratio is margin over guard, without limit where there is no guard; NaN where
// either is unknown.
func Ratio(margin, guard float64) float64 {
	switch {
	case math.IsNaN(margin - guard):
		return math.NaN()
	case guard > 0:
		return margin / guard
	case margin >= 0:
		return math.Inf(1)
	}
	return math.Inf(-1)
}

// Near0 rounds a margin, in its check's unit, that is 0 but for the computer's arithmetic.
func Near0(margin float64) float64 {
	if math.Abs(margin) < 1e-9 {
		return 0
	}
	return margin
}

// Assess judges every end of f under the limits l. f must have no Faults and must
// not be changed while the assessment is in use.
func Assess(f *fit.Fitting, l Limits) *Assessment {
	a := &Assessment{f: f, l: &l, m: fit.NewModel(f, fit.Options{})}
	a.m.Current(&a.s)
	a.outputs = outputsOf(a.m, &a.s, &l)
	a.p = a.m.Propagate(a.outputs.count(), a.outputs.fill)
	a.doubted = make([]bool, len(a.m.Inputs))
	a.findings()
	a.judgeEnds()
	return a
}

// End is the result of one end.
func (a *Assessment) End(e End) *EndResult { return &a.ends[e] }

// Model is the model that the assessment was made with.
func (a *Assessment) Model() *fit.Model { return a.m }

// State is the state at the inputs' values.
func (a *Assessment) State() *fit.State { return &a.s }

// judgeEnds gives every end its verdict; the findings must have said by then
// which readings are doubted.
func (a *Assessment) judgeEnds() {
	for c := range NumChecks {
		for _, e := range endsOf[c] {
			if judge := endInfo[e].judge; judge != nil {
				a.ends[e] = judge(a)
			} else {
				a.ends[e] = a.judgeEnd(e, c.Info().Kind)
			}
		}
	}
}

func (a *Assessment) judgeEnd(e End, kind Kind) EndResult {
	b := endInfo[e].balance(&a.s, a.l)
	r := EndResult{Has: b.has, Needs: b.needs, Margin: Near0(a.p.Values[e])}
	r.U, r.Shift = a.p.U(int(e))
	r.Guard = Guard(GuardFactor, r.U, r.Shift)
	r.Plain = verdictOf(r.Margin, r.Guard)
	r.Verdict = r.Plain
	switch {
	case r.Verdict == Unknown:
		r.Missing = a.missing(e)
	case kind == Must && r.Verdict != Fail:
		r.RestsOn, r.Predicted = a.restsOn(e, r.U)
		if slices.Contains(endInfo[e].rests, fit.NeedYLevel) {
			r.RestsOn = fit.SortKeys(append(r.RestsOn, a.onEdge...))
		}
		if r.Verdict == Pass && len(r.RestsOn) > 0 {
			r.Verdict, r.Missing = Tight, r.RestsOn
		}
	}
	return r
}

// Guard is how much margin a pass needs: the factor times u, and as much more
// as the margin is likely to be smaller than it looks.
func Guard(factor, u, shift float64) float64 { return factor*u + math.Max(0, -shift) }

func verdictOf(margin, guard float64) Verdict {
	switch {
	case math.IsNaN(margin-guard) || math.IsInf(margin-guard, 0):
		return Unknown
	case margin < 0:
		return Fail
	case margin < guard:
		return Tight
	}
	return Pass
}

func (a *Assessment) missing(e End) []string {
	var keys []string
	for _, q := range endInfo[e].rests {
		keys = append(keys, a.m.Missing(q)...)
	}
	return fit.SortKeys(keys)
}

func (a *Assessment) judgeLoadPaths() EndResult {
	_, ways, known := countWays(&a.f.Kit)
	if !known {
		return EndResult{
			Has: nan, Needs: 2, Margin: nan, U: nan, Shift: nan, Guard: nan,
			Verdict: Unknown, Plain: Unknown, Missing: []string{"kit.backup_bridge.own_rings"},
		}
	}
	r := EndResult{Has: float64(ways), Needs: 2, Margin: float64(ways) - 2}
	r.Plain = verdictOf(r.Margin, 0)
	r.Verdict = r.Plain
	return r
}

// ratioTie is the difference in margin over guard that is the computer's
// arithmetic.
const ratioTie = 1e-9

// worst is the end that decides a check: fail, unknown, tight, pass by the
// verdict that of tells; then the smaller margin over guard; then the first.
func (a *Assessment) worst(c CheckID, of func(*EndResult) Verdict) End {
	ends := endsOf[c]
	w := ends[0]
	for _, e := range ends[1:] {
		x, y := &a.ends[e], &a.ends[w]
		if d := of(x).Rank() - of(y).Rank(); d < 0 || d == 0 && of(x) != Unknown && x.Ratio() < y.Ratio()-ratioTie {
			w = e
		}
	}
	return w
}

// Deciding is the end that decides c.
func (a *Assessment) Deciding(c CheckID) End { return a.worst(c, theVerdict) }

func theVerdict(r *EndResult) Verdict   { return r.Verdict }
func plainVerdict(r *EndResult) Verdict { return r.Plain }
