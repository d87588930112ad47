package tui

import (
	"io"
	"time"

	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/flow"
)

// Options is what the wizard is given from outside.
type Options struct {
	Store  *sessions.Store  // where sessions are kept
	Demo   *sessions.Store  // the demo's own folder
	School *sessions.School // nil: the defaults
	Now    func() time.Time
	In     io.Reader
	Out    io.Writer

	ASCII    bool // no signs beyond ASCII
	Contrast bool // no colours but the terminal's own two
}

func (o Options) school() *sessions.School {
	if o.School == nil {
		return sessions.DefaultSchool()
	}
	return o.School
}

func (o Options) breakAfter() time.Duration {
	return time.Duration(o.school().HangBreakMin * float64(time.Minute))
}

// given is the session as it was before anybody answered: what the school has
// settled, and what it took over from the one that it follows.
func (o Options) given(opened openedMsg) *sessions.Session {
	s := o.school().Begin()
	s.Started = opened.session.Started
	if e := opened.carriedFrom(); e != nil {
		flow.Carry(s, e)
	}
	if opened.earlier != nil {
		flow.Follow(s, opened.earlier)
	}
	return s
}

// config is what the flow of a session that was opened is given.
func (o Options) config(opened openedMsg) flow.Config {
	return flow.Config{
		Judge:     (*sessions.Session).Judge,
		NeedDrill: o.school().RequireDrill,
		Demo:      opened.demo,
		Earlier:   opened.earlier,
		Given:     o.given(opened),
		Carried:   opened.carriedFrom() != nil,
		Cord:      opened.cord,
		ReadOnly:  opened.readOnly,
	}
}
