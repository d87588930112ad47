package drill

import "math"

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
		{"Sit. One hand takes the Garda hitch, the foot stays in the loop and comes up with it, until the thigh is level.", []Expectation{e[GardaLevel], e[GardaTaut]}},
		{"Bring the foot under the body, close to the rope, and stand up in the loop; the leg pushes, the arms only steady.", []Expectation{e[Gain]}},
		{"Standing, both hands go under the wraps and shove both hitches up in one move.", nil},
		{"Sit back slowly until both hitches carry. Take up the Garda hitch at once: the tether is slackest now.", []Expectation{e[GardaLow]}},
	}}
}

// MovesFor is how many moves a climb of height mm takes; 0 where a move wins
// nothing or is not known.
func (r Rehearsal) MovesFor(height float64) int {
	if !(r.Net.Value > 0) {
		return 0
	}
	return int(math.Ceil(height / r.Net.Value))
}
