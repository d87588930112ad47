package instructor

import (
	"example.com/hangtape/cmd/trial/truth"
	"example.com/hangtape/fit"
)

// A Setting is a piece and the length, mm, that it is to be set to.
type Setting struct {
	Piece fit.Piece
	To    float64
}

// wrapSpread is how near the wraps over a loop tied anew come to what they were,
// mm, as a standard deviation.
const wrapSpread = 3

// Set changes the pieces for good, as near as hands come, lays them on the tape
// again where that can be done on the ground, then hangs the climber and reads
// the heights that the change made stale.
func (s *Session) Set(settings []Setting) {
	if len(settings) == 0 {
		return
	}
	stale := []fit.Reading{fit.Hip}
	after := len(s.Fit.Hangs)
	for _, set := range settings {
		s.set(set, after)
		stale = append(stale, touched[set.Piece]...)
	}
	s.HangAndRead(inOrder(stale))
}

// set changes one piece after so many hangs.
func (s *Session) set(set Setting, after int) {
	p := pieces[set.Piece]
	to := set.To + s.dice.Tent(0, truth.TieSpread)
	if s.Fit.Kit.Pieces[set.Piece].Change == fit.Slides {
		to = set.To + s.dice.Tent(0, truth.SlideSpread)
	}
	s.Kit = s.Kit.With(p, to)
	switch p {
	case truth.LeftLoop:
		s.world.WrapHeight[truth.Left] += s.dice.Tent(0, wrapSpread)
	case truth.RightLoop:
		s.world.WrapHeight[truth.Right] += s.dice.Tent(0, wrapSpread)
	}
	s.Retied++
	s.Fit.Changes = append(s.Fit.Changes, fit.Change{Piece: set.Piece, To: set.To, AfterHang: after})
	if _, ok := laid[set.Piece]; ok {
		s.layAgain(len(s.Fit.Changes) - 1)
	}
}

// layAgain lays a changed piece on the tape. A loop cannot be laid: it is read in
// the next hang.
func (s *Session) layAgain(change int) {
	c := &s.Fit.Changes[change]
	if r, ok := laid[c.Piece]; ok {
		c.Measured = s.take(r, s.Plan.times(r), 0)
	}
}

// StayBelow notes the least rope above that the climber will use from now on.
func (s *Session) StayBelow(above float64) {
	s.Kit.LeastAbove = above
	s.Fit.Rope.LeastAbove = fit.Some(above)
}

// inOrder is the readings, each once, in the order in which they are read.
func inOrder(readings []fit.Reading) []fit.Reading {
	var wanted [fit.NumReadings]bool
	for _, r := range readings {
		wanted[r] = true
	}
	var out []fit.Reading
	for r, want := range wanted {
		if want {
			out = append(out, fit.Reading(r))
		}
	}
	return out
}
