package truth

import "math"

// The sides of climber and kit.
const (
	Left = iota
	Right
)

const deg = math.Pi / 180

// standardMass is the mass, kg, at which the stretch of a cord is told.
const standardMass = 80

// A Point is a place in the frame of the package, or a shift.
type Point struct{ X, Y float64 }

// A World is one climber in one saddle on one rope: everything that stays the
// same while the kit's lengths are changed.
type World struct {
	Body Body

	Mass         float64 // dressed, with kit
	Sole         float64 // thickness of the boot sole
	Thigh, Shin  float64 // of the leg in the foot loop, folded, boots on
	LaidThigh    float64 // what the tape finds on the leg that was measured
	LaidShin     float64
	Nose         Point
	WristUp      [2]Point // arm raised along the rope as far as is comfortable
	WristDown    Point
	Soles        Point
	Ground       float64
	Navel        float64 // above the ground, standing, boots on
	EyeAboveNose float64

	ShinAngle  float64 // foot held out in the level pose, forward positive
	EyeLevel   float64 // how far above the hip point the knee is when the climber stops at "level"
	KneeBend   float64 // standing
	BehindRope float64 // the hip point, standing
	HipLevel   Point   // where the hip point is while the thigh is level
	HipTether  Point   // how far the hip point moves against the backup rings, hanging on the tether
	HitchSet   float64 // of the friction hitches when they take the load
	GardaSeat  float64 // of the Garda hitch when the foot loads it

	Ahead    float64 // the rope at the height of the hip point
	RopeTilt float64 // of rope and tape from plumb

	MainRings, BackupRings Point
	MainGap, BackupGap     float64 // between the rings, lying on the ground
	Squeeze                float64 // what the load takes off either gap
	StretchMain            float64 // share of the length, under standardMass
	StretchBackup          float64
	StretchTether          float64
	StretchFoot            float64
	ConnectorLength        float64 // inside top to outside bottom
	BridgeOverBottom       float64 // the bridge's top above the connector's outside bottom
	WrapHeight             [2]float64
	LoopCreep              [2]float64 // what a loop grows between the hang and the climb
	GardaToTether          float64

	Gear Gear
}

// Draw makes the world of one body.
func Draw(d Dice, b Body) World {
	w := World{Body: b}
	w.drawBody(d)
	w.drawHabits(d)
	w.drawRope(d)
	w.drawSaddle(d)
	w.drawTrunk(d)
	w.Gear = drawGear(d)
	return w
}

func (w *World) drawBody(d Dice) {
	b := w.Body
	w.Mass = b.Mass + math.Max(3, d.Tent(8, 1.5))
	w.Sole = math.Max(8, d.TwoHumps(27, 4.5))
	legDiffers := func(sd float64) float64 {
		if d.Chance(1.0 / 3) { // the other leg goes into the foot loop
			return d.Normal(0, sd)
		}
		return 0
	}
	w.LaidThigh = b.Thigh
	w.LaidShin = b.Shin + w.Sole
	w.Thigh = w.LaidThigh + d.Tent(0.5, 1.5) + legDiffers(3)
	w.Shin = w.LaidShin + d.Tent(-0.5, 1.5) + legDiffers(3)
	w.Navel = b.Navel + w.Sole + d.Normal(-2, 3)
	w.EyeAboveNose = d.Flat(43, 4.5)
}

func (w *World) drawHabits(d Dice) {
	w.ShinAngle = d.Flat(2.5, 7.5) * deg
	w.EyeLevel = d.TwoHumps(-5, 19)
	w.KneeBend = math.Max(1, d.Skew(13.5, 7.5)) * deg
	w.BehindRope = d.Tent(64, 19)
	w.HipLevel = Point{d.Tent(0, 6), d.Tent(1, 3)}
	w.HipTether = Point{d.Tent(0, 8), d.Tent(-1, 3)}
	w.HitchSet = math.Max(3, d.Skew(27, 14))
	w.GardaSeat = math.Max(0, d.Tent(8, 4))
}

func (w *World) drawRope(d Dice) {
	w.Ahead = d.Skew(155, 36)
	w.RopeTilt = d.Flat(0, 0.4) * deg
}

func (w *World) drawSaddle(d Dice) {
	// a saddle is as its maker made it: its shape does not widen with the scale
	maker := Dice{d.Rand, 1}
	w.MainRings = Point{w.Ahead + maker.Tent(-30, 15), maker.Flat(25, 12)}
	w.BackupRings = Point{w.Ahead + maker.Tent(-30, 15), w.MainRings.Y + maker.Flat(-20, 8)}
	w.MainGap = maker.Flat(360, 12)
	w.BackupGap = w.MainGap - math.Abs(maker.Tent(0, 3))
	w.ConnectorLength = maker.Flat(111, 4)
	w.GardaToTether = maker.Flat(108, 5)
	w.Squeeze = math.Max(0, d.Tent(3, 1.5))
	w.BridgeOverBottom = d.Tent(14, 4)
	for _, stretch := range []*float64{&w.StretchMain, &w.StretchBackup, &w.StretchTether, &w.StretchFoot} {
		*stretch = math.Max(0, d.Flat(0.005, 0.002))
	}
	for side := range w.WrapHeight {
		w.WrapHeight[side] = maker.Flat(100, 7)
		w.LoopCreep[side] = math.Max(0, d.Tent(1, 0.8))
	}
}

// drawTrunk works out where head and hands are: the trunk leans back about the
// hip, the head is held upright over it, and a raised arm goes from the shoulder
// to the rope with the elbow bent as far as is comfortable.
func (w *World) drawTrunk(d Dice) {
	b := w.Body
	lean := math.Max(-5, d.Skew(9, 5.5)) * deg
	headTilt := d.Tent(2, 4) * deg
	sin, cos := math.Sincos(lean)
	head := b.Eye - w.EyeAboveNose
	w.Nose = Point{-b.Neck*sin + 90, b.Neck*cos + head*math.Cos(headTilt)}

	shoulder := Point{-b.Shoulder * sin, b.Shoulder * cos}
	sin, cos = math.Sincos(lean / 2) // who reaches up comes half way forward
	raised := Point{-b.Shoulder * sin, b.Shoulder * cos}
	elbow := math.Max(5, d.Tent(42, 6)) * deg
	share := d.Tent(0.8, 0.12)
	for side := range w.WristUp {
		differs := d.Normal(0, 4)
		arm := reach(b.UpperArm, b.Forearm, elbow) + differs
		out := w.Ahead - 40 - raised.X // the wrist is a hand's breadth behind the rope
		w.WristUp[side] = Point{w.Ahead - 40, raised.Y + share*b.Lift + math.Sqrt(math.Max(0, arm*arm-out*out))}
	}
	hanging := math.Max(0, d.Tent(12, 6)) * deg
	w.WristDown = Point{0, shoulder.Y - b.ArmDown*math.Cos(hanging)}

	w.Soles = Point{150, -(w.Thigh + w.Shin) * math.Min(0.98, d.Tent(0.80, 0.04))}
	w.Ground = w.Soles.Y - math.Max(100, d.Flat(320, 80))
}

// reach is how far apart the ends of two hinged bones are, the hinge bent by
// angle.
func reach(a, b, angle float64) float64 {
	sin, cos := math.Sincos(angle)
	return math.Hypot(a+b*cos, b*sin)
}
