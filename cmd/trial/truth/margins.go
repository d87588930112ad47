package truth

import "math"

// An End is one side or end of a check: what it is called and at what.
type End struct {
	Check, At string
	Must      bool
	Movable   bool // by the lengths of the kit
}

// The ends, in the order of the checks.
const (
	ReachLeft = iota
	ReachRight
	HandholdLeft
	HandholdRight
	PairLeft
	PairRight
	FaceBelow
	FaceAbove
	LowReach
	WaistBelow
	WaistAbove
	UnderConnector
	ReleaseRoom
	LetsLevel
	StopsKnee
	KneeBends
	LegPushes
	DropAbove
	DropBelow
	SlipForce
	DrillLevel
	DrillShort
	ConnectorSize
	GripLeft
	GripRight
	BiteLeft
	BiteRight
	WrapsLeft
	WrapsRight
	HitchStrengthLeft
	HitchStrengthRight
	TetherLimit
	TetherForce
	TwoPaths

	NumEnds
)

// Ends names the ends.
var Ends = [NumEnds]End{
	ReachLeft:          {"hitch-top-reach", "left", true, true},
	ReachRight:         {"hitch-top-reach", "right", true, true},
	HandholdLeft:       {"hitch-handhold", "left", false, true},
	HandholdRight:      {"hitch-handhold", "right", false, true},
	PairLeft:           {"hitch-pair-level", "left", false, true},
	PairRight:          {"hitch-pair-level", "right", false, true},
	FaceBelow:          {"connector-at-face", "below", false, true},
	FaceAbove:          {"connector-at-face", "above", false, true},
	LowReach:           {"garda-low-reach", "", false, true},
	WaistBelow:         {"foot-loop-at-waist", "below", false, true},
	WaistAbove:         {"foot-loop-at-waist", "above", false, true},
	UnderConnector:     {"garda-under-connector", "", true, true},
	ReleaseRoom:        {"garda-release-room", "", true, true},
	LetsLevel:          {"tether-lets-thigh-level", "", true, true},
	StopsKnee:          {"tether-stops-knee", "", false, true},
	KneeBends:          {"knee-bend-on-tether", "knee", true, true},
	LegPushes:          {"knee-bend-on-tether", "leg", true, true},
	DropAbove:          {"slip-drop", "above", true, true},
	DropBelow:          {"slip-drop", "below", true, true},
	SlipForce:          {"slip-force", "", true, false},
	DrillLevel:         {"drill-ground-room", "level", false, false},
	DrillShort:         {"drill-ground-room", "short", false, false},
	ConnectorSize:      {"garda-connector-size", "", true, false},
	GripLeft:           {"hitch-cord-grip", "left", true, false},
	GripRight:          {"hitch-cord-grip", "right", true, false},
	BiteLeft:           {"hitch-cord-bite", "left", false, false},
	BiteRight:          {"hitch-cord-bite", "right", false, false},
	WrapsLeft:          {"hitch-wraps", "left", true, false},
	WrapsRight:         {"hitch-wraps", "right", true, false},
	HitchStrengthLeft:  {"hitch-cord-strength", "left", true, false},
	HitchStrengthRight: {"hitch-cord-strength", "right", true, false},
	TetherLimit:        {"tether-strength", "limit", true, false},
	TetherForce:        {"tether-strength", "force", true, false},
	TwoPaths:           {"two-load-paths", "", true, false},
}

// Margins are the true margins, an end each: positive where the check is met,
// NaN where the pose cannot be.
type Margins [NumEnds]float64

// Holds says whether the end is met; what cannot be is not.
func (m *Margins) Holds(end int) bool { return m[end] >= 0 }

// Misses lists the musts that do not hold, an end each.
func (m *Margins) Misses() []int {
	var out []int
	for e := range Ends {
		if Ends[e].Must && !m.Holds(e) {
			out = append(out, e)
		}
	}
	return out
}

