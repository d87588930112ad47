package rules

// cordTopics explain the words of cutting cord.
func cordTopics() []Topic {
	const (
		geometry = "geometry"
		common   = "common practice"
		wide     = "not published, not measured: a wide prior, until your own pieces say better"
	)
	term := func(name, title, what, why, source string, also ...string) Topic {
		return Topic{Name: name, Kind: TermTopic, Title: title, What: what, Why: why, Source: source, Also: also}
	}
	return []Topic{
		term("cord-to-cut", "Cord to cut", "What a piece takes off the spool: strands times the finished length, eyes, turns on the rope, the hitch on the connector, the joining bend or the end knots, tails, and trimming. hangtape cut tells each; advise and the wizard tell the length beside whatever is to be tied, for every usual cord where nobody said which it is.",
			"Cut too short, a piece is thrown away; cut long, it is tied, hung on and trimmed.", "geometry for strands and turns; for knots see coefficient", "cut", "cut-length"),
		term("finished-length", "Finished length", "The length of a piece as tied and set, laid on snug, its eyes within it. For a hitch loop: from the inside top of the connector to where the wraps begin.",
			"It is what the climber has to fit; the cord is cut for it.", common, "finished"),
		term("turns", "Turns on the rope", "Single turns of cord on the rope: three wraps of a doubled loop are six. A turn of cord d round a rope D takes sqrt((π(D + d))² + d²).",
			"They take a good part of a hitch's cord.", geometry, "turn", "host"),
		term("joining-bend", "Joining bend", "The knot that joins both ends of a cord to a loop.", "The loop is as good as its bend: dressed, set, tails left long.", common, "bend"),
		term("double-fishermans", "Double fisherman's bend", "A bend of two double overhand knots, each tied round the other's standing part.",
			"The usual way to close a cord loop. It takes 34 ± 9 diameters of cord.", "between its bare turns (25 d) and what published cut lengths of three-wrap loops leave (57 d); "+wide),
		term("triple-fishermans", "Triple fisherman's bend", "A double fisherman's bend with a turn more on each side.", "For slippery cord, as its maker says. It takes 47 ± 12 diameters of cord.", wide),
		term("girth-hitch", "Girth hitch", "A loop passed round a connector and through itself.", "It keeps the loop on its connector. It takes 18 ± 8 diameters of cord.", wide, "girth", "hitch-on-the-connector"),
		term("clipped", "Clipped in", "A loop that a connector is only clipped through.", "It takes no cord.", common, "clipped-in"),
		term("end-knots", "End knots", "The knots at the two ends of a line that is no loop.", "Each takes cord beyond the finished length.", common, "ends"),
		term("scaffold", "Scaffold knot", "A noose of three turns round its own standing part, drawn tight on a ring.", "A usual end of a bridge. It takes 27 ± 9 diameters of cord.", wide, "scaffold-knot", "scaffold-knots"),
		term("figure-eight", "Figure-eight loop", "A loop tied at a cord's end with a figure eight of the doubled cord.", "The usual eye of a foot loop. It takes 30 ± 10 diameters of cord beyond its eye.", wide, "figure-eight-loop", "figure-eight-loops"),
		term("eye", "Eye", "The loop in a line's end: its length counts in the finished length, and its second half is extra cord.", "About a foot at both ends of a foot loop.", "a mountaineering handbook's stair-step prusik, second hand", "eyes"),
		term("tails", "Tails", "What sticks out of a knot: two for a bend, one for each end knot, 100 mm (4 in) each at least.", "A short tail can creep into the knot.", "pigtails of at least 4 in (10 cm): FM 21-76, in a copy", "tail", "both-tails"),
		term("trimming", "Trimming", "What is cut longer so that in 95 of 100 cases both tails come out long enough, and is cut off in the end. Never less than 2 diameters of cord.",
			"It covers what nobody knows of your knots, and shrinks with every piece that you keep.", "the spread of what the prior and your own pieces foretell; the floor is judgement", "trim", "prediction-interval"),
		term("coefficient", "Coefficient of a knot", "How much cord a knot takes beyond the finished length, in diameters d of the cord. It starts from a prior and is learnt from pieces tied: cut less tails, strands and turns.",
			"Hardly any of it is published.", "least squares with a prior (Gelman et al., Bayesian Data Analysis, ch. 14, from memory)", "coefficients", "prior"),
		term("scatter", "Scatter of knots", "How much pieces tied alike differ, in diameters of the cord: ± 3 d until your own pieces say better.",
			"It sets how much trimming is left however many pieces were tied.", "judgement, then the pieces themselves"),
		term("own-pieces", "Pieces of your own", "Pieces that were cut, tied and hung on, kept in pieces.toml beside the sessions: cut, finished, both tails, cord, rope, knots. hangtape cut --tied keeps one, and so does the wizard once a piece that was tied anew is laid on again.",
			"They teach what your knots take. One that lies more than three standard deviations off what the others say is questioned, and counts all the same.", "least squares; three standard deviations: judgement", "pieces.toml", "questioned"),
		term("spool", "Spool", "The length that cord is bought in. hangtape cut --spool lays pieces out on as few spools as can be, with the longest leftover in one piece.",
			"What is left should be of use.", "cutting stock by branch and bound, exact for a handful of kinds; else it says its bound"),
	}
}
