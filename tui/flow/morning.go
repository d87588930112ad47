package flow

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

// Carry makes s the session of the next student on the kit of e: unit, place,
// instructor, tape, rope and kit are taken over, the lengths of the kit as kept,
// with the day on which they were laid on. What was set and not laid on again is
// left to be read. Nothing of the climber is taken over.
func Carry(s, e *sessions.Session) {
	s.Instructor, s.Place, s.Unit = e.Instructor, e.Place, e.Unit
	takeGear(s, e)
	if sameDay(e.Inspected, s.Started) {
		s.InspectedBy, s.Inspected = e.InspectedBy, e.Inspected
	}
	for r := range fit.NumReadings {
		key := fit.LaidKey(r)
		if list := laidNow(e, r); len(list) > 0 && strings.HasPrefix(key, "kit.") {
			s.Fit.Laid[r] = list
			s.Fit.Kept = append(s.Fit.Kept, keptFrom(e, key))
		}
	}
	slices.SortFunc(s.Fit.Kept, func(a, b fit.Kept) int { return fit.CompareKeys(a.Key, b.Key) })
}

// carriedOver says whether the way of a next student leads past a, since tape, rope
// and kit have told it already. Lengths of the kit that nobody has laid on since
// they were set are asked for, and so are parts that the kit did not have.
func (d *Draft) carriedOver(a Ask) bool {
	if d.carried == nil {
		return false
	}
	then := Draft{Session: *d.carried}
	told := a.asked(&then) && (a.Kind == Choice || a.Told(&then) > 0)
	table, rest, _ := strings.Cut(a.Key, ".")
	switch {
	case table == "session", table == "tape", table == "rope", a.Key == "kit.inspected_by", a.Key == "kit.inspected":
		return told
	case table != "kit":
		return false
	case a.Kind == Choice && !strings.Contains(rest, "."): // whether the part is there
		there, _ := a.cell(&then).(*bool)
		return there != nil && *there
	case a.Kind == Reading:
		return told
	}
	return a.asked(&then)
}

func sameDay(a, b time.Time) bool {
	return a.UTC().Format(time.DateOnly) == b.UTC().Format(time.DateOnly)
}

// movedBy is by how much a length of two sessions on one kit differs, in mm, for
// the piece to count as moved: more than two careful readings do; judgement.
const movedBy = 10.0

// KitSince says which pieces of the kit were set otherwise in another session
// that shares it, after this one had them, a line each.
func (s *State) KitSince() []string {
	var out []string
	for p := range fit.NumPieces {
		here, since := lengthAt(&s.Session, p)
		line := ""
		for _, o := range s.Others {
			if o.ID == s.Session.ID || !shareKit(&s.Session, o) {
				continue
			}
			there, when := lengthAt(o, p)
			if !here.Known || !there.Known || !when.After(since) || math.Abs(there.V-here.V) <= movedBy {
				continue
			}
			since = when
			show := func(mm float64) string { return rules.FormatLength(mm, string(s.Session.Unit)) }
			line = fmt.Sprintf("Kit changed since: for %s the %s was set to %s at %s; here it counts as %s.",
				nameOr(o.Climber), rules.PieceName(p), show(there.V), when.Local().Format("15:04"), show(here.V))
		}
		if line != "" {
			out = append(out, line)
		}
	}
	return out
}

func nameOr(name string) string {
	if strings.TrimSpace(name) == "" {
		return "another climber"
	}
	return name
}

// shareKit says whether two sessions are about one kit: by the name on its bag,
// or since one has taken it over from the other.
func shareKit(a, b *sessions.Session) bool {
	label := func(s *sessions.Session) string {
		return strings.ToLower(strings.Join(strings.Fields(s.KitLabel), " "))
	}
	from := func(s, o *sessions.Session) bool {
		return slices.ContainsFunc(s.Fit.Kept, func(k fit.Kept) bool { return k.Session == o.ID })
	}
	return label(a) != "" && label(a) == label(b) || from(a, b) || from(b, a)
}

// lengthAt is what p measures in s, in mm, and since when: the end of the hang
// after which it was set, else the session's start. What was kept from another
// session and not set since was never set here, and is as old as that.
func lengthAt(s *sessions.Session, p fit.Piece) (fit.Number, time.Time) {
	d := Draft{Session: *s}
	when := s.Started
	if r, ok := pieceReading[p]; ok {
		for _, k := range s.Fit.Kept {
			if k.Key == fit.LaidKey(r) {
				when = k.Taken
			}
		}
	}
	for _, c := range s.Fit.Changes {
		if c.Piece != p || c.AfterHang < 1 || c.AfterHang > len(s.Fit.Hangs) {
			continue
		}
		if h := s.Fit.Hangs[c.AfterHang-1]; !h.Ended.IsZero() {
			when = h.Ended
		}
	}
	return d.length(p), when
}
