package flow

import (
	"fmt"
	"time"

	"example.com/hangtape/fit"
)

func (s *State) pick(i int, now time.Time) {
	options := s.Options()
	if i < 0 || i >= len(options) {
		s.Said = Said{Kind: Refused, Text: fmt.Sprintf("answer with a number from 1 to %d", len(options))}
		return
	}
	o := options[i]
	switch {
	case o.Act == Sign:
		s.sign(now)
		return
	case o.Act == SignThenNext:
		if s.sign(now); s.Left {
			s.Next = NextStudent
		}
		return
	case o.Act == EndReCheck:
		s.endReCheck(now)
		return
	case o.do != nil:
		s.Down = false
		o.do(s)
		return
	}
	d := s.Draft.clone()
	d.Down = false
	if s.Ask().Key == "drill.result" {
		d.drill.just = false
	}
	if o.set != nil {
		o.set(&d)
	}
	switch {
	case o.Act == ClimbUp:
		d.Session.Fit.Hangs = append(d.Session.Fit.Hangs, fit.Hang{Started: now})
		d.Hang = len(d.Session.Fit.Hangs) - 1
		d.ToSet = [fit.NumPieces]bool{}
	case o.Act == DrillUp:
		d.startDrill(now)
	case o.Act == StayUp:
		d.Hang = max(0, len(d.Session.Fit.Hangs)-1)
	case o.stops:
		d.stop(now)
	}
	if o.set != nil || o.Act == ClimbUp || o.Act == DrillUp || o.stops {
		if !s.commit(d) {
			return
		}
	} else {
		s.Draft = d
	}
	if w, ok := s.firstWanted(Ground); ok && o.stops { // the review can wait for what needs no hanging
		s.move(w)
		return
	}
	s.act(o.Act)
}

func (s *State) act(act Act) {
	switch act {
	case GoOn, DrillUp:
		s.forward()
	case Stay:
	case ClimbUp, ToHang, StayUp:
		s.At.Hang = s.Hang
		if act == StayUp && s.Drilling() {
			s.move(s.openDrill())
			return
		}
		s.move(s.openHeight())
	case DrillStop:
		s.move(s.placeInDrill("drill.down"))
	case DrillAgain:
		s.move(s.placeInDrill("drill.start"))
	case ToDrilled:
		s.move(s.placeInDrill("drill.result"))
	case Landed:
		s.move(s.placeOf("tied"))
	case ToReview:
		s.move(s.placeOf("review"))
	case Again:
		s.move(s.placeOf("changes"))
	case Leave:
		s.Left = true
	case ToStudents:
		s.Next = Students
	case Sign, SignThenNext, EndReCheck:
	}
}

// openHeight is the first height of the hang that was not read, or its first.
func (s *State) openHeight() Place {
	start := s.placeOf("seated")
	for p, ok := start, true; ok && s.Steps[p.Step].Phase == Aloft; p, ok = s.after(p) {
		if a := s.ask(p); a.Told(&s.Draft) == 0 {
			return p
		}
	}
	return start
}
