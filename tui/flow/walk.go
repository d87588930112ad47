package flow

import "fmt"

// after is the next question that is asked, in the order of the table.
func (s *State) after(p Place) (Place, bool) {
	for st, a := p.Step, p.Ask+1; st < len(s.Steps); st, a = st+1, 0 {
		for ; a < len(s.Steps[st].Asks); a++ {
			if s.Steps[st].Asks[a].onTheWay(&s.Draft) {
				return Place{Step: st, Ask: a, Hang: s.Hang}, true
			}
		}
	}
	return p, false
}

func (s *State) before(p Place) (Place, bool) {
	for st, a := p.Step, p.Ask-1; st >= 0; {
		for ; a >= 0; a-- {
			if s.Steps[st].Asks[a].onTheWay(&s.Draft) {
				return Place{Step: st, Ask: a, Hang: s.Hang}, true
			}
		}
		if st--; st >= 0 {
			a = len(s.Steps[st].Asks) - 1
		}
	}
	return p, false
}

func (s *State) first() Place { return Place{Hang: s.Hang} }

// placeOf is the first question of a step that is asked now, or the next after it.
func (s *State) placeOf(id string) Place {
	for i, st := range s.Steps {
		if st.ID == id {
			p, _ := s.after(Place{Step: i, Ask: -1})
			return p
		}
	}
	panic("flow: no step " + id)
}

// placeAside is the first question of a step that is not on the way.
func (s *State) placeAside(id string) Place {
	for i, st := range s.Steps {
		if st.ID == id {
			return Place{Step: i, Hang: s.Hang}
		}
	}
	panic("flow: no step " + id)
}

// Find is where the answer with this key in the session file is asked for.
func (s *State) Find(key string) (Place, bool) {
	d := s.Draft
	for h := range max(1, len(s.Session.Fit.Hangs)) {
		d.Hang = h
		for st := range s.Steps {
			for a, ask := range s.Steps[st].Asks {
				if ask.asked(&d) && d.Slot(ask) == key {
					return Place{Step: st, Ask: a, Hang: h}, true
				}
			}
		}
	}
	return Place{}, false
}

// move goes to p and remembers the way back.
func (s *State) move(p Place) {
	if p == s.At {
		return
	}
	s.trail = append(s.trail[:len(s.trail):len(s.trail)], s.At)
	s.At, s.Hang = p, p.Hang
	s.enterField()
}

func (s *State) forward() {
	s.triedHere()
	p, ok := s.after(s.At)
	if !ok {
		return
	}
	if s.ask(p).Key == "down" { // up as long as something is still wanted
		if w, ok := s.firstWanted(Aloft); ok {
			p = w
		}
	}
	s.move(p)
}

func (s *State) back() {
	for n := len(s.trail); n > 0; n-- {
		p := s.trail[n-1]
		d := s.Draft
		d.Hang = p.Hang
		s.trail = s.trail[: n-1 : n-1]
		if s.ask(p).asked(&d) && p != s.At {
			s.At, s.Hang = p, p.Hang
			s.enterField()
			return
		}
	}
	p, ok := s.before(s.At)
	if !ok {
		s.Said = Said{Kind: Noted, Text: "this is the first question"}
		return
	}
	s.At = p
	s.enterField()
}

// enterField points the field at a new value, behind those that were taken.
func (s *State) enterField() {
	a := s.Ask()
	s.Edit = a.Told(&s.Draft)
}

// field names the text field in use: one for each taken value and one for a new one.
func (s *State) field() string {
	a := s.Ask()
	if s.Edit == a.Told(&s.Draft) {
		return s.Slot(a)
	}
	return fmt.Sprintf("%s#%d", s.Slot(a), s.Edit)
}
