package sheet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions/demo"
	"example.com/hangtape/sessions/records"
)

// A Class is what stands on the sheet of a day: a row for each student, by name.
type Class struct {
	Title    string
	Rows     []Row
	Cautions []string
	At       time.Time // the day's first session's, for the document's date
}

// A Row is one student.
type Row struct {
	Climber string
	About   string // kit and what the row is: DEMO, UNFINISHED, PREDICTED, one of several sessions
	Outcome rules.Verdict
	Lengths [fit.NumPieces]string
	Rope    string   // least rope above
	Short   []string // checks short of pass, a verdict each: "1 FAIL: hitch-top-reach"
	Signed  bool
	Sign    string
}

// NewClass gathers the sessions of a day. Of a student with several the latest
// counts; students are told apart by their names.
func NewClass(day string, all []Subject) *Class {
	c := &Class{Title: "Class of " + day, Cautions: rules.Cautions()}
	slices.SortStableFunc(all, func(a, b Subject) int {
		return cmp.Or(a.Session.Started.Compare(b.Session.Started), cmp.Compare(a.Session.ID, b.Session.ID))
	})
	if len(all) > 0 {
		c.At = all[0].Session.Started
	}
	for i, s := range all {
		same := func(o Subject) bool { return sameName(o.Session.Climber, s.Session.Climber) }
		if slices.ContainsFunc(all[i+1:], same) {
			continue // a later one counts
		}
		n := 1
		for _, o := range all[:i] {
			if same(o) {
				n++
			}
		}
		c.Rows = append(c.Rows, s.row(n))
	}
	slices.SortStableFunc(c.Rows, func(a, b Row) int {
		return cmp.Compare(records.Fold(a.Climber), records.Fold(b.Climber))
	})
	return c
}

// sameName says whether two sessions are of one student; nobody without a name
// is.
func sameName(a, b string) bool {
	a, b = records.Fold(a), records.Fold(b)
	return a != "" && a == b
}

// row is the student of s, who has so many sessions that day.
func (s *Subject) row(sessions int) Row {
	ses := s.Session
	r := Row{Climber: nameless(ses.Climber), Outcome: s.Report.Outcome, Rope: "not told"}
	m := fit.NewModel(&ses.Fit, fit.Options{})
	var now fit.State
	m.Current(&now)
	for p := range fit.NumPieces {
		r.Lengths[p] = join(" ", rules.FormatLength(m.Length(p, &now), s.Unit), s.worth(m.PieceKey(p)))
	}
	if l := ses.Fit.Rope.LeastAbove; l.Known {
		r.Rope = rules.FormatBelow(l.V, s.Unit)
	}
	var about []string
	if demo.Invented(ses) {
		about = append(about, "DEMO, invented")
	}
	if ses.Finished.IsZero() {
		about = append(about, "UNFINISHED")
	}
	if len(ses.Fit.Stale(len(ses.Fit.Hangs))) > 0 {
		about = append(about, "PREDICTED")
	}
	if sessions > 1 {
		about = append(about, fmt.Sprintf("latest of %d", sessions))
	}
	r.About = join(", ", append(about, labelled("kit ", ses.KitLabel))...)
	r.Short = s.short()
	if r.Sign = "NOT SIGNED"; ses.SignOff != nil {
		r.Signed = true
		r.Sign = "signed by " + nameless(ses.SignOff.By)
	}
	return r
}

// short are the checks that are short of pass, musts first, by verdict.
func (s *Subject) short() []string {
	var all []string
	for _, kind := range []rules.Kind{rules.Must, rules.Should} {
		for _, v := range []rules.Verdict{rules.Fail, rules.Unknown, rules.Tight} {
			var names []string
			for _, c := range s.Report.Checks {
				if c.Kind == kind && c.Verdict == v {
					names = append(names, c.Name)
				}
			}
			if len(names) > 0 {
				which := v.Loud()
				if kind == rules.Should {
					which = "should " + which
				}
				all = append(all, fmt.Sprintf("%d %s: %s", len(names), which, strings.Join(names, ", ")))
			}
		}
	}
	return all
}
