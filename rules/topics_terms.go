package rules

// termTopics explain the words of the trade, then those of the numbers, which have
// sources of their own.
func termTopics() []Topic {
	term := func(name, title, what, why string, also ...string) Topic {
		return Topic{Name: name, Kind: TermTopic, Title: title, What: what, Why: why, Source: "common practice", Also: also}
	}
	number := func(name, title, what, why, source string, also ...string) Topic {
		return Topic{Name: name, Kind: TermTopic, Title: title, What: what, Why: why, Source: source, Also: also}
	}
	return []Topic{
		term("saddle", "Saddle", "The climber's harness, in which one sits.", "Both bridges hang on its rings; its webbing is shared by all and is not judged here.", "harness"),
		term("bridge", "Bridge", "The line across the front of the saddle, end to end between its rings. Pulled up at its middle it rises by sqrt((L/2)² - (r/2)²): a longer bridge hangs the climber lower under the connector.", "Its length is the quickest thing to change."),
		term("main-bridge", "Main bridge", "The bridge that carries the climber.", "Its length puts the main connector in front of the face.", "main_bridge", "kit.main_bridge"),
		term("backup-bridge", "Backup bridge", "A second, lower and shorter bridge.", "The tether hangs on it: the second way from saddle to rope.", "backup_bridge", "kit.backup_bridge"),
		term("rings", "Rings", "Where a bridge bears on the saddle, one on each side.", "A bridge on rings far apart rises less."),
		term("connector", "Connector", "A carabiner that closes and locks by itself.", "Its strength is not judged here: read its marking.", "carabiner"),
		term("main-connector", "Main connector", "The connector at the top of the main bridge; both hitch cords hang on it.", "It belongs in front of the face, clear of the Garda hitch."),
		term("friction-hitch", "Friction hitch", "An open loop of cord from the main connector up to wraps around one leg of rope. It grips when loaded and slides when not; there is one on each leg.", "The pair carries the climber. One alone does not hold: the rope would run over the union.", "hitch"),
		term("hitch-loop", "Hitch loop", "The open part of a friction hitch, from the inside top of the main connector up to the wraps.", "Long enough to hold, short enough to reach over.", "loop", "hitch_left", "hitch_right", "kit.hitch_left", "kit.hitch_right"),
		term("garda-hitch", "Garda hitch", "Two like connectors on a sling that grip both legs of rope. It runs up freely and cannot go down; it cannot be released while it is loaded.", "The foot loop and the tether hang on it.", "garda", "kit.garda"),
		term("foot-loop", "Foot loop", "From the Garda hitch down to the foot; measured from the boot's sole to the top of the Garda hitch.", "The climber stands up in it.", "foot_loop", "kit.foot_loop"),
		term("tether", "Backup tether", "A loop of cord from the Garda hitch to the backup bridge.", "It holds the climber if the friction hitches let go.", "kit.tether"),
		term("union", "Union", "The branch fork that the rope runs over.", "It is shared by all and is not judged here."),
		term("leg-of-rope", "Leg of rope", "One of the two parts of the rope that come down side by side from the union.", "The climber goes up both at once."),
		term("hang", "Hang", "One time that the climber hangs; its heights belong together.", "After a break the hip is read again, since nobody sits twice the same.", "hangs"),
		term("hanging-tape", "Hanging tape", "The tape that hangs beside the rope, its zero anywhere.", "All heights of a hang are read off it; only differences count."),
		term("seated", "Seated", "Sitting in the saddle on the main bridge, feet off the ground.", "Most heights are read so."),
		term("thigh-level", "Thigh level", "Foot in the loop, Garda hitch drawn up until the thigh is level.", "The climber stands up from here.", "level"),
		term("tether-taut", "Tether taut", "Garda hitch drawn up until the tether stops it.", "As far up as the foot can come.", "taut"),
		term("questioned-reading", "Questioned reading", "A reading that does not fit the others is asked about before it is taken: one three standard deviations from what stature and the other readings say, marks out of their order, lengths that nobody has, repeats 30 mm (1 3/16 in) apart. Entered again it is taken as it is.", "A slip is cheapest to mend while the tape is still there. The likely one is named: digits swapped, another unit, a neighbouring mark, the wrong landmark."),
		term("short-fitting", "Short fitting", "A first fitting in which the tool picks what is read: what can still turn a verdict, in the order of the poses. It says when no further reading can.", "About half the numbers settle the same verdicts, and the climber hangs for less."),
		term("kit-changed-since", "Kit changed since", "Another climber's session on the same kit has set a piece more than 10 mm (3/8 in) otherwise, after this session had it.", "One bag goes round in a morning: what fitted the first student may hang otherwise under the third. Read the piece again, or set it back and say so."),
		term("down-now", "Down now", "One key that saves, stops the clock and shows the order of getting down.", "Hanging without moving is dangerous within minutes.", "getting down now"),
		term("rope-above", "Rope above", "The rope between the climber and the union.", "Little of it stretches little: the same drop is caught harder. advise says how much to keep.", "rope_above"),
		term("load-path", "Way from saddle to rope", "A chain of parts that carries from the saddle to the rope: main bridge, connector and hitches; or backup bridge, tether and Garda hitch.", "Two that share no part, so that no single part drops the climber.", "load-paths", "load path"),
		term("re-tune", "Re-tune", "Fitting again after something changed: a saddle, a bridge, a rope, boots.", "Only what went stale is read anew; heights always are.", "session.purpose"),
		term("re-check", "Re-check", "A few readings that say whether a fitting still holds.", "It ends with unchanged or changed, and is not a fitting of its own."),
		term("sign-off", "Sign-off", "Who answers for the fitting, stored with the verdicts of that moment.", "Blocked by a must that fails, is unknown or rests on a predicted input; any other tight must needs a note.", "sign_off", "sign"),
		term("card", "Card", "The sheet to print and keep of one fitting: lengths set and their windows, where to put the marks, a side view to scale, every check with its margin, how much rope above it holds with, limits that the school moved, cord to cut, the ground drill, who signed, the cautions. On the card a window is where the musts that the piece moves pass. hangtape card makes it as text, SVG, HTML or PDF, on A4 or letter.", "What was fitted is found again without the program, and whoever checks it sees what it rests on.", "sheet"),
		term("class", "Class", "All students of a day on one sheet, a row each: lengths, verdict, what is short of pass, who signed. A session belongs to the day on which it began where the computer is; of a student with several the latest counts. hangtape card --class DAY makes it.", "An instructor sees at a glance who is not fitted yet.", "class-sheet"),
		term("pen-marks", "Marks on a piece", "A line across a bridge where it leaves its slider at the length set, and across each tail of a tied piece at its knot.", "A mark that has moved shows that the piece slid or crept: lay the tape on again."),

		number("must", "Must", "A check that holds up the sign-off while it fails or is unknown.", "These are about getting hurt or stuck.", "judgement"),
		number("should", "Should", "A check that advises.", "These are about comfort and pace.", "judgement"),
		number("outcome", "Outcome", "The worst verdict of the musts: fail, unknown, tight, pass.", "A fitting is as good as its worst must.", "judgement", "verdict"),
		number("has", "Has", "What there is.", "It is held against what is needed.", "JCGM 106:2012"),
		number("needs", "Needs", "What there has to be, at least or at most.", "Often a limit.", "JCGM 106:2012"),
		number("margin", "Margin", "How much there is to spare: what there is against what is needed. Below 0 it falls short.", "It decides the verdict, with its guard.", "JCGM 106:2012"),
		number("standard-uncertainty", "Standard uncertainty", "The number after ±: how far off a value may well be. About two times in three the truth lies within it, nineteen times in twenty within twice it.", "No tape and no body is exact; what counts is whether the margin is larger than what the readings are sure of.", "GUM (JCGM 100:2008)", "u", "uncertainty", "±"),
		number("guard", "Guard", "The margin that it takes to be 95 % sure: 1.645 times the standard uncertainty, and a little more where the geometry bends against us.", "A margin of at least the guard is a pass; less is tight.", "guarded acceptance, JCGM 106:2012"),
		number("shift", "Shift", "How far the bend of the geometry moves the mean from the value at the mean readings.", "Where it goes against us it is added to the guard.", "GUM 5.1.2 note: second-order terms"),
		number("spread", "Spread", "How far takes of one reading scatter: 8 mm (5/16 in) on the body, 3 mm (1/8 in) on hardware, 5 mm (3/16 in) on the Garda hitch in its poses, until this session's own repeats say better.", "Three takes are surer than one.", "judgement, then pooled standard deviation (GUM 4.2.4)", "repeats", "v"),
		number("delta", "Delta (δ)", "How much higher the Garda hitch was read at thigh level than the model works out.", "It carries over to what the model says at other lengths.", "geometry", "δ"),
		number("tau", "Tau (τ)", "How much higher the Garda hitch was read with the tether taut than the model adds up.", "It carries over to what the model says at other lengths.", "geometry", "τ"),
		number("next-reading", "Next reading", "The one that would shrink a tight check's guard most, or settle an unknown one, taken three times afresh.", "Better to read again than to re-tie.", "judgement", "next"),
		number("least-change", "Least change", "The cheapest change that brings every must to a pass.", "Less to re-tie.", "judgement", "least_change"),
		number("best-fit", "Best fit", "The change that also brings the most shoulds to a pass.", "When there is time to re-tie.", "judgement", "best_fit"),
		number("cost", "Cost", "What a change costs in work: a piece that slides 1, one that is re-tied 2, the foot loop 3, both hitch loops together at most 3, more rope above 0.", "The cheapest answer comes first.", "judgement", "work"),
		number("ratio", "Ratio", "Margin divided by guard, with 2.05 in place of 1.645: at least 1 counts as a pass in advice.", "Several checks near their guards are to hold together: 98 % each makes about 95 % together.", "normal distribution: 2.05 is the 98 % point"),
		number("mark", "Marks", "The lengths that advise tells: multiples of 5 mm, or of 1/4 in where people read in inches. A set of pieces counts only if lengths on marks pass.", "Nobody ties cord to the millimetre.", "judgement", "marks"),
		number("setting-spread", "Setting spread", "How far off a piece ends up when it is set to a length: a standard uncertainty of 3 mm (1/8 in) where it slides, 8 mm (5/16 in) where it is re-tied. A changed length counts with it until the tape was laid on again.", "A length that was set is not a length that was read. Where the spread is what keeps a must from passing, advise names the piece.", "judgement"),
		number("one-kit", "One kit for several", "advise with several files looks for lengths with which every climber's musts pass. A piece whose length differs between the files has to be set to one; the bounds are those that all files allow; a piece that some file cannot change stays as each has it.", "A school's shared saddle serves whoever sits in it next. Where none serves all, the smallest group that cannot share is named.", "judgement", "shared kit", "own"),
		number("easing", "Easing of a limit", "By how much one limit would have to be moved, within what a school may set, for some set of lengths to pass.", "It shows how far off a kit is. Moving a limit is the school's to decide, in writing, and never the climber's.", "judgement"),
		number("what-if", "What if", "Moving a piece on trial: margins, poses and windows follow, and nothing is changed until it is applied. In the wizard it is offered in the review.", "It shows what hangs on a length before any cord is cut.", "judgement"),
		number("sensitivity", "Sensitivity", "How much of a check's margin a millimetre of a piece adds or takes, all else held. explain CHECK --file FILE tells it, and ? on a verdict of the review.", "It shows which piece a margin hangs on.", "slope of the margin over ± 1 mm"),
		number("window", "Window", "From where to where a changed piece may end up, the others held, with every check that passes there still passing.", "Nobody ties to the millimetre. Windows do not add up: use one at a time.", "judgement"),
		number("sooner", "Sooner", "Readings, at most five, each taken three times afresh, with which a cheaper change would do, or none at all.", "Better to read again than to re-tie.", "judgement"),
		number("conflict", "Conflict", "Why no change can pass: musts that cannot hold together within the bounds (geometry), or readings that are not sure enough (uncertainty). Of the musts it names, any one left out, the others can be met.", "It names what is in the way: for geometry the pieces whose wider bounds would do and the smallest easing of a limit, for uncertainty what to read, or the pieces that cannot be set closely enough.", "judgement", "geometry"),
		number("changes", "Changes", "Pieces set or tied to another length between two hangs.", "What a change moves is predicted until it is read again.", "judgement", "changes.to_mm", "changes.measured_mm", "to_mm", "measured_mm"),
		number("stale", "Stale", "Of a reading: something was changed since it was taken, so that it says how things were. A new main bridge makes the connector and the hitches stale, a hitch loop its two ends, a foot loop the Garda hitch and the knee at level, a tether or a backup bridge the Garda hitch with the tether taut.", "Until it is taken again the model's value stands for it, as predicted, and nobody signs on that. The wizard asks for what is stale alone, and says why.", "geometry"),
		number("full-reach", "Full reach", "How high the straight raised arm's wrist comes, estimated from the survey.", "The comfortable reach is a share of it, where the raised wrist was not read.", "ANSUR II body survey, 2012", "estimate.full_mm"),
		number("hang-time", "Hang time", "How long the climber has been hanging; a break is suggested after the school's hang_break_min, 5 by default.", "One in five people who hang upright and motionless shows signs of fainting within 10 minutes, most within the hour. A seated climber who moves is better off; the break time is judgement.", "HSE RR708, 2009, second hand", "hang_break_min", "clock"),
	}
}
