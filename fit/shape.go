package fit

import "math"

// A Point of the side view, in mm: x forward and y up from the hip point of the
// climber hanging seated. NaN where it is unknown.
type Point struct{ X, Y float64 }

// Known says whether p has a place.
func (p Point) Known() bool { return !math.IsNaN(p.X) && !math.IsNaN(p.Y) }

func (p Point) plus(x, y float64) Point { return Point{p.X + x, p.Y + y} }

// A Landmark is a named point of the side view.
type Landmark int

// The landmarks. Those of neck, shoulder and arms, and the x of the
// rings, are drawn where they usually are: nothing is computed from them.
const (
	MarkHip Landmark = iota
	MarkKnee
	MarkSole
	MarkNose
	MarkNeck
	MarkShoulder
	MarkWristUp
	MarkWristDown
	MarkMainRings
	MarkBackupRings
	MarkConnectorTop
	MarkConnectorBottom
	MarkLeftLoop // where the loop ends and the wraps begin
	MarkRightLoop
	MarkLeftHitch // top of the wraps
	MarkRightHitch
	MarkGardaTop
	MarkGardaTie   // where the tether is tied to the Garda hitch
	MarkTetherEnd  // where the tether hangs on the backup bridge
	MarkLoopEnd    // of the foot loop, where no foot is in it
	MarkGardaLevel // where the top of the Garda hitch is with the thigh level
	MarkGround
	MarkRope    // on the rope, level with the hip
	MarkRopeTop // ends of the rope as far as it is drawn
	MarkRopeEnd

	NumLandmarks
)

// A Stroke is what a line of the side view stands for.
type Stroke int

// The strokes.
const (
	StrokeRope Stroke = iota // both legs of rope
	StrokeGround
	StrokeBody
	StrokeBridge
	StrokeTether
	StrokeFootLoop
	StrokeConnector
	StrokeHitchLoop
	StrokeWraps
	StrokeGarda
)

// A Line is drawn straight between two landmarks.
type Line struct {
	Stroke   Stroke
	From, To Landmark
}

// A Shape is the side view of climber and kit in one pose: landmarks and the
// lines between them. A line with an end that is unknown is not in it.
type Shape struct {
	Pose  Pose
	At    [NumLandmarks]Point
	Lines []Line
	Head  Ellipse

	// Estimated says which landmarks rest on an estimate of the body or on a
	// length or height that is predicted. Only Model.Shape tells.
	Estimated [NumLandmarks]bool
}

// An Ellipse stands upright about its centre; RX and RY are its half axes in mm.
type Ellipse struct {
	Centre Point
	RX, RY float64
}

// Holds says whether p lies in e.
func (e Ellipse) Holds(p Point) bool {
	return math.Hypot((p.X-e.Centre.X)/e.RX, (p.Y-e.Centre.Y)/e.RY) <= 1
}

// strokes are all lines that a shape may have.
var strokes = []Line{
	{StrokeRope, MarkRopeTop, MarkRopeEnd},
	{StrokeBody, MarkHip, MarkShoulder},
	{StrokeBody, MarkShoulder, MarkNeck},
	{StrokeBody, MarkShoulder, MarkWristUp},
	{StrokeBody, MarkShoulder, MarkWristDown},
	{StrokeBody, MarkHip, MarkKnee},
	{StrokeBody, MarkKnee, MarkSole},
	{StrokeBridge, MarkMainRings, MarkConnectorBottom},
	{StrokeBridge, MarkBackupRings, MarkTetherEnd},
	{StrokeTether, MarkTetherEnd, MarkGardaTie},
	{StrokeFootLoop, MarkGardaTop, MarkLoopEnd},
	{StrokeConnector, MarkConnectorBottom, MarkConnectorTop},
	{StrokeHitchLoop, MarkConnectorTop, MarkLeftLoop},
	{StrokeHitchLoop, MarkConnectorTop, MarkRightLoop},
	{StrokeWraps, MarkLeftLoop, MarkLeftHitch},
	{StrokeWraps, MarkRightLoop, MarkRightHitch},
	{StrokeGarda, MarkGardaTie, MarkGardaTop},
}

// finish adds the ends of the rope and the lines whose ends are known.
func (s *Shape) finish(ropeX float64) {
	hip := s.At[MarkHip].Y
	if math.IsNaN(hip) {
		hip = 0 // where it is seated
	}
	top, end := hip, hip
	if s.Head.Centre.Known() {
		top = s.Head.Centre.Y + s.Head.RY
	}
	for _, p := range s.At[:MarkGround] {
		if p.Known() {
			top, end = math.Max(top, p.Y), math.Min(end, p.Y)
		}
	}
	s.At[MarkRope] = Point{ropeX, hip}
	s.At[MarkRopeTop], s.At[MarkRopeEnd] = Point{ropeX, top + ropeBeyond}, Point{ropeX, end}
	s.Lines = make([]Line, 0, len(strokes))
	for _, l := range strokes {
		if s.At[l.From].Known() && s.At[l.To].Known() {
			s.Lines = append(s.Lines, l)
		}
	}
}

// ropeBeyond is how far the rope is drawn above the highest landmark, in mm.
const ropeBeyond = 100

// A Clash is one thing drawn into another, by Depth mm.
type Clash struct {
	Lower, Upper Landmark // the one that has to be lower is higher by Depth
	Depth        float64
}

// Clashes lists what collides in the shape: the Garda hitch that runs into the
// main connector, and boots or foot loop in the ground.
func (s *Shape) Clashes() []Clash {
	var out []Clash
	for _, c := range []Clash{
		{Lower: MarkGardaTop, Upper: MarkConnectorBottom},
		{Lower: MarkGround, Upper: MarkSole},
		{Lower: MarkGround, Upper: MarkLoopEnd},
	} {
		if c.Depth = s.At[c.Lower].Y - s.At[c.Upper].Y; c.Depth > 0 { // false for NaN
			out = append(out, c)
		}
	}
	return out
}
