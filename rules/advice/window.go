package advice

import (
	"math"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

const (
	windowStep = 0.1            // mm, to which a window is worked out
	edgeWithin = windowStep / 8 // mm, how near an edge is closed in on
	trackSpots = 9              // spots at which a track is looked at before its edges are closed in on
)

// A track follows what every end has beyond its guard while one piece moves and
// all else is held.
type track struct {
	m           *fit.Model // in which the piece was set to a length
	limits      *rules.Limits
	piece       fit.Piece
	lo, now, hi *spot  // how far the piece goes, and where it is
	relevant    []bool // inputs that have a part in any end
}

// newTrack follows p of m between lo and hi, in mm, about now; the piece is left
// anywhere.
func newTrack(m *fit.Model, l *rules.Limits, p fit.Piece, lo, now, hi float64) *track {
	t := &track{m: m, limits: l, piece: p}
	whole := func(v float64) *spot {
		m.SetLength(p, v)
		full := m.Propagate(int(rules.NumEnds), t.margins)
		for i, r := range full.Relevant() {
			if t.relevant == nil {
				t.relevant = make([]bool, len(m.Inputs))
			}
			t.relevant[i] = t.relevant[i] || r
		}
		return spotOf(v, full)
	}
	t.lo, t.now, t.hi = whole(lo), whole(now), whole(hi)
	return t
}

func (t *track) margins(_ []float64, s *fit.State, out []float64) { rules.Margins(s, t.limits, out) }

// A spot is what every end comes to with the piece at one length; NaN where it
// is unknown.
type spot struct {
	at            float64 // mm
	margin, guard [rules.NumEnds]float64
}

// spot is the one with the piece at v mm.
func (t *track) spot(v float64) *spot {
	t.m.SetLength(t.piece, v)
	return spotOf(v, t.m.PropagateOnly(t.relevant, int(rules.NumEnds), t.margins))
}

func spotOf(v float64, p *fit.Propagation) *spot {
	s := &spot{at: v}
	for e := range s.margin {
		u, shift := p.U(e)
		s.margin[e], s.guard[e] = rules.Near0(p.Values[e]), rules.Guard(rules.GuardFactor, u, shift)
	}
	return s
}

// beyond is the least that some ends have beyond their guards; -Inf where one of
// them is unknown.
func (s *spot) beyond(ends []rules.End) float64 {
	least := math.Inf(1)
	for _, e := range ends {
		b := s.margin[e] - s.guard[e]
		if math.IsNaN(b) {
			return math.Inf(-1)
		}
		least = math.Min(least, b)
	}
	return least
}

// musts are the ends of musts in the search that the piece moves.
func (t *track) musts() []rules.End {
	var ends []rules.End
	for e := range rules.NumEnds {
		lo, hi := t.lo.margin[e], t.hi.margin[e]
		if c := e.Check(); c.Info().Kind == rules.Must && inSearch(c) && lo != hi && !(math.IsNaN(lo) && math.IsNaN(hi)) {
			ends = append(ends, e)
		}
	}
	return ends
}

// around is the run of lengths about the present one, at which all of ends pass,
// in which they go on passing. The piece is left anywhere.
func (t *track) around(ends []rules.End) [2]float64 {
	edge := func(out *spot) float64 {
		if out.beyond(ends) >= 0 {
			return out.at
		}
		return t.close(t.now, out, ends, ends)
	}
	w := toStep(edge(t.lo), edge(t.hi)) // which may leave out what lies less than a step from an edge
	return [2]float64{math.Min(w[0], t.now.at), math.Max(w[1], t.now.at)}
}

// passing is the run of lengths at which all of ends pass, false where there is
// none. Every end rises or falls with the piece all the way, so those that rise
// bound the run from below and those that fall from above. The piece is left
// anywhere.
func (t *track) passing(ends []rules.End) ([2]float64, bool) {
	var at [trackSpots]*spot
	first, last := -1, -1 // where all ends are known
	for k := range at {
		switch k {
		case 0:
			at[k] = t.lo
		case trackSpots - 1:
			at[k] = t.hi
		default:
			at[k] = t.spot(t.lo.at + (t.hi.at-t.lo.at)*float64(k)/(trackSpots-1))
		}
		if !math.IsInf(at[k].beyond(ends), -1) {
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
		if at[last].margin[e] > at[first].margin[e] {
			rising = append(rising, e)
		} else {
			falling = append(falling, e)
		}
	}
	from, to := first, last
	for from <= last && at[from].beyond(rising) < 0 {
		from++
	}
	for to >= first && at[to].beyond(falling) < 0 {
		to--
	}
	if from > last || to < first {
		return [2]float64{}, false
	}
	lo, hi := at[from].at, at[to].at
	if from > 0 {
		lo = t.close(at[from], at[from-1], rising, ends)
	}
	if to < trackSpots-1 {
		hi = t.close(at[to], at[to+1], falling, ends)
	}
	run := toStep(lo, hi)
	return run, run[0] <= run[1]
}

// close closes in on the edge between in, where ends pass, and out, where they do
// not or one of known is unknown. Margins are cheap and guards are dear, and
// smooth: the edge is looked for with guards on the line between those at in and
// out, and these are taken anew on both sides of it. The answer passes.
func (t *track) close(in, out *spot, ends, known []rules.End) float64 {
	try := func(v float64) {
		if (v-in.at)*(out.at-v) <= 0 {
			return // not between them
		}
		if s := t.spot(v); s.beyond(ends) >= 0 && !math.IsInf(s.beyond(known), -1) {
			in = s
		} else {
			out = s
		}
	}
	for {
		width := out.at - in.at
		if math.Abs(width) <= edgeWithin {
			return in.at
		}
		edge, nudge := t.edge(in, out, ends, known), math.Copysign(edgeWithin/3, width)
		try(edge - nudge)
		try(edge + nudge)
		if math.Abs(out.at-in.at) > math.Abs(width)/2 {
			try((in.at + out.at) / 2)
		}
	}
}

// edge is where, between in and out, the margins come down to guards on the line
// between theirs.
func (t *track) edge(in, out *spot, ends, known []rules.End) float64 {
	var state fit.State
	var margin [rules.NumEnds]float64
	holds := func(share float64) bool {
		t.m.SetLength(t.piece, in.at+(out.at-in.at)*share)
		t.m.Current(&state)
		t.margins(nil, &state, margin[:])
		for _, e := range known {
			if math.IsNaN(margin[e]) {
				return false
			}
		}
		for _, e := range ends {
			guard := in.guard[e]
			if g := out.guard[e]; !math.IsNaN(g) {
				guard += (g - guard) * share
			}
			if !(margin[e] >= guard) {
				return false
			}
		}
		return true
	}
	lo, hi := 0.0, 1.0
	for within := edgeWithin / 8 / math.Abs(out.at-in.at); hi-lo > within; {
		if mid := (lo + hi) / 2; holds(mid) {
			lo = mid
		} else {
			hi = mid
		}
	}
	return in.at + (out.at-in.at)*lo
}

// toStep rounds a run inwards to the step that windows are worked out to.
func toStep(lo, hi float64) [2]float64 {
	return [2]float64{math.Ceil(lo/windowStep-1e-6) * windowStep, math.Floor(hi/windowStep+1e-6) * windowStep}
}
