package sideview

import "example.com/hangtape/fit"

// marks are the landmarks that get a letter, those first that say most: they are
// kept longest where there is no room for all. Short names have at most 12
// letters.
var marks = []struct {
	at          fit.Landmark
	letter      rune
	short, full string
}{
	{fit.MarkHip, 'H', "hip point", "hip point"},
	{fit.MarkGardaTop, 'G', "Garda top", "Garda hitch, top"},
	{fit.MarkConnectorBottom, 'c', "conn. bottom", "connector bottom"},
	{fit.MarkKnee, 'K', "knee", "knee"},
	{fit.MarkSole, 'S', "boot sole", "boot sole"},
	{fit.MarkConnectorTop, 'C', "conn. top", "connector top"},
	{fit.MarkLeftHitch, 'L', "left hitch", "left hitch top"},
	{fit.MarkRightHitch, 'R', "right hitch", "right hitch top"},
	{fit.MarkWristUp, 'W', "raised wrist", "raised wrist"},
	{fit.MarkNose, 'N', "nose", "nose"},
	{fit.MarkGardaLevel, 'V', "thigh level", "Garda, thigh level"},
	{fit.MarkGround, 'g', "ground", "ground"},
	{fit.MarkTetherEnd, 'T', "tether end", "tether on bridge"},
	{fit.MarkMainRings, 'M', "main rings", "main rings"},
	{fit.MarkBackupRings, 'm', "backup rings", "backup rings"},
	{fit.MarkLeftLoop, 'l', "left loop", "left loop top"},
	{fit.MarkRightLoop, 'r', "right loop", "right loop top"},
	{fit.MarkWristDown, 'w', "wrist down", "hanging wrist"},
	{fit.MarkGardaTie, 't', "tether tie", "tether on Garda"},
	{fit.MarkLoopEnd, 'F', "foot loop", "foot loop, end"},
}

// couples share a line of the key where there are more letters than lines.
var couples = []struct {
	a, b fit.Landmark
	name string
}{
	{fit.MarkLeftHitch, fit.MarkRightHitch, "hitch tops"},
	{fit.MarkLeftLoop, fit.MarkRightLoop, "loop tops"},
	{fit.MarkConnectorTop, fit.MarkConnectorBottom, "connector"},
	{fit.MarkMainRings, fit.MarkBackupRings, "rings"},
	{fit.MarkTetherEnd, fit.MarkGardaTie, "tether"},
	{fit.MarkWristUp, fit.MarkWristDown, "wrists"},
}

// The words under the picture.
const (
	sayColumn = "column "
	sayRow    = ", row "
	sayFrom   = "; heights from H"
	sayGap    = "%c to %c %s"
	sayLeft   = ", %s to spare"
	sayLacks  = ", %s short"
	sayClash  = "%c into %c by %s"

	sayEstimate = estimate + " not read: estimated"
)

// asking marks the line of the key that is asked for, and estimate the letter of
// what is estimated.
const (
	asking   = ">"
	estimate = "~"
)

// Letter is how a landmark is drawn, and whether it is.
func Letter(m fit.Landmark) (rune, bool) {
	for _, k := range marks {
		if k.at == m {
			return k.letter, true
		}
	}
	return 0, false
}

// fullNames is the width from which the key has room for full names.
const fullNames = 60

func nameOf(m fit.Landmark, width int) string {
	for _, k := range marks {
		switch {
		case k.at != m:
		case width >= fullNames:
			return k.full
		default:
			return k.short
		}
	}
	return ""
}
