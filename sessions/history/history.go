// Package history follows one climber through the sessions: how the margins
// moved, what changed from one to the next, what the rules and limits of today
// say of the old ones, and when the climber is due again.
package history

import (
	"cmp"
	"slices"
	"time"

	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/compare"
	"example.com/hangtape/sessions/records"
)

// Format is the format of a history as JSON.
const Format = 1

// A History is a climber's sessions in the order of time: the answer of
// `hangtape history CLIMBER --json`, field by field. Lengths are in mm, forces
// in kN, angles in degrees; what is unknown is null.
type History struct {
	Format   int       `json:"format"`
	Climber  string    `json:"climber"`
	Due      Due       `json:"due"`
	Sessions []Session `json:"sessions"`

	Unit sessions.Unit `json:"-"` // that people read in, in the last session
}

// A Session is one session of a history.
type Session struct {
	ID       string           `json:"id"`
	File     string           `json:"file"`
	Started  string           `json:"started"` // RFC 3339, "" where it is not told
	Finished bool             `json:"finished"`
	Purpose  string           `json:"purpose"`
	Place    string           `json:"place"`
	Kit      string           `json:"kit"`
	Outcome  rules.Verdict    `json:"outcome"` // by the rules of today under the session's own limits; "" where it cannot be judged
	Error    string           `json:"error"`   // why it cannot be judged
	Signed   *Signed          `json:"signed"`  // null where nobody signed
	Checks   []Check          `json:"checks"`
	Today    Today            `json:"today"`
	Since    *compare.Changes `json:"since"` // what changed since the session before; null for the first, and where one cannot be judged
}

// Signed is who signed a session, and as what.
type Signed struct {
	By      string        `json:"by"`
	At      string        `json:"at"` // RFC 3339
	Outcome rules.Verdict `json:"outcome"`
}

// A Check is how one check came out.
type Check struct {
	Name    string        `json:"name"`
	Kind    rules.Kind    `json:"kind"`
	Unit    string        `json:"unit"`
	Verdict rules.Verdict `json:"verdict"`
	Margin  rules.Num     `json:"margin"`
	U       rules.Num     `json:"u"`
	Guard   rules.Num     `json:"guard"`
}

// Today is what the rules of today say of a session under the limits that the
// school has today, and the checks whose verdict is another than it was: signed,
// or, where nobody signed, under the session's own limits.
type Today struct {
	Outcome rules.Verdict `json:"outcome"`
	Differs []Difference  `json:"differs"`
}

// A Difference is a check with another verdict today; "" where there was none.
type Difference struct {
	Check string        `json:"check"`
	Then  rules.Verdict `json:"then"`
	Now   rules.Verdict `json:"now"`
}

// Load reads the sessions of a climber of a list and makes their history, with
// the day of today. A file that cannot be read any more is among the errors and
// left out.
func Load(st *sessions.Store, l *records.List, c *records.Climber, now time.Time) (*History, []error) {
	var files []*sessions.File
	var errs []error
	for _, e := range c.Sessions {
		f, err := st.LoadFor(e.Path, l.School)
		if err != nil {
			errs = append(errs, err)
			continue
		}
		files = append(files, f)
	}
	return of(c, files, l.School, now), errs
}

// of is the history of a climber from the climber's sessions, in any order.
func of(c *records.Climber, files []*sessions.File, school *sessions.School, now time.Time) *History {
	files = slices.Clone(files)
	slices.SortStableFunc(files, func(a, b *sessions.File) int {
		return cmp.Or(a.Session.Started.Compare(b.Session.Started), cmp.Compare(a.Session.ID, b.Session.ID))
	})
	h := &History{Format: Format, Climber: c.Name, Sessions: []Session{}, Due: dueOf(c, school, now)}
	for i, f := range files {
		s := sessionOf(f, school)
		if i > 0 && s.Error == "" && h.Sessions[i-1].Error == "" {
			if c, err := compare.Of(files[i-1], f); err == nil {
				changes := c.Changes()
				s.Since = &changes
			}
		}
		h.Sessions, h.Unit = append(h.Sessions, s), f.Session.Unit
	}
	return h
}

func sessionOf(f *sessions.File, school *sessions.School) Session {
	s := f.Session
	out := Session{
		ID: s.ID, File: f.Name, Started: stamp(s.Started), Finished: !s.Finished.IsZero(),
		Purpose: string(s.Purpose), Place: s.Place, Kit: s.KitLabel, Checks: []Check{}, Today: Today{Differs: []Difference{}},
	}
	if o := s.SignOff; o != nil {
		out.Signed = &Signed{o.By, stamp(o.At), o.Outcome}
	}
	r, err := f.Judge()
	if err != nil {
		out.Error = err.Error()
		return out
	}
	out.Outcome = r.Outcome
	for _, c := range r.Checks {
		out.Checks = append(out.Checks, Check{c.Name, c.Kind, c.Unit, c.Verdict, c.Margin, c.U, c.Guard})
	}
	out.Today = today(s, r, school)
	return out
}

// today judges s under the limits of today.
func today(s *sessions.Session, own *rules.Report, school *sessions.School) Today {
	then := map[string]rules.Verdict{}
	for _, c := range own.Checks {
		then[c.Name] = c.Verdict
	}
	if s.SignOff != nil {
		clear(then)
		for _, c := range s.SignOff.Checks {
			then[c.Name] = c.Verdict
		}
	}
	now := *s
	now.Limits = school.Limits
	r, err := now.Judge()
	if err != nil { // s itself can be judged, and limits do not change that
		r = own
	}
	t := Today{Outcome: r.Outcome, Differs: []Difference{}}
	for _, c := range r.Checks {
		if then[c.Name] != c.Verdict {
			t.Differs = append(t.Differs, Difference{c.Name, then[c.Name], c.Verdict})
		}
	}
	return t
}

func stamp(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.UTC().Format(time.RFC3339)
}
