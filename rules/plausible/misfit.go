package plausible

import (
	"fmt"
	"math"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// A misfit is something in a fitting that does not go together.
type misfit struct {
	id    string
	why   string
	odds  float64     // how odd it is, in standard deviations or like them
	about fit.Reading // the one that it speaks of
	and   fit.Reading // the one that it is held against; about again where that is no single reading
}

// How odd a misfit is that no standard deviation measures: one that nobody has
// heard of, and one that cannot be.
const (
	unheardOf  = 10.0
	impossible = 1e6
)

// misfits are what does not go together in f: heights of hang h out of their
// order, too close or too far apart, laid lengths that nobody has, and readings that stand
// at or more standard deviations from what the others make of them.
func misfits(f *fit.Fitting, h int, unit string, at float64) []misfit {
	list := lengthMisfits(f, unit)
	if h < len(f.Hangs) {
		list = append(list, heightMisfits(&f.Hangs[h], unit)...)
	}
	if len(f.Faults()) == 0 {
		list = append(list, strains(f, h, unit, at)...)
	}
	return list
}

// A span is how far one mark may be above another in one hang, in mm.
type span struct {
	high, low   fit.Reading
	least, most float64
}

// spans are generous: wider than the body survey's extremes for the body
// (published: ANSUR II), judgement for the kit. Below 0 the marks are in the
// wrong order; where the least is below 0 either may be the higher.
var spans = []span{
	{fit.Nose, fit.Hip, 400, 900},
	{fit.WristUp, fit.Nose, 100, 700},
	{fit.WristDown, fit.Hip, -250, 150},
	{fit.Hip, fit.Soles, 450, 1300},
	{fit.Soles, fit.Ground, 0, 4000},
	{fit.MainRings, fit.Hip, -150, 350},
	{fit.BackupRings, fit.Hip, -150, 350},
	{fit.ConnectorBottom, fit.MainRings, 0, 1200},
	{fit.ConnectorTop, fit.ConnectorBottom, 1, 300},
	{fit.LeftLoopTop, fit.ConnectorTop, 1, 1000},
	{fit.RightLoopTop, fit.ConnectorTop, 1, 1000},
	{fit.LeftHitchTop, fit.LeftLoopTop, 1, 350},
	{fit.RightHitchTop, fit.RightLoopTop, 1, 350},
	{fit.LeftLoopTop, fit.RightLoopTop, -250, 250},
	{fit.LeftHitchTop, fit.RightHitchTop, -250, 250},
	{fit.KneeLevel, fit.Hip, -250, 250},
	{fit.GardaTaut, fit.GardaLevel, -300, 400},
}

// heightMisfits are the marks of a hang that are out of their order, too close or
// too far apart.
func heightMisfits(h *fit.Hang, unit string) []misfit {
	var list []misfit
	for _, s := range spans {
		if len(h.Heights[s.high]) == 0 || len(h.Heights[s.low]) == 0 {
			continue
		}
		d := fit.Mean(h.Heights[s.high]) - fit.Mean(h.Heights[s.low])
		if s.least <= d && d <= s.most {
			continue
		}
		m := misfit{id: fmt.Sprint("span", s.high, s.low), about: s.high, and: s.low, odds: unheardOf + math.Abs(d)/1000}
		high, far := rules.Upper(s.high.String()), rules.FormatLength(math.Abs(d), unit)
		switch {
		case s.least >= 0 && d <= 0:
			m.odds, m.why = impossible, fmt.Sprintf("%s is not above %s", high, s.low)
		case s.least >= 0 && d < s.least:
			m.odds = unheardOf + (s.least-d)/1000
			m.why = fmt.Sprintf("%s is %s above %s; that close is unheard of", high, far, s.low)
		case d < 0:
			m.why = fmt.Sprintf("%s is %s under %s; that far is unheard of", high, far, s.low)
		default:
			m.why = fmt.Sprintf("%s is %s above %s; that far is unheard of", high, far, s.low)
		}
		list = append(list, m)
	}
	return list
}

// usual are the laid lengths that people and kits have, in mm: wider than the
// body survey's extremes (published: ANSUR II), judgement for the kit.
var usual = map[fit.Reading][2]float64{
	fit.Stature: {1300, 2200}, fit.Inseam: {600, 1100}, fit.Thigh: {290, 560}, fit.Shin: {350, 660}, fit.Waist: {800, 1400},
	fit.Ahead: {-50, 450}, fit.MainBridge: {300, 2000}, fit.MainBridgeRings: {150, 650}, fit.GardaToTether: {20, 400},
	fit.FootLoop: {500, 1700}, fit.Tether: {40, 900}, fit.BackupBridge: {200, 1600}, fit.BackupBridgeRings: {150, 650},
}

// lengthMisfits are the laid lengths that nobody has, and bridges that are no
// longer than their rings are apart.
func lengthMisfits(f *fit.Fitting, unit string) []misfit {
	var list []misfit
	for r := range fit.NumReadings {
		bounds, ok := usual[r]
		if !ok || len(f.Laid[r]) == 0 {
			continue
		}
		if v := fit.Mean(f.Laid[r]); v < bounds[0] || v > bounds[1] {
			list = append(list, misfit{id: fmt.Sprint("usual", r), odds: unheardOf, about: r, and: r,
				why: fmt.Sprintf("%s of %s is out of the usual (%s to %s)", rules.Upper(r.String()), rules.FormatLength(v, unit), rules.FormatLength(bounds[0], unit), rules.FormatLength(bounds[1], unit))})
		}
	}
	for _, b := range [][2]fit.Reading{{fit.MainBridge, fit.MainBridgeRings}, {fit.BackupBridge, fit.BackupBridgeRings}} {
		if length, rings := f.Laid[b[0]], f.Laid[b[1]]; len(length) > 0 && len(rings) > 0 && fit.Mean(length) <= fit.Mean(rings) {
			list = append(list, misfit{id: fmt.Sprint("bridge", b[0]), odds: impossible, about: b[0], and: b[1],
				why: fmt.Sprintf("%s is no longer than its rings are apart", rules.Upper(b[0].String()))})
		}
	}
	return list
}

// strains are the readings that stand off what the others make of them: the
// body's by the survey's residual covariance, the poses' and the connector's by
// the lengths that make them.
func strains(f *fit.Fitting, h int, unit string, at float64) []misfit {
	m := fit.NewModel(f, fit.Options{})
	n := fit.NumLikely + fit.NumOffsets
	p := m.Propagate(n, func(x []float64, s *fit.State, out []float64) {
		for k := range fit.NumLikely {
			out[k] = m.Offset(fit.Likely(k), x, s)
		}
		for k := range fit.NumOffsets {
			out[fit.NumLikely+k] = m.Disagreement(fit.Offset(k), x, s)
		}
	})
	var list []misfit
	for o := range n {
		r, said := fit.Reading(0), "what the lengths make of it"
		if o < fit.NumLikely {
			r, said = fit.Likely(o).Reading(), "what stature and this climber's other readings say"
		} else {
			r = fit.Offset(o - fit.NumLikely).Reading()
		}
		u, _ := p.U(o)
		off := p.Values[o]
		z := math.Abs(off) / u
		if !(z >= at) || r.IsHeight() && m.HangOf(r) != h || len(listOf(f, r, h)) == 0 {
			continue
		}
		expected := fit.Mean(listOf(f, r, h)) - off
		list = append(list, misfit{id: fmt.Sprint("strain", o), odds: z, about: r, and: r,
			why: fmt.Sprintf("%s is %.1f standard deviations from %s (about %s)", rules.Upper(r.String()), z, said, rules.FormatLength(expected, unit))})
	}
	return list
}
