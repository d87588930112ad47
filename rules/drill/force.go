package drill

import (
	"math"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// A Force tells what the catch comes to: peak force against the rope above.
type Force struct {
	Drops  [NumFalls]float64 // mm, how far the body drops; NaN where it is not known
	Points []Point           // by the rope above, shortest first
	Stay   []Stay            // by the climber's mass, lightest first
	Limits [2]float64        // kN: peak-force, then saddle-force
}

// A Fall is a way to drop onto the tether.
type Fall int

// The falls: the model's worst first. That one hitch alone makes about half the
// drop of both, since rope then runs over the union, is derived; friction there
// is left out.
const (
	BothLow Fall = iota // both hitches, just sat back, Garda hitch low
	OneLow              // one hitch, the same
	BothUp              // both hitches, Garda hitch drawn up to level
	OneUp               // one hitch, the same

	NumFalls
)

var fallWords = [NumFalls]struct{ key, words string }{
	{"both_low", "both hitches, Garda hitch low"}, {"one_low", "one hitch, Garda hitch low"},
	{"both_up", "both hitches, Garda hitch drawn up"}, {"one_up", "one hitch, Garda hitch drawn up"},
}

// String is the fall in words.
func (d Fall) String() string { return fallWords[d].words }

// Key is the fall in answers for programs.
func (d Fall) Key() string { return fallWords[d].key }

// A Point of the chart is what the falls come to with so much rope above.
type Point struct {
	Above float64           // mm of rope above
	Peak  [NumFalls]float64 // kN; NaN where it is not known
}

// A Stay is how far below the union to stay, for a climber of a mass.
type Stay struct {
	Mass         float64 // kg
	Peak, Saddle float64 // mm, for peak-force and saddle-force, 95 % sure; NaN where no rope is long enough or it is not known
}

// chartAbove are the lengths of rope above that the chart shows, in mm.
var chartAbove = [...]float64{1000, 2000, 3000, 4000, 6000, 8000, 12000, 16000, 24000}

// otherMass is how much lighter and heavier a climber is told beside this one,
// in kg.
const otherMass = 20

// LeftOut is what the force leaves out.
const LeftOut = "Left out: friction at the union (with one hitch alone the drop may be less, and less rope may take the catch), the give of tether, saddle and body (it is softer than told), a swing, and the union itself. The rope is taken as a linear spring, new and dry. One hitch alone: half the drop of both, since rope then runs over the union (derived)."

func force(f *fit.Fitting, l rules.Limits, a *rules.Assessment) Force {
	s := a.State()
	t := Force{Limits: [2]float64{l[rules.PeakForce], l[rules.SaddleForce]}}
	up := math.Max(0, s.Over)
	t.Drops = [NumFalls]float64{BothLow: s.Drop(), OneLow: s.Drop() / 2, BothUp: up, OneUp: up / 2}
	for _, above := range chartAbove {
		p := Point{Above: above}
		for d, drop := range t.Drops {
			p.Peak[d] = fit.PeakForce(s.Weight, 2*s.Modulus/above, drop)
		}
		t.Points = append(t.Points, p)
	}
	for _, more := range []float64{-otherMass, 0, otherMass} {
		t.Stay = append(t.Stay, stay(f, l, more))
	}
	return t
}

// stay works out how far below the union a climber heavier by more stays.
func stay(f *fit.Fitting, l rules.Limits, more float64) Stay {
	if !f.Mass.Known {
		return Stay{Mass: math.NaN(), Peak: math.NaN(), Saddle: math.NaN()}
	}
	g := *f
	g.Mass.V += more
	sure := func(limit rules.Limit) float64 {
		under := l
		under[rules.PeakForce] = l[limit]
		if mm, ok := rules.LeastAbove(&g, under, fit.Options{}); ok {
			return mm
		}
		return math.NaN()
	}
	return Stay{Mass: g.Mass.V, Peak: sure(rules.PeakForce), Saddle: sure(rules.SaddleForce)}
}
