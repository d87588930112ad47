package rules

import (
	"strings"

	"example.com/hangtape/fit"
)

// readingWords say where the mark of a reading is, how to take it well, and
// what it is used for.
type readingWords struct{ where, how, why string }

// pulledSnug is how a piece of cord or a bridge is measured.
const pulledSnug = "Pull it snug, as it will hang, and lay the tape along it without a bow."

var readingWordsOf = [fit.NumReadings]readingWords{
	fit.Stature: {"Standing height, barefoot, heels and head against a wall or tree.",
		"Look straight ahead, lay something flat and level on the head, mark its underside, and measure up from the ground.",
		"The body survey gives estimates from it for what is not read; every other body reading is held against it."},
	fit.Inseam: {"Crotch to ground, standing barefoot, feet a hand apart.",
		"Draw a thin book up between the legs until it is snug, keep it level, and measure from its upper edge to the ground.",
		"It sharpens the estimates of thigh and shin."},
	fit.Thigh: {"From the hip point to the middle of the kneecap.",
		"Seated or with the knee bent square. Feel for the bony knob at the side of the hip and take its upper edge; lay the tape straight to the middle of the kneecap, not around the flesh. Take it three times.",
		"With the shin it says how high the Garda hitch comes, and how far the leg can push."},
	fit.Shin: {"From the middle of the kneecap to the sole of the boot, boots on.",
		"Seated, knee bent square, boot flat on the ground: measure straight up from the ground to the middle of the kneecap.",
		"With the thigh it says how high the Garda hitch comes, and how far the leg can push."},
	fit.Waist: {"From the ground to the navel, standing, boots on.",
		"Stand upright at ease; measure straight up.",
		"The foot loop should come up to about here."},

	fit.Hip: {"The upper edge of the bony knob at the side of the hip (greater trochanter), seated in the saddle.",
		"It is about a hand's width below the top of the pelvis. Feel for the knob while the climber swings or turns the leg: it moves under the fingers. Take its upper edge, hold a finger on it, and read the hanging tape at the same height. Three times, feeling for it anew each time.",
		"Every height of a hang is counted from it. After a break it is read again, since nobody sits twice the same."},
	fit.Nose: {"The tip of the nose, seated, looking straight ahead.",
		"Sight level across to the tape; keep the climber looking ahead, not down at you.",
		"The main connector should hang in front of the face."},
	fit.WristUp: {"The crease of the wrist, arm raised along the rope as far as is comfortable.",
		"Comfortable, not stretched: the climber has to reach there a hundred times. The crease on the palm's side, not the fingertips.",
		"It has to get to the top of the friction hitches."},
	fit.WristDown: {"The crease of the wrist, arm hanging loose at the side.",
		"Shoulder down, elbow straight, seated upright.",
		"The Garda hitch should wait no lower than this after a stand."},
	fit.ConnectorTop: {"The inside of the top of the main connector, where the hitch cords lie in it.",
		"The climber hangs still; sight level to the tape.",
		"The hitch loops start here; it should hang at the face."},
	fit.ConnectorBottom: {"The lowest outside edge of the main connector, below the bridge.",
		"The climber hangs still; sight level to the tape.",
		"The Garda hitch must stay clear under it."},
	fit.LeftLoopTop:   {"Where the left hitch's loop ends and its wraps begin.", loopTop, "How much of the loop there is to hold."},
	fit.LeftHitchTop:  {"The upper edge of the left hitch's top wrap.", hitchTop, "The raised wrist has to get there."},
	fit.RightLoopTop:  {"Where the right hitch's loop ends and its wraps begin.", loopTop, "How much of the loop there is to hold."},
	fit.RightHitchTop: {"The upper edge of the right hitch's top wrap.", hitchTop, "The raised wrist has to get there."},
	fit.MainRings: {"The rings of the main bridge, where the bridge bears on them.",
		"Both rings; where they differ, the middle of the two.",
		"With the bridge's length it says where the connector should hang, which tells on a wrong reading; a new bridge length is worked out from it."},
	fit.BackupRings: {"The rings of the backup bridge, where the bridge bears on them.",
		"Both rings; where they differ, the middle of the two.",
		"The backup bridge and the tether hang from here: it says where the tether stops the Garda hitch."},
	fit.Soles: {"The underside of the boots, feet hanging loose.",
		"The lower boot where they differ.",
		"Room under the boots for the drill."},
	fit.Ground: {"The ground right under the boots.",
		"The highest root or stone there.",
		"Room under the boots for the drill."},
	fit.GardaLevel: {"The top of the Garda hitch, foot in the loop, drawn up until the thigh looks level.",
		"Foot held out in front, not loaded. One person judges the thigh from the side, at the height of the hip; another reads. Read the knee at the same moment. Three times, let down in between.",
		"It must stay clear under the main connector. Read, it takes the place of what the model only works out."},
	fit.KneeLevel: {"The middle of the kneecap in that same pose, thigh level.",
		"Right after or together with the Garda hitch, without moving the leg.",
		"It says how level the thigh truly was. Without it \"level\" is judged by eye, ± 20 mm (3/4 in), and the two limits of the tether can hardly both pass."},
	fit.GardaTaut: {"The top of the Garda hitch, drawn up until the tether stops it.",
		"Foot in the loop; draw up until tether and backup bridge are straight but not loaded.",
		"It says how far past level the foot can come, and what room is left to release the Garda hitch."},

	fit.Ahead: {"How far the rope hangs in front of the hip point, measured level, seated.",
		"Hold a straight stick level from the hip point to the middle of the rope. Behind the hip counts as less than 0.",
		"The foot loop leans by so much; it changes how high the Garda hitch comes."},
	fit.MainBridge: {"The main bridge, from end to end between its rings.",
		pulledSnug + " From where it bears on one ring to where it bears on the other.",
		"It sets how high the main connector hangs."},
	fit.MainBridgeRings: {"From ring to ring of the main bridge, across.",
		"With the saddle loaded, where the bridge bears on the rings.",
		"A bridge on rings that are far apart rises less."},
	fit.GardaToTether: {"From the top of the Garda hitch to where the tether is tied to it.",
		"With the Garda hitch on the rope and set.",
		"It is part of how high the tether lets the Garda hitch come."},
	fit.FootLoop: {"The foot loop, from the sole of the boot to the top of the Garda hitch.",
		pulledSnug + " Boot in the loop, loop under the arch.",
		"It sets how high the Garda hitch comes and how much a stand wins."},
	fit.Tether: {"The finished tether, from the Garda hitch to the backup bridge.",
		pulledSnug + " From bearing point to bearing point.",
		"It sets where the tether stops the Garda hitch, and how far a slip drops."},
	fit.BackupBridge: {"The backup bridge, from end to end between its rings.",
		pulledSnug + " From where it bears on one ring to where it bears on the other.",
		"The tether hangs on it."},
	fit.BackupBridgeRings: {"From ring to ring of the backup bridge, across.",
		"With the saddle loaded, where the bridge bears on the rings.",
		"A bridge on rings that are far apart rises less."},
}

