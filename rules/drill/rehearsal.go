package drill

import (
	"fmt"
	"math"

	"example.com/hangtape/rules"
)

// A Rehearsal teaches one move with this climber's numbers.
type Rehearsal struct {
	Moves []Move
	Net   Expectation // what one move climbs
}

// A Move is one thing to do, with what it comes to.
type Move struct {
	Do     string
	Expect []Expectation
}

func rehearsal(e [numQuantities]Expectation) Rehearsal {
	return Rehearsal{Net: e[NetGain], Moves: []Move{
		{"Sit. One hand takes the Garda hitch; the foot stays in the loop and comes up with it until the thigh is level.", []Expectation{e[GardaLow], e[GardaLevel], e[GardaTaut]}},
		{"Bring the foot back under the body, close to the rope, and stand up in the loop: the leg pushes, the arms only steady.", []Expectation{e[FootOut], e[Gain]}},
		{"Standing, both hands go under the wraps and shove both hitches up in one move.", []Expectation{e[HandsStanding], e[HandsSeated]}},
		{"Sit back slowly until both hitches carry. Draw the Garda hitch up at once: the tether is slackest now.", []Expectation{e[GardaLow], e[NetGain]}},
	}}
}

// Words teach the move, a line each: what to do, and under it what it comes to,
// with lengths in unit (mm, cm, in).
func (r Rehearsal) Words(unit string) []string {
	var out []string
	for i, m := range r.Moves {
		out = append(out, fmt.Sprintf("%d. %s", i+1, m.Do))
		for _, e := range m.Expect {
			out = append(out, "- "+e.In(unit))
		}
	}
	return out
}

// MovesFor is how many moves a climb of height mm takes, and between which
// numbers that lies with 95 % probability; 0 where a move climbs nothing or it is
// not known what it climbs, of most alone where it may climb nothing.
func (r Rehearsal) MovesFor(height float64) (moves, least, most int) {
	count := func(net float64) int {
		if !(net > 0) || !(height > 0) {
			return 0
		}
		return int(math.Ceil(height/net - 1e-9))
	}
	return count(r.Net.Value), count(r.Net.Value + rules.TwoSided*r.Net.U), count(r.Net.Value - rules.TwoSided*r.Net.U)
}

// Climb tells how many moves a climb of height mm takes, with lengths in unit (mm,
// cm, in).
func (r Rehearsal) Climb(height float64, unit string) rules.Saying {
	moves, least, most := r.MovesFor(height)
	up := rules.FormatBelow(height, unit)
	switch {
	case math.IsNaN(r.Net.Value):
		return rules.Say("%s up: what a move climbs is not known", up)
	case moves == 0:
		return rules.Say("%s up: a move climbs nothing", up)
	case most == 0:
		return rules.Say("%s up: about %d moves, at least %d; a move may climb nothing", up, moves, least)
	}
	return rules.Say("%s up: %d moves (%d to %d)", up, moves, least, most)
}
