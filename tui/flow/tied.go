package flow

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/number"
)

// A tiedCord is what is told of the cord of a piece that was tied, until it is kept
// with the pieces of the folder. It is no part of the session.
type tiedCord struct {
	cut, tails fit.Number // mm
	kept, not  bool       // it was kept; it is not to be
}

// A TiedUp is a piece that is to be kept with those that were tied. That happens
// outside the flow; KeptTied brings what came of it.
type TiedUp struct {
	Piece fit.Piece
	Cord  fit.TiedCord
}

// KeptTied is that a piece was kept, or why not.
type KeptTied struct {
	Piece fit.Piece
	Words string         // what its knots took
	Cord  *fit.CordModel // what all pieces teach, with this one
	Err   error
}

func (KeptTied) event() {}

// tiedUp asks for what the cord of p took, once p was tied and measured.
func tiedUp(p fit.Piece) []Ask {
	at := func(d *Draft) *tiedCord { return &d.tied[p] }
	name, key := rules.Upper(rules.PieceName(p)), "tied."+p.Key()
	length := func(part, title, how string, q number.Kind, accepted number.Range, at func(*Draft) *fit.Number) Ask {
		return Ask{Key: key + part, Kind: Amount, Title: title, How: how, Topic: "own-pieces", Quantity: q,
			Accepted: accepted, cell: func(d *Draft) any { return at(d) }}
	}
	cut := length(".cut_mm", name+": how long was its cord cut?", "What its knots took is kept beside the sessions, so that the next piece is cut closer. Empty: not kept.",
		number.Laid, number.Range{}, func(d *Draft) *fit.Number { return &at(d).cut })
	tails := length(".both_tails_mm", name+": both tails together, before they were trimmed", "From where they leave the knot. Empty: not read, and not kept.",
		number.Height, number.Range{Most: 100_000}, func(d *Draft) *fit.Number { return &at(d).tails })
	keep := Ask{Key: key, Kind: Choice, Title: "Keep it with your own pieces, tied how?", Topic: "own-pieces",
		Tells: func(d *Draft) []string { return d.tellTied(p) },
		Options: func(d *Draft) []Option {
			var out []Option
			for _, c := range waysToTie(d.finished(p)) {
				out = append(out, Option{Word: tiedHow(c, string(d.Session.Unit)), do: func(s *State) { s.keepTied(p, c) }})
			}
			return append(out, Option{Word: "do not keep it", set: func(d *Draft) { at(d).not = true }})
		},
		Mark: func(d *Draft) int { return len(waysToTie(d.finished(p))) }}
	can := func(d *Draft) bool { return d.reTied(p) && !at(d).kept && d.finished(p).Check() == nil }
	cut.When = can
	tails.When = func(d *Draft) bool { return can(d) && at(d).cut.Known }
	keep.When = func(d *Draft) bool { return can(d) && at(d).cut.Known && at(d).tails.Known }
	tails.Aside = func(d *Draft) bool { return at(d).not }
	keep.Aside = tails.Aside
	return []Ask{cut, tails, keep}
}

// tiedAnew asks it of a piece that was changed since the last hang and laid on again.
func tiedAnew(p fit.Piece) []Ask {
	asks := tiedUp(p)
	for i := range asks {
		asks[i].When = both(asks[i].When, func(d *Draft) bool {
			i := d.lastChange(p)
			return i >= 0 && d.Session.Fit.Changes[i].AfterHang == len(d.Session.Fit.Hangs) && len(d.Session.Fit.Changes[i].Measured) > 0
		})
	}
	return asks
}

// tiedBefore asks it of a piece of the kit as it came: on the way where it was tied
// on the day of the session, else there to go to. A hitch loop's length shows in a
// hang alone: see hitchesTied.
func tiedBefore(p fit.Piece) []Ask {
	asks := tiedUp(p)
	asks[0].Aside = func(d *Draft) bool { return isHitch(p) || !d.tiedToday(p) }
	return asks
}

// hitchesTied asks it of the hitch loops that were tied on the day of the session,
// once the first hang has shown their lengths.
func hitchesTied() Step {
	s := Step{ID: "tied", Title: "Hitch loops tied today", Phase: Close}
	for _, p := range []fit.Piece{fit.PieceHitchLeft, fit.PieceHitchRight} {
		for _, a := range tiedUp(p) {
			a.When = both(a.When, func(d *Draft) bool {
				return d.tiedToday(p) && !d.Hanging() && len(d.Session.Fit.Hangs) == 1 && d.lastChange(p) < 0
			})
			s.Asks = append(s.Asks, a)
		}
	}
	return s
}

