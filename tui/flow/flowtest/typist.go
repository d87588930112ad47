// Package flowtest types finished sessions into a flow, for the tests of all
// that draws one.
package flowtest

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/flow"
)

// A Typist answers the questions of a flow with what a finished session says,
// whatever the order in which they come. It looks at the question that is asked
// and at nothing else, so it survives a new order of the steps.
type Typist struct {
	want    *sessions.Session
	hang    int            // the hang that is being read
	given   map[string]int // how many answers a field was given
	changed int            // how many changes were told
	told    bool           // a purpose was
}

// New is a typist who has want before them.
func New(want *sessions.Session) *Typist {
	return &Typist{want: want, given: map[string]int{}}
}

// Answer is what to type or pick now: a text, or the number of an option.
// An empty text is to go on.
func (y *Typist) Answer(s *flow.State) (text string, option int, isOption bool) {
	a := s.Ask()
	slot := s.Slot(a)
	if s.Said.Kind == flow.Doubted { // it is meant
		return "", 0, false
	}
	if a.Kind == flow.Choice {
		return "", y.option(s), true
	}
	want := y.values(a)
	n := y.given[slot]
	if n >= len(want) {
		return "", 0, false
	}
	y.given[slot]++
	return want[n], 0, false
}

// values are the texts that the finished session has for a question.
func (y *Typist) values(a flow.Ask) []string {
	d := flow.Draft{Session: *y.want.Clone(), Hang: y.hang, Change: y.changed}
	if a.Key == "changes.to_mm" {
		return []string{fmt.Sprint(y.want.Fit.Changes[y.changed].To)}
	}
	if strings.HasPrefix(a.Key, "sign_off") {
		return nil
	}
	return a.Values(&d, sessions.MM)
}

func (y *Typist) option(s *flow.State) int {
	w, f := y.want, &y.want.Fit
	switch a := s.Ask(); a.Key {
	case "hang":
		if n := len(s.Session.Fit.Hangs); n < len(f.Hangs) {
			y.hang = n
			return 0
		}
		return 1
	case "down":
		return 0
	case "review":
		act := flow.Leave
		if len(s.Session.Fit.Hangs) < len(f.Hangs) {
			act = flow.Again
		}
		return slices.IndexFunc(s.Options(), func(o flow.Option) bool { return o.Act == act })
	case "changes.piece":
		if y.changed < len(f.Changes) && f.Changes[y.changed].AfterHang == len(s.Session.Fit.Hangs) {
			return 1 + int(f.Changes[y.changed].Piece)
		}
		return 0
	case "changes.more":
		y.changed++
		return 1
	case "session.purpose":
		if !y.told { // with the first purpose everything is asked on the way
			y.told = true
			return 0
		}
		return map[sessions.Purpose]int{sessions.FirstFitting: 0, sessions.ReTune: 1, sessions.ReCheck: 2, sessions.Review: 3}[w.Purpose]
	case "kit.garda":
		return no(f.Kit.Garda)
	default:
		d := flow.Draft{Session: *w.Clone()}
		for p := range fit.NumPieces {
			if a.Key == "kit."+p.Key() {
				return no(f.Kit.Pieces[p].Present)
			}
		}
		return a.Mark(&d)
	}
}

func no(b bool) int {
	if b {
		return 0
	}
	return 1
}

// Blank is a session with nothing told but what a new one has.
func Blank(like *sessions.Session) sessions.Session {
	var s sessions.Session
	s.ID, s.Started, s.Purpose, s.Unit, s.Follows = like.ID, like.Started, sessions.FirstFitting, sessions.MM, like.Follows
	s.Fit.Tape = fit.Tape{Class: fit.ClassII, Division: 1, Hook: true}
	s.Fit.Started, s.Fit.RecheckDays = like.Started, like.Fit.RecheckDays
	return s
}

// Elsewhere is where to go before answering; ok is false where the question that
// is asked is the one to answer. What a hang passes over is told at its end, and
// the purpose last, since both settle what is asked on the way.
func (y *Typist) Elsewhere(s *flow.State) (p flow.Place, ok bool) {
	if s.Ask().Key == "review" && s.Session.Purpose != y.want.Purpose {
		return s.Find("session.purpose")
	}
	if s.Ask().Key == "down" { // what is passed over on the way
		for r := range fit.NumReadings {
			key := fit.HeightKey(y.hang, r)
			if r.IsHeight() && y.given[key] < len(y.want.Fit.Hangs[y.hang].Heights[r]) {
				return s.Find(key)
			}
		}
	}
	return p, false
}

// Now is the time of an answer: the times of the hangs in the finished
// session, so that the two files agree.
func (y *Typist) Now(s *flow.State) time.Time {
	switch h := y.want.Fit.Hangs; s.Ask().Key {
	case "hang":
		return h[min(len(s.Session.Fit.Hangs), len(h)-1)].Started
	case "down":
		return h[y.hang].Ended
	}
	return y.want.Started
}
