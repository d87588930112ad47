package fit

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

// pulledSnug is how a piece of cord or a bridge is measured.
const pulledSnug = "Pull it snug, as it will hang, and lay the tape along it without a bow."

// The two marks of a friction hitch are read alike on both sides.
const (
	loopTopHow  = "With the hitch set and carrying the climber."
	hitchTopHow = "With the hitch set and carrying the climber, since it creeps as it sets."
)

var readingInfo = [NumReadings]ReadingInfo{
	Stature: {
		Table: "climber", Key: "stature_mm", Name: "stature", Spread: Body, Pose: NoPose,
		Mark: "Standing height, barefoot, heels and head against a wall or tree.",
		How:  "Look straight ahead, lay something flat and level on the head, mark its underside, and measure up from the ground.",
		Why:  "The body survey gives estimates from it for what is not read; every other body reading is held against it.",
	},
	Inseam: {
		Table: "climber", Key: "inseam_mm", Name: "inseam", Spread: Body, Pose: NoPose,
		Mark: "Crotch to ground, standing barefoot, feet a hand apart.",
		How:  "Draw a thin book up between the legs until it is snug, keep it level, and measure from its upper edge to the ground.",
		Why:  "It sharpens the estimates of thigh and shin.",
	},
	Thigh: {
		Table: "climber", Key: "thigh_mm", Name: "thigh", Spread: Body, Pose: NoPose,
		Mark: "From the hip point to the middle of the kneecap.",
		How:  "Seated or with the knee bent square. Feel for the bony knob at the side of the hip and take its upper edge; lay the tape straight to the middle of the kneecap, not around the flesh. Take it three times.",
		Why:  "With the shin it says how high the Garda hitch comes, and how far the leg can push.",
	},
	Shin: {
		Table: "climber", Key: "shin_mm", Name: "shin", Spread: Body, Pose: NoPose,
		Mark: "From the middle of the kneecap to the sole of the boot, boots on.",
		How:  "Seated, knee bent square, boot flat on the ground: measure straight up from the ground to the middle of the kneecap.",
		Why:  "With the thigh it says how high the Garda hitch comes, and how far the leg can push.",
	},
	Waist: {
		Table: "climber", Key: "waist_mm", Name: "waist", Spread: Body, Pose: NoPose,
		Mark: "From the ground to the navel, standing, boots on.",
		How:  "Stand upright at ease; measure straight up.",
		Why:  "The foot loop should come up to about here.",
	},

	Hip: {
		Table: "hangs", Key: "hip_mm", Name: "hip point", Spread: Body, Pose: Seated,
		Mark: "The upper edge of the bony knob at the side of the hip (greater trochanter), seated in the saddle.",
		How:  "It is about a hand's width below the top of the pelvis. Feel for the knob while the climber swings or turns the leg: it moves under the fingers. Take its upper edge, hold a finger on it, and read the hanging tape at the same height. Three times, feeling for it anew each time.",
		Why:  "Every height of a hang is counted from it. After a break it is read again, since nobody sits twice the same.",
	},
	Nose: {
		Table: "hangs", Key: "nose_mm", Name: "nose", Spread: Body, Pose: Seated,
		Mark: "The tip of the nose, seated, looking straight ahead.",
		How:  "Sight level across to the tape; keep the climber looking ahead, not down at you.",
		Why:  "The main connector should hang in front of the face.",
	},
	WristUp: {
		Table: "hangs", Key: "wrist_up_mm", Name: "raised wrist", Spread: Body, Pose: Seated,
		Mark: "The crease of the wrist, arm raised along the rope as far as is comfortable.",
		How:  "Comfortable, not stretched: the climber has to reach there a hundred times. The crease on the palm's side, not the fingertips.",
		Why:  "It has to get to the top of the friction hitches.",
	},
	WristDown: {
		Table: "hangs", Key: "wrist_down_mm", Name: "hanging wrist", Spread: Body, Pose: Seated,
		Mark: "The crease of the wrist, arm hanging loose at the side.",
		How:  "Shoulder down, elbow straight, seated upright.",
		Why:  "The Garda hitch should wait no lower than this after a stand.",
	},
	ConnectorTop: {
		Table: "hangs", Key: "connector_top_mm", Name: "main connector, inside top", Spread: Hardware, Pose: Seated,
		Mark: "The inside of the top of the main connector, where the hitch cords lie in it.",
		How:  "The climber hangs still; sight level to the tape.",
		Why:  "The hitch loops start here; it should hang at the face.",
	},
	ConnectorBottom: {
		Table: "hangs", Key: "connector_bottom_mm", Name: "main connector, outside bottom", Spread: Hardware, Pose: Seated,
		Mark: "The lowest outside edge of the main connector, below the bridge.",
		How:  "The climber hangs still; sight level to the tape.",
		Why:  "The Garda hitch must stay clear under it.",
	},
	LeftLoopTop: {
		Table: "hangs", Key: "left_loop_top_mm", Name: "left loop top", Spread: Hardware, Pose: Seated,
		Mark: "Where the left hitch's loop ends and its wraps begin.",
		How:  loopTopHow,
		Why:  "How much of the loop there is to hold.",
	},
	LeftHitchTop: {
		Table: "hangs", Key: "left_hitch_top_mm", Name: "left hitch top", Spread: Hardware, Pose: Seated,
		Mark: "The upper edge of the left hitch's top wrap.",
		How:  hitchTopHow,
		Why:  "The raised wrist has to get there.",
	},
	RightLoopTop: {
		Table: "hangs", Key: "right_loop_top_mm", Name: "right loop top", Spread: Hardware, Pose: Seated,
		Mark: "Where the right hitch's loop ends and its wraps begin.",
		How:  loopTopHow,
		Why:  "How much of the loop there is to hold.",
	},
	RightHitchTop: {
		Table: "hangs", Key: "right_hitch_top_mm", Name: "right hitch top", Spread: Hardware, Pose: Seated,
		Mark: "The upper edge of the right hitch's top wrap.",
		How:  hitchTopHow,
		Why:  "The raised wrist has to get there.",
	},
	MainRings: {
		Table: "hangs", Key: "main_rings_mm", Name: "main bridge rings", Spread: Hardware, Pose: Seated,
		Mark: "The rings of the main bridge, where the bridge bears on them.",
		How:  "Both rings; where they differ, the middle of the two.",
		Why:  "With the bridge's length it says where the connector should hang, which tells on a wrong reading; a new bridge length is worked out from it.",
	},
	BackupRings: {
		Table: "hangs", Key: "backup_rings_mm", Name: "backup bridge rings", Spread: Hardware, Pose: Seated,
		Mark: "The rings of the backup bridge, where the bridge bears on them.",
		How:  "Both rings; where they differ, the middle of the two.",
		Why:  "The backup bridge and the tether hang from here: it says where the tether stops the Garda hitch.",
	},
	Soles: {
		Table: "hangs", Key: "soles_mm", Name: "boot soles", Spread: Body, Pose: Seated,
		Mark: "The underside of the boots, feet hanging loose.",
		How:  "The lower boot where they differ.",
		Why:  "Room under the boots for the drill.",
	},
	Ground: {
		Table: "hangs", Key: "ground_mm", Name: "ground", Spread: Hardware, Pose: Seated,
		Mark: "The ground right under the boots.",
		How:  "The highest root or stone there.",
		Why:  "Room under the boots for the drill.",
	},
	GardaLevel: {
		Table: "hangs", Key: "garda_level_mm", Name: "Garda hitch, thigh level", Spread: Garda, Pose: ThighLevel,
		Mark: "The top of the Garda hitch, foot in the loop, drawn up until the thigh looks level.",
		How:  "Foot held out in front, not loaded. One person judges the thigh from the side, at the height of the hip; another reads. Read the knee at the same moment. Three times, let down in between.",
		Why:  "It must stay clear under the main connector. Read, it takes the place of what the model only works out.",
	},
	KneeLevel: {
		Table: "hangs", Key: "knee_level_mm", Name: "knee, thigh level", Spread: Body, Pose: ThighLevel,
		Mark: "The middle of the kneecap in that same pose, thigh level.",
		How:  "Right after or together with the Garda hitch, without moving the leg.",
		Why:  "It says how level the thigh truly was. Without it \"level\" is judged by eye, ± 20 mm (3/4 in), and the two limits of the tether can hardly both pass.",
	},
	GardaTaut: {
		Table: "hangs", Key: "garda_taut_mm", Name: "Garda hitch, tether taut", Spread: Garda, Pose: TetherTaut,
		Mark: "The top of the Garda hitch, drawn up until the tether stops it.",
		How:  "Foot in the loop; draw up until tether and backup bridge are straight but not loaded.",
		Why:  "It says how far past level the foot can come, and what room is left to release the Garda hitch.",
	},

	Ahead: {
		Table: "rope", Key: "ahead_mm", Name: "rope ahead of the hip", Spread: Body, Pose: NoPose,
		Mark: "How far the rope hangs in front of the hip point, measured level, seated.",
		How:  "Hold a straight stick level from the hip point to the middle of the rope. Behind the hip counts as less than 0.",
		Why:  "The foot loop leans by so much; it changes how high the Garda hitch comes.",
	},
	MainBridge: {
		Table: "kit.main_bridge", Key: "length_mm", Name: "main bridge", Spread: Hardware, Pose: NoPose,
		Mark: "The main bridge, from end to end between its rings.",
		How:  pulledSnug + " From where it bears on one ring to where it bears on the other.",
		Why:  "It sets how high the main connector hangs.",
	},
	MainBridgeRings: {
		Table: "kit.main_bridge", Key: "rings_mm", Name: "main bridge, ring to ring", Spread: Hardware, Pose: NoPose,
		Mark: "From ring to ring of the main bridge, across.",
		How:  "With the saddle loaded, where the bridge bears on the rings.",
		Why:  "A bridge on rings that are far apart rises less.",
	},
	GardaToTether: {
		Table: "kit.garda", Key: "to_tether_mm", Name: "Garda hitch, top to tether", Spread: Hardware, Pose: NoPose,
		Mark: "From the top of the Garda hitch to where the tether is tied to it.",
		How:  "With the Garda hitch on the rope and set.",
		Why:  "It is part of how high the tether lets the Garda hitch come.",
	},
	FootLoop: {
		Table: "kit.foot_loop", Key: "length_mm", Name: "foot loop", Spread: Hardware, Pose: NoPose,
		Mark: "The foot loop, from the sole of the boot to the top of the Garda hitch.",
		How:  pulledSnug + " Boot in the loop, loop under the arch.",
		Why:  "It sets how high the Garda hitch comes and how much a stand wins.",
	},
	Tether: {
		Table: "kit.tether", Key: "length_mm", Name: "backup tether", Spread: Hardware, Pose: NoPose,
		Mark: "The finished tether, from the Garda hitch to the backup bridge.",
		How:  pulledSnug + " From bearing point to bearing point.",
		Why:  "It sets where the tether stops the Garda hitch, and how far a slip drops.",
	},
	BackupBridge: {
		Table: "kit.backup_bridge", Key: "length_mm", Name: "backup bridge", Spread: Hardware, Pose: NoPose,
		Mark: "The backup bridge, from end to end between its rings.",
		How:  pulledSnug + " From where it bears on one ring to where it bears on the other.",
		Why:  "The tether hangs on it.",
	},
	BackupBridgeRings: {
		Table: "kit.backup_bridge", Key: "rings_mm", Name: "backup bridge, ring to ring", Spread: Hardware, Pose: NoPose,
		Mark: "From ring to ring of the backup bridge, across.",
		How:  "With the saddle loaded, where the bridge bears on the rings.",
		Why:  "A bridge on rings that are far apart rises less.",
	},
}
