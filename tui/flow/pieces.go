package flow

import (
	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/tui/number"
)

// TooSoon says whether it is too soon to tell how the check of that name comes
// out, since the parts of the kit are still being asked for: one that nobody has
// come to yet counts as not there.
func (s *State) TooSoon(check string) bool {
	return check == rules.TwoLoadPaths.String() && len(s.Session.Fit.Hangs) == 0 && s.At.Step < s.placeAside("body").Step
}

func kit() Step {
	s := Step{ID: "kit", Title: "Kit", Asks: []Ask{
		text("kit.label", "Which kit", "What is written on its bag, or any name that finds it again.", func(d *Draft) *string { return &d.Session.KitLabel }),
		text("kit.inspected_by", "Inspected by", "Who looked over every piece before this climb. Nobody leaves the ground on a kit that was not.",
			func(d *Draft) *string { return &d.Session.InspectedBy }),
		day("kit.inspected", "Inspected on", func(d *Draft) any { return &d.Session.Inspected }),
	}}
	last := &s.Asks[len(s.Asks)-1]
	last.Aside = func(d *Draft) bool { return d.Session.InspectedBy == "" } // nobody has, so there is no day
	return s
}

// pieces is one step for each part of the kit, in the order in which the hands
// go over it from the saddle up and down again.
func pieces() []Step {
	var steps []Step
	for _, p := range []fit.Piece{fit.PieceMainBridge, fit.PieceHitchLeft, fit.PieceHitchRight} {
		steps = append(steps, piece(p))
	}
	steps = append(steps, garda())
	for _, p := range []fit.Piece{fit.PieceFootLoop, fit.PieceTether, fit.PieceBackupBridge} {
		steps = append(steps, piece(p))
	}
	return steps
}

// piece asks for one piece: whether the kit has it, what is laid on, what its
// labels say, and how far it can be changed.
func piece(p fit.Piece) Step {
	key := "kit." + p.Key()
	info := func(d *Draft) *fit.PieceInfo { return &d.Session.Fit.Kit.Pieces[p] }
	asks := readings(key)
	isHitch := isHitch(p)
	if isHitch || p == fit.PieceTether {
		asks = append(asks, amount(key+".cord_mm", "Diameter of its cord", "", number.Diameter, func(d *Draft) any { return &info(d).Cord }))
	}
	if isHitch {
		asks = append(asks, amount(key+".wraps", "Wraps", "", number.Count, func(d *Draft) any { return &info(d).Wraps }))
	}
	if p == fit.PieceTether {
		asks = append(asks, amount(key+".strands", "Strands", "", number.Count, func(d *Draft) any { return &info(d).Strands }))
	}
	if isHitch || p == fit.PieceTether {
		asks = append(asks, amount(key+".strength_kn", "Strength of its cord", "", number.Force,
			func(d *Draft) any { return &info(d).Strength }))
	}
	if p == fit.PieceBackupBridge {
		asks = append(asks, choice("kit.backup_bridge.own_rings", "Does the backup bridge have rings of its own?", "",
			func(d *Draft) *fit.Choice { return &d.Session.Fit.Kit.OwnRings },
			word[fit.Choice]{"not said", fit.Unanswered}, word[fit.Choice]{"yes", fit.Yes}, word[fit.Choice]{"no", fit.No}))
	}
	of := ""
	if isHitch {
		of = " (of its loop)"
	}
	asks = append(asks,
		choice(key+".change", "How can its length be changed?", "",
			func(d *Draft) *fit.How { return &info(d).Change },
			word[fit.How]{"fixed", fit.Fixed}, word[fit.How]{"slides", fit.Slides}, word[fit.How]{"re-tie", fit.ReTie}))
	if !isHitch && p != fit.PieceTether {
		cord := amount(key+".cord_mm", "Diameter of its cord", "How much cord to cut follows from it; no check rests on it. Empty: not told.", number.Diameter,
			func(d *Draft) any { return &info(d).Cord })
		cord.When = func(d *Draft) bool { return info(d).Change == fit.ReTie }
		asks = append(asks, cord)
	}
	least := amount(key+".bounds_mm.least", "Shortest that it can be set"+of, "Advice stays within what the piece can do.", number.Laid, func(d *Draft) any { return &info(d).Bounds[0] })
	most := amount(key+".bounds_mm.most", "Longest that it can be set"+of, "", number.Laid, func(d *Draft) any { return &info(d).Bounds[1] })
	least.Aside = func(d *Draft) bool { return info(d).Change == fit.Fixed } // it cannot be set
	most.Aside = least.Aside
	by := text(key+".tied_by", "Tied by", "", func(d *Draft) *string { return &d.Session.Tied[p].By })
	by.Aside = func(d *Draft) bool { return d.Session.Tied[p].On.IsZero() }
	asks = append(asks, least, most, day(key+".tied", "Tied on", func(d *Draft) any { return &d.Session.Tied[p].On }), by)
	asks = append(asks, tiedBefore(p)...)
	has := func(d *Draft) bool { return info(d).Present }
	return partOf(Step{ID: p.Key(), Title: rules.Upper(rules.PartName(p))}, rules.PartName(p), key, asks, func(d *Draft) *bool { return &info(d).Present }, has)
}

func garda() Step {
	has := func(d *Draft) bool { return d.Session.Fit.Kit.Garda }
	asks := append(readings("kit.garda"), amount("kit.garda.inside_width_mm", "Inside width of its connectors", "", number.Diameter,
		func(d *Draft) any { return &d.Session.Fit.Kit.InsideWidth }))
	return partOf(Step{ID: "garda", Title: "Garda hitch"}, "Garda hitch", "kit.garda", asks, func(d *Draft) *bool { return &d.Session.Fit.Kit.Garda }, has)
}

// partOf puts the question whether the kit has the part called name before the others.
func partOf(s Step, name, key string, asks []Ask, present func(*Draft) *bool, has func(*Draft) bool) Step {
	first := choice(key, "Is the "+name+" part of the kit?", "Look at it and touch it: nothing is taken to be there because nobody said so.", present,
		word[bool]{"yes", true}, word[bool]{"no, or not known", false})
	options := first.Options
	first.Options = func(d *Draft) []Option {
		out := options(d)
		out[1].set, out[1].do = nil, absent(key, asks, present)
		return out
	}
	for i := range asks {
		asks[i].When = both(asks[i].When, has)
	}
	s.Asks = append([]Ask{first}, asks...)
	return s
}
