package rules

import "example.com/hangtape/fit"

// poseInfo is one row of the poses that an answer lists.
type poseInfo struct {
	name, unit string
	at         func(s *fit.State, l *Limits) float64
	read       fit.Reading // told only where this was read; -1 for always
}

const always fit.Reading = -1

const numPoses = 15

var poseTable = [numPoses]poseInfo{
	{"ylevel", "mm", func(s *fit.State, _ *Limits) float64 { return s.YLevel }, always},
	{"ytaut", "mm", func(s *fit.State, _ *Limits) float64 { return s.YTaut }, always},
	{"over", "mm", func(s *fit.State, _ *Limits) float64 { return s.Over }, always},
	{"thigh_past_level", "deg", func(s *fit.State, _ *Limits) float64 { return s.ThighPastLevel() }, always},
	{"gain", "mm", func(s *fit.State, _ *Limits) float64 { return s.Gain }, always},
	{"net", "mm", func(s *fit.State, _ *Limits) float64 { return s.Net }, always},
	{"slack", "mm", func(s *fit.State, _ *Limits) float64 { return s.Slack }, always},
	{"flexion", "deg", func(s *fit.State, _ *Limits) float64 { return s.Flexion }, always},
	{"ylow", "mm", func(s *fit.State, _ *Limits) float64 { return s.YLow }, always},
	{"fmax", "kN", func(s *fit.State, _ *Limits) float64 { return s.PeakForce }, always},
	{"lmin", "mm", func(s *fit.State, l *Limits) float64 { return leastRope(s, l[PeakForce]) }, always},
	{"lmin_saddle", "mm", func(s *fit.State, l *Limits) float64 { return leastRope(s, l[SaddleForce]) }, always},
	{"sag", "mm", func(s *fit.State, _ *Limits) float64 { return s.Sag }, always},
	{"ylevel_model", "mm", func(s *fit.State, _ *Limits) float64 { return s.YLevelModel }, fit.GardaLevel},
	{"ytaut_model", "mm", func(s *fit.State, _ *Limits) float64 { return s.YTautModel }, fit.GardaTaut},
}

// leastRope is the shortest rope above the climber that keeps the peak force of
// this state's drop at or under limit.
func leastRope(s *fit.State, limit float64) float64 {
	return fit.LeastRope(s.Modulus, s.Drop(), s.Weight, limit)
}

// posesOf fills out with the poses in state s, and leaves it where none was
// computed anew.
func posesOf(s *fit.State, l *Limits, out []float64) {
	if s.Anew()&(fit.ThePoses|fit.TheSlip) == 0 {
		return
	}
	for i := range poseTable {
		out[i] = poseTable[i].at(s, l)
	}
}

// outputOfPose is where an Assessment propagates the pose with that name, -1
// where there is no such pose.
func outputOfPose(name string) int {
	for i := range poseTable {
		if poseTable[i].name == name {
			return outPoses + i
		}
	}
	return -1
}

// PoseKinds are the names and units of all poses, in their order.
func PoseKinds() []Value {
	kinds := make([]Value, numPoses)
	for i, p := range poseTable {
		kinds[i] = Value{Name: p.name, Unit: p.unit}
	}
	return kinds
}

// Poses tells the poses, relative to the hip point.
func (a *Assessment) Poses() []Value {
	values := make([]Value, 0, numPoses)
	for i, p := range poseTable {
		if p.read != always && !a.m.Read(p.read) {
			continue
		}
		o := outPoses + i
		u, _ := a.p.U(o)
		values = append(values, Value{p.name, Num(a.p.Values[o]), Num(u), p.unit, "derived"})
	}
	return values
}
