package pages

import (
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

func (p *page) kit(s *sessions.Session, now time.Time) {
	p.section("Kit")
	p.item("label", p.typed(s.KitLabel))
	if inspected := join(dayTold(s.Inspected), by(p.typed(s.InspectedBy))); inspected != "" {
		p.item("inspected", inspected)
	}
	p.item("rope", join(p.number(s.Fit.Rope.Diameter, "mm"), p.number(s.Fit.Rope.Elongation, "% longer from 50 to 150 kg"),
		prefixed("least above ", p.number(s.Fit.Rope.LeastAbove, "mm")), prefixed("in the drill ", p.number(s.Fit.Rope.DrillAbove, "mm"))))
	for piece := range fit.NumPieces {
		info := s.Fit.Kit.Pieces[piece]
		if !info.Present {
			continue
		}
		parts := []string{prefixed("cord ", p.number(info.Cord, "mm")), p.number(info.Wraps, "wraps"), p.number(info.Strands, "strands"), p.number(info.Strength, "kN"), rules.HowWord(info.Change)}
		if info.Bounded {
			parts = append(parts, p.length(info.Bounds[0])+" to "+p.length(info.Bounds[1]))
		}
		parts = append(parts, p.tied(s.Tied[piece], s.Started, now))
		p.item(rules.PieceName(piece), join(parts...))
	}
	if s.Fit.Kit.Garda {
		p.item("Garda hitch", join("in the kit", prefixed("inside width ", p.number(s.Fit.Kit.InsideWidth, "mm"))))
	}
}

// tied is when a piece was tied, and how old its cord was then and is now.
func (p *page) tied(t sessions.Tied, then, now time.Time) string {
	if t.On.IsZero() {
		return prefixed("tied ", by(p.typed(t.By)))
	}
	text := join("tied "+dayOf(t.On), by(p.typed(t.By)))
	if !then.IsZero() {
		text += ", " + days(t.On, then) + " old then"
	}
	return text + ", " + days(t.On, now) + " now"
}

// days is how many days lie between two, in words.
func days(from, to time.Time) string { return rules.Count(Days(from, to), "day", "days") }

// Days counts the calendar days from one time to another, in UTC.
func Days(from, to time.Time) int {
	date := func(t time.Time) time.Time { return t.UTC().Truncate(24 * time.Hour) }
	return int(date(to).Sub(date(from)).Hours() / 24)
}

// number is a number that was told, with its unit.
func (p *page) number(n fit.Number, unit string) string {
	switch {
	case !n.Known:
		return ""
	case unit == "mm":
		return p.length(n.V)
	}
	return p.limit(n.V, unit)
}
