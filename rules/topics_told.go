package rules

import (
	"fmt"
	"strings"

	"example.com/hangtape/fit"
)

// labelTopics explain what is told or read off a label. What is told of any
// piece is explained once, under "kit." and its key.
func labelTopics() []Topic {
	const label = "makers' labels and instructions"
	return []Topic{
		{Name: "tape-class", Kind: LabelTopic, Title: "Accuracy class of the tape", What: "I, II or III: how far off the tape itself may be. The Roman number stands on its first metre.",
			Why: "The tape's own error is part of every reading's uncertainty.", How: "On 3 m (10 ft) class I may be off by 0.4 mm, II by 0.9 mm, III by 1.8 mm (1/64, 1/32, 1/16 in, roughly); no class printed: take III.",
			Source: "OIML R 35-1; the figures second hand", Also: []string{"tape.class"}},
		{Name: "tape-division", Kind: LabelTopic, Title: "Smallest division of the tape", What: "The distance between two neighbouring marks, 0.5 to 10 mm (1/16 in is 1.6 mm).",
			Why: "Nobody reads finer than that.", How: "Look at the tape.", Source: "GUM 4.3.7, a rectangular distribution over one division", Also: []string{"tape.division_mm"}},
		{Name: "tape-hook", Kind: LabelTopic, Title: "Laid from the tape's end", What: "Whether laid lengths start from the hook or ring at the tape's end, or from a printed mark.",
			Why: "The end has an error of its own, 0.1 to 0.3 mm.", How: "Starting from a printed mark, as 100 mm or 4 in, and taking that off avoids it.", Source: "OIML R 35-1", Also: []string{"tape.hook"}},
		{Name: "mass", Kind: LabelTopic, Title: "Climber's mass", What: "Of the climber with clothes and kit, 25 to 250 kg (55 to 551 lb), ± 2 kg (4 lb) where nothing else is said.",
			Why: "It sets the force of a catch and what cords have to hold.", How: "Step on a scale in what will be worn and carried. 1 lb is 0.4536 kg.", Source: "common practice", Also: []string{"climber.mass_kg", "climber.mass_u_kg"}},
		{Name: "stature-told", Kind: LabelTopic, Title: "Told stature", What: "A stature that the climber told and nobody measured, ± 15 mm (5/8 in).",
			Why: "Better than none for estimates; a measured one is better.", How: "Ask; then measure.", Source: "judgement", Also: []string{"climber.stature_told_mm"}},
		{Name: "sex", Kind: LabelTopic, Title: "Sex", What: "m, f or unsaid, as the body survey recorded it.", Why: "It only chooses which estimates stand in until a reading is taken.",
			How: "Unsaid gives each the same weight; once the body was read it hardly matters.", Source: "ANSUR II body survey, 2012", Also: []string{"climber.sex"}},
		{Name: "rope-diameter", Kind: LabelTopic, Title: "Rope's diameter", What: "From the rope's label, 6 to 20 mm (7/16 in is 11.1 mm), ± 0.2 mm.", Why: "Cord and connectors have to suit it.",
			How: "Read the label; worn rope may be thicker.", Source: label, Also: []string{"rope.diameter_mm"}},
		{Name: "rope-elongation", Kind: LabelTopic, Title: "Rope's elongation", What: "How much longer the rope gets from 50 kg to 150 kg of load, in per cent, 0.3 to 15.", Why: "A rope that stretches catches more softly and sags more.",
			How: "From the label or the maker's sheet; ± 5 % of it.", Source: "EN 1891: at most 5 %, measured from 50 kg to 150 kg (second hand)", Also: []string{"rope.elongation_percent"}},
		{Name: "rope-least-above", Kind: LabelTopic, Title: "Least rope above", What: "The shortest rope between the climber and the union that will be used.", Why: "The closer to the union, the harder a drop is caught.",
			How: "Told by the instructor, then kept to while climbing.", Do: "advise says how much it has to be: rope-above.", Source: "energy of a mass on a linear spring", Also: []string{"rope.least_above_mm"}},
		{Name: "rope-drill-above", Kind: LabelTopic, Title: "Rope above in the drill", What: "The rope between the climber at the base and the union.", Why: "So much rope stretches in the drill, and takes room under the boots.",
			How: "Measure it or estimate it from the height of the union.", Source: "rope as a linear spring", Also: []string{"rope.drill_above_mm"}},
		{Name: "inside-width", Kind: LabelTopic, Title: "Inside width of the Garda hitch's connectors", What: "The clear width inside one of the two like connectors, 15 to 120 mm (1 1/2 in is 38.1 mm).", Why: "Both legs of rope have to pass and seat.",
			How: "Between the spine and the gate, at the place where the ropes lie; ± 0.5 mm.", Source: label, Also: []string{"kit.garda.inside_width_mm"}},
		{Name: "cord-diameter", Kind: LabelTopic, Title: "Cord diameter", What: "From the cord's label, 2 to 14 mm (5/16 in is 7.9 mm), ± 0.2 mm.", Why: "Thin cord jams, thick cord slides; strength goes with its square; how much to cut follows from it.",
			How: "Read the label. Of foot loop and bridges it may be left out: no check rests on it.", Source: label, Also: []string{"kit.cord_mm", "cord_mm"}},
		{Name: "cord-strength", Kind: LabelTopic, Title: "Cord strength", What: "What a single strand holds, 0.5 to 60 kN, from its label. 1,000 lbf is 4.45 kN.", Why: "Hitch loops and tether are held against the climber's weight and the catch.",
			How: "Left out, cord of 4 to 8 mm (5/32 to 5/16 in) counts as 0.2·d² kN, d in mm (8 mm: 12.8 kN, 2,880 lbf); other cord is unknown.", Source: "EN 564, second hand", Also: []string{"kit.strength_kn", "strength_kn"}},
		{Name: "wraps", Kind: LabelTopic, Title: "Wraps", What: "The turns of cord on the rope, 1 to 12, counted as they lie there.", Why: "Too few do not hold, too many do not slide.",
			How: "Count on the tied hitch; a load test low on the rope says how many are needed.", Source: "common practice", Also: []string{"kit.wraps"}},
		{Name: "strands", Kind: LabelTopic, Title: "Strands", What: "How many strands of the tether carry side by side, 1 to 4. A loop has 2.", Why: "Each carries its share.", How: "Count where the tether is straight.",
			Source: "common practice", Also: []string{"kit.strands", "strand"}},
		{Name: "own-rings", Kind: LabelTopic, Title: "Rings of its own", What: "Whether the backup bridge hangs on rings of its own or on those of the main bridge.", Why: "Shared rings are a part that both ways to the rope go through.",
			How: "Look at the saddle.", Source: "common practice", Also: []string{"kit.backup_bridge.own_rings", "kit.own_rings"}},
		{Name: "change", Kind: LabelTopic, Title: "Fixed, slides, re-tie", What: "In what way a piece can get another length: fixed cannot, slides is set to ± 3 mm (1/8 in), re-tie is tied to ± 8 mm (5/16 in).", Why: "Advice only changes what can be changed.",
			How: "Told for each piece of the kit.", Source: "judgement", Also: []string{"kit.change", "fixed", "slides", "re-tie"}},
		{Name: "bounds", Kind: LabelTopic, Title: "Bounds", What: "The shortest and the longest that a piece can be made; of the loop for a hitch.", Why: "Advice stays within them.", How: "Try what the piece allows.",
			Do: "A piece without bounds counts as fixed.", Source: "the kit itself", Also: []string{"kit.bounds_mm"}},
		{Name: "tied", Kind: LabelTopic, Title: "Day of tying", What: "When a piece was tied, and by whom.", Why: "Cord ages, in use and unused.", How: "Write it down when it is tied.", Source: "makers' instructions on cord age", Also: []string{"kit.tied", "kit.tied_by"}},
	}
}

