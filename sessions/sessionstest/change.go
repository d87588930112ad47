package sessionstest

import (
	"math"
	"slices"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

// changeBytes is how many bytes a change of Changed takes.
const changeBytes = 4

// most is the most changes that Changed makes.
const most = 40

// Changed is a session of its own like base, with what bytes say done to it, four
// of them a change: what, to which, and two for how much. Whatever the bytes are,
// every number is one that a file may hold, though numbers may contradict each
// other (fit.Fitting.Faults says where).
func Changed(base *sessions.Session, bytes []byte) *sessions.Session {
	s := base.Clone()
	for n := 0; len(bytes) >= changeBytes && n < most; n++ {
		c := change{s, &s.Fit, int(bytes[1]), amount(uint16(bytes[2])<<8 | uint16(bytes[3]))}
		changes[int(bytes[0])%len(changes)](c)
		bytes = bytes[changeBytes:]
	}
	return s
}

// A change does one thing to s.
type change struct {
	s     *sessions.Session
	f     *fit.Fitting
	which int // 0 to 255
	by    amount
}

// An amount is the two bytes that say how much.
type amount uint16

// share is the amount as a share of the whole.
func (a amount) share() float64 { return float64(a) / math.MaxUint16 }

// between is a number from least to most. One in eight lies at an end.
func (a amount) between(least, most float64) float64 {
	switch a % 16 {
	case 0:
		return least
	case 1:
		return most
	}
	return least + a.share()*(most-least)
}

// about is a number near v, or now and then far from it.
func (a amount) about(v float64) float64 {
	away := a.share() - 0.5
	switch a % 8 {
	case 0:
		away *= 3000
	case 1:
		away = math.Round(away * 100)
	case 2:
		return v * (1 + away)
	default:
		away *= 80
	}
	return v + away
}

// longest is the longest length of a file, in mm.
const longest = 1e5

func laidLength(v float64) float64 { return min(max(v, 0.5), longest) }

// changes are what can be done, by number.
var changes = []func(c change){
	change.leaveOut, change.move, change.move, change.move, change.repeat, change.read,
	change.hangAgain, change.posture, change.rope, change.piece, change.piece, change.setLength,
	change.keep, change.limit, change.climber, change.tape, change.kit, change.moveZero,
}

// list is the readings that which means; ok is false where there is no hang.
func (c change) list() (list *[]float64, r fit.Reading, ok bool) {
	r = fit.Reading(c.which % int(fit.NumReadings))
	if !r.IsHeight() {
		return &c.f.Laid[r], r, true
	}
	n := len(c.f.Hangs)
	if n == 0 {
		return nil, r, false
	}
	return &c.f.Hangs[(n-1+c.which/int(fit.NumReadings))%n].Heights[r], r, true
}

// within is v as a reading r may be.
func within(r fit.Reading, v float64) float64 {
	switch {
	case r.IsHeight() || r == fit.Ahead:
		return min(max(v, -longest), longest)
	case r == fit.Stature:
		return min(max(v, 500), 2500)
	}
	return laidLength(v)
}

func (c change) leaveOut() {
	if list, _, ok := c.list(); ok {
		*list = nil
	}
}

func (c change) move() {
	list, r, ok := c.list()
	if !ok {
		return
	}
	for i, v := range *list {
		(*list)[i] = within(r, c.by.about(v))
	}
}

func (c change) repeat() {
	list, r, ok := c.list()
	if !ok || len(*list) == 0 {
		return
	}
	first := (*list)[0]
	for i := range int(c.by % 6) {
		*list = append(*list, within(r, first+float64(i)*8*(c.by.share()-0.5)))
	}
	if n := len(*list); n > 12 {
		*list = (*list)[:12]
	}
}

func (c change) read() {
	if list, r, ok := c.list(); ok {
		least, most := 0.0, 3000.0
		if c.by%32 < 2 {
			least, most = -longest, longest
		}
		*list = []float64{within(r, c.by.between(least, most))}
	}
}

func (c change) hangAgain() {
	switch n := len(c.f.Hangs); {
	case c.which%8 == 0 && n > 0:
		c.f.Hangs = c.f.Hangs[:n-1]
		for i := range c.f.Changes {
			c.f.Changes[i].AfterHang = max(1, min(c.f.Changes[i].AfterHang, n-1))
		}
		if n == 1 {
			c.f.Changes = nil
		}
	case n > 3:
	case c.which%2 == 0 || n == 0:
		c.f.Hangs = append(c.f.Hangs, fit.Hang{})
	default:
		again := fit.Hang{}
		for r, list := range c.f.Hangs[n-1].Heights {
			again.Heights[r] = slices.Clone(list)
		}
		c.f.Hangs = append(c.f.Hangs, again)
	}
}

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

// moveZero hangs the tape of a hang elsewhere.
func (c change) moveZero() {
	if len(c.f.Hangs) == 0 {
		return
	}
	heights := &c.f.Hangs[c.which%len(c.f.Hangs)].Heights
	by := (c.by.share() - 0.5) * 8000
	for r := range heights {
		for i, v := range heights[r] {
			heights[r][i] = within(fit.Reading(r), v+by)
		}
	}
}
