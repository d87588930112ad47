package advice

import (
	"math"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

const (
	windowStep = 0.1 // mm, to which a window is told
	edgeWithin = windowStep / 8
	trackMarks = 9 // places at which a track is looked at before its edges are closed in on
)

// A track follows what every end has beyond its guard while one piece moves and
// all else is held.
type track struct {
	m        *fit.Model // in which the piece was set to a length
	limits   *rules.Limits
	piece    fit.Piece
	lo, hi   float64 // mm, how far the piece goes
	relevant []bool  // inputs that have a part in any end
}

func newTrack(m *fit.Model, l *rules.Limits, p fit.Piece, lo, hi float64) *track {
	t := &track{m: m, limits: l, piece: p, lo: lo, hi: hi}
	t.relevant = m.Propagate(int(rules.NumEnds), t.margins).Relevant()
	return t
}

func (t *track) margins(_ []float64, s *fit.State, out []float64) { rules.Margins(s, t.limits, out) }

// beyond is the margin less the guard of every end with the piece at v mm;
// -Inf where that is unknown.
type beyond [rules.NumEnds]float64

func (t *track) at(v float64) beyond {
	t.m.SetLength(t.piece, v)
	p := t.m.PropagateOnly(t.relevant, int(rules.NumEnds), t.margins)
	var b beyond
	for e := range b {
		u, shift := p.U(e)
		if b[e] = near0(p.Values[e]) - rules.Guard(rules.GuardFactor, u, shift); math.IsNaN(b[e]) {
			b[e] = math.Inf(-1)
		}
	}
	return b
}

// musts are the ends of musts in the search that the piece moves.
func (t *track) musts() []rules.End {
	var at [2][rules.NumEnds]float64
	var s fit.State
	for k, v := range [2]float64{t.lo, t.hi} {
		t.m.SetLength(t.piece, v)
		t.m.Current(&s)
		t.margins(nil, &s, at[k][:])
	}
	var ends []rules.End
	for e := range rules.NumEnds {
		if c := e.Check(); c.Info().Kind == rules.Must && inSearch(c) && at[0][e] != at[1][e] && !(math.IsNaN(at[0][e]) && math.IsNaN(at[1][e])) {
			ends = append(ends, e)
		}
	}
	return ends
}

// least is the smallest of some ends.
func (b *beyond) least(ends []rules.End) float64 {
	least := math.Inf(1)
	for _, e := range ends {
		least = math.Min(least, b[e])
	}
	return least
}

// around is the run of lengths about now, at which all of ends pass, in which
// they go on passing. The piece is left at now.
func (t *track) around(now float64, ends []rules.End) [2]float64 {
	defer t.m.SetLength(t.piece, now)
	value := func(b *beyond) float64 { return b.least(ends) }
	edge := func(bound float64) float64 {
		at := t.at(bound)
		if bound == now || value(&at) >= 0 {
			return bound
		}
		in := t.at(now)
		return t.close(now, value(&in), bound, value(&at), value)
	}
	return toStep(edge(t.lo), edge(t.hi))
}

// passing is the run of lengths at which all of ends pass, false where there is
// none. Every end rises or falls with the piece all the way, so those that rise
// bound the run from below and those that fall from above. The piece is left
// anywhere.
func (t *track) passing(ends []rules.End) ([2]float64, bool) {
	var xs [trackMarks]float64
	var at [trackMarks]beyond
	first, last := -1, -1 // where all ends are known
	for k := range xs {
		xs[k] = t.lo + (t.hi-t.lo)*float64(k)/(trackMarks-1)
		at[k] = t.at(xs[k])
		if !math.IsInf(at[k].least(ends), -1) {
			if last = k; first < 0 {
				first = k
			}
		}
	}
	if first < 0 {
		return [2]float64{}, false
	}
	var rising, falling []rules.End
	for _, e := range ends {
		if at[last][e] > at[first][e] {
			rising = append(rising, e)
		} else {
			falling = append(falling, e)
		}
	}
	of := func(some []rules.End) func(b *beyond) float64 {
		return func(b *beyond) float64 {
			if math.IsInf(b.least(ends), -1) {
				return math.Inf(-1)
			}
			return b.least(some)
		}
	}
	lower, upper := of(rising), of(falling)
	k, j := first, last
	for ; k <= last && lower(&at[k]) < 0; k++ {
	}
	for ; j >= first && upper(&at[j]) < 0; j-- {
	}
	if k > last || j < first {
		return [2]float64{}, false
	}
	lo, hi := xs[k], xs[j]
	if k > 0 {
		lo = t.close(lo, lower(&at[k]), xs[k-1], lower(&at[k-1]), lower)
	}
	if j < trackMarks-1 {
		hi = t.close(hi, upper(&at[j]), xs[j+1], upper(&at[j+1]), upper)
	}
	run := toStep(lo, hi)
	return run, run[0] <= run[1]
}

// close closes in on where value comes down to 0, between in, where it is a and
// not below, and out, where it is b and below: by regula falsi in the Illinois
// way, or by halving where it is not finite. The answer is not below.
func (t *track) close(in, a, out, b float64, value func(*beyond) float64) float64 {
	side := 0
	for math.Abs(out-in) > edgeWithin {
		share := 0.5
		if !math.IsInf(a, 0) && !math.IsInf(b, 0) {
			least := edgeWithin / 2 / math.Abs(out-in) // so that it closes from both sides
			share = math.Min(math.Max(a/(a-b), least), 1-least)
		}
		mid := in + (out-in)*share
		at := t.at(mid)
		if v := value(&at); v >= 0 {
			if in, a = mid, v; side > 0 {
				b /= 2
			}
			side = 1
		} else {
			if out, b = mid, v; side < 0 {
				a /= 2
			}
			side = -1
		}
	}
	return in
}

// toStep rounds a run inwards to the step that windows are told to.
func toStep(lo, hi float64) [2]float64 {
	return [2]float64{math.Ceil(lo/windowStep-1e-6) * windowStep, math.Floor(hi/windowStep+1e-6) * windowStep}
}
