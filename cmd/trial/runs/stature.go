package runs

import (
	"example.com/hangtape/cmd/trial/instructor"
	"example.com/hangtape/cmd/trial/practice"
	"example.com/hangtape/cmd/trial/truth"
	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/advice"
)

// Stature is a fitting of which nothing of the body but stature, sex and mass is
// known: the kit is copied, hung and read, and set as the advice says.
type Stature struct {
	Misses   []int  // musts that truly miss then, an end each
	Answered bool   // the advice found a set
	Conflict string // the cause where it found none; the kit stays as it was copied
}

// Stature runs one.
func (b *Bench) Stature(body truth.Body) Stature {
	w := b.soundWorld(body)
	d := b.dice(body, streamStature)
	k := practice.Copied(d, &w, b.Bounds, truth.AsOwned)
	s := instructor.New(d, &w, k, b.Bounds, instructor.FullPlan)
	s.Fit.Survey = b.Survey
	s.ReadLaid(append([]fit.Reading{fit.Stature}, kitReadings...))
	s.HangAndRead(hardwareHeights)
	b.assess(s) // reads again what cannot be
	var r Stature
	ans := advice.Advise("", &s.Fit, b.Limits, rules.MarkMetric)
	_, r.Conflict = b.apply(s, ans, LeastChange)
	r.Answered = r.Conflict == ""
	r.Misses = b.misses(s)
	return r
}

// kitReadings are the lengths of a kit that came tied, and hardwareHeights what is
// read of it while it hangs, with the hip to read it against.
var (
	kitReadings = []fit.Reading{
		fit.MainBridge, fit.MainBridgeRings, fit.GardaToTether, fit.FootLoop, fit.Tether, fit.BackupBridge, fit.BackupBridgeRings,
	}
	hardwareHeights = []fit.Reading{
		fit.Hip, fit.ConnectorTop, fit.ConnectorBottom, fit.LeftLoopTop, fit.LeftHitchTop, fit.RightLoopTop, fit.RightHitchTop,
		fit.MainRings, fit.BackupRings, fit.Soles, fit.Ground,
	}
)
