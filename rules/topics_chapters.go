package rules

import "strings"

// chapters are the handbook inside the program.
func chapters() []Topic {
	chapter := func(name, title, why, source string, paragraphs ...string) Topic {
		return Topic{Name: name, Kind: Chapter, Title: title, What: strings.Join(paragraphs, "\n\n"), Why: why, Source: source}
	}
	return []Topic{
		chapter("start", "What hangtape is for", "Lengths that fit are found at the base of the tree, not in the crown.", "common practice",
			"A climber goes up two legs of rope at once: sits in the saddle on two friction hitches, draws the Garda hitch and one foot up until the thigh is level, stands up in the foot loop, slides both hitches up while standing, and sits back. Then again. A backup tether from the Garda hitch to a second bridge holds the climber if the hitches let go.",
			"Bridges, hitch loops, foot loop and tether have to fit the climber and each other. hangtape takes what a tape says, tells what fits, what is tight and what does not, says how sure that is, and says which piece to change, to what, within which window.",
			"Have ready: a tape and a second one to hang beside the rope, a low anchor, the whole kit, the labels of rope and cord, a second person, a rescue plan, forty minutes."),
		chapter("reading-well", "How to take readings well", "A verdict is as good as the readings behind it.", "common practice; GUM 4.2",
			"- Measure the body on the ground, boots on where boots count. Then hang, and read from the seat up: seated heights first, thigh level next, tether taut last. The climber hangs for minutes, not for the whole fitting.\n"+
				"- Hang the tape beside the rope, plumb and still; its zero can be anywhere. Sight level from mark to tape.\n"+
				"- Find bony marks by feel, not by the seams of clothes.\n"+
				"- Take what matters three times: let go of the mark, find it afresh, read again. Copying a number five times adds nothing.\n"+
				"- After a break read the hip again: nobody sits twice the same.\n"+
				"- What was not taken stays empty. Empty is honest; a guess is not a reading.",
			"Type lengths as you read them: 1742, 174.2 cm, 68 1/2 in, 5' 8 1/2\". explain with the name of a reading (hip, garda-level, knee-level and all others) shows where the tape goes."),
		chapter("model", "The model", "Who knows what is computed knows what is not.", "geometry; energy of a mass on a linear spring; GUM",
			"Seen from the side the climber is three joints: hip, knee and foot, with the rope as one upright line ahead of the hip. All heights count from the hip point of the seated climber.",
			"Seated: the main connector pulls the main bridge up at its middle, like the ridge of a roof. A longer bridge makes a higher ridge, rings farther apart a lower one. The hitch loops stand on the connector, the wraps on the loops.",
			"Thigh level: knee as high as the hip, shin hanging, foot in the loop. The foot loop runs from the foot up to the rope, so its length puts the Garda hitch where it is. Where that was read, the reading counts, and what it differs by is carried to other lengths.",
			"Tether taut: on the ridge of the backup bridge stands the tether, and on its end the Garda hitch, which can come no higher. By how much that is above its height with the thigh level is called past level.",
			"Standing: the loaded foot hangs straight under the Garda hitch, the knee stays a little bent, the hip a little behind the rope. How much higher the hip is than when seated is the gain. Both hitches are slid up by as much, less what they give as they take the load.",
			"Slip: seated again after a stand, the Garda hitch hangs low, and the tether is slack by past level and gain together. If both hitches let go then, the body drops by so much, and two legs of rope catch it like springs: the less rope above, the harder.",
			"Left out: friction, bark, how the tether and the body give, rope that is not quite plumb, anything to the left or right."),
		chapter("how-sure", "How sure a verdict is", "A margin says nothing without what it is sure of.", "GUM (JCGM 100:2008); JCGM 106:2012; OIML R 35-1",
			"Every reading has a standard uncertainty: the tape's class, its marks, and how well one lands on the mark. Every posture that nobody reads has one too. Each is stepped up and down through the whole model, and the effects are added as squares. A reading used in five places is one reading: its error is shared.",
			"The guard is 1.645 times the result. A margin of at least the guard is a pass: 95 % sure, for this one check. A margin from 0 up to it is tight, and so is a must that rests on an estimate of the body, on a length that was only set, or on a reading that a finding doubts: nobody leaves the ground on an estimate. Below 0 it fails; what cannot be told is unknown, and never a pass. With every tight check stands the reading that would help most."),
		chapter("failing", "When a check fails", "A number that is off wants a hand that knows which piece to take.", "see each check's source",
			"Read again first what a finding or the line of the next reading names: that costs less than tying anew. Then, one change at a time:",
			bullets(whatToDo()),
			"What is lengthened for one check may fail another: hangtape advise, or \"what to change\" in the wizard, looks at all of them at once. After every change hang and read again. explain with a check's name tells why it is asked."),
		chapter("advice", "What to change", "Knowing that something is 28 mm (1 1/8 in) off helps nobody who hangs in a saddle.", "judgement",
			"advise tries every set of pieces that can change, each within its bounds. Least change is the cheapest set that brings every must to a pass; best fit also brings in the most shoulds. Each answer is put through the whole model again, on marks that a tape has.",
			"For every changed piece it tells a window. Use one at a time: windows do not add up.",
			"An answer is a setting, not a verdict. Set it, lay the tape on it, hang, and read again what it moves; only then can it be signed. The wizard offers it in the review where a must is short of a pass, and asks in the next hang for what is stale alone."),
		chapter("cautions", "Cautions", "Climbing can kill.", "common practice; see each check's source", bullets(Cautions())),
		chapter("getting-down", "Getting down", "Hanging without moving is dangerous within minutes.", "common practice; first aid as in HSE RR708, 2009",
			"A general order; the instructor adapts it to the tree, the kit and what was practised.", bullets(GettingDown())),
	}
}

// whatToDo is what to do about each check, in its order.
func whatToDo() []string {
	var lines []string
	for c := range NumChecks {
		lines = append(lines, c.String()+": "+c.Info().Do)
	}
	return lines
}

// bullets are lines as a list.
func bullets(lines []string) string {
	return "- " + strings.Join(lines, "\n- ")
}
