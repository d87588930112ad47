package advice

import (
	"math"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// ropeAbove is what a change is called that moves no piece: more rope above.
const ropeAbove = "rope_above"

// nan is a number that answers do not tell.
var nan = rules.Num(math.NaN())

// howWords are the ways to change a piece as answers tell them.
var howWords = [...]string{fit.Fixed: "fixed", fit.Slides: "slides", fit.ReTie: "re-tie"}

// none is the outcome where no set can pass.
func none() Outcome { return Outcome{Ratio: nan, Changes: []Change{}, Checks: []Check{}} }

// alone is the outcome of the only subject.
func (o SharedOutcome) alone() Outcome {
	for i := range o.Changes {
		o.Changes[i].Each = nil
	}
	return Outcome{Feasible: o.Feasible, Cost: o.Cost, Ratio: o.Ratio, Changes: o.Changes, Checks: o.Checks[0]}
}

// told puts a plan through the full model of every subject and tells it.
func (a *adviser) told(p *plan) SharedOutcome {
	to := a.chooser.lengths(p)
	o := SharedOutcome{Feasible: true, Cost: p.cost, Ratio: nan, Changes: []Change{}}
	if p.set != 0 && !math.IsInf(p.ratio, 0) {
		o.Ratio = rules.Num(p.ratio)
	}
	fittings, assessed, rope := a.changed(to)
	for _, i := range a.chooser.inFileOrder() {
		if !p.set.has(i) {
			continue
		}
		pc := a.chooser.ps[i]
		w := [2]float64{pc.lo, pc.hi}
		var each []rules.Num
		for k, sub := range a.subjects {
			each = append(each, rules.Num(sub.length(pc.id)))
			own := sub.window(fittings[k], pc, to[pc.id], assessed[k])
			w = [2]float64{math.Max(w[0], own[0]), math.Min(w[1], own[1])}
		}
		o.Changes = append(o.Changes, Change{
			Piece: pc.id.Key(), From: rules.Num(pc.from), To: to[pc.id], Window: &w, How: howWords[pc.how], Unit: "mm", Cost: pc.cost, Each: each,
		})
	}
	if rope.told {
		o.Changes = append(o.Changes, Change{Piece: ropeAbove, From: rules.Num(rope.from), To: rope.to, How: "practice", Unit: "mm"})
	}
	for _, r := range assessed {
		o.Checks = append(o.Checks, checks(r))
	}
	return o
}

// checks are those of an assessment on margin and guard alone, in the order of the
// table.
func checks(a *rules.Assessment) []Check {
	var list []Check
	for _, c := range a.PlainChecks() {
		list = append(list, Check{Name: c.Name, Verdict: c.Verdict, Margin: c.Margin, U: c.U, Guard: c.Guard, At: c.At})
	}
	return list
}

// A rope is the least rope above.
type rope struct {
	told     bool    // whether more of it is needed
	from, to float64 // mm: as it is, NaN where it is not known, and as it has to be
}

// changed are the subjects' fittings with the lengths to, judged, with as much
// rope above as all of them need.
func (a *adviser) changed(to lengths) (fittings []*fit.Fitting, assessed []*rules.Assessment, r rope) {
	r.from = math.Inf(1)
	for _, sub := range a.subjects {
		f := sub.f.Changed(to)
		now := rules.Assess(f, sub.limits)
		fittings, assessed = append(fittings, f), append(assessed, now)
		if least, short := sub.ropeAbove(f, now); short {
			r.told, r.to = true, math.Max(r.to, least)
		}
		from := math.NaN()
		if l := sub.f.Rope.LeastAbove; l.Known {
			from = l.V
		}
		r.from = math.Min(r.from, from)
	}
	for k, f := range fittings {
		if l := f.Rope.LeastAbove; r.told && !(l.Known && l.V >= r.to) {
			f.Rope.LeastAbove = fit.Some(r.to)
			assessed[k] = rules.Assess(f, a.subjects[k].limits)
		}
	}
	return fittings, assessed, r
}

// ropeAbove is the shortest rope above the climber with which slip-force passes
// with its guard; told only where the present least is too short or missing and
// some length helps.
func (s *subject) ropeAbove(f *fit.Fitting, now *rules.Assessment) (float64, bool) {
	if now.End(rules.SlipForce.Ends()[0]).Plain == rules.Pass {
		return 0, false
	}
	return rules.LeastAbove(f, s.limits, fit.Options{Spreads: s.spreads})
}

// window is how far a changed piece may be off, the others held: every side and
// end that passes at the answer still passes there, within the piece's bounds.
func (s *subject) window(f *fit.Fitting, pc *piece, to float64, at *rules.Assessment) [2]float64 {
	m := fit.NewModel(f, fit.Options{Spreads: s.spreads})
	return newTrack(m, &s.limits, pc.id, pc.lo, to, pc.hi).around(passing(at))
}

// passing are the ends that pass by margin and guard alone.
func passing(at *rules.Assessment) []rules.End {
	var ends []rules.End
	for e := range rules.NumEnds {
		if e.Check() != rules.TwoLoadPaths && at.End(e).Plain == rules.Pass {
			ends = append(ends, e)
		}
	}
	return ends
}
