package fit

// A Reading names one thing that is read off a tape. Heights come off the
// hanging tape and belong to a hang; the others are laid lengths. The order is
// that of the session file, which also settles ties.
type Reading int8

// The readings, in the order of the session file.
const (
	Stature Reading = iota
	Inseam
	Thigh
	Shin
	Waist

	Hip
	Nose
	WristUp
	WristDown
	ConnectorTop
	ConnectorBottom
	LeftLoopTop
	LeftHitchTop
	RightLoopTop
	RightHitchTop
	MainRings
	BackupRings
	Soles
	Ground
	GardaLevel
	KneeLevel
	GardaTaut

	Ahead
	MainBridge
	MainBridgeRings
	GardaToTether
	FootLoop
	Tether
	BackupBridge
	BackupBridgeRings

	NumReadings
)

// firstHeight and lastHeight bound the readings that belong to a hang.
const (
	firstHeight = Hip
	lastHeight  = GardaTaut
)

// A Spread is what a reading lands on, which settles how far repeats of it
// scatter (model section 4).
type Spread int8

// The kinds of mark that a tape is laid to.
const (
	Hardware Spread = iota // a knot, a ring, a carabiner
	Body                   // a bone or a crease under clothes
	Garda                  // the Garda hitch held in one of its two poses
)

// A Pose is how the climber hangs.
type Pose int

// The poses. Heights are read in the first three, in this order, which keeps the
// climber up for the shortest time; the others are only computed.
const (
	NoPose     Pose = iota // laid lengths: nobody hangs
	Seated                 // seated on the main bridge, feet off the ground
	ThighLevel             // foot in the loop, Garda hitch drawn up until the thigh looks level
	TetherTaut             // Garda hitch drawn up until the tether stops it
	Standing               // stood up in the foot loop, both friction hitches slid up
	OnTether               // both friction hitches have let go
)

// ReadingInfo is what the program knows of a reading: the one table from which
// file keys, forms, ties and explanations follow.
type ReadingInfo struct {
	Table  string // its table in the session file: "climber", "hangs", "rope", "kit.tether", …
	Key    string // its key in that table, unit at the end
	Name   string // in the trade's words
	Spread Spread
	Pose   Pose // NoPose for a laid length
}

var readingInfo = [NumReadings]ReadingInfo{
	Stature: {"climber", "stature_mm", "stature", Body, NoPose},
	Inseam:  {"climber", "inseam_mm", "inseam", Body, NoPose},
	Thigh:   {"climber", "thigh_mm", "thigh", Body, NoPose},
	Shin:    {"climber", "shin_mm", "shin", Body, NoPose},
	Waist:   {"climber", "waist_mm", "waist", Body, NoPose},

	Hip:             {"hangs", "hip_mm", "hip point", Body, Seated},
	Nose:            {"hangs", "nose_mm", "nose", Body, Seated},
	WristUp:         {"hangs", "wrist_up_mm", "raised wrist", Body, Seated},
	WristDown:       {"hangs", "wrist_down_mm", "hanging wrist", Body, Seated},
	ConnectorTop:    {"hangs", "connector_top_mm", "main connector, inside top", Hardware, Seated},
	ConnectorBottom: {"hangs", "connector_bottom_mm", "main connector, outside bottom", Hardware, Seated},
	LeftLoopTop:     {"hangs", "left_loop_top_mm", "left loop top", Hardware, Seated},
	LeftHitchTop:    {"hangs", "left_hitch_top_mm", "left hitch top", Hardware, Seated},
	RightLoopTop:    {"hangs", "right_loop_top_mm", "right loop top", Hardware, Seated},
	RightHitchTop:   {"hangs", "right_hitch_top_mm", "right hitch top", Hardware, Seated},
	MainRings:       {"hangs", "main_rings_mm", "main bridge rings", Hardware, Seated},
	BackupRings:     {"hangs", "backup_rings_mm", "backup bridge rings", Hardware, Seated},
	Soles:           {"hangs", "soles_mm", "boot soles", Body, Seated},
	Ground:          {"hangs", "ground_mm", "ground", Hardware, Seated},
	GardaLevel:      {"hangs", "garda_level_mm", "Garda hitch, thigh level", Garda, ThighLevel},
	KneeLevel:       {"hangs", "knee_level_mm", "knee, thigh level", Body, ThighLevel},
	GardaTaut:       {"hangs", "garda_taut_mm", "Garda hitch, tether taut", Garda, TetherTaut},

	Ahead:             {"rope", "ahead_mm", "rope ahead of the hip", Body, NoPose},
	MainBridge:        {"kit.main_bridge", "length_mm", "main bridge", Hardware, NoPose},
	MainBridgeRings:   {"kit.main_bridge", "rings_mm", "main bridge, ring to ring", Hardware, NoPose},
	GardaToTether:     {"kit.garda", "to_tether_mm", "Garda hitch, top to tether", Hardware, NoPose},
	FootLoop:          {"kit.foot_loop", "length_mm", "foot loop", Hardware, NoPose},
	Tether:            {"kit.tether", "length_mm", "backup tether", Hardware, NoPose},
	BackupBridge:      {"kit.backup_bridge", "length_mm", "backup bridge", Hardware, NoPose},
	BackupBridgeRings: {"kit.backup_bridge", "rings_mm", "backup bridge, ring to ring", Hardware, NoPose},
}

// Info tells what the program knows of r, which must be one of the readings.
func (r Reading) Info() ReadingInfo { return readingInfo[r] }

// IsHeight says whether r comes off the hanging tape and so belongs to a hang.
func (r Reading) IsHeight() bool { return r >= firstHeight && r <= lastHeight }

// String is the reading's name in the trade's words.
func (r Reading) String() string { return readingInfo[r].Name }
