package plausible

import (
	"fmt"
	"math"
	"slices"

	"example.com/hangtape/fit"
)

// mostSlips is how many slips are named at a time.
const mostSlips = 2

// slips are what was likely meant, likeliest first: two marks swapped, two
// digits swapped or another unit, the wrong landmark, a neighbouring mark.
func (b *bench) slips() []string {
	var out []string
	for _, list := range [][]string{b.swapped(), b.ways(), b.landmarks(), b.neighbours()} {
		for _, s := range list {
			if !slices.Contains(out, s) && len(out) < mostSlips {
				out = append(out, s)
			}
		}
	}
	return out
}

// swapped are the marks of the same hang, next to this one in the order of the
// spans, with which it fits the other way round.
func (b *bench) swapped() []string {
	var out []string
	t := &b.t
	if !t.Reading.IsHeight() || len(listOf(b.f, t.Reading, t.Hang)) > 0 {
		return nil
	}
	for _, s := range spans {
		other := s.high
		if other == t.Reading {
			other = s.low
		} else if s.low != t.Reading {
			continue
		}
		v := listOf(b.f, other, t.Hang)
		if len(v) == 0 {
			continue
		}
		f := set(b.f, other, t.Hang, []float64{t.Value})
		f = set(f, t.Reading, t.Hang, []float64{fit.Mean(v)})
		if b.quiet(f) {
			out = append(out, fmt.Sprintf("swapped with %s", other))
		}
	}
	return out
}

// ways are the other meanings of the text that fit.
func (b *bench) ways() []string {
	var out []string
	for _, w := range b.t.Ways {
		if b.fits(w.Value) {
			out = append(out, fmt.Sprintf("%s (%s)", w.Slip, b.length(w.Value)))
		}
	}
	return out
}

// A landmark is what is taken for the mark of a reading now and then, and how
// much more is read there, in mm.
type landmark struct {
	reading fit.Reading
	words   string
	off     float64
}

// pelvisAboveHip is how far the top of the pelvis is above the hip point, in mm
// (published: ANSUR II, mean of the iliac crest above the trochanter).
const pelvisAboveHip = 157

// landmarks have the means of the body survey (published: ANSUR II: hand length,
// buttock to knee, lateral malleolus, waist above the crotch); a boot's sole is
// 25 mm.
var landmarks = []landmark{
	{fit.Nose, "taken at the eyes", 45},
	{fit.WristUp, "taken at the fingertips", 189},
	{fit.WristDown, "taken at the fingertips", -189},
	{fit.Thigh, "taken from the top of the pelvis", pelvisAboveHip},
	{fit.Thigh, "taken from the back to the front of the knee", 202},
	{fit.Shin, "taken to the ankle", -95},
	{fit.Waist, "taken at the crotch", -206},
}

// landmarks are the wrong places at which the reading, or its hang's hip, was
// likely taken.
func (b *bench) landmarks() []string {
	var out []string
	t := &b.t
	for _, l := range landmarks {
		if l.reading == t.Reading && b.fits(t.Value-l.off) {
			out = append(out, l.words)
		}
	}
	if t.Reading == fit.GardaLevel || t.Reading == fit.GardaTaut {
		if d := b.f.Laid[fit.GardaToTether]; len(d) > 0 && b.fits(t.Value+fit.Mean(d)) {
			out = append(out, "taken where the tether is tied and not at the hitch's top")
		}
	}
	if hip := listOf(b.f, fit.Hip, t.Hang); t.Reading.IsHeight() && t.Reading != fit.Hip && len(hip) > 0 {
		f := set(b.f, fit.Hip, t.Hang, []float64{fit.Mean(hip) - pelvisAboveHip})
		if b.quiet(with(f, t.Reading, t.Hang, t.Value)) {
			out = append(out, "the hip point taken at the top of the pelvis")
		}
	}
	return out
}

// beside is how near a value has to be to another mark to be taken for it, mm.
const beside = 15.0

// neighbours is the mark of another reading at which the value was likely read: the
// nearest; none where none is beside it.
func (b *bench) neighbours() []string {
	var out []string
	best := beside
	for r, v := range b.marks() {
		if d := math.Abs(v - b.t.Value); fit.Reading(r) != b.t.Reading && d <= best {
			best, out = d, []string{fmt.Sprintf("read at the mark of another: %s is there", fit.Reading(r))}
		}
	}
	return out
}

// marks are where the other marks are, as read or as the model has them: heights
// on the tape, or the lengths of the body. NaN is unknown.
func (b *bench) marks() (at [fit.NumReadings]float64) {
	t := &b.t
	for r := range fit.NumReadings {
		at[r] = math.NaN()
	}
	var s fit.State
	var m *fit.Model // nil where there is none of what f holds
	if len(b.f.Faults()) == 0 {
		m = fit.NewModel(b.f, fit.Options{})
		m.Current(&s)
	}
	if !t.Reading.IsHeight() {
		if m != nil && t.Reading.Info().Table == "climber" {
			at[fit.Thigh], at[fit.Shin], at[fit.Waist] = s.Thigh, s.Shin, s.Waist
		}
		for r := range fit.NumReadings {
			if list := b.f.Laid[r]; len(list) > 0 && r.Info().Table == t.Reading.Info().Table {
				at[r] = fit.Mean(list)
			}
		}
		return at
	}
	if m != nil && t.Hang < len(b.f.Hangs) && len(b.f.Hangs[t.Hang].Heights[fit.Hip]) > 0 {
		hip := fit.Mean(b.f.Hangs[t.Hang].Heights[fit.Hip])
		for r, y := range map[fit.Reading]float64{
			fit.Nose: s.Nose, fit.WristUp: s.WristUp, fit.WristDown: s.WristDown, fit.ConnectorTop: s.ConnectorTop, fit.ConnectorBottom: s.ConnectorBottom,
			fit.LeftLoopTop: s.ConnectorTop + s.Loop[0], fit.RightLoopTop: s.ConnectorTop + s.Loop[1], fit.LeftHitchTop: s.HitchTop[0], fit.RightHitchTop: s.HitchTop[1],
			fit.MainRings: s.MainRings, fit.BackupRings: s.BackupRings, fit.GardaLevel: s.YLevel, fit.GardaTaut: s.YTaut,
		} {
			at[r] = hip + y
		}
	}
	for r := range fit.NumReadings {
		if list := listOf(b.f, r, t.Hang); r.IsHeight() && len(list) > 0 {
			at[r] = fit.Mean(list)
		}
	}
	return at
}
