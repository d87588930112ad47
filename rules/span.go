package rules

import "example.com/hangtape/fit"

// A Span is where a check's margin shows in the side view: the pose, and the
// two landmarks whose heights it compares.
type Span struct {
	Pose         fit.Pose
	Lower, Upper fit.Landmark // Lower is the lower one where the check passes with nothing to spare or better
}

// Span tells where c shows at one of its ends or sides. The pose is fit.NoPose
// for a check that no pose shows; ok is false where no two landmarks do.
func (c CheckID) Span(at string) (span Span, ok bool) {
	hitch, loop, other := fit.MarkLeftHitch, fit.MarkLeftLoop, fit.MarkRightHitch
	if at == "right" {
		hitch, loop, other = fit.MarkRightHitch, fit.MarkRightLoop, fit.MarkLeftHitch
	}
	switch c {
	case HitchTopReach:
		return Span{fit.Seated, hitch, fit.MarkWristUp}, true
	case HitchHandhold:
		return Span{fit.Seated, fit.MarkConnectorTop, loop}, true
	case HitchPairLevel:
		return Span{fit.Seated, other, hitch}, true
	case ConnectorAtFace:
		if at == "above" {
			return Span{fit.Seated, fit.MarkNose, fit.MarkConnectorTop}, true
		}
		return Span{fit.Seated, fit.MarkConnectorTop, fit.MarkNose}, true
	case GardaLowReach:
		return Span{fit.Seated, fit.MarkWristDown, fit.MarkGardaTop}, true
	case GardaUnderConnector:
		return Span{fit.ThighLevel, fit.MarkGardaTop, fit.MarkConnectorBottom}, true
	case GardaReleaseRoom:
		return Span{fit.TetherTaut, fit.MarkGardaTop, fit.MarkConnectorBottom}, true
	case TetherLetsThighLevel, TetherStopsKnee:
		return Span{fit.TetherTaut, fit.MarkGardaLevel, fit.MarkGardaTop}, true
	case KneeBendOnTether:
		return Span{fit.OnTether, fit.MarkSole, fit.MarkHip}, true
	case DrillGroundRoom:
		return Span{fit.Seated, fit.MarkGround, fit.MarkSole}, true
	case SlipDrop, SlipForce:
		return Span{Pose: fit.Standing}, false
	}
	return Span{}, false
}
