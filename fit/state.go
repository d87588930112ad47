package fit

import "math"

// A State is everything that follows from one vector of input values. Lengths
// are mm, heights mm above the hip point, forces kN, angles degrees. What is
// unknown or out of the domain is NaN. Sides are left, right.
type State struct {
	// The body.
	Thigh, Shin, Waist       float64 // Shin with the boot's sole; Waist above the ground, standing
	Nose, WristUp, WristDown float64
	Full                     float64 // full reach of the wrist above the hip, upright
	Ahead                    float64 // x of the rope

	// The kit, as it hangs.
	ConnectorTop, ConnectorBottom float64
	Loop, HitchTop                [2]float64
	PairDifference                float64 // left hitch top above the right one
	MainRings, BackupRings        float64
	MainBridge, MainBridgeRings   float64 // length, ring to ring
	BackupBridge, BackupBridgeRings,
	Tether, FootLoop, GardaToTether float64
	Soles, SolesAboveGround float64
	HipAboveGround          float64

	// The poses.
	YLevel, YTaut           float64 // top of the Garda hitch, thigh level and tether taut
	YLevelModel, YTautModel float64 // the same from lengths alone
	Delta, Tau              float64 // read less model, where the pose was read
	KneeAtLevel             float64 // the knee in the pose that was read, or by eye
	Over                    float64 // how far past level the tether lets the foot come
	KneeAtTaut              float64
	ThighPastLevel          float64 // deg
	Gain, Net, Slack        float64
	Set                     float64 // lost when a hitch takes the load
	LegReach, LegDistance   float64 // t + s, and hip to sole hanging on the tether
	Flexion                 float64 // deg
	YLow                    float64

	// The slip.
	Weight, Modulus        float64 // kN; of one leg of rope, per unit strain
	LeastAbove, DrillAbove float64 // rope above
	PeakForce              float64 // with the least rope above
	Stretch                float64 // of the rope above during the drill, beyond the hang's own, at its peak
	Sag                    float64

	// The labels.
	RopeDiameter, InsideWidth  float64
	HitchCord, HitchStrength   [2]float64
	HitchWraps                 [2]float64
	TetherCord, TetherStrength float64
	TetherStrands              float64
}

// Drop is how far the body falls before the tether catches it: the slack, or 0
// where it catches first.
func (s *State) Drop() float64 { return math.Max(0, s.Slack) }

// y is the height of r above the hip, as the hang that counts read it.
func (m *Model) y(x []float64, r Reading) float64 { return x[m.height[r]] - x[m.hipOf[r]] }

// lift is how far the main bridge has come up since r was read.
func (m *Model) lift(x []float64, r Reading) float64 {
	then, now := m.poses.bridgeRead[r], m.poses.bridgeNow
	if then == now {
		return 0
	}
	rings := x[m.laid[MainBridgeRings]]
	return Rise(x[now], rings) - Rise(x[then], rings)
}

// above is the height of r above b; where one hang read both, the hip has no
// part in it.
func (m *Model) above(x []float64, r, b Reading) float64 {
	if m.hang[r] == m.hang[b] {
		return x[m.height[r]] - x[m.height[b]]
	}
	return m.y(x, r) - m.y(x, b)
}

// At computes the state from the values x of the base inputs, by slot.
func (m *Model) At(x []float64, s *State) {
	m.body(x, s)
	m.hanging(x, s)
	m.posesAt(x, s)
	m.slip(x, s)
	m.labelsAt(x, s)
}