// Margins works out every margin with the kit k under the limits l. An end
// without a formula is NaN, so that it never holds unseen.
func (w *World) Margins(k Kit, l *Limits) Margins {
	p := w.Poses(k)
	var m Margins
	for e := range m {
		m[e] = math.NaN()
	}
	w.lengthMargins(&m, k, l, &p)
	w.forceMargins(&m, k, l, &p)
	w.gearMargins(&m, l)
	return m
}

func (w *World) lengthMargins(m *Margins, k Kit, l *Limits, p *Poses) {
	for side := range 2 {
		m[ReachLeft+side] = w.WristUp[side].Y - p.HitchTop[side] - l.ReachReserve
		m[HandholdLeft+side] = p.LoopTop[side] - p.ConnectorTop - l.LeastLoop
	}
	m[PairLeft] = l.MostPairDifference - (p.HitchTop[Left] - p.HitchTop[Right])
	m[PairRight] = l.MostPairDifference + (p.HitchTop[Left] - p.HitchTop[Right])
	m[FaceBelow] = p.ConnectorTop - (w.Nose.Y - l.FaceBelow)
	m[FaceAbove] = w.Nose.Y + l.FaceAbove - p.ConnectorTop
	m[LowReach] = p.Low - w.WristDown.Y
	m[WaistBelow] = k.Lengths[FootLoop] - (w.Navel - l.WaistBelow)
	m[WaistAbove] = w.Navel + l.WaistAbove - k.Lengths[FootLoop]
	m[UnderConnector] = p.ConnectorBottom - p.Level - l.ConnectorClearance
	m[ReleaseRoom] = p.ConnectorBottom - p.Taut - l.ReleaseRoom
	over := p.Taut - p.Level
	m[LetsLevel] = over - l.LeastOver
	m[StopsKnee] = l.MostOver - over
	m[KneeBends] = l.MostFlexion - p.Flexion/deg
	m[LegPushes] = p.LegLeft
	m[DropAbove] = l.MostDrop - p.Slack
	m[DropBelow] = p.Slack
}

func (w *World) forceMargins(m *Margins, k Kit, l *Limits, p *Poses) {
	weight := w.Mass * gravity
	force := w.peakForce(p.Slack, k.LeastAbove)
	m[SlipForce] = l.PeakForce - force
	strength := w.Gear.Strands * w.Gear.Tether * l.KnotEfficiency
	m[TetherLimit] = strength - l.LeastStrengthRatio*l.PeakForce
	m[TetherForce] = strength - l.LeastStrengthRatio*force

	atDrill := w.peakForce(p.Slack, k.DrillAbove)
	m[DrillLevel] = w.Soles.Y - w.Ground + p.Gain - w.HitchSet - p.Slack - (atDrill-weight)/w.stiffness(k.DrillAbove)
	m[DrillShort] = m[DrillLevel] + p.Taut - p.Level
}

func (w *World) gearMargins(m *Margins, l *Limits) {
	g := &w.Gear
	m[ConnectorSize] = g.Width.True - l.LeastWidthRatio*g.Rope.True
	for side := range 2 {
		ratio := g.Cord[side].True / g.Rope.True
		m[GripLeft+side] = l.MostCordRatio - ratio
		m[BiteLeft+side] = ratio - l.LeastCordRatio
		m[WrapsLeft+side] = g.Wraps - l.LeastWraps
		m[HitchStrengthLeft+side] = 2*g.CordForce*l.KnotEfficiency - l.LeastHitchRatio*w.Mass*gravity
	}
	m[TwoPaths] = 0
	if !g.OwnRings {
		m[TwoPaths] = -1
	}
}

// worst is the smallest margin of the movable musts, each in units of scale.
func (m *Margins) worst(scale *[NumEnds]float64) float64 {
	least := math.Inf(1)
	for e := range Ends {
		if !Ends[e].Must || !Ends[e].Movable {
			continue
		}
		if !(m[e]/scale[e] >= least) {
			least = m[e] / scale[e]
		}
		if math.IsNaN(m[e]) {
			return math.Inf(-1)
		}
	}
	return least
}
