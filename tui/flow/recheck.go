package flow

import (
	"fmt"
	"math"
	"strings"
	"time"

	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

// reCheckOf starts the sentence in the notes that tells how a re-check ended.
const reCheckOf = "Re-check of "

// ReChecking says whether the session is a re-check: it is held against another
// and is no fitting of its own.
func (d *Draft) ReChecking() bool { return d.Session.Purpose == sessions.ReCheck }

// IsHeld says whether there is an earlier session to hold a re-check against.
// Without one all that can be told of it are its verdicts.
func (d *Draft) IsHeld() bool { return d.ReChecking() && d.Followed != nil }

// drifts are today's heights held against those of the session that is followed.
func (d *Draft) drifts() []rules.Drift {
	if !d.ReChecking() || d.Followed == nil || len(d.Session.Fit.Faults()) > 0 || len(d.Followed.Fit.Faults()) > 0 {
		return nil
	}
	return rules.Recheck(&d.Followed.Fit, &d.Session.Fit)
}

// held is how the re-check has come out: "changed" or "unchanged", or why that
// cannot be said yet.
func (d *Draft) held() (outcome, why string) {
	if d.Followed == nil {
		return "", "there is no earlier session to hold it against"
	}
	known := 0
	outcome = "unchanged"
	for _, r := range d.drifts() {
		switch {
		case r.Missing != "":
			return "", "not read: " + rules.InputName(r.Missing)
		case r.Changed():
			outcome = "changed"
		}
		if r.Known() {
			known++
		}
	}
	if known == 0 {
		return "", "the earlier session has none of these heights"
	}
	return outcome, ""
}

// Held tells how the re-check stands: the outcome first, then each height, a line
// each, lengths in the session's unit.
func (d *Draft) Held() []string {
	outcome, why := d.held()
	if outcome == "" {
		outcome = "not said yet: " + why
	} else {
		outcome = strings.ToUpper(outcome)
	}
	lines := []string{"All in all: " + outcome + "."}
	for _, r := range d.drifts() {
		lines = append(lines, driftLine(r, string(d.Session.Unit)))
	}
	if d.Followed != nil {
		lines = append(lines, fmt.Sprintf("Held against the session of %s, within twice the standard uncertainty of the difference. A re-check is not a fitting: no verdict follows from it.", d.Followed.Started.Format(time.DateOnly)))
	}
	return lines
}

func driftLine(r rules.Drift, unit string) string {
	length := func(v float64) string { return rules.FormatValue(v, r.U, unit) }
	switch {
	case r.Missing != "":
		return fmt.Sprintf("%s: not read yet (%s).", rules.Upper(r.Name), rules.InputName(r.Missing))
	case !r.Known():
		return rules.Upper(r.Name) + ": not read in the earlier session."
	}
	word, way := "Unchanged", "higher"
	if r.By() < 0 {
		way = "lower"
	}
	tail := ""
	if r.Changed() {
		word, tail = "CHANGED", " Perhaps "+r.If+"."
	}
	return fmt.Sprintf("%s: %s %s then, %s now, %s %s.%s", word, r.Name, length(r.Then), length(r.Now), rules.FormatPM(math.Abs(r.By()), r.U, unit), way, tail)
}

// reCheckEnd is the last step of a re-check: who says how it came out.
func reCheckEnd() Step {
	s := Step{ID: "end", Title: "End of the re-check", Phase: Close, Asks: []Ask{
		text("re_check.by", "Who says so?", "A name. Empty: the instructor.", func(d *Draft) *string { return &d.SignBy }),
		{Key: "re_check", Kind: Choice, Title: "End the re-check?", Topic: "re-check", Tells: (*Draft).Held,
			Options: func(d *Draft) []Option {
				word := "end"
				if outcome, _ := d.held(); outcome != "" {
					word += ": " + outcome
				}
				if by := d.says(); by != "" {
					word += ", says " + by
				}
				return []Option{{Word: word, Act: EndReCheck}, {Word: "not now: leave, all saved", Act: Leave}}
			},
			Mark: func(*Draft) int { return 1 }},
	}}
	for i := range s.Asks {
		s.Asks[i].When = func(d *Draft) bool { return d.ReChecking() && !d.Hanging() }
	}
	return s
}

// says is who answers for the re-check.
func (d *Draft) says() string {
	if d.SignBy != "" {
		return d.SignBy
	}
	return d.Session.Instructor
}

// endReCheck ends the session with what came out, in its notes.
func (s *State) endReCheck(now time.Time) {
	outcome, why := s.held()
	if s.says() == "" {
		why = "nobody has given a name"
	}
	if why != "" {
		s.Said = Said{Kind: Refused, Text: "not ended: " + why}
		return
	}
	d := s.Draft.clone()
	var moved []string
	for _, r := range d.drifts() {
		if r.Changed() {
			moved = append(moved, fmt.Sprintf("%s by %s", r.Name, rules.FormatPM(r.By(), r.U, string(d.Session.Unit))))
		}
	}
	said := fmt.Sprintf("%s%s: %s", reCheckOf, d.Followed.Started.Format(time.DateOnly), outcome)
	if len(moved) > 0 {
		said += " (" + strings.Join(moved, "; ") + ")"
	}
	d.Session.Notes = remarked(d.Session.Notes, reCheckOf, said+", says "+strings.ReplaceAll(d.says(), ". ", "."))
	d.Session.Finished = now
	if s.commit(d) {
		s.Said = Said{Kind: Taken, Text: said}
		s.Left = true
	}
}

// Remembered is how a finished re-check came out, as its notes tell it; empty for
// any other session.
func Remembered(s *sessions.Session) string {
	_, said, _ := strings.Cut(remark(s.Notes, reCheckOf), ": ")
	return said
}
