package fit

import (
	"math"
)

// A Taken is a reading on trial: taken N times as V, laid on or in the hang Hang,
// counted from 0. V is a length, or the height above that hang's hip.
type Taken struct {
	Reading Reading
	Hang    int
	V       float64
	N       int
}

// Trials tell what u and shift of some outputs would come to if one reading more
// were taken: what a model made anew would say, at a part of the work. They are
// not safe for use by several goroutines at once.
type Trials struct {
	m   *Model
	p   *Propagation // of m
	of  []int        // the outputs of p that are asked for
	f   stepped      // those outputs of after
	now Propagation  // of after

	moved []bool // by input: what it does is worked out anew

	after Model // m with the reading; its room is used again
}

// Trials are those of the outputs of p, a propagation of m, that stand at the
// places in of. f fills them, and only them, from the state.
func (m *Model) Trials(p *Propagation, of []int, f func(s *State, out []float64)) *Trials {
	t := &Trials{m: m, p: p, of: of, after: *m}
	room := len(m.x) + 1 + int(NumBodyParts)
	t.moved = make([]bool, room)
	t.after.x, t.after.u, t.after.stages = make([]float64, 0, room), make([]float64, 0, room), make([]Stage, 0, room)
	t.f = t.after.stepping(func(_ []float64, s *State, out []float64) { f(s, out) })
	return t
}

// Take takes the reading r on trial; what it returns tells u and shift by place
// in the outputs asked for.
//
// r was not taken so far: a reading of the body but for stature and inseam, the
// rope ahead, or the knee in the hang of the Garda hitch at level. It stands at
// the value of what stood for it, its estimate or default. So every value stays,
// and an input that has no part in the body or in the knee counts as it did. The
// hang of a height has its hip: without one the other heights of that hang are
// held against the lowest of them, which a reading may move.
func (t *Trials) Take(r Taken) []Uncertainty {
	t.prepare(r)
	m, p := &t.after, &t.now
	if p.shares == nil {
		p.shares = make([]share, 0, 8*len(t.of)+t.p.sharesOf(t.of))
	}
	p.start(t.f, m.x, m.u, m.blocks, len(t.of))
	for i := range m.x {
		if t.moved[i] = i >= len(t.m.x) || t.moves(r.Reading, i); t.moved[i] {
			p.add(i)
		}
	}
	for o, k := range t.of {
		for s := range t.p.of(k) {
			if !t.moved[s.input] {
				p.keep(o, *s)
			}
		}
	}
	list := make([]Uncertainty, len(t.of))
	for o := range list {
		list[o].U, list[o].Shift = p.U(o)
	}
	return list
}

// moves says whether taking the reading r may change what input i of the model
// without it does. Every value stays, and so does what is held against values
// alone.
func (t *Trials) moves(r Reading, i int) bool {
	m, in := t.m, slot(i)
	switch {
	case in == m.posture[LevelByEye]:
		return r == KneeLevel
	case in == m.posture[AheadDefault]:
		return r == Ahead
	case in == m.posture[ReachFactor]:
		return r == WristUp
	case m.stages[i]&TheBody == 0:
		return false
	case in == m.posture[Sole]: // a part of what was read of the shin and the waist
		return r == Shin || r == Waist || m.laid[Shin] != unknown || m.laid[Waist] != unknown
	case in == m.posture[Lean], in == m.posture[EyeAboveNose]:
		return r == Nose || r == WristUp
	}
	switch m.Inputs[i].Reading {
	case Hip:
		return r.IsHeight() || m.height[WristDown] != unknown
	case Nose:
		return r == WristUp
	case WristUp:
		return false
	}
	if r == Ahead || r == KneeLevel {
		return false
	}
	if r != Nose && r != WristUp {
		return true // a part of the body that says something of the others
	}
	for part := range m.estimates {
		if e := &m.estimates[part]; e.told && e.residual == in {
			return BodyPart(part) == PartNose || BodyPart(part) == PartFull
		}
	}
	return true
}

// prepare makes after the model with the reading r, good for propagation alone:
// its inputs are listed behind those of m, where the next trial's will be.
func (t *Trials) prepare(r Taken) {
	m := &t.after
	m.counted, m.poses, m.estimates, m.blocks = t.m.counted, t.m.poses, t.m.estimates, t.m.blocks
	m.Inputs = t.m.Inputs
	m.x = append(m.x[:0], t.m.x...)
	m.u = append(m.u[:0], t.m.u...)
	m.stages = append(m.stages[:0], t.m.stages...)
	m.take(r)
	switch r.Reading {
	case Nose, WristUp, Ahead, KneeLevel:
	default: // says something of other parts of the body
		for _, e := range m.estimates {
			m.u[e.residual] = 0
		}
		m.estimates, m.blocks = [NumBodyParts]estimate{}, nil
		var partners [NumBodyParts]partner
		m.estimate(nil, m.partners(partners[:0]))
	}
	for len(m.stages) < len(m.x) {
		m.stages = append(m.stages, TheBody|posesOn)
	}
}

// take makes the reading r count.
func (m *Model) take(t Taken) {
	r := t.Reading
	in := Input{V: t.V, Reading: r, N: t.N, L: math.Abs(t.V), Kind: r.Info().Spread}
	in.U = m.freshU(in, in.N)
	if !r.IsHeight() {
		m.laid[r] = m.add(in)
		return
	}
	hip := unknown
	if t.Hang < len(m.hips) {
		hip = m.hips[t.Hang]
	}
	in.V += m.x[hip]
	m.height[r], m.hang[r], m.hipOf[r] = m.add(in), t.Hang, hip
	if r == KneeLevel {
		m.poses.kneeSlot, m.poses.kneeHip = m.height[r], hip
	}
}
