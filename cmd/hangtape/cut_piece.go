package main

import (
	"fmt"
	"math"
	"strconv"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/tui/number"
)

// A cutAnswer is all that there is to say of a piece to be cut.
type cutAnswer struct {
	cord  fit.Cord
	cut   fit.CordCut
	model *fit.CordModel
	tied  []fit.TiedCord
	spool float64 // mm; 0 where none was asked for
	unit  string
}

func cutPiece(w *world, f cutFlags, cord fit.Cord) error {
	a := cutAnswer{cord: cord, unit: string(f.unit)}
	if f.spool != "" {
		var err error
		if a.spool, err = lengthTyped("--spool", f.spool, a.unit, number.Laid, number.Range{}); err != nil {
			return err
		}
	}
	var err error
	if a.tied, err = tiedPieces(w); err != nil {
		return err
	}
	a.model = fit.LearnCord(a.tied)
	a.cut = a.model.Cut(cord, rules.MarkIn(string(f.unit)))
	if a.spool > 0 && a.cut.Length > a.spool {
		return usage("--spool is %s, and the piece is cut from %s", a.show(a.spool), a.show(a.cut.Length))
	}
	if f.json {
		return writeJSON(w.out, a.json())
	}
	return writePage(w.out, a.text())
}

func (a cutAnswer) show(mm float64) string { return rules.FormatLength(mm, a.unit) }

// fromSpool is how many pieces come out of the spool, and what is left of it.
func (a cutAnswer) fromSpool() (pieces int, left float64) {
	pieces = int(math.Floor(a.spool/a.cut.Length + 1e-9))
	return pieces, max(0, a.spool-float64(pieces)*a.cut.Length)
}

// text is the answer for people, in the order in which the piece is cut, hung
// and trimmed.
func (a cutAnswer) text() *page {
	p := &page{unit: a.unit}
	p.line(fmt.Sprintf("Cut %s of %s mm cord for a %s of %s.", a.show(a.cut.Length), shortest(a.cord.Diameter), useNames[a.cord.Use], a.show(a.cord.Finished)))
	p.section("Where it goes")
	for _, part := range rules.CordParts(a.cord, a.cut, a.unit) {
		p.line(fmt.Sprintf("  %-26s %10s   %s", part.Name, part.Length, part.How))
	}
	p.line(fmt.Sprintf("  %-26s %10s", "cut", a.show(a.cut.Length)))
	p.line("")
	p.line(indented(2, fmt.Sprintf("It takes %s with its tails, and most likely (95 %%) %s to %s. Cut at %s, both tails come out long enough in 95 of 100 cases.",
		a.show(a.cut.Takes), a.show(a.cut.Interval[0]), a.show(a.cut.Interval[1]), a.show(a.cut.Length))))
	p.line(indented(2, learntFrom(a.tied)))
	if a.spool > 0 {
		n, left := a.fromSpool()
		p.section("Spool")
		p.item("", fmt.Sprintf("%s gives %d of them, and %s is left.", spoolLength(a.spool, a.unit), n, a.show(left)))
	}
	p.section("In this order")
	for i, step := range a.steps() {
		p.item("", fmt.Sprintf("%d. %s", i+1, step))
	}
	p.granted(a.model, a.knots())
	p.section("Cautions")
	p.list(append(rules.CordCautions(), rules.ShortCaution))
	return p
}

// granted tells what knots are taken to use and how the program knows.
func (p *page) granted(m *fit.CordModel, knots []fit.Knot) {
	p.section("Taken for granted, in diameters d of the cord, with one standard deviation")
	for _, k := range knots {
		i := k.Info()
		v, u := m.Coefficient(k)
		prior := ""
		if m.Pieces > 0 {
			prior = fmt.Sprintf(", before any piece was tied %.0f ± %.0f d", i.PerD, i.U)
		}
		p.item("", fmt.Sprintf("- %s %.1f ± %.1f d%s: %s", k, v, u, prior, i.Origin))
	}
	said := "judgement, until your own pieces say better"
	if m.Pieces > 0 {
		said = "what your own pieces say, before that ± 3 d"
	}
	p.item("", fmt.Sprintf("- from piece to piece tied alike ± %.1f d: %s", m.Scatter(), said))
}

// learntFrom says whose pieces an answer rests on.
func learntFrom(tied []fit.TiedCord) string {
	doubtful := 0
	for _, r := range fit.CordResiduals(tied) {
		if r.Doubtful() {
			doubtful++
		}
	}
	switch {
	case len(tied) == 0:
		return "No piece of your own was tied yet, so trimming is generous."
	case doubtful > 0:
		return fmt.Sprintf("Learnt from %s of your own (%d questioned: see hangtape cut --tied).", rules.Count(len(tied), "piece", "pieces"), doubtful)
	}
	return fmt.Sprintf("Learnt from %s of your own.", rules.Count(len(tied), "piece", "pieces"))
}

// steps are what to do with the cord, in order.
func (a cutAnswer) steps() []string {
	c := a.cord
	var tie string
	switch {
	case c.Use == fit.CordHitch:
		tie = fmt.Sprintf("Close the loop with a %s; lay %s on the rope, side by side and uncrossed; put the loop on the connector (%s).", c.Closing, rules.Count(c.Wraps, "turn", "turns"), c.Hitch)
	case c.Closed():
		tie = fmt.Sprintf("Close the loop with a %s and put it on the connector (%s).", c.Closing, c.Hitch)
	case c.Eyed():
		tie = fmt.Sprintf("Tie a %s at each end, each eye %s long.", c.Closing, a.show(c.Eye))
	default:
		tie = fmt.Sprintf("Tie a %s at each end.", c.Closing)
	}
	return []string{
		fmt.Sprintf("Cut %s and seal both ends.", a.show(a.cut.Length)),
		tie,
		"Dress every knot and set it hard by hand, then with a test weight, low, never a person first.",
		fmt.Sprintf("Hang it low and lay the tape on, snug: %s is wanted. Too long or too short: shift the knot, set it again, read again.", a.show(c.Finished)),
		fmt.Sprintf("Before trimming, read both tails together and keep what the piece took: hangtape cut --tied %s with --cut, --finished, --both-tails and what else was said here.", c.Use.Key()),
		fmt.Sprintf("Trim, each tail no shorter than %s, and seal the ends.", a.show(c.Tail)),
	}
}

// knots are those that the piece is tied with.
func (a cutAnswer) knots() []fit.Knot {
	if !a.cord.Closed() || a.cord.Hitch == fit.NoKnot {
		return []fit.Knot{a.cord.Closing}
	}
	return []fit.Knot{a.cord.Hitch, a.cord.Closing}
}

var useNames = map[fit.CordUse]string{
	fit.CordHitch:    "hitch loop",
	fit.CordFootLoop: "foot loop",
	fit.CordTether:   "tether",
	fit.CordBridge:   "bridge",
}

// shortest is a number with no more decimals than it needs.
func shortest(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
