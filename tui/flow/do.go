package flow

import (
	"errors"
	"maps"
	"time"

	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

// Do is the state after e.
func (s State) Do(e Event) State {
	s.Said, s.Next, s.Tied = Said{}, NoNext, nil
	wentOn := s.wentOn
	s.wentOn = false
	switch e := e.(type) {
	case Typed:
		s.setText(s.field(), e.Text)
		s.insisted = true // whoever types the same again means it
	case Enter:
		if a := s.Ask(); wentOn && (a.Kind == Choice || blank(s.Text())) {
			s.Said = Said{Kind: Noted, Text: "that was taken, and this is the next question: Enter once more goes on"}
			break
		}
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
	case ToWanted:
		s.toWanted()
	case DownNow:
		s.downNow(e.Now)
	case GoTo:
		s.move(e.Place)
	case Advised:
		s.Advice = e.Answer
	case Apply:
		s.apply(e)
	case KeptTied:
		s.keptTied(e)
	case Try:
		s.try(e.Piece, e.To)
	case TryMarks:
		s.tryMarks(e.Piece, e.Marks)
	case TryPiece:
		s.OnTrial = e.Piece
	case TryBack:
		s.tryBack(e.Piece)
	case EndTrial:
		s.endTrial()
	}
	s.lookBack()
	s.lookAtDrill()
	return s
}

// WentOn says whether a reading that was taken has just led on by itself, so that
// an empty answer is asked about once.
func (s *State) WentOn() bool { return s.wentOn }

// setText keeps what is typed in a field; an empty text takes the field out.
func (s *State) setText(field, text string) {
	s.Texts = maps.Clone(s.Texts)
	if text == "" {
		delete(s.Texts, field)
		return
	}
	s.Texts[field] = text
}

// enter is Enter: it takes what is in the field, or goes on.
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
	if s.doubts(a, v, now) {
		return
	}
	if a.note != nil {
		a.note(s, v)
		return
	}
	field, stays := s.field(), a.Kind == Reading && !s.Once(a)
	d := s.Draft.clone()
	a.add(&d, v)
	d.unkeep(s.Slot(a))
	if !s.commit(d) {
		return
	}
	s.setText(field, "")
	s.Said = Said{Taken, a.Says(v.echo), v.echo}
	if stays {
		s.Edit = a.Told(&s.Draft)
		return
	}
	s.Said.Echo = "" // of another question than the one to come
	s.forward()
	s.wentOn = a.Kind == Reading
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
		if s.doubts(a, v, now) {
			return
		}
		a.replace(&d, s.Edit, v)
		said = Said{Taken, a.Says(v.echo), v.echo}
	}
	if !s.commit(d) {
		return
	}
	s.setText(field, "")
	s.enterField()
	s.Said = said
}

// commit makes d the draft unless it says what cannot be and the one before
// did not; what was asked about and is meant is taken all the same, and the
// rules wait until it is put right.
func (s *State) commit(d Draft) bool {
	if s.ReadOnly != "" {
		s.Said = Said{Kind: Refused, Text: "not taken: " + s.ReadOnly}
		return false
	}
	d.settle()
	if why := unreadable(&d.Session); why != "" {
		s.Said = Said{Kind: Refused, Text: why}
		return false
	}
	report, err := s.Judge(&d.Session)
	if err != nil && s.Wrong == nil && s.doubted != s.question() {
		s.Said = Said{Kind: Refused, Text: err.Error()}
		return false
	}
	d.Advice = nil
	s.Draft, s.Report, s.Wrong = d, report, err
	s.weigh()
	s.want()
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

// skipStep goes to the first question of the steps to come.
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