func isHitch(p fit.Piece) bool { return p == fit.PieceHitchLeft || p == fit.PieceHitchRight }

// tiedToday says whether p was tied on the day of the session, and not before an
// earlier one of the same day.
func (d *Draft) tiedToday(p fit.Piece) bool {
	on := d.Session.Tied[p].On
	for _, e := range []*sessions.Session{d.carried, d.Followed} {
		if e != nil && e.Tied[p].On.Equal(on) {
			return false
		}
	}
	return !on.IsZero() && on.Format(time.DateOnly) == d.Session.Started.Format(time.DateOnly)
}

// finished is p as it was tied, in the usual way; its Check fails where its length
// was not measured, or its cord is not told.
func (d *Draft) finished(p fit.Piece) fit.Cord {
	mm := d.length(p)
	if i := d.lastChange(p); i >= 0 && len(d.Session.Fit.Changes[i].Measured) == 0 {
		mm = fit.Number{}
	}
	return fit.CordFor(&d.Session.Fit, p, mm.V)
}

// waysToTie are c as it may have been tied, the usual way first.
func waysToTie(c fit.Cord) []fit.Cord {
	hitches := []fit.Knot{fit.NoKnot}
	if c.Closed() {
		hitches = []fit.Knot{fit.GirthHitch, fit.NoKnot}
	}
	out := []fit.Cord{c}
	for _, k := range []fit.Knot{fit.DoubleFishermans, fit.TripleFishermans, fit.ScaffoldKnot, fit.FigureEightLoop} {
		for _, h := range hitches {
			way := c.WithClosing(k)
			way.Hitch = h
			if way.Check() == nil && !slices.Contains(out, way) {
				out = append(out, way)
			}
		}
	}
	return out
}

// tiedHow are the knots of c in words.
func tiedHow(c fit.Cord, unit string) string {
	switch {
	case c.Closed():
		return fmt.Sprintf("%s, %s", c.Closing, c.Hitch)
	case c.Eyed():
		return fmt.Sprintf("%s at both ends, eyes of %s", c.Closing, rules.FormatLength(c.Eye, unit))
	}
	return c.Closing.String() + " at both ends"
}

// tellTied tells what would be kept of p.
func (d *Draft) tellTied(p fit.Piece) []string {
	c, t := d.finished(p), d.tied[p]
	show := func(mm float64) string { return rules.FormatLength(mm, string(d.Session.Unit)) }
	parts := []string{"cut " + show(t.cut.V), "finished " + show(c.Finished), "both tails " + show(t.tails.V), fmt.Sprintf("%g mm cord", c.Diameter)}
	if c.Use == fit.CordHitch {
		parts = append(parts, fmt.Sprintf("%d turns on rope of %g mm", c.Wraps, c.Host))
	}
	return []string{rules.Upper(rules.PieceName(p)) + ": " + strings.Join(parts, ", ") + ". With other knots than these keep it with hangtape cut --tied."}
}

// keepTied asks for p, tied as c, to be kept, and goes on.
func (s *State) keepTied(p fit.Piece, c fit.Cord) {
	if s.ReadOnly != "" {
		s.Said = Said{Kind: Refused, Text: "not kept: " + s.ReadOnly}
		return
	}
	d := s.Draft.clone()
	c.Tail = 0 // what came out is told
	t := fit.TiedCord{Cord: c, Cut: d.tied[p].cut.V, Tails: d.tied[p].tails.V}
	if err := t.Check(); err != nil {
		text := err.Error()
		if wrong := (*fit.CordError)(nil); errors.As(err, &wrong) {
			text = fmt.Sprintf("%s is %s; accepted is %s", map[string]string{"cut": "the length that was cut", "both-tails": "the length of both tails"}[wrong.Name], wrong.Found, wrong.Accepted)
		}
		s.Said = Said{Kind: Refused, Text: "not kept: " + text}
		return
	}
	d.tied[p].kept = true
	s.Draft, s.Tied = d, &TiedUp{p, t}
	s.forward()
}

// keptTied takes in what came of keeping a piece; one that was not kept is asked
// for again.
func (s *State) keptTied(e KeptTied) {
	if e.Err != nil {
		s.tied[e.Piece].kept = false
		s.Said = Said{Kind: Refused, Text: "the piece of cord: " + e.Err.Error()}
		return
	}
	s.Cord = e.Cord
	s.Said = Said{Kind: Noted, Text: fmt.Sprintf("kept with your own pieces: the %s, whose %s", rules.PieceName(e.Piece), e.Words)}
}
