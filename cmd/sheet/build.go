package sheet

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/drill"
	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/demo"
)

// A Subject is a session that a sheet is made of, and how it is told.
type Subject struct {
	Session *sessions.Session
	Report  *rules.Report // on the session, under its own limits
	Unit    string        // of lengths: mm, cm or in
	Zone    *time.Location
	Cord    *fit.CordModel // what knots take
}

// NewCard gathers what stands on the sheet of s.
func NewCard(s Subject) *Card {
	ses, limits := s.Session, s.Session.RulesFor()
	a := rules.Assess(&ses.Fit, limits)
	c := &Card{
		Climber:  nameless(ses.Climber),
		About:    s.about(),
		Marks:    s.marks(),
		Outcome:  s.Report.Outcome,
		Tally:    rules.Tally(s.Report.Checks),
		Lengths:  s.lengths(a, limits),
		LengthOf: "Window: with the others held, the musts that the piece moves pass in it. Predicted; windows do not add up.",
		PenMarks: "Where to put the marks: on a piece that slides, a line across it where it leaves the slider at this length; on a tied one, a line across each tail at the knot. A mark that has moved: lay the tape on again.",
		Rope:     s.rope(drill.New(&ses.Fit, limits, a)),
		Limits:   rules.MovedWords(ses.Limits, s.Unit),
		Drill:    s.drill(),
		Sign:     s.sign(),
		Cautions: rules.Cautions(),
		At:       ses.Started,
	}
	c.Figure = newFigure(a.Model(), c.Lengths, s.Unit)
	for _, k := range s.Report.Checks {
		told := Check{
			Verdict: k.Verdict, Name: k.Name, Margin: rules.MarginWords(k, s.Unit), Text: rules.Sentence(k, s.Unit),
			Predicted: k.Blocks && k.Verdict == rules.Tight,
		}
		if k.Kind == rules.Must {
			c.Musts = append(c.Musts, told)
		} else {
			c.Shoulds = append(c.Shoulds, told)
		}
	}
	c.Missing = rules.MissingNames(s.Report.Checks)
	worstFirst(c.Musts)
	worstFirst(c.Shoulds)
	for _, f := range s.Report.Findings {
		if f.Name == "judged-differently" { // as long as the sheet; the sign-off tells of it
			continue
		}
		c.Findings = append(c.Findings, f.Name+": "+f.In(s.Unit))
	}
	if slices.ContainsFunc(c.Lengths, func(l Length) bool { return l.Cut != "" }) {
		c.CordCautions = rules.CordCautions()
	}
	return c
}

// worstFirst orders checks by verdict and leaves each verdict's in their order.
func worstFirst(checks []Check) {
	slices.SortStableFunc(checks, func(a, b Check) int { return a.Verdict.Rank() - b.Verdict.Rank() })
}

// nameless is a name, or words in its place where none was told.
func nameless(name string) string {
	if strings.TrimSpace(name) == "" {
		return "(no name told)"
	}
	return name
}

// day is a moment's day where the climber hung; "" where it is not told.
func (s *Subject) day(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.In(s.Zone).Format(time.DateOnly)
}

// notesAre begins what was noted.
const notesAre = "Notes: "

// about tells where, when, with what, and what was noted.
func (s *Subject) about() []string {
	ses := s.Session
	kit := labelled("", ses.KitLabel)
	if by := labelled("by ", ses.InspectedBy); !ses.Inspected.IsZero() {
		kit = join(", ", kit, strings.TrimSpace("inspected "+ses.Inspected.Format(time.DateOnly)+" "+by))
	}
	rope := ""
	if d := ses.Fit.Rope.Diameter; d.Known {
		rope = fmt.Sprintf("rope %.4g mm", d.V)
	}
	mass := ""
	if m := ses.Fit.Mass; m.Known {
		mass = fmt.Sprintf("%.4g kg with clothes and kit", m.V)
	}
	lines := []string{
		join(", ", ses.Purpose.Word(), s.day(ses.Started), ses.Place, labelled("instructor ", ses.Instructor)),
		join(", ", labelled("kit ", kit), rope, mass),
		labelled(notesAre, ses.Notes),
	}
	return slices.DeleteFunc(lines, func(l string) bool { return l == "" })
}

// marks say what the whole sheet is.
func (s *Subject) marks() []string {
	var marks []string
	if demo.Invented(s.Session) {
		marks = append(marks, "DEMO: all data are invented")
	}
	if s.Session.Finished.IsZero() {
		marks = append(marks, "UNFINISHED")
	}
	if stale := s.Session.Fit.Stale(len(s.Session.Fit.Hangs)); len(stale) > 0 {
		var pieces []string
		for _, st := range stale {
			for _, p := range st.Pieces {
				if name := rules.PieceName(p); !slices.Contains(pieces, name) {
					pieces = append(pieces, name)
				}
			}
		}
		marks = append(marks, fmt.Sprintf("PREDICTED: %s not taken since a change of %s", rules.Count(len(stale), "reading", "readings"), strings.Join(pieces, ", ")))
	}
	return marks
}

// labelled is a text, on one line, after what it is, or "" where it is empty.
func labelled(what, text string) string {
	if text = strings.Join(strings.Fields(text), " "); text == "" {
		return ""
	}
	return what + text
}

// join joins the parts that are not empty.
func join(sep string, parts ...string) string {
	parts = slices.DeleteFunc(parts, func(p string) bool { return strings.TrimSpace(p) == "" })
	return strings.Join(parts, sep)
}
