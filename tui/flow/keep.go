package flow

import (
	"fmt"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/sessions"
)

// keep takes over the earlier session's length, or says that the mass is what it
// was: an answer of today, which bears no mark.
func (s *State) keep() {
	a := s.Ask()
	old := s.EarlierOf(a)
	if len(old) == 0 || !a.Keepable() {
		s.Said = Said{Kind: Noted, Text: "there is no earlier length to keep here"}
		return
	}
	if why := s.StaleBy(a); why != "" {
		s.Said = Said{Kind: Noted, Text: "not kept: " + why + " made it stale; take it back under what is new, or lay the tape on"}
		return
	}
	d := s.Draft.clone()
	if a.Key == massKey {
		d.Session.Fit.Mass, d.Session.Fit.MassU = s.Earlier.Fit.Mass, s.Earlier.Fit.MassU
	} else {
		d.keep(a.Reading)
	}
	if !s.commit(d) {
		return
	}
	s.forward()
	s.Said = Said{Kind: Noted, Text: fmt.Sprintf("kept from %s: %s", s.Earlier.Started.Format(time.DateOnly), a.Title)}
}

// keep takes over the length r of the session that is followed, as kept, with
// the day on which somebody laid it on.
func (d *Draft) keep(r fit.Reading) {
	key := fit.LaidKey(r)
	d.Session.Fit.Laid[r] = laidNow(d.Followed, r)
	d.unkeep(key)
	d.Session.Fit.Kept = append(d.Session.Fit.Kept, keptFrom(d.Followed, key))
}

// keptFrom is where a length of e comes from: another session, where e has kept
// it itself.
func keptFrom(e *sessions.Session, key string) fit.Kept {
	for _, k := range e.Fit.Kept {
		if k.Key == key {
			return k
		}
	}
	return fit.Kept{Key: key, Session: e.ID, Taken: e.Started}
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

// StaleBy is what is new that has made the earlier session's answer to a stale;
// empty where nothing has.
func (s *State) StaleBy(a Ask) string { return s.stale()[a.Key] }

// massKey is the climber's mass, which changes with layers and meals.
const massKey = "climber.mass_kg"

// Keepable says whether an earlier session's answer to a may be taken over by an
// act of its own: lengths of the climber and the kit and the mass, never heights.
func (a Ask) Keepable() bool {
	return a.Key == massKey || a.Kind == Reading && a.Reading < fit.NumReadings && !a.Reading.IsHeight() && a.Reading != fit.Ahead
}

// EarlierOf are the readings of a in the session that this one follows.
func (s *State) EarlierOf(a Ask) []float64 {
	switch {
	case s.Earlier == nil:
		return nil
	case a.Key == massKey && s.Earlier.Fit.Mass.Known:
		return []float64{s.Earlier.Fit.Mass.V}
	case a.Kind != Reading || a.Reading >= fit.NumReadings:
		return nil
	}
	if !a.Reading.IsHeight() {
		return laidNow(s.Earlier, a.Reading)
	}
	e := Draft{Session: *s.Earlier, Hang: len(s.Earlier.Fit.Hangs) - 1}
	if e.Hang < 0 {
		return nil
	}
	return append([]float64(nil), *a.cell(&e).(*[]float64)...)
}

// HangBefore is the latest hang before the present one that read the height a,
// counted from 1, and its readings; 0 for none. Each hang counts from its own hip.
func (s *State) HangBefore(a Ask) (n int, readings []float64) {
	if a.Kind != Reading || a.Reading >= fit.NumReadings || !a.Reading.IsHeight() {
		return 0, nil
	}
	for h := min(s.Hang, len(s.Session.Fit.Hangs)) - 1; h >= 0; h-- {
		if list := s.Session.Fit.Hangs[h].Heights[a.Reading]; len(list) > 0 {
			return h + 1, list
		}
	}
	return 0, nil
}
