package history

import (
	"time"

	"example.com/hangtape/sessions"
)

// Due is when a climber is due for a re-check: so many days after the last
// session that was signed as the school says. Where nobody ever signed, the
// climber is due.
type Due struct {
	Signed string `json:"signed"` // day of the last session that was signed, "" where there is none
	On     string `json:"on"`     // day from which the climber is due, "" where nobody signed
	Days   int    `json:"days"`   // from today until then; 0 or less is due
	Now    bool   `json:"now"`
}

const day = 24 * time.Hour

// dueOf tells when the climber of these sessions is due again, by days in UTC.
func dueOf(files []*sessions.File, school *sessions.School, now time.Time) Due {
	var last time.Time
	for _, f := range files {
		o := f.Session.SignOff
		if o == nil {
			continue
		}
		at := o.At
		if at.IsZero() {
			at = f.Session.Started
		}
		if at.After(last) {
			last = at
		}
	}
	if last.IsZero() {
		return Due{Now: true}
	}
	from := last.UTC().Truncate(day)
	on := from.AddDate(0, 0, school.RecheckDays)
	left := int(on.Sub(now.UTC().Truncate(day)) / day)
	return Due{from.Format(time.DateOnly), on.Format(time.DateOnly), left, left <= 0}
}
