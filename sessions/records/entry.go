package records

import (
	"fmt"
	"maps"
	"strconv"
	"strings"
	"time"
	"unique"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

// An Entry is one file of the folder in short: a session, or why it is none.
// Times are UTC; a zero time was not told.
type Entry struct {
	Path string
	Err  error // why it is no session: all else but Path and Good is zero then

	Good *sessions.LastGood // of a file that is no session, where there is a copy of when it was one

	ID         string
	Purpose    sessions.Purpose
	Started    time.Time
	Finished   time.Time // zero while the session is unfinished
	Climber    string
	Place      string
	Instructor string
	Kit        string // its label
	Follows    string // id of the session before

	Judgement
	Signed   rules.Verdict // the outcome as it was signed; "" where nobody signed
	SignedBy string
	SignedAt time.Time
	Differs  bool // some check comes out otherwise today than it was signed

	// Today is the outcome under the limits that the school has today, where they
	// are not the session's own: else "". Moved says that some verdict is another
	// under them.
	Today rules.Verdict
	Moved bool

	Inspected time.Time                    // of the kit, a day
	Tied      [fit.NumPieces]sessions.Tied // of its pieces of cord

	Same []*Entry // where several files say that they are this session: all of them
}

// NoVerdict says whether e is a re-check of a few marks, which no verdict follows
// from: one that was ended and not signed, or whose musts wait for readings.
func (e *Entry) NoVerdict() bool {
	return e.Purpose == sessions.ReCheck && e.Signed == "" && (!e.Finished.IsZero() || e.Outcome == rules.Unknown)
}

// A Judgement is how a session comes out under the rules of today and its own
// limits.
type Judgement struct {
	// Outcome is the worst verdict of the musts; "" where the readings cannot be
	// true together, which Impossible then says.
	Outcome    rules.Verdict
	Impossible string

	verdicts [rules.NumChecks]initial
	troubled [fit.NumPieces]bool
}

// Verdict is how c comes out; "" where the readings cannot be true together.
func (j *Judgement) Verdict(c rules.CheckID) rules.Verdict { return j.verdicts[c].verdict() }

// With lists the checks that come out as v.
func (j *Judgement) With(v rules.Verdict) []rules.CheckID {
	var list []rules.CheckID
	for c := range rules.NumChecks {
		if j.Verdict(c) == v {
			list = append(list, c)
		}
	}
	return list
}

// Troubled says whether a check that fails or is tight rests on the length of p.
func (j *Judgement) Troubled(p fit.Piece) bool { return j.troubled[p] }

// An initial is a verdict by its first letter, 0 for none: a folder has very many.
type initial byte

func initialOf(v rules.Verdict) initial { return initial(v[0]) }

func (i initial) verdict() rules.Verdict {
	for _, v := range []rules.Verdict{rules.Pass, rules.Tight, rules.Fail, rules.Unknown} {
		if initialOf(v) == i {
			return v
		}
	}
	return ""
}

// Day is when the session was: the day that it started, or else was finished or
// signed.
func (e *Entry) Day() time.Time {
	for _, t := range []time.Time{e.Started, e.Finished, e.SignedAt} {
		if !t.IsZero() {
			return t.Truncate(24 * time.Hour)
		}
	}
	return time.Time{}
}

// Trouble is why the file is no session, in one line and without its name; of
// several faults the first, with how many more there are.
func (e *Entry) Trouble() string {
	first, rest, _ := strings.Cut(strings.TrimPrefix(e.Err.Error(), e.Path+":"), "\n")
	if rest != "" {
		first += fmt.Sprintf(" (and %d more)", strings.Count(rest, "\n")+1)
	}
	if line, text, found := strings.Cut(first, ": "); found && isNumber(line) {
		first = "line " + line + ": " + text
	}
	return strings.TrimSpace(first)
}

func isNumber(s string) bool {
	_, err := strconv.Atoi(s)
	return err == nil
}

// entryOf is what f says, judged today, in a school that may have moved its limits
// since.
func entryOf(f *sessions.File, school *sessions.School) *Entry {
	s := f.Session
	e := &Entry{
		Path: f.Name, ID: own(s.ID), Purpose: s.Purpose, Started: s.Started, Finished: s.Finished,
		Climber: own(s.Climber), Place: own(s.Place), Instructor: own(s.Instructor), Kit: own(s.KitLabel), Follows: own(s.Follows),
		Inspected: s.Inspected, Tied: s.Tied,
	}
	for p := range e.Tied {
		e.Tied[p].By = own(e.Tied[p].By)
	}
	if s.SignOff != nil {
		e.Signed, e.SignedBy, e.SignedAt = s.SignOff.Outcome, own(s.SignOff.By), s.SignOff.At
	}
	r, err := s.Bare()
	if err != nil {
		e.Impossible = err.Error()
		return e
	}
	e.Outcome = r.Outcome
	for c := range rules.NumChecks {
		e.verdicts[c] = initialOf(r.Checks[c].Verdict)
		for p := range fit.NumPieces {
			e.troubled[p] = e.troubled[p] || isTrouble(r.Checks[c].Verdict) && decides(p, c, r.Checks[c].At)
		}
	}
	e.Differs = len(sessions.JudgedDifferently(s, r)) > 0
	if !maps.Equal(s.Limits, school.Limits) {
		e.underLimits(school, s, r)
	}
	return e
}

// underLimits judges s, which is judged as r, under the school's limits of today.
func (e *Entry) underLimits(school *sessions.School, s *sessions.Session, r *rules.Report) {
	today := *s
	today.Limits = school.Limits
	under, err := today.Bare()
	if err != nil {
		return // nor could it be judged under its own
	}
	e.Today = under.Outcome
	for c := range under.Checks {
		e.Moved = e.Moved || under.Checks[c].Verdict != r.Checks[c].Verdict
	}
}

// own is s, once for all who say the same: a text that was decoded would keep
// the whole file that it is a part of in memory.
func own(s string) string { return unique.Make(s).Value() }

func isTrouble(v rules.Verdict) bool { return v == rules.Fail || v == rules.Tight }
