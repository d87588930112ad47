package fit

import "math"

// Where what is only drawn usually is, in mm from the hip point; shoulderShare is
// a share of the nose's height above it. Judgement: nothing is computed from these.
const (
	shoulderShare, shoulderBack = 0.76, 60
	headBehindNose, headAbove   = 95, 15 // the head's centre
	headWide, headHigh          = 95, 120
	ringsAhead                  = 70
	wristBehindRope             = 60
	hangingThigh                = 35 * math.Pi / 180 // below level, where the soles were not read
)

// Shape is the side view of s in pose p, one of Seated, ThighLevel, TetherTaut,
// Standing and OnTether. What is unknown in s is unknown in the shape; what is
// estimated, Model.Shape tells.
//
// Seated, the Garda hitch is where it is after a stand, not yet drawn up. Thigh
// level has the knee level with the hip point, wherever it was when it was read.
// While the climber stands, the hip has risen by Gain and both hitches have been
// slid up as far; all other poses keep hip, bridge, connector and hitches where
// they were read.
func (s *State) Shape(p Pose) Shape {
	sh := Shape{Pose: p}
	for i := range sh.At {
		sh.At[i] = Point{math.NaN(), math.NaN()}
	}
	hip := Point{}
	if p == Standing {
		hip = Point{s.Ahead - s.BehindRope, s.Gain}
	}
	sh.At[MarkHip] = hip
	s.placeTrunk(&sh, hip)
	s.placeHardware(&sh, hip)
	switch p {
	case Standing:
		s.placeGarda(&sh, s.YLevel, hip)
		sh.At[MarkSole] = Point{s.Ahead, s.YLevel - s.FootLoop}
		sh.At[MarkKnee] = s.bend(hip, sh.At[MarkSole])
	case OnTether:
		s.placeGarda(&sh, s.YTaut, hip)
		sh.At[MarkSole] = Point{s.Ahead, s.YTaut - s.FootLoop}
		sh.At[MarkKnee] = s.bend(hip, sh.At[MarkSole])
	case ThighLevel:
		s.placeGarda(&sh, s.YLevel, hip)
		s.placeLeg(&sh, 0)
	case TetherTaut:
		s.placeGarda(&sh, s.YTaut, hip)
		s.placeLeg(&sh, s.KneeAtTaut)
		sh.At[MarkGardaLevel] = Point{s.Ahead, s.YLevel}
	default:
		s.placeGarda(&sh, s.YLow, hip)
		s.placeSeated(&sh)
	}
	if p != Seated {
		sh.At[MarkLoopEnd] = sh.At[MarkSole]
	}
	sh.finish(s.Ahead)
	return sh
}

func (s *State) placeTrunk(sh *Shape, hip Point) {
	sh.At[MarkNose] = hip.plus(0, s.Nose)
	sh.At[MarkShoulder] = hip.plus(-shoulderBack, shoulderShare*s.Nose)
	centre := sh.At[MarkNose].plus(-headBehindNose, headAbove)
	sh.Head = Ellipse{centre, headWide, headHigh}
	sh.At[MarkNeck] = centre.plus(0, -headHigh)
	if sh.Pose == Seated {
		sh.At[MarkWristUp] = Point{s.Ahead - wristBehindRope, s.WristUp}
		sh.At[MarkWristDown] = Point{-shoulderBack, s.WristDown}
	}
}

// placeHardware places what hangs above the climber; it rises with the hip.
func (s *State) placeHardware(sh *Shape, hip Point) {
	up := Point{s.Ahead, hip.Y}
	sh.At[MarkMainRings] = hip.plus(ringsAhead, s.MainRings)
	sh.At[MarkBackupRings] = hip.plus(ringsAhead, s.BackupRings)
	sh.At[MarkConnectorTop] = up.plus(0, s.ConnectorTop)
	sh.At[MarkConnectorBottom] = up.plus(0, s.ConnectorBottom)
	for i, m := range [2][2]Landmark{{MarkLeftLoop, MarkLeftHitch}, {MarkRightLoop, MarkRightHitch}} {
		sh.At[m[0]] = up.plus(0, s.ConnectorTop+s.Loop[i])
		sh.At[m[1]] = up.plus(0, s.HitchTop[i])
	}
}

// placeGarda places the Garda hitch with its top at y, and the tether: hanging
// down from it as far as the backup bridge lets it.
func (s *State) placeGarda(sh *Shape, y float64, hip Point) {
	sh.At[MarkGardaTop] = Point{s.Ahead, y}
	tie := y - s.GardaToTether
	sh.At[MarkGardaTie] = Point{s.Ahead, tie}
	lowest := hip.Y + s.BackupRings - Rise(s.BackupBridge, s.BackupBridgeRings)
	sh.At[MarkTetherEnd] = Point{s.Ahead, math.Max(tie-s.Tether, lowest)}
}

// placeLeg places the leg with the foot in the loop and the knee k above the hip.
func (s *State) placeLeg(sh *Shape, k float64) {
	knee := Point{math.Sqrt(s.Thigh*s.Thigh - k*k), k}
	sh.At[MarkKnee] = knee
	sh.At[MarkSole] = knee.plus(s.Shin*s.angles.sinShin, -s.Shin*s.angles.cosShin)
}

// placeSeated lets the legs hang from the saddle, soles where they were read.
func (s *State) placeSeated(sh *Shape) {
	below := hangingThigh
	if soles := s.Soles; !math.IsNaN(soles) {
		below = math.Asin(math.Max(0, math.Min(0.98, (-soles-s.Shin)/s.Thigh)))
		sh.At[MarkSole] = Point{s.Thigh * math.Cos(below), soles}
	}
	sin, cos := math.Sincos(below)
	sh.At[MarkKnee] = Point{s.Thigh * cos, -s.Thigh * sin}
	if math.IsNaN(s.Soles) {
		sh.At[MarkSole] = sh.At[MarkKnee].plus(0, -s.Shin)
	}
	sh.At[MarkLoopEnd] = Point{s.Ahead, s.YLow - s.FootLoop}
	sh.At[MarkGround] = Point{s.Ahead, -s.HipAboveGround}
}

// bend is the knee, to the front, of a leg from hip to sole; a leg that does not
// reach is drawn straight. Unknown where it folds further than it can.
func (s *State) bend(hip, sole Point) Point {
	dx, dy := sole.X-hip.X, sole.Y-hip.Y
	d := math.Hypot(dx, dy)
	if d >= s.Thigh+s.Shin {
		share := s.Thigh / (s.Thigh + s.Shin)
		return hip.plus(share*dx, share*dy)
	}
	along := (d*d + s.Thigh*s.Thigh - s.Shin*s.Shin) / (2 * d)
	off := math.Sqrt(s.Thigh*s.Thigh - along*along)
	return hip.plus((along*dx-off*dy)/d, (along*dy+off*dx)/d)
}
