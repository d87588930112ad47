package flow

import (
	"fmt"
	"time"

	"example.com/hangtape/fit"
)

// keep takes over the earlier session's length.
func (s *State) keep() {
	a := s.Ask()
	old := s.EarlierOf(a)
	if len(old) == 0 || !a.Keepable() {
		s.Said = Said{Kind: Noted, Text: "there is no earlier length to keep here"}
		return
	}
	d := s.Draft.clone()
	*a.cell(&d).(*[]float64) = old
	d.unkeep(s.Slot(a))
	d.Session.Fit.Kept = append(d.Session.Fit.Kept, fit.Kept{Key: s.Slot(a), Session: s.Earlier.ID, Taken: s.Earlier.Started})
	if !s.commit(d) {
		return
	}
	s.forward()
	s.Said = Said{Kind: Noted, Text: fmt.Sprintf("kept from %s: %s", s.Earlier.Started.Format(time.DateOnly), a.Title)}
}

// unkeep drops the mark of a kept length that is read anew.
func (d *Draft) unkeep(key string) {
	for i, k := range d.Session.Fit.Kept {
		if k.Key == key {
			d.Session.Fit.Kept = append(d.Session.Fit.Kept[:i:i], d.Session.Fit.Kept[i+1:]...)
			return
		}
	}
}

// Keepable says whether an earlier session's answer to a may be taken over:
// lengths of the climber and the kit, never heights.
func (a Ask) Keepable() bool {
	return a.Kind == Reading && a.Reading < fit.NumReadings && !a.Reading.IsHeight() && a.Reading != fit.Ahead
}

// EarlierOf are the readings of a in the session that this one follows.
func (s *State) EarlierOf(a Ask) []float64 {
	if s.Earlier == nil || a.Kind != Reading || a.Reading >= fit.NumReadings {
		return nil
	}
	e := Draft{Session: *s.Earlier, Hang: len(s.Earlier.Fit.Hangs) - 1}
	if a.Reading.IsHeight() && e.Hang < 0 {
		return nil
	}
	return append([]float64(nil), *a.cell(&e).(*[]float64)...)
}
