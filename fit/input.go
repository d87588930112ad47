package fit

import (
	"math"
	"time"
)

// Origin says where an input's value comes from.
type Origin int8

// The origins.
const (
	Measured  Origin = iota // read in this session, or off a label
	KeptOver                // a length taken over from an earlier session, by an act of its own
	Estimated               // from the body survey, or told, or kept for too long
	Default                 // of the model; also where the session moved it
	Predicted               // a length set and not laid on again, and the heights that it moves
)

var originNames = [...]string{"measured", "kept", "estimated", "default", "predicted"}

// String is the origin's name in answers.
func (o Origin) String() string { return originNames[o] }

// An Input is one base input: everything that the model computes is a function
// of these, so an error in one is shared by all that uses it.
type Input struct {
	Key    string // in the session file, hangs and changes counted from 1
	V, U   float64
	Unit   string
	Origin Origin
	Hidden bool // an input of the model's own that no list shows

	Reading Reading // what was read, or noReading
	Kind    Spread  // of Reading, or of a length laid on again
	Hang    int     // in which hang, counted from 0, for a height
	Change  int     // which change set the length, counted from 1; 0 for none
	N       int     // how often it was read
	L       float64 // mm, the length that the tape's error goes by
}

const noReading Reading = -1

// slot is an input's place in the vector of values; slot 0 holds NaN and stands
// for what is unknown.
type slot int32

const unknown slot = 0

// keptReading tells whether r was taken over from an earlier session.
func (f *Fitting) keptReading(r Reading) (Kept, bool) {
	if len(f.Kept) == 0 {
		return Kept{}, false
	}
	return f.kept(r.Info().Table + "." + r.Info().Key)
}

func (f *Fitting) kept(key string) (Kept, bool) {
	for _, k := range f.Kept {
		if k.Key == key {
			return k, true
		}
	}
	return Kept{}, false
}

// defaultRecheckDays is how long a kept length counts as kept.
const defaultRecheckDays = 180

// origin is that of a length with the key: measured, unless it was kept; kept
// for more than the school's recheck days, or without a date, it is estimated.
func (f *Fitting) origin(key string) Origin {
	if len(f.Kept) == 0 {
		return Measured
	}
	k, ok := f.kept(key)
	if !ok {
		return Measured
	}
	days := f.RecheckDays
	if days == 0 {
		days = defaultRecheckDays
	}
	if k.Taken.IsZero() || f.Started.IsZero() || calendarDays(k.Taken, f.Started) > days {
		return Estimated
	}
	return KeptOver
}

// calendarDays counts the days from a's date to b's, each in its own zone.
func calendarDays(a, b time.Time) int {
	day := func(t time.Time) time.Time {
		y, m, d := t.Date()
		return time.Date(y, m, d, 0, 0, 0, 0, time.UTC)
	}
	return int(day(b).Sub(day(a)).Hours() / 24)
}

// add puts an input into the model and returns its slot.
func (m *Model) add(in Input) slot {
	m.Inputs = append(m.Inputs, in)
	m.x = append(m.x, in.V)
	m.u = append(m.u, in.U)
	return slot(len(m.x) - 1)
}

// addKnown adds a label where it is known.
func (m *Model) addKnown(key string, n Number, u float64, unit string) slot {
	if !n.Known {
		return unknown
	}
	return m.add(Input{Key: key, V: n.V, U: u, Unit: unit, Origin: m.f.origin(key), Reading: noReading})
}

// addLaid adds the laid length r where it was read.
func (m *Model) addLaid(r Reading) slot {
	list := m.f.Laid[r]
	if len(list) == 0 {
		return unknown
	}
	info := r.Info()
	in := Input{Key: LaidKey(r), V: Mean(list), Unit: "mm", Reading: r, N: len(list), Kind: info.Spread}
	in.Origin = m.f.origin(in.Key)
	in.L = in.V
	in.U = m.freshU(in, in.N)
	return m.add(in)
}

// freshU is the standard uncertainty that the reading would have, taken n times
// with today's spread.
func (m *Model) freshU(in Input, n int) float64 {
	tape := m.f.Tape
	var e float64
	switch {
	case in.Reading == Hip:
	case in.Reading != noReading && in.Reading.IsHeight():
		e = MaxError(tape.Class, in.L, false)
	default:
		e = MaxError(tape.Class, in.L, tape.Hook)
	}
	return tape.readingU(e, m.v[in.Kind], n)
}

// addHang adds the heights of hang h that count, being the latest, and its hip
// if there are any.
func (m *Model) addHang(h int, latest *[NumReadings]int) {
	counts := false
	for r := firstHeight; r <= lastHeight; r++ {
		counts = counts || latest[r] == h
	}
	if !counts {
		return
	}
	for r := firstHeight; r <= lastHeight; r++ {
		if len(m.f.Hangs[h].Heights[r]) == 0 || latest[r] != h && r != Hip {
			continue
		}
		s := m.addHeight(h, r)
		if r == Hip {
			m.hips[h] = s
		}
		if latest[r] == h {
			m.height[r] = s
		}
	}
}

// addHeight adds a height as hang h read it. Its tape error goes by its distance
// from the hip, which carries none, so that the tape's zero never matters.
func (m *Model) addHeight(h int, r Reading) slot {
	list := m.f.Hangs[h].Heights[r]
	in := Input{Key: HeightKey(h, r), V: Mean(list), Unit: "mm", Reading: r, Hang: h, N: len(list), Kind: r.Info().Spread}
	in.L = math.Abs(in.V - m.f.Hangs[h].zero())
	in.U = m.freshU(in, in.N)
	return m.add(in)
}

// zero is the hip's reading, or the lowest height of the hang where it was not
// taken.
func (h *Hang) zero() float64 {
	if list := h.Heights[Hip]; len(list) > 0 {
		return Mean(list)
	}
	lowest := math.Inf(1)
	for r := firstHeight; r <= lastHeight; r++ {
		if list := h.Heights[r]; len(list) > 0 {
			lowest = min(lowest, Mean(list))
		}
	}
	return lowest
}
