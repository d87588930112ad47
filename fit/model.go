package fit

import "math"

var nan = math.NaN()

// A Model is a fitting made ready for computing: its base inputs, and where in
// their vector each quantity finds what it needs. It is not safe for use by
// several goroutines at once.
type Model struct {
	Inputs []Input // by slot; the first stands for what is unknown

	f          *Fitting
	x, u       []float64 // values and standard uncertainties, by slot
	v          Spreads
	regression Regression

	counted
	stature, inseam, mass slot
	hips                  []slot // by hang
	posture               [NumPostures]slot
	rope                  ropeSlots
	width                 slot
	labels                [NumPieces]labelSlots
	pieces                [NumPieces]pieceLengths
	sides                 [2]side

	estimates [NumBodyParts]estimate
	likely    [numLikely]likelihood
	gap       slot       // the connector bottom's usual drop under the top of the bridge
	blocks    []Block    // inputs that are correlated
	poses     poseChains // lengths as they were when the poses were read
	stages    []Stage    // by slot: what a step of the input may have a part in
}

// counted are the readings that count: of a height the latest hang's.
type counted struct {
	laid   [NumReadings]slot
	height [NumReadings]slot
	hang   [NumReadings]int  // the hang that read it, -1 where none did
	hipOf  [NumReadings]slot // the hip of that hang
}

type ropeSlots struct{ diameter, elongation, least, drill slot }

type labelSlots struct{ cord, strength, wraps, strands slot }

// poseChains holds the lengths that a pose was read with and the ones there are
// now; where they are the same slot, what is unchanged cancels.
type poseChains struct {
	footLevel, footNow              slot
	tetherTaut, tetherNow           slot
	backupTaut, backupNow           slot
	bridgeRead                      [NumReadings]slot // main bridge when a height that it moves was read
	bridgeNow                       slot
	kneeSlot, kneeHip               slot // the knee in the hang of the Garda hitch at level
	kneeElsewhere, kneeElsewhereHip slot // the latest knee where no Garda hitch was read at level
}

// Options are what a model may be built with beside a fitting.
type Options struct {
	Spreads *Spreads // in place of today's own, for a reading tried out
}

// NewModel makes f ready for computing. f must have no Faults and must not be
// changed while the model is in use.
func NewModel(f *Fitting, o Options) *Model {
	m := &Model{f: f}
	if o.Spreads != nil {
		m.v = *o.Spreads
	} else {
		m.v = f.spreads()
	}
	n := 64
	m.Inputs, m.x, m.u = make([]Input, 0, n), make([]float64, 0, n), make([]float64, 0, n)
	m.add(Input{V: math.NaN(), Reading: noReading, Hidden: true})
	m.addClimber()
	m.addHangs()
	m.addRope()
	m.addPosture()
	m.addKit()
	m.addChanges()
	m.resolve()
	m.markPredicted()
	m.gap = m.add(Input{V: bridgeGap, U: bridgeGapU, Unit: "mm", Origin: Default, Reading: noReading, Hidden: true})
	m.addEstimates()
	m.findStages()
	return m
}

// Today is the spread that readings of this session have, by kind.
func (m *Model) Today() Spreads { return m.v }

// Values is a copy of the values of the base inputs, by slot.
func (m *Model) Values() []float64 { return append([]float64(nil), m.x...) }

func (m *Model) addClimber() {
	f := m.f
	m.stature, m.inseam = m.addLaid(Stature), m.addLaid(Inseam)
	if m.stature == unknown && f.StatureTold.Known {
		m.stature = m.add(Input{Key: "climber.stature_told_mm", V: f.StatureTold.V, U: toldStatureU, Unit: "mm", Origin: Estimated, Reading: noReading})
	}
	u := massU
	if f.MassU.Known {
		u = f.MassU.V
	}
	m.mass = m.addKnown("climber.mass_kg", f.Mass, u, "kg")
	m.laid[Stature], m.laid[Inseam] = m.stature, m.inseam
	for r := Inseam + 1; r < firstHeight; r++ {
		m.laid[r] = m.addLaid(r)
	}
}

func (m *Model) addHangs() {
	var latest [NumReadings]int
	for r := range latest {
		latest[r] = -1
	}
	for h := range m.f.Hangs {
		for r := firstHeight; r <= lastHeight; r++ {
			if len(m.f.Hangs[h].Heights[r]) > 0 {
				latest[r] = h
			}
		}
	}
	m.hang = latest
	m.hips = make([]slot, len(m.f.Hangs))
	for h := range m.f.Hangs {
		m.addHang(h, &latest)
	}
	for r := firstHeight; r <= lastHeight; r++ {
		if h := m.hang[r]; h >= 0 {
			m.hipOf[r] = m.hips[h]
		}
	}
}

func (m *Model) addRope() {
	r := &m.f.Rope
	m.rope.diameter = m.addKnown("rope.diameter_mm", r.Diameter, diameterU, "mm")
	m.rope.elongation = m.addKnown("rope.elongation_percent", r.Elongation, ElongationShare*r.Elongation.V, "%")
	m.rope.least = m.addKnown("rope.least_above_mm", r.LeastAbove, 0, "mm")
	m.rope.drill = m.addKnown("rope.drill_above_mm", r.DrillAbove, 0, "mm")
	m.laid[Ahead] = m.addLaid(Ahead)
}

func (m *Model) addPosture() {
	for p := Posture(0); p < NumPostures; p++ {
		v, u := m.f.posture(p)
		m.posture[p] = m.add(Input{Key: postureKeys[p], V: v, U: u, Unit: postureInfo[p].Unit, Origin: Default, Reading: noReading})
	}
	if m.laid[Ahead] == unknown {
		m.laid[Ahead] = m.posture[AheadDefault]
	}
}

func (m *Model) addKit() {
	laid := func(table string) {
		for r := lastHeight + 1; r < NumReadings; r++ {
			if readingInfo[r].Table == table {
				m.laid[r] = m.addLaid(r)
			}
		}
	}
	laid("kit.main_bridge")
	m.addLabels(PieceHitchLeft)
	m.addLabels(PieceHitchRight)
	laid("kit.garda")
	m.width = m.addKnown("kit.garda.inside_width_mm", m.f.Kit.InsideWidth, insideWidthU, "mm")
	laid("kit.foot_loop")
	laid("kit.tether")
	m.addLabels(PieceTether)
	laid("kit.backup_bridge")
}
