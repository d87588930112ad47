package fit

import "math"

// UsualShape is the side view in pose p of nobody: body and kit as they usually
// are, invented and round, to show where marks are before anything was read.
func UsualShape(p Pose) Shape {
	m := NewModel(&Fitting{}, Options{})
	var s State
	m.At(m.Values(), &s)
	s = s.usual()
	return s.Shape(p)
}

// usual is s with what is unknown in it as it usually is, so that a landmark
// that nobody has read yet has a place in a drawing. Invented and round: nothing
// is computed from it but drawings that mark it.
func (s State) usual() State {
	or := func(v *float64, usual float64) {
		if math.IsNaN(*v) {
			*v = usual
		}
	}
	or(&s.Thigh, 410)
	or(&s.Shin, 520)
	or(&s.Nose, 640)
	or(&s.WristUp, s.Nose+460)
	or(&s.WristDown, -90)
	or(&s.ConnectorTop, s.Nose)
	or(&s.ConnectorBottom, s.ConnectorTop-110)
	for side := range s.Loop {
		or(&s.Loop[side], s.WristUp-140-s.ConnectorTop)
		or(&s.HitchTop[side], s.ConnectorTop+s.Loop[side]+100)
	}
	or(&s.MainRings, 30)
	or(&s.BackupRings, 10)
	or(&s.BackupBridge, 500)
	or(&s.BackupBridgeRings, 300)
	or(&s.Tether, 140)
	or(&s.GardaToTether, 110)
	or(&s.FootLoop, 1030)
	or(&s.YLevel, s.ConnectorBottom-80)
	or(&s.YTaut, s.YLevel+50)
	or(&s.YLow, s.YLevel-350)
	or(&s.KneeAtTaut, 50)
	or(&s.BehindRope, 60)
	or(&s.Gain, s.YLevel-s.YLow)
	or(&s.Soles, -s.Shin-200)
	or(&s.HipAboveGround, 600-s.Soles)
	return s
}
