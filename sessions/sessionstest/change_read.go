package sessionstest

import (
	"slices"

	"example.com/hangtape/fit"
)

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
