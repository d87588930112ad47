package rules

// ShortCaution is the caution in one sentence: for the first screen and every
// page on which a verdict stands.
const ShortCaution = "Checks lengths only: not knots, gear, tree or skill. A pass is not permission. " +
	"A second person and a rescue plan before anyone hangs."

// BriefCaution is one line of it, for a screen that has no room for more beside
// verdicts; the rest stands where they end.
const BriefCaution = "Lengths only: a pass is not permission."

// VerdictCautions say what a verdict does not cover; they stand with every set
// of verdicts. The strength that a school may need is second hand: the standard
// itself was not to hand.
func VerdictCautions() []string {
	return []string{
		"95 % is for one check inside this model, not for the fitting.",
		"Bridges and connectors get no strength check here; a school under ANSI Z133 needs cord of 24 kN (5,400 lbf), a figure known second hand.",
		"One rope, one union and one saddle are shared by all.",
	}
}

// CordCautions stand wherever a length of cord to cut is told. That knots take
// 20 to 50 % is from an encyclopaedia entry on accessory cord citing Schubert,
// bergundsteigen 2/2008, second hand; that lists differ by 10 to 15 points on
// the same knot is from two published lists.
func CordCautions() []string {
	return []string{
		"Cut too long is trimmed; cut too short is thrown away, never joined.",
		"Every knot dressed and set, tails left long, and looked at by a second person.",
		"Load-test low: a test weight first, nobody under it.",
		"Knots take 20 to 50 % off a cord, and lists differ by 10 to 15 points on the same knot: strength comes from the label, not from the length.",
		"How many wraps hold depends on this cord and this rope: find it low, and a maker's instructions come first.",
	}
}

// Cautions are the full cautions, for the README, the handbook and the printed
// sheet: one idea each.
func Cautions() []string {
	return append([]string{
		"Climbing can kill. This tool checks the geometry of a fitting: it sees no knot, no gear, no rope and no tree.",
		"A pass is not permission. Makers' instructions, local codes and licensed practice come first.",
		"Inspect every piece before it carries anyone, and load-test the whole system low: first with a test weight, then with the boots just off the ground.",
		"Nobody hangs alone: a second person who can help, and a rescue plan that both have gone through, are there before the boots leave the ground.",
		"Hanging without moving is dangerous within minutes. Keep the legs moving, keep each hang short, come down at the first sign of faintness, numbness or nausea.",
		"Nobody is dropped to test the kit: hitches are eased by hand, with the slack taken up first.",
		"Friction hitches and the Garda hitch behave differently on every rope, wet or dry, new or worn. What held on another rope proves nothing on this one.",
		"What was read today holds for this climber, this saddle, these boots and this rope. Change one of them and read again.",
	}, VerdictCautions()...)
}

// GettingDown is the order of getting a hanging climber down, shown by Down
// now. It is common practice in general words: the instructor adapts it to the
// tree, the kit and what was practised. That first aid stays the usual one,
// lying flat, is from a review of suspension (HSE RR708, 2009).
func GettingDown() []string {
	return []string{
		"Faint, silent or unable to help? Start the rescue plan and call for help now.",
		"Second person: go to the climber, stay in touch, say what comes next.",
		"Climber: foot back in the loop, and stand if you can; keep both legs moving.",
		"Standing, slack the tether. Open nothing that carries load: release the Garda hitch only when it is free.",
		"Come down the way you practised, in small moves or onto what the second person puts under the boots.",
		"Boots on the ground and standing firmly before anything is unclipped.",
		"On the ground: rest and be watched. If unwell: lie flat, usual first aid, call for help.",
	}
}
