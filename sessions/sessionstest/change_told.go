package sessionstest

import (
	"math"
	"slices"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

func (c change) posture() {
	p := fit.Posture(c.which % int(fit.NumPostures))
	info := p.Info()
	least, most := -2000.0, 2000.0
	switch info.Unit {
	case "deg":
		least, most = -90, 90
	case "":
		least, most = 0, 1.5
	}
	set := fit.Setting{V: info.V, U: info.U, Given: c.which < 240}
	switch c.which / int(fit.NumPostures) % 3 {
	case 0:
		set.V = c.by.between(least, most)
	case 1:
		set.V = min(max(info.V+(c.by.share()-0.5)*8*info.U, least), most)
	case 2:
		set.U = c.by.between(p.LeastU(), min(most, 6*info.U))
	}
	c.f.Posture[p] = set
}

// number sets n to what by says, or to unknown.
func (c change) number(n *fit.Number, least, most float64) {
	if *n = fit.Some(c.by.between(least, most)); c.which >= 200 {
		*n = fit.Number{}
	}
}

func (c change) rope() {
	r := &c.f.Rope
	switch c.which % 4 {
	case 0:
		c.number(&r.Diameter, 6, 20)
	case 1:
		c.number(&r.Elongation, 0.3, 15)
	case 2:
		c.number(&r.LeastAbove, 0.5, longest)
	case 3:
		c.number(&r.DrillAbove, 0.5, longest)
	}
}

func (c change) piece() {
	p := &c.f.Kit.Pieces[c.which%int(fit.NumPieces)]
	switch c.by >> 4 % 8 {
	case 0:
		p.Present = !p.Present
	case 1:
		p.Change = fit.How(c.which / int(fit.NumPieces) % 3)
	case 2:
		p.Bounded = !p.Bounded
	case 3:
		p.Bounds[0] = min(laidLength(c.by.about(p.Bounds[0])), p.Bounds[1])
	case 4:
		p.Bounds[1] = max(laidLength(c.by.about(p.Bounds[1])), p.Bounds[0])
	case 5:
		c.number(&p.Cord, 2, 14)
	case 6:
		c.number(&p.Strength, 0.5, 60)
	case 7:
		c.number(&p.Wraps, 1, 12)
		c.number(&p.Strands, 1, 4)
		p.Wraps.V, p.Strands.V = math.Round(p.Wraps.V), math.Round(p.Strands.V)
	}
	if !p.Bounded || p.Bounds[0] <= 0 {
		p.Bounded, p.Bounds = false, [2]float64{}
	}
}

// setLength sets a piece after a hang.
func (c change) setLength() {
	n := len(c.f.Hangs)
	if n == 0 || len(c.f.Changes) > 5 {
		return
	}
	p := fit.Piece(c.which % int(fit.NumPieces))
	usual := [fit.NumPieces]float64{1100, 320, 320, 1020, 120, 590}
	to := laidLength(c.by.about(usual[p]))
	set := fit.Change{Piece: p, To: to, AfterHang: 1 + c.which/int(fit.NumPieces)%n}
	if c.by%3 == 0 {
		set.Measured = []float64{laidLength(to + 2)}
	}
	if c.by%5 != 0 {
		set.From = fit.Some(usual[p])
	}
	c.f.Changes = append(c.f.Changes, set)
}

func (c change) keep() {
	keys := sessions.KeptKeys()
	k := fit.Kept{Key: keys[c.which%len(keys)], Session: c.s.ID}
	if c.by%4 > 0 {
		k.Taken = time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC).AddDate(0, 0, -int(c.by%1000))
	}
	if !slices.ContainsFunc(c.f.Kept, func(o fit.Kept) bool { return o.Key == k.Key }) {
		c.f.Kept = append(c.f.Kept, k)
	}
}

func (c change) limit() {
	l := rules.Limit(c.which % int(rules.NumLimits))
	if c.s.Limits == nil {
		c.s.Limits = map[rules.Limit]float64{}
	}
	was, moved := c.s.Limits[l]
	info := l.Info()
	c.s.Limits[l] = c.by.between(info.Bounds[0], info.Bounds[1])
	switch faults := c.s.RulesFor().Faults(); {
	case len(faults) == 0:
	case moved:
		c.s.Limits[l] = was
	default:
		delete(c.s.Limits, l)
	}
}

func (c change) climber() {
	switch c.which % 4 {
	case 0:
		c.f.Sex = fit.Sex(c.by % 3)
	case 1:
		c.number(&c.f.Mass, 25, 250)
	case 2:
		c.number(&c.f.MassU, 0, 25)
	case 3:
		c.number(&c.f.StatureTold, 500, 2500)
	}
}

func (c change) tape() {
	t := &c.f.Tape
	switch c.which % 3 {
	case 0:
		t.Class = fit.ClassI + fit.TapeClass(c.by%3)
	case 1:
		t.Division = c.by.between(0.5, 10)
	case 2:
		t.Hook = c.by%2 == 0
	}
}

func (c change) kit() {
	switch c.which % 3 {
	case 0:
		c.f.Kit.OwnRings = fit.Choice(c.by % 3)
	case 1:
		c.f.Kit.Garda = c.by%2 == 0
	case 2:
		c.number(&c.f.Kit.InsideWidth, 15, 120)
	}
}
