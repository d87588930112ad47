package main

import (
	"path/filepath"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions/records"
)

// listedSession is a session of `list --json`.
type listedSession struct {
	File       string              `json:"file"`
	ID         string              `json:"id"`
	Started    string              `json:"started"`
	Finished   string              `json:"finished"`
	Purpose    string              `json:"purpose"`
	Climber    string              `json:"climber"`
	Place      string              `json:"place"`
	Instructor string              `json:"instructor"`
	Kit        string              `json:"kit"`
	Follows    string              `json:"follows"`
	Outcome    *rules.Verdict      `json:"outcome"`       // null where the readings cannot be true together
	Today      *rules.Verdict      `json:"outcome_today"` // under the school's limits of today; null where they are the session's own
	Impossible string              `json:"impossible,omitempty"`
	Checks     map[string][]string `json:"checks"` // by verdict, but for pass
	Pieces     []string            `json:"pieces"` // that a failing or tight check rests on
	Signed     string              `json:"signed"`
	SignedBy   string              `json:"signed_by"`
	SignedAt   string              `json:"signed_at"`
	Differs    bool                `json:"judged_differently"`
	Same       []string            `json:"same_id,omitempty"` // files
}

// entryJSON is an entry for programs: a session, or a file with its error.
func entryJSON(e *records.Entry) any {
	if e.Err != nil {
		return struct {
			File  string `json:"file"`
			Error string `json:"error"`
		}{e.Path, e.Err.Error()}
	}
	s := listedSession{
		File: e.Path, ID: e.ID, Started: stamp(e.Started), Finished: stamp(e.Finished), Purpose: string(e.Purpose),
		Climber: e.Climber, Place: e.Place, Instructor: e.Instructor, Kit: e.Kit, Follows: e.Follows,
		Impossible: e.Impossible, Checks: map[string][]string{}, Pieces: []string{},
		Signed: string(e.Signed), SignedBy: e.SignedBy, SignedAt: stamp(e.SignedAt), Differs: e.Differs,
	}
	if e.Outcome != "" {
		s.Outcome = &e.Outcome
	}
	if e.Today != "" {
		s.Today = &e.Today
	}
	for _, v := range []rules.Verdict{rules.Fail, rules.Unknown, rules.Tight} {
		s.Checks[string(v)] = []string{}
		for _, c := range e.With(v) {
			s.Checks[string(v)] = append(s.Checks[string(v)], c.String())
		}
	}
	for p := range fit.NumPieces {
		if e.Troubled(p) {
			s.Pieces = append(s.Pieces, p.Key())
		}
	}
	for _, same := range e.Same {
		s.Same = append(s.Same, filepath.Base(same.Path))
	}
	return s
}

// cordJSON is a piece of `list --cords --json`.
func cordJSON(c records.Cord) any {
	return struct {
		Kit     string `json:"kit"`
		Climber string `json:"climber"`
		Piece   string `json:"piece"`
		Tied    string `json:"tied"`
		By      string `json:"tied_by"`
		Session string `json:"session"`
	}{c.Kit, c.Seen.Climber, c.Piece.Key(), c.Tied.On.Format(time.DateOnly), c.Tied.By, c.Seen.ID}
}

// stamp is a moment as it stands in a session file; "" where it was not told.
func stamp(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.Format(time.RFC3339)
}
