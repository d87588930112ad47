package advice

import (
	"math"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// An Answer is what to change, in the order of `hangtape advise --json`.
type Answer struct {
	Format       int       `json:"format"`
	ID           string    `json:"id"`
	StoppedEarly bool      `json:"stopped_early"`
	Sooner       *Sooner   `json:"sooner"`
	LeastChange  Outcome   `json:"least_change"`
	BestFit      Outcome   `json:"best_fit"`
	Unknown      []string  `json:"unknown"`   // musts with an unknown side or end
	Estimated    []string  `json:"estimated"` // readings that a must rests on an estimate for
	Conflict     *Conflict `json:"conflict"`
}

// Sooner says that a cheaper set would do after some readings.
type Sooner struct {
	Cost     int      `json:"cost"`
	Readings []string `json:"readings"`
}

// An Outcome is one answer, put through the full model.
type Outcome struct {
	Feasible bool      `json:"feasible"`
	Cost     int       `json:"cost"`
	Ratio    rules.Num `json:"ratio"` // null where nothing is to change
	Changes  []Change  `json:"changes"`
	Checks   []Check   `json:"checks"`
}

// A Change is one length to set.
type Change struct {
	Piece  string      `json:"piece"`
	From   rules.Num   `json:"from"`
	To     float64     `json:"to"`
	Window *[2]float64 `json:"window,omitempty"` // none for rope_above
	How    string      `json:"how"`
	Unit   string      `json:"unit"`
}

// A Check is a verdict of the answer on margin and guard alone.
type Check struct {
	Name    string        `json:"name"`
	Verdict rules.Verdict `json:"verdict"`
	Margin  rules.Num     `json:"margin"`
	U       rules.Num     `json:"u"`
	Guard   rules.Num     `json:"guard"`
}

// Conflict says why no set can pass.
type Conflict struct {
	Cause  string   `json:"cause"`  // geometry or uncertainty
	Checks []string `json:"checks"` // musts that cannot hold together
	Bounds []string `json:"bounds"` // single pieces whose freed bounds would do
	Next   []string `json:"next"`   // readings to take
	Pieces []string `json:"pieces"` // pieces whose setting spread is the limit
	Text   string   `json:"text"`
}

const ropeAbove = "rope_above"

// words for how a piece is changed.
var howWords = [...]string{fit.Fixed: "fixed", fit.Slides: "slides", fit.ReTie: "re-tie"}

// told puts a plan through the full model of the subject and tells it.
func (a *adviser) told(p plan, ratio float64) Outcome {
	sub := a.subject
	to := a.chooser.lengths(&p)
	o := Outcome{Feasible: true, Cost: p.cost, Ratio: rules.Num(math.NaN()), Changes: []Change{}}
	if p.set != 0 && !math.IsInf(ratio, 0) {
		o.Ratio = rules.Num(ratio)
	}
	f := sub.f.Changed(to)
	assessed := rules.Assess(f, sub.limits)
	rope, told := sub.ropeAbove(f, assessed)
	if told {
		f.Rope.LeastAbove = fit.Some(rope)
		assessed = rules.Assess(f, sub.limits)
	}
	for i, pc := range a.chooser.ps {
		if p.set.has(i) {
			w := sub.window(f, pc, to[pc.id], assessed)
			o.Changes = append(o.Changes, Change{
				Piece: pc.id.Key(), From: rules.Num(pc.from), To: to[pc.id], Window: &w, How: howWords[pc.how], Unit: "mm",
			})
		}
	}
	sortChanges(o.Changes)
	if told {
		from := math.NaN()
		if sub.f.Rope.LeastAbove.Known {
			from = sub.f.Rope.LeastAbove.V
		}
		o.Changes = append(o.Changes, Change{Piece: ropeAbove, From: rules.Num(from), To: rope, How: "practice", Unit: "mm"})
	}
	for _, c := range assessed.PlainChecks() {
		o.Checks = append(o.Checks, Check{c.Name, c.Verdict, c.Margin, c.U, c.Guard})
	}
	return o
}

const (
	ropeStep = 100.0   // mm
	mostRope = 200_000 // mm: taller than any tree that is climbed
)

// ropeAbove is the shortest rope above the climber, on a step, with which
// slip-force passes with its guard; told only where the present least is too
// short or missing and some length helps.
func (s *subject) ropeAbove(f *fit.Fitting, now *rules.Assessment) (float64, bool) {
	e := rules.SlipForce.Ends()[0]
	if now.End(e).Plain == rules.Pass {
		return 0, false
	}
	g := *f
	g.Rope.LeastAbove = fit.Some(mostRope)
	m := fit.NewModel(&g, fit.Options{Spreads: s.spreads})
	passes := func(l float64) bool {
		m.SetLeastAbove(l)
		p := m.Propagate(int(rules.NumEnds), func(_ []float64, st *fit.State, out []float64) { rules.Margins(st, &s.limits, out) })
		u, shift := p.U(int(e))
		return p.Values[e] >= rules.Guard(rules.GuardFactor, u, shift)
	}
	lo, hi := 0, int(mostRope/ropeStep)
	if !passes(float64(hi) * ropeStep) {
		return 0, false
	}
	for hi-lo > 1 { // hi passes, lo does not
		if mid := (lo + hi) / 2; passes(float64(mid) * ropeStep) {
			hi = mid
		} else {
			lo = mid
		}
	}
	return float64(hi) * ropeStep, true
}

// window is how far a changed piece may be off, the others held: every side and
// end that passes at the answer still passes there, within the piece's bounds.
func (s *subject) window(f *fit.Fitting, pc *piece, to float64, at *rules.Assessment) [2]float64 {
	m := fit.NewModel(f, fit.Options{Spreads: s.spreads})
	return newTrack(m, &s.limits, pc.id, pc.lo, pc.hi).around(to, passing(at))
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

func near0(v float64) float64 {
	if math.Abs(v) < 1e-9 {
		return 0
	}
	return v
}
