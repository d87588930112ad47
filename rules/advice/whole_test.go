package advice_test

import (
	"flag"
	"math"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/advice"
)

// long goes through hundreds of sessions where a few will do every day.
var long = flag.Bool("long", false, "go through 500 made-up sessions")

// asked is the factor of u in the guards that advice asks for.
const asked = 2.05

// A whole asks the full model of one fitting, without the tables of the search.
type whole struct {
	f      *fit.Fitting
	l      rules.Limits
	mark   float64
	free   []free
	moved  [rules.NumEnds][fit.NumPieces]bool // ends, by the pieces that move them
	now    [rules.NumEnds]float64             // ratios
	models map[int]*fit.Model                 // by set of changed pieces
}

// A free piece is one that may change.
type free struct {
	fit.Piece
	from  float64
	marks []float64
	cost  int
}

func newWhole(f *fit.Fitting, l rules.Limits, mark float64) *whole {
	w := &whole{f: f, l: l, mark: mark, models: map[int]*fit.Model{}}
	a := rules.Assess(f, l)
	s := a.State()
	now := [fit.NumPieces]float64{s.MainBridge, s.Loop[0], s.Loop[1], s.FootLoop, s.Tether, s.BackupBridge}
	rings := [fit.NumPieces]float64{fit.PieceMainBridge: s.MainBridgeRings + 1, fit.PieceBackupBridge: s.BackupBridgeRings + 1}
	for p := range fit.NumPieces {
		info := f.Kit.Pieces[p]
		if info.Change == fit.Fixed || !info.Bounded || math.IsNaN(now[p]) {
			continue
		}
		x := free{Piece: p, from: now[p], cost: 2}
		switch {
		case info.Change == fit.Slides:
			x.cost = 1
		case p == fit.PieceFootLoop:
			x.cost = 3
		}
		lo, hi := math.Max(info.Bounds[0], rings[p]), info.Bounds[1]
		for k := math.Ceil(lo/mark - 1e-9); k*mark <= hi+1e-9; k++ {
			x.marks = append(x.marks, k*mark)
		}
		if len(x.marks) > 0 {
			w.free = append(w.free, x)
		}
	}
	w.now = w.ratios(0, nil)
	all := 1<<len(w.free) - 1
	at := make([]float64, len(w.free))
	for i := range w.free {
		var first, last [rules.NumEnds]float64
		for k, x := range w.free {
			at[k] = x.marks[len(x.marks)/2]
		}
		at[i] = w.free[i].marks[0]
		first = w.margins(all, at)
		at[i] = w.free[i].marks[len(w.free[i].marks)-1]
		last = w.margins(all, at)
		for e := range first {
			known := first[e] == first[e] || last[e] == last[e]
			w.moved[e][w.free[i].Piece] = known && !(math.Abs(first[e]-last[e]) < 1e-9)
		}
	}
	return w
}

// model has the pieces of set changed, to the lengths at.
func (w *whole) model(set int, at []float64) *fit.Model {
	m := w.models[set]
	if m == nil {
		to := map[fit.Piece]float64{}
		for i, x := range w.free {
			if set&(1<<i) != 0 {
				to[x.Piece] = at[i]
			}
		}
		m = fit.NewModel(w.f.Changed(to), fit.Options{})
		w.models[set] = m
	}
	for i, x := range w.free {
		if set&(1<<i) != 0 {
			m.SetLength(x.Piece, at[i])
		}
	}
	return m
}

func (w *whole) margins(set int, at []float64) (out [rules.NumEnds]float64) {
	var s fit.State
	w.model(set, at).Current(&s)
	rules.Margins(&s, &w.l, out[:])
	return out
}