// The two marks of a friction hitch are read alike on both sides.
const (
	loopTop  = "With the hitch set and carrying the climber."
	hitchTop = "With the hitch set and carrying the climber, since it creeps as it sets."
)

// ReadingMark says in a sentence where the mark of r is: what stands with the
// question for it.
func ReadingMark(r fit.Reading) string { return readingWordsOf[r].where }

// readingName is the name under which a reading is explained: its key without
// the unit, with its piece where the key alone says too little.
func readingName(r fit.Reading) string {
	info := r.Info()
	name := strings.TrimSuffix(info.Key, "_mm")
	if _, piece, ok := strings.Cut(info.Table, "kit."); ok {
		name = piece + "-" + name
	} else if info.Table == "rope" {
		name = "rope-" + name
	}
	return strings.ReplaceAll(name, "_", "-")
}

// Reading is the reading that t explains, and whether it explains one.
func (t Topic) Reading() (fit.Reading, bool) {
	if t.Kind == ReadingTopic {
		for r := range fit.NumReadings {
			if readingName(r) == t.Name {
				return r, true
			}
		}
	}
	return 0, false
}

// readingTopics explain the readings, in the file's order.
func readingTopics() []Topic {
	spreads := map[fit.Spread]string{fit.Body: "8 mm (5/16 in), a mark on the body", fit.Hardware: "3 mm (1/8 in), hardware",
		fit.Garda: "5 mm (3/16 in), the Garda hitch in its poses"}
	var out []Topic
	for r := range fit.NumReadings {
		info, words := r.Info(), readingWordsOf[r]
		taken := "Lay the tape on. "
		if r.IsHeight() {
			taken = "Read off the hanging tape. "
		}
		also := []string{info.Table + "." + info.Key}
		if info.Table == "climber" || r.IsHeight() {
			also = append(also, info.Key)
		}
		out = append(out, Topic{
			Name: readingName(r), Kind: ReadingTopic, Title: strings.ToUpper(info.Name[:1]) + info.Name[1:], What: words.where, Why: words.why,
			How: taken + words.how + " Spread of landing on it: " + spreads[info.Spread] + ".",
			Do: "Take it again where a verdict is tight on it or a finding names it: three readings, finding the mark afresh each time, are worth far more than one. " +
				"What was not taken is left empty.",
			Source: "common practice", Also: also,
		})
	}
	return out
}
