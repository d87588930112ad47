package sideview

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// Describe tells the same drawing in words, one idea a sentence, the one that is
// asked for first: where the tape goes, then the margin of the check, then what
// collides, then the rest from the top down. What is unknown is not told. Of the
// options it takes the unit, the reading and the check.
func Describe(sh *fit.Shape, o Options) []string {
	t := teller{sh: sh, unit: o.Unit, out: []string{poseSentences[sh.Pose]}}
	if tape := Tape(o.Reading); tape != "" {
		t.say("%s", tape)
	}
	if span, ok := o.Check.Span(); ok && span.Pose == sh.Pose {
		t.margin(o.Check, span)
	}
	if sh.Pose != fit.Seated && sh.Pose != fit.Standing {
		t.connector()
	}
	switch sh.Pose {
	case fit.Seated:
		t.height(fit.MarkLeftHitch, fit.MarkWristUp)
		t.height(fit.MarkRightHitch, fit.MarkWristUp)
		t.height(fit.MarkConnectorTop, fit.MarkNose)
		t.height(fit.MarkGardaTop, fit.MarkWristDown)
		t.height(fit.MarkSole, fit.MarkGround)
	case fit.TetherTaut:
		t.over()
		t.height(fit.MarkKnee, fit.MarkHip)
	case fit.Standing:
		if up := sh.At[fit.MarkHip].Y; !math.IsNaN(up) {
			t.sayOf([]fit.Landmark{fit.MarkHip}, sayRisen, t.length(up))
		}
	case fit.OnTether:
		t.height(fit.MarkSole, fit.MarkHip)
	}
	for _, c := range sh.Clashes() {
		if c.Lower == fit.MarkGround {
			t.say(sayGround, theNames[c.Upper], t.length(c.Depth))
		}
	}
	return t.out
}

// A teller puts sentences about a shape together.
type teller struct {
	sh   *fit.Shape
	unit string
	out  []string
}

// say adds a sentence, once.
func (t *teller) say(format string, args ...any) { t.sayOf(nil, format, args...) }

// sayOf is say for a sentence that rests on these landmarks.
func (t *teller) sayOf(on []fit.Landmark, format string, args ...any) {
	if slices.ContainsFunc(on, func(m fit.Landmark) bool { return t.sh.Estimated[m] }) {
		format = strings.TrimSuffix(format, ".") + sayEstimated
	}
	if s := fmt.Sprintf(format, args...); !slices.Contains(t.out, s) {
		t.out = append(t.out, s)
	}
}

// length is a length without its sign.
func (t *teller) length(mm float64) string { return rules.FormatLength(math.Abs(mm), t.unit) }

// margin tells the height that a check is about, and what it leaves.
func (t *teller) margin(c *rules.Check, span rules.Span) {
	gap := t.sh.At[span.Upper].Y - t.sh.At[span.Lower].Y
	if math.IsNaN(gap) || c.Unit != "mm" {
		return
	}
	if span.Lower == fit.MarkGardaTop && span.Upper == fit.MarkConnectorBottom {
		t.connector()
	} else {
		t.height(span.Upper, span.Lower)
	}
	if c.Needs.Known() && c.Margin.Known() {
		format := saySpare
		if c.Margin < 0 {
			format = sayShort
		}
		t.say(format, c.Name, t.length(float64(c.Margin)))
	}
}

// connector tells how the Garda hitch stands to the connector above it.
func (t *teller) connector() {
	gap := t.sh.At[fit.MarkConnectorBottom].Y - t.sh.At[fit.MarkGardaTop].Y
	on := []fit.Landmark{fit.MarkConnectorBottom, fit.MarkGardaTop}
	switch {
	case math.IsNaN(gap):
	case gap < 0:
		t.sayOf(on, sayInto, t.length(gap))
	default:
		t.sayOf(on, sayStops, t.length(gap))
	}
}

// over tells how far past level the tether lets the foot come.
func (t *teller) over() {
	over := t.sh.At[fit.MarkGardaTop].Y - t.sh.At[fit.MarkGardaLevel].Y
	on := []fit.Landmark{fit.MarkGardaTop, fit.MarkGardaLevel}
	switch {
	case math.IsNaN(over):
	case over < 0:
		t.sayOf(on, sayShortOf, t.length(over))
	default:
		t.sayOf(on, sayPast, t.length(over))
	}
}

// height tells how far a is above or under b.
func (t *teller) height(a, b fit.Landmark) {
	d := t.sh.At[a].Y - t.sh.At[b].Y
	on := []fit.Landmark{a, b}
	switch {
	case math.IsNaN(d):
	case math.Abs(d) < 0.5:
		t.sayOf(on, sayLevel, capital(theNames[a]), theNames[b])
	case d < 0:
		t.sayOf(on, sayUnder, capital(theNames[a]), t.length(d), theNames[b])
	default:
		t.sayOf(on, sayAbove, capital(theNames[a]), t.length(d), theNames[b])
	}
}

// capital is s, which begins with an ASCII letter, as a sentence begins.
func capital(s string) string {
	if s == "" {
		return s
	}
	return string(s[0]-'a'+'A') + s[1:]
}
