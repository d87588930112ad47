package history

import (
	"slices"
	"time"

	"example.com/hangtape/sessions/records"
)

// A Person is a climber of a folder in short.
type Person struct {
	Climber  string `json:"climber"`
	Sessions int    `json:"sessions"`
	Last     string `json:"last"` // day of the last session, "" where it is not told
	Due      Due    `json:"due"`
}

// People are the climbers of a list on the day of today: those who are due, the
// longest first, then those whom nobody ever signed, then the others in the order
// in which they will be due. The climbers stand in the same order.
func People(l *records.List, now time.Time) ([]Person, []records.Climber) {
	climbers := l.Climbers()
	rank := func(c *records.Climber) int {
		switch {
		case c.Signed == nil:
			return 1
		case dueOf(c, l.School, now).Now:
			return 0
		}
		return 2
	}
	slices.SortStableFunc(climbers, func(a, b records.Climber) int { return rank(&a) - rank(&b) })
	people := make([]Person, len(climbers))
	for i := range climbers {
		c := &climbers[i]
		people[i] = Person{c.Name, len(c.Sessions), "", dueOf(c, l.School, now)}
		if d := c.Sessions[0].Day(); !d.IsZero() {
			people[i].Last = d.Format(time.DateOnly)
		}
	}
	return people, climbers
}
