package fit

import "math"

// Rise is how far a bridge of length l on rings r apart comes up when it is
// pulled up at its middle; NaN where it does not reach across (l ≤ r).
func Rise(l, r float64) float64 {
	if !(l > r) {
		return math.NaN()
	}
	return math.Sqrt(l*l-r*r) / 2
}

// leg is the climber's leg with the foot in the loop: what the Garda hitch's
// height follows from.
type leg struct {
	t, s       float64 // thigh, shin to boot sole; mm
	a          float64 // rope ahead of the hip; mm
	sinP, cosP float64 // of the shin's angle from vertical, forward positive
}

// garda is the height above the hip of the Garda hitch's top with the foot in a
// loop of length F, unloaded, held out in front, and the knee k above the hip.
// spare is how much longer the loop is than the foot is ahead of the rope, or
// behind it; where it is not, y is NaN.
func (g leg) garda(k, F float64) (y, spare float64) {
	ahead := math.Sqrt(g.t*g.t-k*k) + g.s*g.sinP - g.a
	spare = F - math.Abs(ahead)
	up := F*F - ahead*ahead
	if !(up > 0) {
		return math.NaN(), spare
	}
	return k - g.s*g.cosP + math.Sqrt(up), spare
}

// knee is the inverse of garda: the knee's height at which the Garda hitch's top
// is at y. Of the two crossings of the thigh's circle about the hip with the
// foot loop's circle it is the one further forward. NaN where there is none.
func (g leg) knee(y, F float64) float64 {
	cx, cy := g.a-g.s*g.sinP, y+g.s*g.cosP
	d2 := cx*cx + cy*cy
	along := (d2 + g.t*g.t - F*F) / 2 // (distance along the centre line) · d
	h2 := g.t*g.t*d2 - along*along    // (half chord)² · d²
	if !(h2 >= 0) {
		return math.NaN()
	}
	h := math.Sqrt(h2)
	x1, k1 := (along*cx+h*cy)/d2, (along*cy-h*cx)/d2
	x2, k2 := (along*cx-h*cy)/d2, (along*cy+h*cx)/d2
	if x1 >= x2 {
		return k1
	}
	return k2
}

// span is the straight line from hip to sole with the knee bent by kappa: the
// length of the leg that a climber stands on.
func (g leg) span(cosKappa float64) float64 {
	return math.Sqrt(g.t*g.t + g.s*g.s + 2*g.t*g.s*cosKappa)
}

// flexion is the knee's bend in degrees, 0 straight, with the sole at distance D
// from the hip; 0 where the leg does not reach and 180 where it folds flat.
func (g leg) flexion(D float64) float64 {
	switch {
	case D >= g.t+g.s:
		return 0
	case D <= math.Abs(g.t-g.s):
		return 180
	}
	return 180 - degrees(math.Acos((g.t*g.t+g.s*g.s-D*D)/(2*g.t*g.s)))
}

func degrees(rad float64) float64 { return rad * 180 / math.Pi }
func radians(deg float64) float64 { return deg * math.Pi / 180 }

func (m *Model) posesAt(x []float64, s *State) {
	p := &m.poses
	g := leg{s.Thigh, s.Shin, s.Ahead, s.angles.sinShin, s.angles.cosShin}

	s.YLevelModel, s.LoopToSpare = g.garda(0, s.FootLoop)
	s.KneeAtLevel = x[m.posture[LevelByEye]]
	if p.kneeSlot != unknown {
		s.KneeAtLevel = x[p.kneeSlot] - x[p.kneeHip]
	}
	s.YLevel, s.Delta = s.YLevelModel, math.NaN()
	delta := 0.0
	if m.height[GardaLevel] != unknown {
		model, spare := g.garda(s.KneeAtLevel, x[p.footLevel])
		s.Delta = m.y(x, GardaLevel) - model
		s.YLevel, delta = s.YLevelModel+s.Delta, s.Delta
		s.LoopToSpare = math.Min(s.LoopToSpare, spare)
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

	e, as := g.span(s.angles.cosKnee), x[m.posture[BehindRope]]
	s.BehindRope, s.LegToSpare = as, e-math.Abs(as)
	stand := math.NaN()
	if s.LegToSpare > 0 {
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
