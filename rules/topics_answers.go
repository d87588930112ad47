package rules

// poseTopics explain what check --json tells under poses. Heights are counted
// from the hip point of the seated climber, up.
func poseTopics() []Topic {
	pose := func(name, title, what, why, how string) Topic {
		return Topic{Name: name, Kind: PoseTopic, Title: title, What: what, Why: why, How: how, Source: "geometry of the side view; see model"}
	}
	const spring = "energy of a mass on a linear spring, two legs of rope; see model"
	out := []Topic{
		pose("ylevel", "Garda hitch at thigh level", "How high above the hip point the top of the Garda hitch stands when the thigh is level.", "It must stay clear under the main connector.",
			"From thigh, shin, foot loop and the rope ahead; where the pose was read, moved by delta to what was read."),
		pose("ylevel_model", "Garda hitch at thigh level, by the model alone", "How high the model alone puts the Garda hitch at thigh level, without what was read in that pose (delta left out).", "Beside the height that counts it shows how far model and reading are apart.", "Told where the pose was read."),
		pose("ytaut", "Garda hitch where the tether stops it", "How high above the hip point the top of the Garda hitch stands when the tether is taut.", "Above it there must be room to release the hitch.",
			"Backup rings, rise of the backup bridge, tether and Garda hitch added up; where the pose was read, that reading."),
		pose("ytaut_model", "Garda hitch where the tether stops it, by the model alone", "How high the model alone puts the Garda hitch with the tether taut, without what was read in that pose (tau left out).", "Beside the height that counts it shows how far model and reading are apart.", "Told where the pose was read."),
		pose("over", "Past level", "How far past thigh level the tether lets the Garda hitch come; below 0 it stops short.", "Short of level moves get small; far past, a slip drops far.", "The height of the Garda hitch where the tether stops it (ytaut) less that at thigh level (ylevel)."),
		pose("thigh_past_level", "Thigh past level", "How many degrees past level the thigh comes when the tether is taut.", "It shows what past level means for the leg.", "The angle of the thigh with the knee where the taut tether puts it."),
		pose("gain", "Gain", "How far the hip goes up when the climber stands from thigh level.", "It is what a move can win.", "Standing leg (knee a little bent, hip a little behind the rope) less foot loop, plus the height of the Garda hitch at thigh level (ylevel)."),
		pose("net", "Net gain", "What one move climbs.", "A climb of some height takes that height divided by it in moves.", "The gain, less what a short tether takes and less the set of the hitches."),
		pose("slack", "Slack", "How slack the tether is after a stand, Garda hitch not yet drawn up.", "If both hitches let go then, the body drops by it.", "Past level (over) and gain together."),
		pose("flexion", "Knee bend on the tether", "How far the knee is bent, foot in the loop, when the climber hangs on the tether.", "A knee that is folded too far cannot push.", "Thigh and shin against the distance from hip to foot in that pose."),
		pose("ylow", "Garda hitch after a stand", "How high above the hip point the top of the Garda hitch is, seated again and before it is drawn up.", "The hand has to get down to it.", "The height of the Garda hitch at thigh level (ylevel) less the gain."),
		pose("fmax", "Peak force", "The most that the catch pulls with if both hitches let go, in kN.", "It is held against the limit peak-force, and the tether's strength against it.", "For the least rope above; the tether is taken as rigid, which is the safe side."),
		pose("lmin", "Least rope for peak-force", "The shortest rope above with which the catch keeps to peak-force.", "Closer to the union it is caught harder.", "From the slack, the climber's mass and the rope's elongation."),
		pose("lmin_saddle", "Least rope for saddle-force", "The shortest rope above with which the catch keeps to saddle-force, the older limit of body belts.", "A saddle holds the hips only; this is the one to aim at.", "From the slack, the climber's mass and the rope's elongation."),
		pose("sag", "Sag", "How far the climber sinks when the rope takes the load slowly, for the rope above in the drill.", "It is seen in the drill, and takes room under the boots.", "Both legs of rope as a spring."),
	}
	for i := range out {
		switch out[i].Name {
		case "fmax", "lmin", "lmin_saddle", "sag": // of the slip; all others are of the side view
			out[i].Source = spring
		}
	}
	return out
}

