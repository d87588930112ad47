package history

import (
	"time"

	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/records"
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

// dueOf tells when c is due again, by days in UTC.
func dueOf(c *records.Climber, school *sessions.School, now time.Time) Due {
	if c.Signed == nil {
		return Due{Now: true}
	}
	left := int(c.Due.Sub(now.UTC().Truncate(day)) / day)
	return Due{
		Signed: c.Due.AddDate(0, 0, -school.RecheckDays).Format(time.DateOnly),
		On:     c.Due.Format(time.DateOnly), Days: left, Now: left <= 0,
	}
}
