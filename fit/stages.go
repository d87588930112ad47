package fit

import "math"

// A stage is a part of a state that is computed at once. Each builds on those
// before it.
type stage uint8

const (
	theAngles stage = 1 << iota // of the postures
	theBody
	theKit // as it hangs
	thePoses
	theSlip
	theLabels

	lengths = theBody | theKit | thePoses | theSlip
	all     = theAngles | lengths | theLabels
)

// At computes the state from the values x of the base inputs, by slot.
func (m *Model) At(x []float64, s *State) { m.update(all, x, s) }

// update computes the stages of s anew from the values x, and leaves the others
// as they are.
func (m *Model) update(stages stage, x []float64, s *State) {
	if stages&theAngles != 0 {
		m.angles(x, s)
	}
	if stages&theBody != 0 {
		m.body(x, s)
	}
	if stages&theKit != 0 {
		m.hanging(x, s)
	}
	if stages&thePoses != 0 {
		m.posesAt(x, s)
	}
	if stages&theSlip != 0 {
		m.slip(x, s)
	}
	if stages&theLabels != 0 {
		m.labelsAt(x, s)
	}
}

// postureAngles are what the posture's angles come to.
type postureAngles struct{ cosLean, sinShin, cosShin, cosKnee float64 }

func (m *Model) angles(x []float64, s *State) {
	a := &s.angles
	a.cosLean, a.cosKnee = math.Cos(radians(x[m.posture[Lean]])), math.Cos(radians(x[m.posture[KneeBend]]))
	a.sinShin, a.cosShin = math.Sincos(radians(x[m.posture[ShinAngle]]))
}

// Propagate is Propagate for a function f of the state, which fills n outputs.
func (m *Model) Propagate(n int, f func(x []float64, s *State, out []float64)) *Propagation {
	return m.propagate(m.u, n, f)
}

// propagate computes for each step only the stages that the input has a part in.
func (m *Model) propagate(u []float64, n int, f func(x []float64, s *State, out []float64)) *Propagation {
	var mid, s State
	return propagate(func(i int, x, out []float64) {
		if i < 0 {
			m.At(x, &mid)
			f(x, &mid, out)
			return
		}
		s = mid
		m.update(m.stages[i], x, &s)
		f(x, &s, out)
	}, m.x, u, m.blocks, n)
}

// findStages works out which stages each input may have a part in, so that a
// step of it leaves the others alone. An input that nothing is known of may have
// a part in all.
func (m *Model) findStages() {
	m.stages = make([]stage, len(m.Inputs))
	for i := range m.Inputs {
		m.stages[i] = all
		if r := m.Inputs[i].Reading; r != noReading {
			m.stages[i] = readingStages(r)
		}
	}
	set := func(to stage, slots ...slot) {
		for _, s := range slots {
			m.stages[s] = to
		}
	}
	for p := range m.posture {
		set(lengths, m.posture[p])
	}
	set(theAngles|lengths, m.posture[Lean], m.posture[KneeBend], m.posture[ShinAngle])
	set(theSlip, m.mass, m.rope.elongation, m.rope.least, m.rope.drill)
	set(theLabels, m.rope.diameter, m.width)
	for _, l := range m.labels {
		set(theLabels, l.cord, l.strength, l.wraps, l.strands)
	}
	for part := range m.estimates {
		set(lengths, m.estimates[part].residual)
	}
	for l := range m.likely { // only held against the state
		set(0, m.likely[l].residual)
	}
	set(0, m.gap)
}

// readingStages are the stages that a reading of r may have a part in.
func readingStages(r Reading) stage {
	switch r {
	case Nose, WristUp:
		return theBody
	case ConnectorTop, ConnectorBottom, LeftLoopTop, LeftHitchTop, RightLoopTop, RightHitchTop,
		MainRings, Soles, Ground, MainBridge, MainBridgeRings:
		return theKit
	case BackupRings, GardaLevel, KneeLevel, GardaTaut, GardaToTether, FootLoop, Tether, BackupBridge, BackupBridgeRings:
		return theKit | thePoses | theSlip
	}
	return lengths
}
