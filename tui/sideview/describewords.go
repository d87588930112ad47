package sideview

import "example.com/hangtape/fit"

var poseSentences = map[fit.Pose]string{
	fit.Seated:     "Side view, the climber faces right and hangs seated on the main bridge.",
	fit.ThighLevel: "Side view, the climber faces right; the foot is in the loop and the thigh is level.",
	fit.TetherTaut: "Side view, the climber faces right; the Garda hitch is drawn up until the tether stops it.",
	fit.Standing:   "Side view, the climber faces right and stands in the foot loop; both friction hitches are slid up.",
	fit.OnTether:   "Side view, the climber faces right and hangs on the tether; both friction hitches have let go.",
}

// theNames are the landmarks within a sentence.
var theNames = map[fit.Landmark]string{
	fit.MarkHip: "the hip point", fit.MarkKnee: "the middle of the kneecap", fit.MarkSole: "the boot sole",
	fit.MarkNose: "the nose", fit.MarkWristUp: "the raised wrist", fit.MarkWristDown: "the hanging wrist",
	fit.MarkMainRings: "the main bridge's rings", fit.MarkBackupRings: "the backup bridge's rings",
	fit.MarkConnectorTop: "the connector's inside top", fit.MarkConnectorBottom: "the connector's outside bottom",
	fit.MarkLeftLoop: "the left loop's top", fit.MarkRightLoop: "the right loop's top",
	fit.MarkLeftHitch: "the left hitch's top", fit.MarkRightHitch: "the right hitch's top",
	fit.MarkGardaTop: "the Garda hitch's top", fit.MarkGardaTie: "the tether's tie on the Garda hitch",
	fit.MarkGardaLevel: "where the Garda hitch's top is with the thigh level",
	fit.MarkTetherEnd:  "the tether's end on the backup bridge", fit.MarkLoopEnd: "the foot loop's end",
	fit.MarkGround: "the ground", fit.MarkRope: "the rope at the same height",
}

const (
	sayHang    = "The tape hangs beside the rope: read it level with %s."
	sayLay     = "The tape is laid from %s to %s."
	sayAbove   = "%s is %s above %s."
	sayUnder   = "%s is %s under %s."
	sayLevel   = "%s is level with %s."
	sayStops   = "The Garda hitch stops %s under the connector."
	sayInto    = "The Garda hitch runs %s into the connector."
	sayPast    = "The tether stops the Garda hitch %s past thigh level."
	sayShortOf = "The tether stops the Garda hitch %s short of thigh level."
	sayRisen   = "The hip has risen by %s."
	sayGround  = "On the drawing %s is %s in the ground."
	// sayEstimated ends a sentence that rests on an estimate.
	sayEstimated = ", by estimate."
	saySpare     = "For %s that leaves %s to spare."
	sayShort     = "For %s that is %s short."
)