// verdictTopics explain the verdicts.
func verdictTopics() []Topic {
	const source = "guarded acceptance, JCGM 106:2012; 1.645 is the one-sided 95 % point"
	return []Topic{
		{Name: "pass", Kind: VerdictTopic, Title: "Pass", What: "The margin is at least the guard: at least 95 % sure that this one check is truly met, inside this model.",
			Why: "One check, not the fitting, and not permission to climb.", How: "margin ≥ guard.", Do: "Go on; read the cautions.", Source: source},
		{Name: "tight", Kind: VerdictTopic, Title: "Tight", What: "Met by the numbers, but not surely: the margin is smaller than its guard, or a must rests on an estimate, on a predicted length or on a reading that a finding doubts.",
			Why: "What is met by less than the readings are sure of may truly be missed.", How: "0 ≤ margin < guard; or a must that would pass but for what it rests on.",
			Do: "Take the reading that it names again, three times. A tight must needs the instructor's note at the sign-off; one that rests on a predicted length cannot be signed.", Source: source},
		{Name: "fail", Kind: VerdictTopic, Title: "Fail", What: "The margin is below 0: by the numbers the check is missed.", Why: "A must that fails holds up the sign-off.", How: "margin < 0.",
			Do: "See what advise says, and what to do under the check's own name. Where it fails by less than the guard, read again first: better to read again than to re-tie.", Source: source},
		{Name: "unknown", Kind: VerdictTopic, Title: "Unknown", What: "Something that the check needs was neither read nor can be estimated, or the lengths do not go together.", Why: "Unknown is never a pass: a must that is unknown holds up the sign-off.",
			How: "It names the readings that would settle it.", Do: "Take the reading that it names first.", Source: "judgement"},
	}
}

// originTopics explain where a number comes from.
func originTopics() []Topic {
	return []Topic{
		{Name: "measured", Kind: OriginTopic, Title: "Measured", What: "Read in this session, or off a label.", Why: "It beats every other origin.", How: "Each time it was taken counts: more readings, less uncertainty.", Do: "Nothing.", Source: "GUM 4.2"},
		{Name: "kept", Kind: OriginTopic, Title: "Kept", What: "A length taken over from an earlier session, by an act of its own, with its date. Heights are never kept.", Why: "Legs and tethers do not change from day to day; a seat in a saddle does.",
			How: "It counts like a measured one until it is older than the school's recheck_days (180 by default) or has no date; then it counts as estimated.", Do: "Read it anew when it is old.", Source: "judgement"},
		{Name: "estimated", Kind: OriginTopic, Title: "Estimated", What: "Worked out from the body survey, or told and not measured.", Why: "Good enough to cut cord and start from; nobody leaves the ground on an estimate.",
			How: "Least squares on stature, inseam and sex over 6,068 bodies, sharpened by what was read of this one.", Do: "Take the reading.", Source: "ANSUR II body survey, 2012"},
		{Name: "default", Kind: OriginTopic, Title: "Default", What: "A posture that nobody reads, at its usual value or at what the session gives for it.", Why: "Without it there would be no answer; its spread is part of the uncertainty.", How: "Listed in check --json under posture.", Do: "Nothing.", Source: "judgement"},
		{Name: "predicted", Kind: OriginTopic, Title: "Predicted", What: "What a change should have brought: a piece set to a new length and not laid on again, or a height that it moves and nobody has read since.",
			Why: "Advice is a setting, not a verdict: set, hang, read again.", How: "The model's value from the old reading.", Do: "Lay the tape on the changed piece, hang, and read again what it moves.", Source: "judgement"},
		{Name: "derived", Kind: OriginTopic, Title: "Derived", What: "Computed from all the others: the poses.", Why: "It can be no surer than what it comes from.", How: "Each input's share of the uncertainty is added up.", Do: "Nothing.", Source: "GUM 5.1.2"},
	}
}

