package rules

import (
	"math"

	"example.com/hangtape/fit"
)

// guardFactor makes a pass at least 95 % sure: the one-sided 95 % point of the
// normal distribution. Source: guarded acceptance, JCGM 106:2012.
const guardFactor = 1.645

// The outputs that an assessment propagates, in one vector: the margins of the
// ends, the poses, where landmarks stand by the model, and what ought to agree.
const (
	outPoses   = int(numEnds)
	outNow     = outPoses + numPoses
	outOffsets = outNow + numNow
	outLikely  = outOffsets + fit.NumOffsets
	numOutputs = outLikely + fit.NumLikely
)

// An assessment is one fitting under one set of limits, computed but not yet
// told.
type assessment struct {
	f       *fit.Fitting
	m       *fit.Model
	l       *Limits
	s       fit.State // at the inputs' values
	p       *fit.Propagation
	ends    [numEnds]endResult
	doubted []bool // by input: named by a finding that doubts it
}

// An endResult is the verdict on one end.
type endResult struct {
	balance
	margin, u, shift, guard float64
	verdict                 Verdict
	capped                  bool     // it would pass, but for what it rests on
	predicted               bool     // it rests on a predicted input
	missing                 []string // keys that would settle it
}

// ratio is margin over guard; see ratioOf.
func (r *endResult) ratio() float64 { return ratioOf(r.margin, r.guard) }

// ratioOf is margin over guard, without limit where there is no guard.
func ratioOf(margin, guard float64) float64 {
	switch {
	case guard > 0:
		return margin / guard
	case margin >= 0:
		return math.Inf(1)
	}
	return math.Inf(-1)
}

// near0 rounds a margin that is 0 but for the computer's arithmetic.
func near0(margin float64) float64 {
	if math.Abs(margin) < 1e-9 {
		return 0
	}
	return margin
}

func assess(f *fit.Fitting, l *Limits) *assessment {
	a := &assessment{f: f, l: l, m: fit.NewModel(f, fit.Options{})}
	a.p = a.m.Propagate(numOutputs, func(x []float64, s *fit.State, out []float64) {
		marginsOf(s, l, out)
		posesOf(s, l, out[outPoses:outNow])
		nowOf(s, out[outNow:outOffsets])
		for o := range fit.NumOffsets {
			out[outOffsets+o] = a.m.Disagreement(fit.Offset(o), x, s)
		}
		for k := range fit.NumLikely {
			out[outLikely+k] = a.m.Offset(fit.Likely(k), x, s)
		}
	})
	a.m.At(a.m.Values(), &a.s)
	a.doubted = make([]bool, len(a.m.Inputs))
	return a
}

func marginsOf(s *fit.State, l *Limits, out []float64) {
	for e := range numEnds - 1 {
		out[e] = balanceOf(e, s, l).margin()
	}
	out[loadPaths] = 0
}

// judgeEnds gives every end its verdict; the findings must have said by then
// which readings are doubted.
func (a *assessment) judgeEnds() {
	for c := range NumChecks {
		for _, e := range endsOf[c] {
			if e == loadPaths {
				a.ends[e] = a.judgeLoadPaths()
			} else {
				a.ends[e] = a.judgeEnd(e, c.Info().Kind)
			}
		}
	}
}

func (a *assessment) judgeEnd(e end, kind Kind) endResult {
	r := endResult{balance: balanceOf(e, &a.s, a.l)}
	r.margin = near0(a.p.Values[e])
	r.u, r.shift = a.p.U(int(e))
	r.guard = guardOf(guardFactor, r.u, r.shift)
	r.verdict = verdictOf(r.margin, r.guard)
	switch {
	case r.verdict == Unknown:
		r.missing = a.missing(e)
	case kind == Must && r.verdict != Fail:
		keys, predicted := a.restsOn(e, r.u)
		r.predicted = predicted
		if r.verdict == Pass && len(keys) > 0 {
			r.verdict, r.capped, r.missing = Tight, true, keys
		}
	}
	return r
}

// guardOf is how much margin a pass needs: the factor times u, and as much more
// as the margin is likely to be smaller than it looks.
func guardOf(factor, u, shift float64) float64 { return factor*u + math.Max(0, -shift) }

func verdictOf(margin, guard float64) Verdict {
	switch {
	case math.IsNaN(margin) || math.IsNaN(guard):
		return Unknown
	case margin < 0:
		return Fail
	case margin < guard:
		return Tight
	}
	return Pass
}

func (a *assessment) missing(e end) []string {
	var keys []string
	for _, q := range needsOf[e] {
		keys = append(keys, a.m.Missing(q)...)
	}
	return fit.SortKeys(keys)
}

func (a *assessment) judgeLoadPaths() endResult {
	ways, _, known := LoadPaths(&a.f.Kit)
	r := endResult{balance: balance{has: float64(ways), needs: 2}}
	if !known {
		r.has, r.margin, r.u, r.shift, r.guard = math.NaN(), math.NaN(), math.NaN(), math.NaN(), math.NaN()
		r.verdict, r.missing = Unknown, []string{"kit.backup_bridge.own_rings"}
		return r
	}
	r.margin = r.balance.margin()
	r.verdict = verdictOf(r.margin, 0)
	return r
}

// worst is the end that decides a check: fail, unknown, tight, pass; then the
// smaller margin over guard.
func (a *assessment) worst(c CheckID) end {
	ends := endsOf[c]
	w := ends[0]
	for _, e := range ends[1:] {
		x, y := &a.ends[e], &a.ends[w]
		if d := rankOf(x.verdict) - rankOf(y.verdict); d < 0 || d == 0 && x.verdict != Unknown && x.ratio() < y.ratio() {
			w = e
		}
	}
	return w
}

// rankOf orders verdicts from worst to best.
func rankOf(v Verdict) int {
	switch v {
	case Fail:
		return 0
	case Unknown:
		return 1
	case Tight:
		return 2
	}
	return 3
}
