package advice

import (
	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// A demand is that one end of one fitting comes to at least a ratio of margin to
// guard.
type demand struct {
	t      *tables
	e      rules.End
	output int     // that the end follows from
	curve  *curve  // of a bend, over the output; nil for other ends
	pair   bool    // of hitches, whose variance is no sum of terms
	factor float64 // of u in the guard
	need   float64 // least ratio
	exact  bool    // nothing is uncertain: the margin alone counts
	more   sum     // what readings taken meanwhile, a limit eased or the full model add
	must   bool
	signs  [fit.NumPieces]int // of the margin, as each piece gets longer
}

func newDemand(t *tables, e rules.End, factor float64) *demand {
	d := &demand{t: t, e: e, output: int(e), factor: factor, need: 1, must: e.Check().Info().Kind == rules.Must}
	sense := 1
	switch e.Check() {
	case rules.HitchPairLevel:
		d.pair = true
	case rules.KneeBendOnTether:
		k := 0
		if e == rules.KneeBendOnTether.Ends()[1] {
			k, sense = 1, -1
		}
		if d.curve = t.bend[k]; d.curve != nil {
			d.output = outDistance
		}
	}
	for i := range d.signs {
		if tm := t.terms[i][d.output]; tm != nil {
			d.signs[i] = sense * tm.sign
		} else if t.beyond[i][e] {
			d.signs[i] = 1 // either will do: what is unknown is not met
		}
	}
	return d
}

// at is the end's margin for a choice of options, with its variance and shift.
func (d *demand) at(c *choice) sum {
	s := d.t.at(d.output, c)
	switch {
	case d.curve != nil:
		s = d.curve.at(s)
	case d.pair:
		s.variance = d.t.pair[min(1, c[placeLeft])][min(1, c[placeRight])]
	}
	return s.plus(d.more)
}

func (d *demand) ratio(c *choice) float64 {
	s := d.at(c)
	if d.exact {
		s.margin, s.variance, s.shift = rules.Near0(s.margin), 0, 0
	}
	return ratio(s, d.factor)
}

// met allows for the interpolation of the tables: what is met by less than it is
// put through the full model before it is told.
func (d *demand) met(c *choice) bool { return d.ratio(c) >= d.need }

// movedBy says whether a piece of s moves the end.
func (d *demand) movedBy(s set) bool {
	for i, sign := range d.signs {
		if sign != 0 && s.has(i) {
			return true
		}
	}
	return false
}

// inSearch says whether the advice looks at the end at all: it does not follow
// from the kit's lengths alone, or is met by practice, otherwise.
func inSearch(c rules.CheckID) bool {
	switch c {
	case rules.SlipForce, rules.TetherStrength, rules.DrillGroundRoom, rules.TwoLoadPaths:
		return false
	}
	return true
}

// demands are those of the ends that some piece can move: the musts, then the
// shoulds. An end that is out of the domain whatever is set within the bounds is
// never met.
func demands(t *tables, factor float64) (musts, shoulds []*demand) {
	for c := range rules.NumChecks {
		if !inSearch(c) {
			continue
		}
		for _, e := range c.Ends() {
			d := newDemand(t, e, factor)
			switch {
			case !d.movedBy(^set(0)):
			case d.must:
				musts = append(musts, d)
			default:
				shoulds = append(shoulds, d)
			}
		}
	}
	return musts, shoulds
}

// exactly are the demands if nothing were uncertain.
func exactly(demands []*demand) []*demand {
	return changed(demands, func(d *demand) { d.exact = true })
}

// changed are copies of the demands, each changed by do.
func changed(demands []*demand, do func(d *demand)) []*demand {
	list := make([]*demand, len(demands))
	for i, d := range demands {
		c := *d
		do(&c)
		list[i] = &c
	}
	return list
}
