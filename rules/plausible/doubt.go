package plausible

import (
	"fmt"
	"math"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// Thresholds, in standard deviations; judgement. A reading that is questioned
// costs one key, so that one in some hundred true readings may be: at 3 a normal
// distribution has 0.3 % outside. A slip is named where it leaves less than 2.5.
const (
	oddAt   = 3.0
	namesAt = 2.5
)

// apart is how far repeats of one reading may lie from each other, in mm.
const apart = rules.RepeatsApart

// A Try is one reading that is about to be taken; of a height in a hang that the
// fitting has.
type Try struct {
	Reading fit.Reading
	Hang    int       // of a height, from 0
	Value   float64   // mm
	Ways    []Way     // what else the text that was typed could have meant
	Before  []float64 // readings of the same length in an earlier session, mm; none where it may have changed
	Unit    string    // that people read in: mm, cm, in
}

// A Way is another meaning of what was typed.
type Way struct {
	Slip  string  // what went wrong then: "two digits swapped"
	Value float64 // mm
}

// A Doubt is why a reading does not fit, and what was likely meant.
type Doubt struct {
	Why   string
	Slips []string // likeliest first, two at most; may be empty
}

// Words are the doubt as sentences.
func (d Doubt) Words() string {
	out := d.Why + "."
	for i, s := range d.Slips {
		if i == 0 {
			out += " Perhaps " + s
			continue
		}
		out += ", or " + s
	}
	if len(d.Slips) > 0 {
		out += "?"
	}
	return out
}

// Of says whether t fits f, which does not hold it yet: false where nothing
// speaks against it. f must not hold what cannot be, but for orders of heights.
func Of(f *fit.Fitting, t Try) (Doubt, bool) {
	b := bench{f: f, t: t, before: misfits(f, t.Hang, t.Unit, oddAt)}
	why := b.why()
	if why == "" {
		return Doubt{}, false
	}
	return Doubt{Why: why, Slips: b.slips()}, true
}

// A bench is a reading on trial beside the fitting that does not hold it yet.
type bench struct {
	f      *fit.Fitting
	t      Try
	before []misfit // of f as it is: what is odd already is not asked about again
}

// why is what speaks against the reading first; empty where nothing does.
func (b *bench) why() string {
	t := &b.t
	if list := listOf(b.f, t.Reading, t.Hang); len(list) > 0 {
		for _, v := range list {
			if d := math.Abs(v - t.Value); d >= apart {
				return fmt.Sprintf("Two readings of %s lie %s apart (%s before): read it again", t.Reading, b.length(d), b.length(v))
			}
		}
		return "" // what it disagrees with has been said at the first
	}
	var worst *misfit
	after := misfits(with(b.f, t.Reading, t.Hang, t.Value), t.Hang, t.Unit, oddAt)
	for i := range after {
		m := &after[i]
		if !had(b.before, m.id) && (worst == nil || b.comesFirst(m, worst)) {
			worst = m
		}
	}
	if worst != nil {
		return worst.why
	}
	if b.farFromEarlier(t.Value) && len(b.ways()) > 0 {
		return fmt.Sprintf("%s was %s in the earlier session", rules.Upper(t.Reading.String()), b.length(fit.Mean(t.Before)))
	}
	return ""
}

// comesFirst says whether m is told in the place of o: what speaks of the reading
// itself first, then the oddest.
func (b *bench) comesFirst(m, o *misfit) bool {
	own := func(m *misfit) bool { return m.about == b.t.Reading || m.and == b.t.Reading }
	if own(m) != own(o) {
		return own(m)
	}
	return m.odds > o.odds
}

// fits says whether a fitting with v in the reading's place has nothing odd that
// was not there before, and v lies by its repeats and the earlier session.
func (b *bench) fits(v float64) bool {
	for _, w := range listOf(b.f, b.t.Reading, b.t.Hang) {
		if math.Abs(v-w) >= apart {
			return false
		}
	}
	return b.quiet(with(b.f, b.t.Reading, b.t.Hang, v)) && !b.farFromEarlier(v)
}

// quiet says whether f has nothing odd that was not there before.
func (b *bench) quiet(f *fit.Fitting) bool {
	for _, m := range misfits(f, b.t.Hang, b.t.Unit, namesAt) {
		if !had(b.before, m.id) {
			return false
		}
	}
	return true
}

// farFromEarlier says whether v lies twice as far from the earlier session's mean
// as repeats may from each other; judgement.
func (b *bench) farFromEarlier(v float64) bool {
	return len(b.t.Before) > 0 && math.Abs(v-fit.Mean(b.t.Before)) >= 2*apart
}

func (b *bench) length(mm float64) string { return rules.FormatLength(mm, b.t.Unit) }

func had(list []misfit, id string) bool {
	for i := range list {
		if list[i].id == id {
			return true
		}
	}
	return false
}

// listOf is what f holds of a reading; h counts for heights.
func listOf(f *fit.Fitting, r fit.Reading, h int) []float64 {
	switch {
	case !r.IsHeight():
		return f.Laid[r]
	case h < len(f.Hangs):
		return f.Hangs[h].Heights[r]
	}
	return nil
}

// with is f with v as one take more of a reading.
func with(f *fit.Fitting, r fit.Reading, h int, v float64) *fit.Fitting {
	list := listOf(f, r, h)
	return set(f, r, h, append(list[:len(list):len(list)], v))
}

// set is f with list as all takes of a reading.
func set(f *fit.Fitting, r fit.Reading, h int, list []float64) *fit.Fitting {
	g := *f
	if !r.IsHeight() {
		g.Laid[r] = list
		return &g
	}
	g.Hangs = append([]fit.Hang(nil), f.Hangs...)
	g.Hangs[h].Heights[r] = list
	return &g
}
