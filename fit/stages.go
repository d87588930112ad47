package fit

import (
	"math"
	"slices"
)

// A Stage is a part of a state that is computed at once. Each builds on those
// before it.
type Stage uint8

// The stages.
const (
	TheAngles Stage = 1 << iota // of the postures
	TheBody
	TheKit // as it hangs
	ThePoses
	TheSlip
	TheLabels

	AllStages = TheAngles | TheBody | TheKit | ThePoses | TheSlip | TheLabels
)

// At computes the state from the values x of the base inputs, by slot.
func (m *Model) At(x []float64, s *State) { m.update(AllStages, x, s) }

// update computes the stages of s anew from the values x, and leaves the others
// as they are.
func (m *Model) update(stages Stage, x []float64, s *State) {
	s.anew = stages
	if stages&TheAngles != 0 {
		m.angles(x, s)
	}
	if stages&TheBody != 0 {
		m.body(x, s)
	}
	if stages&TheKit != 0 {
		m.hanging(x, s)
	}
	if stages&ThePoses != 0 {
		m.posesAt(x, s)
	}
	if stages&TheSlip != 0 {
		m.slip(x, s)
	}
	if stages&TheLabels != 0 {
		m.labelsAt(x, s)
	}
}

// Anew are the stages that were computed anew. What follows from others alone is
// what it was at the inputs' values.
func (s *State) Anew() Stage { return s.anew }

// postureAngles are what the posture's angles come to.
type postureAngles struct{ cosLean, sinShin, cosShin, cosKnee float64 }

func (m *Model) angles(x []float64, s *State) {
	a := &s.angles
	a.cosLean, a.cosKnee = math.Cos(radians(x[m.posture[Lean]])), math.Cos(radians(x[m.posture[KneeBend]]))
	a.sinShin, a.cosShin = math.Sincos(radians(x[m.posture[ShinAngle]]))
}

// Propagate is Propagate for a function f of the state, which fills n outputs.
// Where f is called they hold the outputs at the inputs' values: it may leave
// those that follow only from stages that are not computed anew.
func (m *Model) Propagate(n int, f func(x []float64, s *State, out []float64)) *Propagation {
	return m.propagate(m.u, n, f)
}

func (m *Model) propagate(u []float64, n int, f func(x []float64, s *State, out []float64)) *Propagation {
	return propagate(m.stepping(f), slices.Clone(m.x), u, m.blocks, n)
}

// stepping is f as a function of the inputs, of which it computes for each step
// only the stages that the input has a part in.
func (m *Model) stepping(f func(x []float64, s *State, out []float64)) stepped {
	var mid, s State
	return func(i int, x, out []float64) {
		if i < 0 {
			m.At(x, &mid)
			f(x, &mid, out)
			return
		}
		s = mid
		m.update(m.stages[i], x, &s)
		f(x, &s, out)
	}
}

// posesOn are the poses and what follows from them.
const posesOn = ThePoses | TheSlip

// findStages works out which stages each input may have a part in, so that a
// step of it leaves the others alone. An input that nothing is known of may have
// a part in all.
func (m *Model) findStages() {
	m.stages = make([]Stage, len(m.Inputs))
	for i := range m.Inputs {
		m.stages[i] = AllStages
		if r := m.Inputs[i].Reading; r != noReading {
			m.stages[i] = readingStages(r)
		}
	}
	set := func(to Stage, slots ...slot) {
		for _, s := range slots {
			m.stages[s] = to
		}
	}
	set(TheBody|posesOn, m.stature)
	for p := range NumPostures {
		set(postureStages[p], m.posture[p])
	}
	for _, chain := range m.pieces {
		for _, l := range chain {
			set(TheKit|posesOn, l.slot)
		}
	}
	set(TheSlip, m.mass, m.rope.elongation, m.rope.least, m.rope.drill)
	set(TheLabels, m.rope.diameter, m.width)
	for _, l := range m.labels {
		set(TheLabels, l.cord, l.strength, l.wraps, l.strands)
	}
	for part := range m.estimates {
		set(bodyStages(BodyPart(part)), m.estimates[part].residual)
	}
	for l := range m.likely { // only held against the state
		set(0, m.likely[l].residual)
	}
	set(0, m.gap)
}

var postureStages = [NumPostures]Stage{
	ShinAngle:    TheAngles | posesOn,
	KneeBend:     TheAngles | posesOn,
	BehindRope:   posesOn,
	Set:          posesOn,
	Lean:         TheAngles | TheBody,
	AheadDefault: TheBody | posesOn,
	Sole:         TheBody | posesOn, // a part of the shin
	EyeAboveNose: TheBody,
	ReachFactor:  TheBody,
	LevelByEye:   posesOn,
}

// bodyStages are the stages that a part of the body may have a part in.
func bodyStages(p BodyPart) Stage {
	if p == PartThigh || p == PartShin {
		return TheBody | posesOn
	}
	return TheBody
}

// readingStages are the stages that a reading of r may have a part in, also by
// what it says of other parts of the body.
func readingStages(r Reading) Stage {
	switch r {
	case Hip:
		return TheBody | TheKit | posesOn
	case Nose, WristUp:
		return TheBody
	case ConnectorTop, ConnectorBottom, LeftLoopTop, LeftHitchTop, RightLoopTop, RightHitchTop,
		MainRings, Soles, Ground, MainBridge, MainBridgeRings:
		return TheKit
	case GardaLevel, KneeLevel, GardaTaut:
		return posesOn
	case BackupRings, GardaToTether, FootLoop, Tether, BackupBridge, BackupBridgeRings:
		return TheKit | posesOn
	}
	return TheBody | posesOn
}
