package rules

import (
	"math"

	"example.com/hangtape/fit"
)

// driftFactor is how many standard uncertainties of the difference two sessions
// may lie apart: 2, a coverage of 95 % (GUM 6.3.3).
const driftFactor = 2

// A Drift is one height held against that of an earlier session, in mm. What was
// not read in one of the two is unknown (NaN).
type Drift struct {
	Name      string  // of the height and what it counts from
	Then, Now float64 // mm
	U         float64 // standard uncertainty of the difference: both sessions' own
	If        string  // what may be behind it where it has changed
	Missing   string  // key of the first reading of today that is not there; empty where all are
}

// By is how much higher it is now.
func (d Drift) By() float64 { return d.Now - d.Then }

// Known says whether both sessions have it.
func (d Drift) Known() bool { return !math.IsNaN(d.By()) && !math.IsNaN(d.U) }

// Changed says whether it differs by more than its uncertainty.
func (d Drift) Changed() bool { return d.Known() && math.Abs(d.By()) > driftFactor*d.U }

// The drifts. The Garda hitch at level counts from the knee, so that a thigh held
// a little higher is no change.
const (
	driftConnector = iota
	driftLevel
	driftTaut

	numDrifts
)

// Recheck holds what a re-check reads against an earlier session: the connector
// and the Garda hitch in its two poses. What the earlier session changed after
// reading it counts as the model has it.
func Recheck(then, now *fit.Fitting) []Drift {
	list := [numDrifts]Drift{
		{Name: "main connector's bottom above the hip point", If: "the main bridge is set otherwise, or the climber sits otherwise: clothes, saddle, where it is worn"},
		{Name: "Garda hitch above the knee, thigh level", If: "the foot loop is set otherwise, or the boots are others"},
		{Name: "Garda hitch above the hip point, tether taut", If: "tether or backup bridge are set otherwise, or the climber sits otherwise"},
	}
	was, wasU := drifts(then, true)
	is, isU := drifts(now, false)
	for i := range list {
		d := &list[i]
		d.Then, d.Now, d.U = was[i], is[i], math.Hypot(wasU[i], isU[i])
		if math.IsNaN(d.Now) {
			d.Missing = firstUnread(now, driftReadings[i][:])
		}
	}
	return list[:]
}

// driftReadings are the readings of each drift: the height, and what it counts from.
var driftReadings = [numDrifts][2]fit.Reading{
	driftConnector: {fit.ConnectorBottom, fit.Hip},
	driftLevel:     {fit.GardaLevel, fit.KneeLevel},
	driftTaut:      {fit.GardaTaut, fit.Hip},
}

// drifts are the heights of a session with their standard uncertainties. Where
// moved, a height that was changed after it was read is the model's.
func drifts(f *fit.Fitting, moved bool) (v, u [numDrifts]float64) {
	m := fit.NewModel(f, fit.Options{})
	p := m.Propagate(numDrifts, func(x []float64, s *fit.State, out []float64) {
		for i, r := range driftReadings {
			out[i] = m.ReadAbove(x, r[0], r[1])
		}
		if moved && m.Moved(fit.ConnectorBottom) {
			out[driftConnector] = s.ConnectorBottom
		}
		if moved && m.Moved(fit.GardaLevel) {
			out[driftLevel] = s.YLevel // as it is with the knee level with the hip
		}
		if moved && m.Moved(fit.GardaTaut) {
			out[driftTaut] = s.YTaut
		}
	})
	for i := range v {
		v[i] = p.Values[i]
		u[i], _ = p.U(i)
	}
	return v, u
}

// firstUnread is the key of the first of the readings that the latest hang has
// not; of the height itself where all are there and it is unknown all the same.
func firstUnread(f *fit.Fitting, readings []fit.Reading) string {
	if len(f.Hangs) == 0 {
		return fit.HeightKey(0, readings[0])
	}
	latest := len(f.Hangs) - 1
	for _, r := range readings {
		if len(f.Hangs[latest].Heights[r]) == 0 {
			return fit.HeightKey(latest, r)
		}
	}
	return fit.HeightKey(latest, readings[0])
}