func (m *Model) body(x []float64, s *State) {
	part := func(p BodyPart) float64 {
		e := &m.estimates[p]
		if !e.told {
			return math.NaN()
		}
		return e.mean.at(x) + x[e.residual]
	}
	known := func(r Reading) bool { return m.height[r] != unknown }
	sole := x[m.posture[Sole]]
	if s.Thigh = x[m.laid[Thigh]]; m.laid[Thigh] == unknown {
		s.Thigh = part(PartThigh)
	}
	if s.Shin = x[m.laid[Shin]]; m.laid[Shin] == unknown {
		s.Shin = part(PartShin) + sole
	}
	if s.Waist = x[m.laid[Waist]]; m.laid[Waist] == unknown {
		s.Waist = part(PartWaist) + sole
	}
	if s.WristDown = m.y(x, WristDown); !known(WristDown) {
		s.WristDown = part(PartDown)
	}
	s.Full = part(PartFull)
	if s.Nose = m.y(x, Nose); !known(Nose) {
		s.Nose = m.noseEstimate(x, part(PartNose))
	}
	if s.WristUp = m.y(x, WristUp); !known(WristUp) {
		s.WristUp = m.wristEstimate(x, s.Nose, s.Full)
	}
	s.Ahead = x[m.laid[Ahead]]
}

// noseEstimate leans the survey's nose, which is 45 mm under the eye.
func (m *Model) noseEstimate(x []float64, nose float64) float64 {
	return (nose + postureInfo[EyeAboveNose].V - x[m.posture[EyeAboveNose]]) * math.Cos(radians(x[m.posture[Lean]]))
}

// wristEstimate is the comfortable share of the way from the nose to full reach.
func (m *Model) wristEstimate(x []float64, nose, full float64) float64 {
	return nose + x[m.posture[ReachFactor]]*(full*math.Cos(radians(x[m.posture[Lean]]))-nose)
}

func (m *Model) hanging(x []float64, s *State) {
	s.ConnectorTop = m.y(x, ConnectorTop) + m.lift(x, ConnectorTop)
	s.ConnectorBottom = m.y(x, ConnectorBottom) + m.lift(x, ConnectorBottom)
	var tops [2]float64 // of the hitches above the connector
	for i := range m.sides {
		sd := &m.sides[i]
		switch {
		case sd.retied != unknown:
			s.Loop[i] = x[sd.retied]
		case m.hang[sd.loopTop] == m.hang[ConnectorTop]:
			s.Loop[i] = m.above(x, sd.loopTop, ConnectorTop)
		default:
			s.Loop[i] = m.y(x, sd.loopTop) + m.lift(x, sd.loopTop) - s.ConnectorTop
		}
		if sd.moved {
			wraps := x[m.height[sd.hitchTop]] - x[sd.wrapLoop]
			if sd.wrapHang != m.hang[sd.hitchTop] {
				wraps += x[sd.wrapHip] - x[m.hipOf[sd.hitchTop]]
			}
			tops[i] = s.Loop[i] + wraps
			s.HitchTop[i] = s.ConnectorTop + tops[i]
			continue
		}
		s.HitchTop[i] = m.y(x, sd.hitchTop) + m.lift(x, sd.hitchTop)
		if tops[i] = s.HitchTop[i] - s.ConnectorTop; m.hang[sd.hitchTop] == m.hang[ConnectorTop] {
			tops[i] = m.above(x, sd.hitchTop, ConnectorTop)
		}
	}
	if l, r := &m.sides[0], &m.sides[1]; !l.moved && !r.moved && m.hang[l.hitchTop] == m.hang[r.hitchTop] {
		s.PairDifference = m.above(x, l.hitchTop, r.hitchTop)
	} else {
		s.PairDifference = tops[0] - tops[1]
	}
	s.MainRings, s.BackupRings = m.y(x, MainRings), m.y(x, BackupRings)
	s.Soles, s.HipAboveGround = m.y(x, Soles), -m.y(x, Ground)
	s.SolesAboveGround = m.above(x, Soles, Ground)
	s.MainBridge, s.MainBridgeRings = x[m.poses.bridgeNow], x[m.laid[MainBridgeRings]]
	s.BackupBridge, s.BackupBridgeRings = x[m.poses.backupNow], x[m.laid[BackupBridgeRings]]
	s.Tether, s.FootLoop, s.GardaToTether = x[m.poses.tetherNow], x[m.poses.footNow], x[m.laid[GardaToTether]]
}