func (w *whole) ratios(set int, at []float64) (out [rules.NumEnds]float64) {
	p := w.model(set, at).Propagate(int(rules.NumEnds), func(_ []float64, s *fit.State, o []float64) { rules.Margins(s, &w.l, o) })
	for e := range out {
		u, shift := p.U(e)
		out[e] = rules.Ratio(p.Values[e], rules.Guard(asked, u, shift))
		if math.IsNaN(out[e]) || math.IsNaN(u) {
			out[e] = math.Inf(-1)
		}
	}
	return out
}

// ends are those in the search, of one kind, that some free piece of set moves.
func (w *whole) ends(kind rules.Kind, set int) []rules.End {
	var list []rules.End
	for c := range rules.NumChecks {
		switch c {
		case rules.SlipForce, rules.TetherStrength, rules.DrillGroundRoom, rules.TwoLoadPaths:
			continue
		}
		for _, e := range c.Ends() {
			for i, x := range w.free {
				if c.Info().Kind == kind && set&(1<<i) != 0 && w.moved[e][x.Piece] {
					list = append(list, e)
					break
				}
			}
		}
	}
	return list
}

func (w *whole) cost(set int) int {
	total, loops := 0, 0
	for i, x := range w.free {
		switch {
		case set&(1<<i) == 0:
		case x.Piece == fit.PieceHitchLeft || x.Piece == fit.PieceHitchRight:
			loops += x.cost
		default:
			total += x.cost
		}
	}
	return total + min(loops, 3)
}

// setOf is the set that an answer changes, with its lengths.
func (w *whole) setOf(o advice.Outcome) (set int, at []float64, moved float64) {
	at = make([]float64, len(w.free))
	for _, c := range o.Changes {
		for i, x := range w.free {
			if x.Key() == c.Piece {
				set |= 1 << i
				at[i] = c.To
				moved += math.Abs(c.To - x.from)
			}
		}
	}
	return set, at, moved
}

// madeUpWith is a made-up session in which up to three pieces may change, each by
// a few marks: one time in four any, or else those of an answer, about where it
// sets them, with whatever else it changes set already.
func madeUpWith(t testing.TB, session int) *fit.Fitting {
	t.Helper()
	f := madeUp(t, session)
	s := rules.Assess(f, rules.DefaultLimits()).State()
	about := [fit.NumPieces]float64{s.MainBridge, s.Loop[0], s.Loop[1], s.FootLoop, s.Tether, s.BackupBridge}
	var pieces []fit.Piece
	for k := range 1 + session%3 {
		pieces = append(pieces, fit.Piece((session*5+k*(1+session%5))%int(fit.NumPieces)))
	}
	if session%4 != 0 {
		for p := range f.Kit.Pieces {
			info := &f.Kit.Pieces[p]
			info.Change, info.Bounded = fit.How(1+(session+p)%2), true
			info.Bounds = [2]float64{about[p] - 120, about[p] + 120}
		}
		a := advice.Advise("", f, rules.DefaultLimits(), rules.MarkMetric)
		o := a.LeastChange
		if session%2 == 0 || len(o.Changes) == 0 {
			o = a.BestFit
		}
		to := map[fit.Piece]float64{}
		for _, c := range o.Changes {
			for p := range fit.NumPieces {
				if c.Piece == p.Key() {
					to[p] = c.To
				}
			}
		}
		if len(to) > 0 {
			pieces = pieces[:0]
		}
		for p := range fit.NumPieces {
			if v, changes := to[p]; changes && len(pieces) < 3 {
				about[p] = v
				pieces = append(pieces, p)
				delete(to, p)
			}
		}
		f = f.Changed(to)
	}
	for p := range f.Kit.Pieces {
		f.Kit.Pieces[p].Change = fit.Fixed
	}
	for k, p := range pieces {
		info := &f.Kit.Pieces[p]
		info.Change, info.Bounded = fit.How(1+(session+k)%2), true
		off := float64((session*7+k*13)%30) - 15
		info.Bounds = [2]float64{about[p] + off - 30, about[p] + off + 30}
	}
	return f
}
