package truth

import "math"

// A Mark is something that a tape is laid to.
type Mark int

// The marks: laid lengths, then heights in their poses.
const (
	MarkStature Mark = iota
	MarkInseam
	MarkThigh
	MarkShin
	MarkWaist
	MarkAhead
	MarkMainBridge
	MarkMainGap
	MarkGardaToTether
	MarkFootLoop
	MarkTether
	MarkBackupBridge
	MarkBackupGap

	MarkHip
	MarkNose
	MarkWristUp
	MarkWristDown
	MarkConnectorTop
	MarkConnectorBottom
	MarkLeftLoopTop
	MarkLeftHitchTop
	MarkRightLoopTop
	MarkRightHitchTop
	MarkMainRings
	MarkBackupRings
	MarkSoles
	MarkGround
	MarkGardaLevel
	MarkKneeLevel
	MarkGardaTaut

	NumMarks
)

// A Hang is the climber hanging in one kit, ready to be measured.
type Hang struct {
	world *World
	kit   Kit
	poses Poses
}

// Hang hangs the climber in the kit k.
func (w *World) Hang(k Kit) Hang { return Hang{w, k, w.Poses(k)} }

// A Wobble is how the climber holds a pose this time, against the habit: what is
// read in the same breath shares it.
type Wobble struct {
	Head, HandUp, HandDown, Feet float64 // mm
	Knee                         float64 // mm, of the thigh-level pose
	Shin                         float64 // rad, of the same
	Taut                         float64 // mm
}

// Wobble draws one.
func (w *World) Wobble(d Dice) Wobble {
	return Wobble{
		Head: d.Tent(0, 3.5), HandUp: d.Tent(0, 4), HandDown: d.Tent(0, 3.5), Feet: d.Tent(0, 4),
		Knee: d.Tent(0, 3), Shin: d.Tent(0, 1) * deg, Taut: d.Tent(0, 3),
	}
}

// Where is what a perfect tape finds for m: a length, or the height along the
// tape, its zero at the seated hip point.
func (h *Hang) Where(m Mark, b Wobble) float64 {
	if m < MarkHip {
		return h.length(m)
	}
	p := h.place(m, b)
	sin, cos := math.Sincos(h.world.RopeTilt)
	return p.Y*cos + p.X*sin
}

func (h *Hang) length(m Mark) float64 {
	w, l := h.world, &h.kit.Lengths
	return [...]float64{
		MarkStature: w.Body.Stature, MarkInseam: w.Body.Inseam,
		MarkThigh: w.LaidThigh, MarkShin: w.LaidShin, MarkWaist: w.Navel,
		MarkAhead:      w.Ahead,
		MarkMainBridge: l[MainBridge], MarkMainGap: w.MainGap, MarkGardaToTether: w.GardaToTether,
		MarkFootLoop: l[FootLoop], MarkTether: l[Tether],
		MarkBackupBridge: l[BackupBridge], MarkBackupGap: w.BackupGap,
	}[m]
}

func (h *Hang) place(m Mark, b Wobble) Point {
	w, p, l := h.world, &h.poses, &h.kit.Lengths
	onRope := func(y float64) Point { return Point{w.ropeX(y), y} }
	onBody := func(at Point, off float64) Point { return Point{at.X, at.Y + off} }
	switch m {
	case MarkHip:
		return Point{}
	case MarkNose:
		return onBody(w.Nose, b.Head)
	case MarkWristUp:
		return onBody(w.WristUp[Right], b.HandUp)
	case MarkWristDown:
		return onBody(w.WristDown, b.HandDown)
	case MarkConnectorTop:
		return onRope(p.ConnectorTop)
	case MarkConnectorBottom:
		return onRope(p.ConnectorBottom)
	case MarkLeftLoopTop:
		return onRope(p.ConnectorTop + l[LeftLoop])
	case MarkLeftHitchTop:
		return onRope(p.ConnectorTop + l[LeftLoop] + w.WrapHeight[Left])
	case MarkRightLoopTop:
		return onRope(p.ConnectorTop + l[RightLoop])
	case MarkRightHitchTop:
		return onRope(p.ConnectorTop + l[RightLoop] + w.WrapHeight[Right])
	case MarkMainRings:
		return w.MainRings
	case MarkBackupRings:
		return w.BackupRings
	case MarkSoles:
		return onBody(w.Soles, b.Feet)
	case MarkGround:
		return onRope(w.Ground)
	case MarkGardaLevel:
		return onRope(w.gardaAt(w.EyeLevel+b.Knee, w.ShinAngle+b.Shin, l[FootLoop]))
	case MarkKneeLevel:
		knee := w.EyeLevel + b.Knee
		return Point{w.HipLevel.X + math.Sqrt(w.Thigh*w.Thigh-knee*knee), w.HipLevel.Y + knee}
	case MarkGardaTaut:
		return onRope(p.Taut + b.Taut)
	}
	panic("truth: no such mark")
}
