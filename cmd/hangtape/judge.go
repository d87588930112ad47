package main

import (
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

// judged is a session file with what the rules say of it.
type judged struct {
	*sessions.File
	report *rules.Report
}

// judge reads a session file and judges it under its own limits.
func judge(read func() (*sessions.File, error)) (j judged, err error) {
	err = contain(func() (err error) {
		if j.File, err = read(); err == nil {
			j.report, err = j.Judge()
		}
		return err
	})
	return j, err
}

// judgeNamed judges the session that a word of the call means.
func judgeNamed(w *world, name string) (judged, error) {
	return judge(func() (*sessions.File, error) { return readSession(w, name) })
}

// judgeWithTimes judges the session that a word of the call means, and finds what
// is odd about its times by the clock of today.
func judgeWithTimes(w *world, name string) (j judged, err error) {
	err = contain(func() (err error) {
		if j, err = judgeNamed(w, name); err == nil {
			j.report.Findings = append(j.report.Findings, sessions.OddTimes(j.Session, w.now())...)
		}
		return err
	})
	return j, err
}
