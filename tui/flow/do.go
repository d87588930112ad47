package flow

import (
	"errors"
	"fmt"
	"maps"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

// Do is the state after e.
func (s State) Do(e Event) State {
	s.Said = Said{}
	switch e := e.(type) {
	case Typed:
		s.setText(s.field(), e.Text)
	case Enter:
		s.enter(e.Now)
	case Pick:
		s.pick(e.Option, e.Now)
	case Skip:
		s.forward()
	case SkipStep:
		s.skipStep()
	case Back:
		s.back()
	case Older:
		s.walk(-1)
	case Newer:
		s.walk(+1)
	case Keep:
		s.keep()
	case DownNow:
		s.downNow(e.Now)
	case GoTo:
		s.move(e.Place)
	}
	return s
}

func (s *State) setText(field, text string) {
	s.Texts = maps.Clone(s.Texts)
	if text == "" {
		delete(s.Texts, field)
		return
	}
	s.Texts[field] = text
}

func (s *State) enter(now time.Time) {
	a := s.Ask()
	switch {
	case a.Kind == Choice:
		s.pick(s.Marked(), now)
	case s.Edit < a.Told(&s.Draft):
		s.correct(a, now)
	case blank(s.Text()):
		s.forward()
	default:
		s.take(a, now)
	}
}

// take reads the field as a new answer.
func (s *State) take(a Ask, now time.Time) {
	v, err := a.parse(s.Text(), s.Session.Unit, now)
	if err != nil {
		s.Said = Said{Kind: Refused, Text: err.Error()}
		return
	}
	field := s.field()
	d := s.Draft.clone()
	a.add(&d, v)
	if a.Kind == Reading {
		d.unkeep(s.Slot(a))
	}
	if !s.commit(d) {
		return
	}
	s.setText(field, "")
	s.Said = Said{Taken, a.Title + ": " + v.echo, v.echo}
	if a.Kind == Reading {
		s.Edit = a.Told(&s.Draft)
		return
	}
	s.forward()
}

// correct puts the field in the place of a value taken before; empty takes it out.
func (s *State) correct(a Ask, now time.Time) {
	field, d := s.field(), s.Draft.clone()
	said := Said{Kind: Noted, Text: "taken out"}
	if blank(s.Text()) {
		a.remove(&d, s.Edit)
	} else {
		v, err := a.parse(s.Text(), s.Session.Unit, now)
		if err != nil {
			s.Said = Said{Kind: Refused, Text: err.Error()}
			return
		}
		a.replace(&d, s.Edit, v)
		said = Said{Taken, a.Title + ": " + v.echo, v.echo}
	}
	if !s.commit(d) {
		return
	}
	s.setText(field, "")
	s.enterField()
	s.Said = said
}

// commit makes d the draft unless it says what cannot be and the one before
// did not.
func (s *State) commit(d Draft) bool {
	d.settle()
	if why := unreadable(&d.Session); why != "" {
		s.Said = Said{Kind: Refused, Text: why}
		return false
	}
	report, err := s.Judge(&d.Session)
	if err != nil && s.Wrong == nil {
		s.Said = Said{Kind: Refused, Text: err.Error()}
		return false
	}
	s.Draft, s.Report, s.Wrong = d, report, err
	s.Saves++
	return true
}

// unreadable is why a file with this session in it could not be read again;
// empty where it could. Nothing is accepted that would not come back.
func unreadable(s *sessions.Session) string {
	_, err := sessions.Decode("", sessions.Encode(s))
	var file *sessions.FileError
	switch {
	case err == nil:
		return ""
	case errors.As(err, &file) && len(file.Faults) > 0:
		f := file.Faults[0]
		f.Key = rules.InputName(f.Key)
		return f.String()
	}
	return err.Error()
}

func (s *State) pick(i int, now time.Time) {
	options := s.Options()
	if i < 0 || i >= len(options) {
		s.Said = Said{Kind: Refused, Text: fmt.Sprintf("answer with a number from 1 to %d", len(options))}
		return
	}
	o := options[i]
	if o.Act == Sign {
		s.sign(now)
		return
	}
	d := s.Draft.clone()
	d.Down = false
	if o.set != nil {
		o.set(&d)
	}
	switch {
	case o.Act == ClimbUp:
		d.Session.Fit.Hangs = append(d.Session.Fit.Hangs, fit.Hang{Started: now})
		d.Hang = len(d.Session.Fit.Hangs) - 1
	case o.Act == StayUp:
		d.Hang = len(d.Session.Fit.Hangs) - 1
	case o.stops:
		d.stop(now)
	}
	if o.set != nil || o.Act == ClimbUp || o.stops {
		if !s.commit(d) {
			return
		}
	} else {
		s.Draft = d
	}
	s.act(o.Act)
}

func (s *State) act(act Act) {
	switch act {
	case GoOn:
		s.forward()
	case ClimbUp, ToHang, StayUp:
		s.At.Hang = s.Hang
		s.move(s.openHeight())
	case ToReview:
		s.move(s.placeOf("review"))
	case Again:
		s.move(s.placeOf("changes"))
	case Leave:
		s.Left = true
	case Sign:
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

func (s *State) skipStep() {
	p := s.At
	for q, ok := s.after(p); ok; q, ok = s.after(q) {
		if q.Step != p.Step {
			s.move(q)
			return
		}
	}
}

// walk moves the field among the values that were taken; one that is reached
// for the first time starts with its own text.
func (s *State) walk(by int) {
	a := s.Ask()
	n := a.Told(&s.Draft)
	to := s.Edit + by
	if a.Kind == Choice || to < 0 || to > n {
		return
	}
	s.Edit = to
	if to < n {
		if _, begun := s.Texts[s.field()]; !begun {
			s.setText(s.field(), a.Exact(&s.Draft, to, s.Session.Unit))
		}
	}
}

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

// sign signs the fitting off, unless something stands against it.
func (s *State) sign(now time.Time) {
	if against := s.Against(); len(against) > 0 {
		s.Said = Said{Kind: Refused, Text: "not signed: " + against[0]}
		return
	}
	d := s.Draft.clone()
	d.Session.Finished = now
	d.Session.Sign(d.SignBy, d.SignNote, now, s.Report)
	if s.commit(d) {
		s.Said = Said{Kind: Taken, Text: "signed by " + d.SignBy}
		s.Left = true
	}
}