func (m *Model) posesAt(x []float64, s *State) {
	p := &m.poses
	sinP, cosP := math.Sincos(radians(x[m.posture[ShinAngle]]))
	g := leg{s.Thigh, s.Shin, s.Ahead, sinP, cosP}

	s.YLevelModel = g.garda(0, s.FootLoop)
	s.KneeAtLevel = x[m.posture[LevelByEye]]
	if p.kneeSlot != unknown {
		s.KneeAtLevel = x[p.kneeSlot] - x[p.kneeHip]
	}
	s.YLevel, s.Delta = s.YLevelModel, math.NaN()
	delta := 0.0
	if m.height[GardaLevel] != unknown {
		s.Delta = m.y(x, GardaLevel) - g.garda(s.KneeAtLevel, x[p.footLevel])
		s.YLevel, delta = s.YLevelModel+s.Delta, s.Delta
	}
	s.YTautModel = s.BackupRings + Rise(s.BackupBridge, s.BackupBridgeRings) + s.Tether + s.GardaToTether
	s.YTaut, s.Tau = s.YTautModel, math.NaN()
	if m.height[GardaTaut] != unknown {
		read := m.y(x, GardaTaut)
		s.Tau = read - (s.BackupRings + Rise(x[p.backupTaut], s.BackupBridgeRings) + x[p.tetherTaut] + s.GardaToTether)
		s.YTaut = read // what is unchanged since cancels, and needs no reading
		if p.backupNow != p.backupTaut {
			s.YTaut += Rise(s.BackupBridge, s.BackupBridgeRings) - Rise(x[p.backupTaut], s.BackupBridgeRings)
		}
		if p.tetherNow != p.tetherTaut {
			s.YTaut += s.Tether - x[p.tetherTaut]
		}
	}
	s.Over = s.YTaut - s.YLevel
	s.KneeAtTaut = g.knee(s.YTaut-delta, s.FootLoop)
	s.ThighPastLevel = degrees(math.Asin(s.KneeAtTaut / s.Thigh))

	e, as := g.span(math.Cos(radians(x[m.posture[KneeBend]]))), x[m.posture[BehindRope]]
	stand := math.NaN()
	if e > as {
		stand = math.Sqrt(e*e - as*as)
	}
	s.Set = x[m.posture[Set]]
	s.Gain = s.YLevel - s.FootLoop + stand
	s.Net = s.Gain + math.Min(0, s.Over) - s.Set
	s.Slack = s.Over + s.Gain
	s.YLow = s.YLevel - s.Gain

	s.LegReach = s.Thigh + s.Shin
	s.LegDistance = math.Hypot(s.FootLoop-s.YTaut, s.Ahead)
	s.Flexion = g.flexion(s.LegDistance)
}

func (m *Model) slip(x []float64, s *State) {
	s.Weight = Weight(x[m.mass])
	s.Modulus = RopeModulus(x[m.rope.elongation])
	s.LeastAbove, s.DrillAbove = x[m.rope.least], x[m.rope.drill]
	h := s.Drop()
	s.PeakForce = PeakForce(s.Weight, legsStiffness(s.Modulus, s.LeastAbove), h)
	k := legsStiffness(s.Modulus, s.DrillAbove)
	s.Stretch = (PeakForce(s.Weight, k, h) - s.Weight) / k
	s.Sag = s.Weight / k
}

func (m *Model) labelsAt(x []float64, s *State) {
	s.RopeDiameter, s.InsideWidth = x[m.rope.diameter], x[m.width]
	for i, p := range [2]Piece{PieceHitchLeft, PieceHitchRight} {
		l := &m.labels[p]
		s.HitchCord[i], s.HitchWraps[i] = x[l.cord], x[l.wraps]
		s.HitchStrength[i] = m.strength(x, l)
	}
	l := &m.labels[PieceTether]
	s.TetherCord, s.TetherStrands, s.TetherStrength = x[l.cord], x[l.strands], m.strength(x, l)
}

// strength is a cord's from its label, or else from its nominal diameter, which
// is exact here.
func (m *Model) strength(x []float64, l *labelSlots) float64 {
	if l.strength != unknown {
		return x[l.strength]
	}
	if n := CordStrength(m.x[l.cord]); n.Known {
		return n.V
	}
	return math.NaN()
}
