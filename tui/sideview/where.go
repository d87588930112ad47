package sideview

import (
	"fmt"

	"example.com/hangtape/fit"
)

// Where is the drawing of where the tape goes for o.Reading, on a climber and a
// kit that are nobody's: without heights, since none was read. False for a reading
// that the side view does not show.
func Where(o Options) (Drawing, bool) {
	if _, _, ok := o.Reading.Landmarks(); !ok {
		return Drawing{}, false
	}
	sh := fit.UsualShape(PoseFor(o.Reading))
	o.bare, o.Check = true, nil
	d, err := Draw(&sh, o)
	return d, err == nil
}

// PoseFor is the pose that shows how r is read: for a laid length one in which
// it is stretched.
func PoseFor(r fit.Reading) fit.Pose {
	switch p := r.Info().Pose; {
	case p != fit.NoPose:
		return p
	case r == fit.FootLoop || r == fit.GardaToTether:
		return fit.ThighLevel
	case r == fit.Tether || r == fit.BackupBridge:
		return fit.TetherTaut
	}
	return fit.Seated
}

// Tape says in a sentence where the tape goes for r; empty for a reading that the
// side view does not show.
func Tape(r fit.Reading) string {
	from, to, ok := r.Landmarks()
	switch {
	case !ok:
		return ""
	case from == to:
		return fmt.Sprintf(sayHang, theNames[from])
	}
	return fmt.Sprintf(sayLay, theNames[from], theNames[to])
}
