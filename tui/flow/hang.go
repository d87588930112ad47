package flow

import "time"

func (s *State) downNow(now time.Time) {
	if !s.Hanging() {
		s.Said = Said{Kind: Noted, Text: "nobody hangs: the clock does not run"}
		return
	}
	d := s.Draft.clone()
	d.stop(now)
	d.Down = true
	s.commit(d)
	s.move(s.placeOf("down"))
}

// stop ends the hang that runs. A clock that went backwards ends it at its start.
func (d *Draft) stop(now time.Time) {
	h := &d.Session.Fit.Hangs[len(d.Session.Fit.Hangs)-1]
	h.Ended = now
	if now.Before(h.Started) {
		h.Ended = h.Started
	}
}

// resume takes back that the last hang ended.
func resume(d *Draft) { d.Session.Fit.Hangs[len(d.Session.Fit.Hangs)-1].Ended = time.Time{} }
