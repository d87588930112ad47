package records

import (
	"cmp"
	"slices"
	"time"
)

// A Climber is one person's sessions, by name: letter case and blanks do not
// count.
type Climber struct {
	Name     string    // as it stands in the newest session
	Sessions []*Entry  // the newest first
	Signed   *Entry    // the one that was signed last; nil where none was
	Due      time.Time // the day on which a re-check is due, where one was signed
}

// Climbers lists everybody who has a name, who is due first first; last come
// those whom nobody ever signed.
func (l *List) Climbers() []Climber {
	index := map[string]int{}
	var all []Climber
	for _, e := range l.Sessions() {
		key := Fold(e.Climber)
		if key == "" {
			continue
		}
		i, there := index[key]
		if !there {
			i = len(all)
			index[key] = i
			all = append(all, Climber{Name: e.Climber})
		}
		c := &all[i]
		c.Sessions = append(c.Sessions, e)
		if e.Signed != "" && (c.Signed == nil || e.signedOn().After(c.Signed.signedOn())) {
			c.Signed = e
			c.Due = e.signedOn().AddDate(0, 0, l.School.RecheckDays)
		}
	}
	slices.SortStableFunc(all, func(a, b Climber) int {
		switch {
		case a.Signed == nil && b.Signed != nil:
			return 1
		case a.Signed != nil && b.Signed == nil:
			return -1
		}
		return cmp.Or(a.Due.Compare(b.Due), cmp.Compare(Fold(a.Name), Fold(b.Name)))
	})
	return all
}

// signedOn is the day from which a re-check counts.
func (e *Entry) signedOn() time.Time {
	if !e.SignedAt.IsZero() {
		return e.SignedAt.Truncate(24 * time.Hour)
	}
	return e.Day()
}
