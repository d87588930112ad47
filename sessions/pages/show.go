package pages

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

// Show is one session: whose it is, the kit, what was read, the verdicts by the
// rules of today, what changed on the way, the drill and the sign-off. now is
// the day that cords are aged to and times are held against. The error is that of judging the session; the
// lines that do not need a verdict are there all the same.
func Show(f *sessions.File, now time.Time, l Look) ([]string, error) {
	p := newPage(l)
	s := f.Session
	r, err := f.Judge()
	outcome := "cannot be judged"
	if err == nil {
		r.Findings = append(r.Findings, sessions.OddTimes(s, now)...)
		outcome = fmt.Sprintf("%s (%s)%s", r.Outcome.Loud(), rules.Tally(r.Checks), s.DrillReview().But())
	}
	p.para(0, p.typed(f.Name)+": "+outcome)
	if err == nil && s.SignOff != nil {
		if n := len(sessions.JudgedDifferently(s, r)); n > 0 {
			p.para(0, fmt.Sprintf("signed as %s; the rules of today judge %s differently: see the sign-off", s.SignOff.Outcome.Loud(), rules.Count(n, "check", "checks")))
		}
	}
	p.people(s)
	p.kit(s, now)
	p.readings(s, r)
	if err == nil {
		p.verdicts("Musts", r.Checks, rules.Must)
		p.verdicts("Shoulds", r.Checks, rules.Should)
		p.findings(slices.DeleteFunc(slices.Clone(r.Findings), func(f rules.Finding) bool {
			return f.Name == "judged-differently" // told with the sign-off
		}))
	}
	p.ways(f)
	p.drill(s.Drill)
	p.signOff(s.SignOff)
	if err == nil {
		p.today(s, r)
	}
	p.moved(s.Limits)
	p.cautions()
	return p.lines, err
}

func (p *page) people(s *sessions.Session) {
	p.section("Session")
	p.item("climber", p.typed(s.Climber))
	p.item("instructor", p.typed(s.Instructor))
	p.item("place", p.typed(s.Place))
	p.item("purpose", s.Purpose.Word())
	p.item("when", when(s.Started, s.Finished))
	p.item("follows", s.Follows)
	p.item("id", s.ID)
	p.item("notes", p.typed(s.Notes))
}

// when is from when to when a session lasted; times are UTC, as in the file.
func when(started, finished time.Time) string {
	switch {
	case started.IsZero():
		return ""
	case finished.IsZero():
		return started.Format("2006-01-02 15:04") + " UTC, not finished"
	case finished.Before(started):
		return fmt.Sprintf("%s UTC, finished %s, which is before", started.Format("2006-01-02 15:04"), finished.Format("2006-01-02 15:04"))
	}
	end := "15:04"
	if dayOf(started) != dayOf(finished) {
		end = "2006-01-02 15:04"
	}
	return fmt.Sprintf("%s to %s UTC", started.Format("2006-01-02 15:04"), finished.Format(end))
}

func (p *page) drill(d *sessions.Drill) {
	p.section("Drill")
	if d == nil {
		p.item("", "not done")
		return
	}
	p.item("done", dayTold(d.Done))
	for _, st := range d.Steps {
		p.item(p.typed(st.Name), orNothing(
			seen("held", st.Held), prefixed("drop ", p.number(st.Drop, "mm")), prefixed("Garda hitch at ", p.number(st.Garda, "mm")),
			seen("knee free", st.KneeFree), seen("hands reach", st.HandsReach), seen("came back up", st.CameBackUp)))
	}
	p.item("sag seen", p.number(d.Sag, "mm"))
	p.item("note", p.typed(d.Note))
}

// orNothing joins what was noted, and says so where nothing was.
func orNothing(noted ...string) string {
	if text := join(noted...); text != "" {
		return text
	}
	return "nothing noted"
}

func seen(what string, c fit.Choice) string {
	switch c {
	case fit.Yes:
		return what
	case fit.No:
		return "NOT " + what
	case fit.Unanswered:
	}
	return ""
}

func (p *page) signOff(o *sessions.SignOff) {
	p.section("Sign-off")
	if o == nil {
		p.item("", "nobody signed")
		return
	}
	p.item("signed", join(o.Outcome.Loud(), by(p.typed(o.By)), dayTold(o.At)))
	p.item("note", p.typed(o.Note))
}

// today says what the rules of today judge otherwise than it was signed.
func (p *page) today(s *sessions.Session, r *rules.Report) {
	if s.SignOff == nil {
		return
	}
	different := sessions.JudgedDifferently(s, r)
	if len(different) == 0 {
		p.item("today", "the rules of today judge every check as it was signed")
		return
	}
	p.item("today", fmt.Sprintf("the rules of today judge %d of %d checks differently, and %s in all", len(different), len(r.Checks), r.Outcome.Loud()))
	for _, d := range different {
		p.para(4, d.String())
	}
}

// join joins what is told by commas.
func join(parts ...string) string {
	var told []string
	for _, part := range parts {
		if part != "" {
			told = append(told, part)
		}
	}
	return strings.Join(told, ", ")
}

func prefixed(before, text string) string {
	if text == "" {
		return ""
	}
	return before + text
}

func by(name string) string { return prefixed("by ", name) }

func dayTold(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return dayOf(t)
}
