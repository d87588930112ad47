package sheet

import (
	"fmt"
	"math"
	"strings"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/drill"
	"example.com/hangtape/sessions"
)

// rope tells with how much rope above the verdicts hold.
func (s *Subject) rope(p *drill.Plan) string {
	told := s.Session.Fit.Rope.LeastAbove
	var slip rules.Check
	for _, c := range s.Report.Checks {
		if c.Name == rules.SlipForce.Info().Name {
			slip = c
		}
	}
	stay := math.NaN()
	for _, st := range p.Force.Stay {
		if st.Mass == s.Session.Fit.Mass.V {
			stay = st.Peak
		}
	}
	switch {
	case slip.Verdict == rules.Unknown || !told.Known:
		return "How much rope above it needs is not known: " + rules.WaitsFor(slip.Missing) + "."
	case slip.Verdict == rules.Pass:
		return fmt.Sprintf("Holds only with at least %s of rope above.", rules.FormatBelow(told.V, s.Unit))
	case stay <= told.V: // tight for what it rests on
		return fmt.Sprintf("Holds only with at least %s of rope above, and slip-force is %s.", rules.FormatBelow(told.V, s.Unit), slip.Verdict.Word())
	case math.IsNaN(stay):
		return fmt.Sprintf("Holds with no length of rope above: the peak of the catch is too high (slip-force %s with %s).", slip.Verdict.Word(), rules.FormatBelow(told.V, s.Unit))
	}
	return fmt.Sprintf("Holds only with at least %s of rope above; with %s slip-force is %s.", rules.FormatBelow(stay, s.Unit), rules.FormatBelow(told.V, s.Unit), slip.Verdict.Word())
}

// drill tells what was seen in the ground drill, and whether it agrees.
func (s *Subject) drill() []string {
	d, review := s.Session.Drill, s.Session.DrillReview()
	if review == nil {
		return []string{"NOT DONE"}
	}
	lines := []string{join(", ", review.Verdict.Loud(), s.day(d.Done), labelled("", d.Note))}
	for _, st := range d.Steps {
		lines = append(lines, labelled("", st.Name)+": "+join(", ", s.seen(st)...))
	}
	if d.Sag.Known {
		lines = append(lines, "sag of the rope: "+rules.FormatLength(d.Sag.V, s.Unit))
	}
	for _, f := range review.Findings {
		lines = append(lines, f.Name+": "+f.In(s.Unit))
	}
	if len(review.NotSeen) > 0 {
		lines = append(lines, "NOT SEEN, or not told: "+strings.Join(review.NotSeen, ", "))
	}
	return lines
}

// seen tells one step; what was not told is left out.
func (s *Subject) seen(st sessions.DrillStep) []string {
	said := func(c fit.Choice, yes, no string) string {
		switch c {
		case fit.Yes:
			return yes
		case fit.No:
			return no
		}
		return ""
	}
	length := func(what string, n fit.Number) string {
		if !n.Known {
			return ""
		}
		return what + " " + rules.FormatLength(n.V, s.Unit)
	}
	return []string{
		said(st.Held, "held", "DID NOT HOLD"),
		length("sank", st.Drop), length("Garda hitch above the hip", st.Garda),
		said(st.KneeFree, "knee free", "KNEE JAMMED"),
		said(st.HandsReach, "hands reach", "HANDS DO NOT REACH"),
		said(st.CameBackUp, "came back up", "DID NOT COME BACK UP"),
	}
}

// sign tells who signed, or what holds it up.
func (s *Subject) sign() Sign {
	if by := s.Session.SignOff; by != nil {
		lines := []string{join(", ", "by "+nameless(by.By), s.moment(by), labelled("as ", by.Outcome.Loud())), labelled("Note: ", by.Note)}
		if d := sessions.JudgedDifferently(s.Session, s.Report); len(d) > 0 {
			lines = append(lines, fmt.Sprintf("JUDGED DIFFERENTLY TODAY: %s", rules.Count(len(d), "check", "checks")))
		}
		return Sign{true, "SIGNED", lines}
	}
	var up []string
	for _, c := range s.Report.Checks {
		if c.Blocks {
			up = append(up, c.Name)
		}
	}
	line := "Nobody answers for this fitting yet."
	if len(up) > 0 {
		line = "Held up by " + strings.Join(up, ", ") + "."
	}
	return Sign{false, "NOT SIGNED", []string{line}}
}

func (s *Subject) moment(by *sessions.SignOff) string {
	if by.At.IsZero() {
		return ""
	}
	return by.At.In(s.Zone).Format("2006-01-02 15:04")
}
