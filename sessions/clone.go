package sessions

import (
	"maps"
	"slices"
)

// Clone is a copy of s that shares nothing with it.
func (s *Session) Clone() *Session {
	c := *s
	c.Limits = maps.Clone(s.Limits)
	for i, list := range s.Fit.Laid {
		c.Fit.Laid[i] = slices.Clone(list)
	}
	c.Fit.Hangs = slices.Clone(s.Fit.Hangs)
	for i := range c.Fit.Hangs {
		for r, list := range c.Fit.Hangs[i].Heights {
			c.Fit.Hangs[i].Heights[r] = slices.Clone(list)
		}
	}
	c.Fit.Changes = slices.Clone(s.Fit.Changes)
	for i := range c.Fit.Changes {
		c.Fit.Changes[i].Measured = slices.Clone(c.Fit.Changes[i].Measured)
	}
	c.Fit.Kept = slices.Clone(s.Fit.Kept)
	if s.Drill != nil {
		d := *s.Drill
		d.Steps = slices.Clone(d.Steps)
		c.Drill = &d
	}
	if s.SignOff != nil {
		o := *s.SignOff
		o.Checks = slices.Clone(o.Checks)
		c.SignOff = &o
	}
	return &c
}
