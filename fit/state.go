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
	BehindRope              float64 // how far the hip stands behind the rope; below 0 in front of it
	Gain, Net, Slack        float64
	Set                     float64 // lost when a hitch takes the load
	LegReach, LegDistance   float64 // t + s, and hip to sole hanging on the tether
	Flexion                 float64 // deg
	YLow                    float64

	// How far the poses are inside their domain.
	LoopToSpare float64 // by which the foot loop is longer than the foot is away from the rope, at level
	LegToSpare  float64 // by which the leg is longer than it stands away from the rope

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

	angles postureAngles
	anew   Stage // computed last
}

// Drop is how far the body falls before the tether catches it: the slack, or 0
// where it catches first.
func (s *State) Drop() float64 { return math.Max(0, s.Slack) }

// ThighPastLevel is how far past level the tether lets the thigh come, in degrees.
func (s *State) ThighPastLevel() float64 { return degrees(math.Asin(s.KneeAtTaut / s.Thigh)) }
