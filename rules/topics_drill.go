package rules

// drillTopics explain the words of the ground drill.
func drillTopics() []Topic {
	const (
		common    = "common practice"
		judgement = "judgement"
		spring    = "energy of a mass on a linear spring"
	)
	term := func(name, title, what, why, source string, also ...string) Topic {
		return Topic{Name: name, Kind: TermTopic, Title: title, What: what, Why: why, Source: source, Also: also}
	}
	return []Topic{
		term("drill", "Ground drill", "Low at the base of the tree, in this order: load the whole system; ease one hitch, then the other, then both; hang on the tether, knee free, hands reaching; stand up, run the hitches up, sit back; break and release the Garda hitch. hangtape drill FILE tells what each step should show and what stops it; the wizard walks it after the review. Where a school requires it (require_drill in school.toml) no sign-off is complete without it, unless the instructor notes why.",
			"Geometry is proved by hanging on it. Nobody is dropped.", common, "drill.steps", "drill.done", "drill.started", "drill.note", "load-low", "hang-on-tether", "stand-up", "require_drill", "required drill"),
		term("second-person", "Second person", "Somebody at the tree, within reach and not on the rope, who can help: puts something under the boots, lifts, lowers, calls.", "Whoever hangs stuck has minutes. Nobody hangs alone.", common),
		term("rescue-plan", "Rescue plan", "What is done, by whom and with what, when the climber cannot come down alone; gone through by both before the boots leave the ground. Down now in the wizard shows an order of getting down, which the instructor adapts to this tree and kit.", "There is no time to think one up while somebody hangs.", common),
		term("ease", "Ease a hitch", "Push a loaded friction hitch down by hand, a little at a time, until the tether carries. With more than 50 mm (2 in) of slack left in the tether it is not done.",
			"The body sinks and never drops. The 50 mm are fixed: no school may move them.", judgement, "easing a hitch", "ease-left", "ease-right", "ease-both", "slack first", "taking up the slack"),
		term("held", "Held", "Whether what was to be seen in a step of the drill was seen: the tether, or the hitches, held.", "A step that did not hold ends the drill, and nothing is signed over it.", common, "drill.steps.held"),
		term("drop-in-drill", "Sinking in the drill", "How far the body sank when a hitch was eased, seen against the tape.", "More than 50 mm (2 in) means that slack was left, or that something slipped.", judgement, "drill.steps.drop_mm", "drop_mm", "sinking"),
		term("garda-in-drill", "Garda hitch in the drill", "How high above the hip point the top of the Garda hitch stood with the tether loaded.", "It is held against what the model expects, with the uncertainty of both: off by more than 1.96 of it, something behind it is not what was read.", "GUM; two-sided 95 %", "drill.steps.garda_mm", "garda_mm"),
		term("knee-free", "Knee free", "Hanging on the tether, foot in the loop: whether the knee can still stretch.", "A folded knee cannot push, and leaves the climber hanging.", common, "drill.steps.knee_free", "knee_free"),
		term("hands-reach", "Hands reach", "Hanging on the tether: whether both hands get to the hitches and to the Garda hitch.", "What cannot be reached cannot be run up or released.", common, "drill.steps.hands_reach", "hands_reach"),
		term("came-back-up", "Came back up", "Whether the climber stood up, ran the hitches up and sat back without help.", "It is what the whole kit is for once a hitch has let go.", common, "drill.steps.came_back_up", "came_back_up"),
		term("free-garda", "Break and release", "Run the unloaded Garda hitch up a little and take it off the rope.", "Under load it cannot be released: there must be room and slack for it.", common, "break", "release"),
		term("sag-seen", "Sag, seen", "How far the climber sank as the rope took the load slowly, from a rope drawn snug by hand, seen against the tape.",
			"It tells how stiff this rope is with this tree. It is weighed with the label, each by its uncertainty (10 mm, 3/8 in, for a sag); where they disagree the label stands until it is found out why.", "rope as a linear spring; the 10 mm are judgement", "drill.sag_mm", "sag_mm"),
		term("modulus", "Modulus of the rope", "The pull that would stretch one leg of rope to twice its length: 100 kg of weight over the elongation on the label. Told as the elongation that a label would give.",
			"A stiffer rope catches harder and sags less.", "EN 1891 for the label, second hand; "+spring),
		term("height-to-hang-at", "Height to hang at", "The least height of the boots above the ground, seated, at which drop and stretch leave room: drill-ground-room with its guard. Not much higher: low is safer.",
			"Without room under the boots there is no drill.", "geometry; "+spring, "hang_at", "room under the boots"),
		term("rehearsal", "Rehearsal", "One move with this climber's numbers: how far the Garda hitch comes up, where foot and hands go, what a stand wins, and how many moves a climb takes. hangtape drill tells it (--height is that of the climb), and the wizard from the drill's first and last question.",
			"A move that was rehearsed low needs no thought up high.", "geometry", "move", "moves", "climb"),
		term("peak-force-chart", "Chart of the peak force", "The peak force if the tether has to catch, against the rope above: both hitches or one, Garda hitch low or drawn up. One hitch alone makes about half the drop, since rope runs over the union: derived, friction left out. hangtape drill tells it, and the wizard from the drill's first and last question.",
			"It shows how far below the union to stay, and what drawing the Garda hitch up at once is worth.", spring, "chart", "stay below the union"),
		term("test-weight", "Test weight", "A bag or log of the climber's mass that is hung on the kit before anyone is.", "It alone may drop freely, with nobody under it.", common, "free drop"),
	}
}