// postureWords say what a posture is, and what it does to the fitting.
type postureWords struct{ what, why string }

var postureWordsOf = [fit.NumPostures]postureWords{
	fit.ShinAngle:    {"How far the shin is from vertical, foot in the loop and held out in front; forward is above 0.", "It moves the foot, and with it the Garda hitch."},
	fit.KneeBend:     {"How far the knee stays bent when standing in the foot loop.", "Nobody stands quite straight there: it takes from what a stand wins."},
	fit.BehindRope:   {"How far the hip stays behind the rope when standing.", "It takes from what a stand wins."},
	fit.Set:          {"How far a friction hitch creeps down before it holds.", "Each move loses it."},
	fit.Lean:         {"How far the trunk leans back when seated.", "It lowers the estimates of nose and reach."},
	fit.AheadDefault: {"How far the rope hangs in front of the hip point, where that was not read.", "The foot loop leans by so much."},
	fit.Sole:         {"How thick the boot's sole is.", "The survey measured bare feet."},
	fit.EyeAboveNose: {"How far the eye is above the nose.", "The survey measured the eye's height, not the nose's."},
	fit.ReachFactor:  {"What share of the full reach above the nose is comfortable.", "The survey measured full reach; a climber reaches hundreds of times."},
	fit.LevelByEye:   {"How far the knee may be above the hip when the thigh looks level.", "It stands in for the knee where that was not read."},
}

// postureTopics explain the postures, in the order of the session file.
func postureTopics() []Topic {
	var out []Topic
	for p := range fit.NumPostures {
		info, words := p.Info(), postureWordsOf[p]
		name := strings.NewReplacer("_mm", "", "_deg", "", "_", "-").Replace(info.Key)
		if p == fit.Set { // "set" alone does not say of what
			name = "hitch-set"
		}
		usual := fmt.Sprintf("%g ± %s", info.V, withUnit(info.U, info.Unit))
		least := withUnit(p.LeastU(), info.Unit)
		if info.Unit == "mm" {
			usual += " (" + FormatPM(info.V, info.U, "in") + ")"
			least += " (" + FormatLength(p.LeastU(), "in") + ")"
		}
		out = append(out, Topic{
			Name: name, Kind: PostureTopic, Title: Upper(info.Name), What: words.what, Why: words.why,
			How: fmt.Sprintf("%s by default. A session may give its own as [value, standard uncertainty] under [posture], the uncertainty not below %s.",
				usual, least),
			Do:     "Leave it unless you watched this climber and know better.",
			Source: "judgement", Also: []string{"posture." + info.Key, info.Key},
		})
	}
	return out
}
