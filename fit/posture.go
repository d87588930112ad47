package fit

// PostureInfo is a posture's key in the session file and its default.
type PostureInfo struct {
	Key  string
	Name string
	V, U float64 // in Unit
	Unit string
}

// The defaults are judgement but for the comfortable-reach factor and the eye
// above the nose, which are anatomical estimates from memory.
var postureInfo = [NumPostures]PostureInfo{
	ShinAngle:    {"shin_angle_deg", "shin angle", 0, 8, "deg"},
	KneeBend:     {"knee_bend_deg", "knee bend when standing", 15, 8, "deg"},
	BehindRope:   {"behind_rope_mm", "hip behind the rope when standing", 60, 20, "mm"},
	Set:          {"set_mm", "set of the hitches", 30, 15, "mm"},
	Lean:         {"lean_deg", "lean of the trunk", 8, 6, "deg"},
	AheadDefault: {"ahead_mm", "rope ahead of the hip", 150, 40, "mm"},
	Sole:         {"sole_mm", "boot sole", 25, 5, "mm"},
	EyeAboveNose: {"eye_above_nose_mm", "eye above the nose", 45, 5, "mm"},
	ReachFactor:  {"reach_factor", "comfortable share of full reach", 0.86, 0.05, ""},
	LevelByEye:   {"level_by_eye_mm", "knee above the hip when the thigh looks level", 0, 20, "mm"},
}

// Info tells what the program knows of p, which must be one of the postures.
func (p Posture) Info() PostureInfo { return postureInfo[p] }

// LeastU is the least standard uncertainty that a session may give a posture: a
// quarter of the default's.
func (p Posture) LeastU() float64 { return postureInfo[p].U / 4 }

// posture is the value and standard uncertainty of p in this session.
func (f *Fitting) posture(p Posture) (v, u float64) {
	if s := f.Posture[p]; s.Given {
		return s.V, s.U
	}
	return postureInfo[p].V, postureInfo[p].U
}
