package truth

import "math"

// gravity, in kN for a kilogram.
const gravity = 9.80665e-3

// Poses is where everything is, in each pose, with one kit: y above the seated
// hip point unless said otherwise. What cannot be is NaN.
type Poses struct {
	ConnectorTop, ConnectorBottom float64
	LoopTop, HitchTop             [2]float64

	Level   float64 // top of the Garda hitch, thigh level
	Taut    float64 // the same, drawn up until the tether stops it
	Gain    float64 // what the hip point wins by standing up from level
	Slack   float64 // how far the body drops before the tether holds, the friction hitches taken to grip at once
	Low     float64 // the Garda hitch, seated again after a stand, the hitches taken to grip at once
	LegLeft float64 // straight leg less the way from hip to foot, hanging on the tether
	Flexion float64 // of the knee then, rad
}

// ropeX is how far ahead the rope is at height y.
func (w *World) ropeX(y float64) float64 { return w.Ahead + y*math.Tan(w.RopeTilt) }

// stretched is a length under share of the climber's mass.
func (w *World) stretched(length, perStandardMass float64) float64 {
	return length * (1 + perStandardMass*w.Mass/standardMass)
}

// rise is how far the middle of a bridge can be pulled from the line between its
// rings.
func rise(length, gap float64) float64 {
	if length <= gap {
		return math.NaN()
	}
	return root(0, length, func(z float64) float64 { return 2*math.Hypot(z, gap/2) - length })
}

// up is the height on the rope that lies distance away from p, above it.
func (w *World) up(p Point, distance float64) float64 {
	return root(p.Y, p.Y+distance, func(y float64) float64 {
		return math.Hypot(w.ropeX(y)-p.X, y-p.Y) - distance
	})
}

// Poses works out every pose with the kit k.
func (w *World) Poses(k Kit) Poses {
	var p Poses
	l := &k.Lengths
	p.ConnectorBottom = w.connectorBottom(k)
	p.ConnectorTop = p.ConnectorBottom + w.ConnectorLength
	for side, piece := range [2]Piece{LeftLoop, RightLoop} {
		p.LoopTop[side] = p.ConnectorTop + l[piece] + w.LoopCreep[side]
		p.HitchTop[side] = p.LoopTop[side] + w.WrapHeight[side]
	}
	p.Level = w.gardaAt(0, w.ShinAngle, l[FootLoop])
	p.Taut = w.up(w.BackupRings, rise(l[BackupBridge], w.BackupGap)+l[Tether]) + w.GardaToTether
	p.Gain = w.stand(p.Level, l[FootLoop])
	p.Low = p.Level - w.GardaSeat - p.Gain
	p.Slack = p.Taut - p.Low
	p.LegLeft, p.Flexion = w.onTether(k)
	return p
}

func (w *World) connectorBottom(k Kit) float64 {
	pulled := rise(w.stretched(k.Lengths[MainBridge], w.StretchMain), w.MainGap-w.Squeeze)
	return w.up(w.MainRings, pulled) - w.BridgeOverBottom
}

// gardaAt is where the top of the Garda hitch is while an unloaded foot in the
// loop is held out, the kneecap at height knee above the hip point of that pose
// and the shin at angle from plumb.
func (w *World) gardaAt(knee, angle, footLoop float64) float64 {
	thighAngle := root(-math.Pi/2, math.Pi/2, func(x float64) float64 { return w.Thigh*math.Sin(x) - knee })
	sin, cos := math.Sincos(angle)
	foot := Point{
		X: w.HipLevel.X + w.Thigh*math.Cos(thighAngle) + w.Shin*sin,
		Y: w.HipLevel.Y + w.Thigh*math.Sin(thighAngle) - w.Shin*cos,
	}
	return w.up(foot, footLoop)
}

// stand is how far the hip point rises from seated: the Garda hitch slides as it
// takes the foot, the foot hangs plumb below it on a loop that stretches, and
// the climber leans the legs until the hip point is where the climber keeps it.
func (w *World) stand(level, footLoop float64) float64 {
	garda := level - w.GardaSeat
	foot := Point{w.ropeX(garda), garda - w.stretched(footLoop, w.StretchFoot)}
	hip := func(shin float64) Point {
		thigh := shin - w.KneeBend
		return Point{foot.X + w.Shin*math.Sin(shin) + w.Thigh*math.Sin(thigh), foot.Y + w.Shin*math.Cos(shin) + w.Thigh*math.Cos(thigh)}
	}
	shin := root(-math.Pi/3, math.Pi/2, func(x float64) float64 {
		h := hip(x)
		return h.X - (w.ropeX(h.Y) - w.BehindRope)
	})
	return hip(shin).Y
}

// onTether hangs the climber on the backup tether, the foot in the loop plumb
// below the Garda hitch, and tells what is left of the straight leg and how far
// the knee is bent.
func (w *World) onTether(k Kit) (left, flexion float64) {
	l := &k.Lengths
	hang := rise(w.stretched(l[BackupBridge], w.StretchBackup), w.BackupGap-w.Squeeze) +
		w.stretched(l[Tether], w.StretchTether) + w.GardaToTether
	// below the Garda hitch: the rings by hang, the hip point by what it is below the rings, the foot by the loop
	hip := Point{w.HipTether.X - w.Ahead, w.HipTether.Y - w.BackupRings.Y - hang}
	foot := Point{0, -l[FootLoop]}
	distance := math.Hypot(hip.X-foot.X, hip.Y-foot.Y)
	left = w.Thigh + w.Shin - distance
	switch {
	case math.IsNaN(distance):
		return math.NaN(), math.NaN()
	case left <= 0:
		return left, 0
	case distance <= math.Abs(w.Thigh-w.Shin):
		return left, math.Pi
	}
	return left, root(0, math.Pi, func(bend float64) float64 { return reach(w.Thigh, w.Shin, bend) - distance })
}

// peakForce is the most, kN, that the climber feels after dropping by slack onto
// a rigid tether, the two legs of rope taken as linear springs of length above:
// the stretch at which the fall's energy is used up.
func (w *World) peakForce(slack, above float64) float64 {
	if math.IsNaN(slack) {
		return math.NaN()
	}
	weight, drop := w.Mass*gravity, math.Max(0, slack)
	stiffness := w.stiffness(above)
	rest := weight / stiffness
	stretch := root(rest, 3*rest+2*math.Sqrt(drop*rest)+drop, func(x float64) float64 {
		return 1000 * (weight*(drop+x) - stiffness*x*x/2) // N·mm
	})
	return stiffness * stretch
}

// stiffness of the two legs of rope, kN/mm, from the elongation between 50 kg and
// 150 kg.
func (w *World) stiffness(above float64) float64 {
	return 2 * 100 * gravity / (w.Gear.Elongation.True / 100) / above
}
