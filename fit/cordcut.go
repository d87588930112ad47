package fit

import "math"

// A CordPart is where some of the cord goes.
type CordPart struct {
	Name   string // strands, eyes, wraps, hitch, bend, ends, tails, trimming
	Count  int
	Each   float64 // mm
	Length float64 // mm, of all of the count
}

// A CordCut is how much cord to cut, and where it goes.
type CordCut struct {
	Length   float64    // mm, the sum of the parts
	Parts    []CordPart // in the order in which a piece is laid out, tied and trimmed
	Takes    float64    // mm, expected without trimming
	Interval [2]float64 // mm, what it takes with 95 % probability
}

// TrimmingFloor is the least that is cut for trimming however many pieces were
// tied, in multiples of the cord's diameter: what dressing and setting a knot
// may still draw in (judgement).
const TrimmingFloor = 2

// Cut is how much to cut for c, which must stand its Check: with 95 %
// probability both tails come out no shorter than c.Tail. The length is rounded
// up to a multiple of mark, in mm; 0 for none.
//
//	cut = strands·finished + eyes + wraps + hitch + bend or ends + tails + trimming
func (m *CordModel) Cut(c Cord, mark float64) CordCut {
	var cut CordCut
	add := func(name string, count int, each float64) {
		if length := float64(count) * each; length != 0 {
			cut.Parts = append(cut.Parts, CordPart{name, count, each, length})
			cut.Length += length
		}
	}
	add("strands", c.Strands, c.Finished)
	add("eyes", 2, c.Eye)
	add("wraps", c.Wraps, WrapLength(1, c.Diameter, c.Host))
	closing, _ := m.Coefficient(c.Closing)
	if c.Closed() {
		hitch, _ := m.Coefficient(c.Hitch)
		add("hitch", 1, hitch*c.Diameter)
		add("bend", 1, closing*c.Diameter)
	} else {
		add("ends", 2, closing*c.Diameter)
	}
	add("tails", 2, c.Tail)
	cut.Takes = cut.Length

	mean, _ := m.expect(c.knots())
	above := func(p float64) float64 { return (m.quantile(c.knots(), p) - mean) * c.Diameter }
	cut.Interval = [2]float64{cut.Takes + above(0.025), cut.Takes + above(0.975)}
	trimming := max(above(0.95), TrimmingFloor*c.Diameter)
	if mark > 0 {
		trimming = math.Ceil((cut.Takes+trimming)/mark-1e-9)*mark - cut.Takes
	}
	add("trimming", 1, trimming)
	return cut
}