// findingTopics explain what does not fit together.
func findingTopics() []Topic {
	return []Topic{
		{Name: "readings-disagree", Kind: FindingTopic, Title: "Readings disagree", What: "Two ways to the same height give different answers, by more than their uncertainty explains.",
			Why: "One of the readings behind it is off: a slip, a wrong mark, or another seat.", How: "Garda hitch at level and taut, read against worked out; knee at level against level by eye; main connector against rings and bridge. Told beyond 1.96 times the standard uncertainty: one in twenty is chance.",
			Do: "Take the readings that it names again, the first one first. Until then a must that leans on the first is at most tight.", Source: "GUM; two-sided 95 %"},
		{Name: "unlikely-reading", Kind: FindingTopic, Title: "Unlikely reading", What: "A body reading that stature and the other body readings make very unlikely.", Why: "Bodies differ, but rarely so: digits swapped, a wrong landmark, or cm for inches is likelier.",
			How: "More than 3 standard uncertainties off what the body survey says of it.", Do: "Take it again. If it stays, the body is simply unusual: say so in the notes.", Source: "ANSUR II body survey, 2012; 3 is judgement"},
		{Name: "repeats-disagree", Kind: FindingTopic, Title: "Repeats disagree", What: "Two takes of one reading lie 30 mm (1 3/16 in) or more apart.", Why: "They were not the same mark, or not the same seat.", How: "The largest less the smallest take.",
			Do: "Take out the slip, or take all of them again.", Source: "judgement"},
		{Name: "identical-repeats", Kind: FindingTopic, Title: "Identical repeats", What: "Five or more takes of one reading are all the same.", Why: "Nobody lands five times on the same millimetre: they were probably copied, and say less than they seem to.", How: "Counted.",
			Do: "Find the mark afresh for each take.", Source: "judgement"},
		{Name: "out-of-domain", Kind: FindingTopic, Title: "Out of the domain", What: "As read, leg, foot loop and rope do not reach each other, so that there is no such pose; or they only just do, and within the uncertainty of the readings they may not.", Why: "What needs the pose is unknown, or tight at best: never a pass.", How: "The foot loop is shorter than the foot is away from the rope, or the leg shorter than the hip is behind it.",
			Do: "Look at the lengths that it names: one of them is wrong by far.", Source: "geometry"},
		{Name: "outside-survey", Kind: FindingTopic, Title: "Outside the survey", What: "The stature is below 1400 mm (55 1/8 in) or above 2000 mm (78 3/4 in): the survey has hardly any such bodies.", Why: "Estimates are less sure than they say.", How: "Stature, measured or told.",
			Do: "Read the body instead of estimating it.", Source: "ANSUR II body survey, 2012; the bounds are judgement"},
		{Name: "odd-reading", Kind: FindingTopic, Title: "Odd reading", What: "What can be true and hardly is: boot soles above the hip, a rope behind it, a session that ended before it started or starts long after today.", Why: "Most likely two marks were swapped, or a clock was off.", How: "Against the marks beside it, and against today's date.", Do: "Take both readings again; put a date right in the file.", Source: "judgement"},
		{Name: "units", Kind: FindingTopic, Title: "Looks like another unit", What: "A number that makes sense in another unit: 68.5 where millimetres are asked for looks like inches.", Why: "A slip of unit is wrong by a factor.", How: "Against what bodies and kits can be.", Do: "Type the unit with the number.", Source: "judgement"},
		{Name: "heavy", Kind: FindingTopic, Title: "Heavy climber", What: "Climber and kit weigh more than 160 kg (353 lb): more than the gear may be made for, or pounds typed as kilograms.", Why: "Ropes are drop-tested with 100 kg (220 lb) or less; saddles and connectors have ratings of their own.", How: "Mass with clothes and kit.", Do: "Look whether it was pounds; else look up what every piece is rated for.", Source: "EN 1891, falls with 100 kg (second hand); the 160 kg are judgement"},
		{Name: "bridge-nearly-straight", Kind: FindingTopic, Title: "Bridge nearly straight", What: "A bridge that is no more than 10 mm (3/8 in) longer than its rings are apart.", Why: "It pulls hard sideways on rings and hips, and a millimetre of length moves the connector far.", How: "Its length against its rings.", Do: "Lengthen it, or lay the tape on both again.", Source: "geometry; the 10 mm are judgement"},
		{Name: "judged-differently", Kind: FindingTopic, Title: "Judged differently", What: "Today's rules and limits say of this session something else than what was signed.", Why: "Limits move and the program is mended; what was signed stays as it was.", How: "Everything is judged afresh when a session is loaded.", Do: "Read what changed; fit again if a must is short of pass.", Source: "judgement"},
		{Name: "drill-failed", Kind: FindingTopic, Title: "Drill failed", What: "Something in the ground drill did not hold, sank too far, jammed or was out of reach.", Why: "It was seen with the climber hanging on it: no margin speaks against that.", How: "What was noted in the steps of the drill.",
			Do: "Come down, find out why, change it, read again what it moves, and do the whole drill anew. Nothing is signed over it.", Source: "common practice"},
		{Name: "drill-disagrees", Kind: FindingTopic, Title: "Drill disagrees", What: "What was seen in the drill is not what the model expects, by more than their uncertainty explains.", Why: "A reading is off, a knot has set, or the rope is another one than its label says.", How: "The Garda hitch on the loaded tether, and the sag, against what the readings make of them; told beyond 1.96 times the standard uncertainty: one in twenty is chance.",
			Do: "Read again what it names, the first one first. Sign over it only with a note that says why.", Source: "GUM; two-sided 95 %"},
	}
}
