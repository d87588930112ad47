package rules

// reviewTopics explain the words of reviewing past fittings.
func reviewTopics() []Topic {
	term := func(name, title, what, why, how, source string, also ...string) Topic {
		return Topic{Name: name, Kind: TermTopic, Title: title, What: what, Why: why, How: how, Source: source, Also: also}
	}
	return []Topic{
		term("difference", "Difference of two sessions", "A number of the second session less that of the first, with the standard uncertainty of the difference. It counts as a change where it is more than 1.96 times that: 95 % sure that it is more than two people reading twice.",
			"The same kit on the same climber, read again, is never the same to the millimetre. What is inside the uncertainty is no news.",
			"The root of the sum of both squares. A length that was kept is one reading in both sessions: it is no change, and its error cancels in all that rests on it. Heights count from the hip point, so the tape's zero never matters.",
			"GUM 5.1.2, 5.2.2 and table G.1", "compare", "changed", "same reading"),
		term("due", "Due for a re-check", "A climber is due when the school's recheck_days, 180 by default, have gone by since the last session that somebody signed; and where nobody has signed one.",
			"Bodies, boots, saddles and cords change; a fitting does not hold for ever. After any change it does not even hold until then.",
			"By days, from the day of the signature.", "judgement", "recheck_days", "recheck-days"),
		term("judged-today", "Judged by today's rules and limits", "What the program says now of a session that was judged, and maybe signed, earlier: by the rules of today, under the limits that the school has today. history tells the checks whose verdict is another.",
			"When a limit moves, the fittings that rest on the old one are the ones to see first.",
			"Then is the verdict that was signed, or, where nobody signed, that under the session's own limits.", "judgement", "today", "history"),
		term("cord-age", "Age of a cord", "How many days ago a piece was tied: then, on the day of the session, and now.",
			"Cord ages in use and unused; how long it may serve is its maker's to say, and a look before every climb decides.",
			"From the day of tying that was told with the piece.", "makers' instructions on cord age"),
	}
}
