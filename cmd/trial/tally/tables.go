package tally

import (
	"fmt"
	"maps"
	"slices"

	"example.com/hangtape/cmd/trial/runs"
	"example.com/hangtape/cmd/trial/truth"
	"example.com/hangtape/rules"
)

// Tables lays out the whole report, one column a scale where it can.
func Tables(scales []*Scale) []Table {
	return []Table{
		Headline(scales), misses(scales[0]), verdicts(scales), bands(scales[0]), work(scales),
		coverage(scales), detection(scales), alarms(scales), byGroup(scales[0]),
	}
}

func head(first string, scales []*Scale) []string {
	h := []string{first}
	for _, s := range scales {
		h = append(h, s.Name())
	}
	return h
}

func row(t *Table, name string, scales []*Scale, of func(*Scale) any) {
	cells := make([]any, len(scales))
	for i, s := range scales {
		cells[i] = of(s)
	}
	t.Add(name, cells...)
}

// Headline is the table of the README.
func Headline(scales []*Scale) Table {
	t := Table{
		Title: "Bodies on which every must truly holds",
		Note: fmt.Sprintf("True spreads at 1 to 2 times what the tool assumes. Rules of thumb: %d bodies; the tool: %d bodies that its regression has not seen. Musts that lengths and the rope above can mend.",
			scales[0].Bodies, scales[0].Stature.All.N),
		Head: head("how the kit was set", scales),
	}
	row(&t, "copied lengths, nothing measured", scales, func(s *Scale) any { return s.Copied.All })
	row(&t, "by eye, each length to ± 1 in", scales, func(s *Scale) any { return s.ByEye.All })
	row(&t, "the tool, from stature alone", scales, func(s *Scale) any { return s.Stature.All })
	row(&t, "the tool, all read, least change, one round", scales, func(s *Scale) any { return s.Least.After[1] })
	row(&t, "the same, two rounds", scales, func(s *Scale) any { return s.Least.After[2] })
	row(&t, "the tool, all read, best fit, one round", scales, func(s *Scale) any { return s.Best.After[1] })
	row(&t, "the same, two rounds", scales, func(s *Scale) any { return s.Best.After[2] })
	row(&t, "(some kit within the bounds fits)", scales, func(s *Scale) any { return Share{s.SomeKitFits, s.Bodies} })
	row(&t, "told passes of musts that truly fail", scales, func(s *Scale) any { return Musts(&s.Drawn.FalsePass) })
	return t
}

func misses(s *Scale) Table {
	t := Table{Title: "What fails most, at " + s.Name(), Note: "Share of bodies on which the must truly fails; with every reading after one round.",
		Head: []string{"must", "copied", "by eye", "from stature alone", "least change", "best fit"}}
	for c := range rules.NumChecks {
		if s.Copied.Misses[c]+s.ByEye.Misses[c]+s.Stature.Misses[c] > 0 {
			t.Add(c.String(), Share{s.Copied.Misses[c], s.Bodies}, Share{s.ByEye.Misses[c], s.Bodies}, Share{s.Stature.Misses[c], s.Stature.All.N},
				Share{s.Least.AfterOne.Misses[c], s.Least.AfterOne.All.N}, Share{s.Best.AfterOne.Misses[c], s.Best.AfterOne.All.N})
		}
	}
	return t
}

func verdicts(scales []*Scale) Table {
	t := Table{Title: "Verdicts with every reading",
		Note: "Kits as they came: false pass = of the told passes, those that truly fail; false fail = of the told fails, those that truly hold; tight = of all. Left: false passes of the kits as the best fit left them."}
	t.Head = []string{"must"}
	for _, s := range scales {
		t.Head = append(t.Head, "false pass "+s.Name(), "false fail", "tight", "left, false pass")
	}
	for c := range rules.NumChecks {
		if c.Info().Kind != rules.Must {
			continue
		}
		var cells []any
		for _, s := range scales {
			cells = append(cells, s.Drawn.FalsePass[c].Of(), s.Drawn.FalseFail[c], s.Drawn.Tight[c], s.Left.FalsePass[c].Of())
		}
		t.Add(c.String(), cells...)
	}
	return t
}

func bands(s *Scale) Table {
	t := Table{Title: "False passes by how near the limit truly is, at " + s.Name(),
		Note: fmt.Sprintf("|true margin| ÷ u of the nearest side or end. %s of the kits truly lie within 3·u of a limit that lengths can move.", s.Near),
		Head: []string{"must", "to 1", "1 to 2", "2 to 3", "over 3"}}
	for c := range rules.NumChecks {
		if c.Info().Kind == rules.Must && truth.Ends[endsOf[c][0]].Movable {
			b := &s.Drawn.ByBand[c]
			t.Add(c.String(), b[0].Of(), b[1].Of(), b[2].Of(), b[3].Of())
		}
	}
	return t
}

func work(scales []*Scale) Table {
	t := Table{Title: "What it takes",
		Note: "Numbers written down, retakes with them; 8 s for each number read while hanging and 20 s for each pose.",
		Head: head("", scales)}
	one := func(m Mean) string { return fmt.Sprintf("%.1f", m.Value()) }
	row(&t, "numbers, all readings", scales, func(s *Scale) any { return one(s.Numbers) })
	row(&t, "numbers, short fitting", scales, func(s *Scale) any { return one(s.Short) })
	row(&t, "numbers, short fitting, musts only", scales, func(s *Scale) any { return one(s.ShortMusts) })
	row(&t, "false passes of musts, all readings", scales, func(s *Scale) any { return Musts(&s.Drawn.FalsePass).Of() })
	row(&t, "false passes of musts, short fitting", scales, func(s *Scale) any { return Musts(&s.ShortVerdicts.FalsePass).Of() })
	row(&t, "tight musts, all readings", scales, func(s *Scale) any { return Musts(&s.Drawn.Tight) })
	row(&t, "tight musts, short fitting", scales, func(s *Scale) any { return Musts(&s.ShortVerdicts.Tight) })
	row(&t, "pieces set anew, least change", scales, func(s *Scale) any { return one(s.Least.Retied) })
	row(&t, "pieces set anew, best fit", scales, func(s *Scale) any { return one(s.Best.Retied) })
	row(&t, "minutes hanging, least change", scales, func(s *Scale) any { return one(s.Least.Minutes) })
	row(&t, "from stature alone: an answer was found", scales, func(s *Scale) any { return s.StatureAnswered })
	return t
}

func coverage(scales []*Scale) Table {
	t := Table{Title: "Coverage", Note: "How often the true margin lies within ± 1.96·u (with the shift) of the told one, every reading taken.",
		Head: head("side or end", scales)}
	for e, end := range truth.Ends {
		if scales[0].Coverage[e].N == 0 {
			continue
		}
		name := end.Check
		if end.At != "" {
			name += ", " + end.At
		}
		row(&t, name, scales, func(s *Scale) any { return s.Coverage[e] })
	}
	return t
}

func detection(scales []*Scale) Table {
	t := Table{Title: "Single blunders", Note: "By size, in standard deviations of what the other readings say: noticed, and of those blamed on the right reading first.",
		Head: []string{"size"}}
	for _, s := range scales {
		t.Head = append(t.Head, "noticed "+s.Name(), "blamed")
	}
	for i, size := range runs.BlunderSizes {
		var cells []any
		for _, s := range scales {
			cells = append(cells, s.Blunders.Noticed[i], s.Blunders.Blamed[i])
		}
		t.Add(fmt.Sprint(size), cells...)
	}
	var cells []any
	for _, s := range scales {
		cells = append(cells, s.Blunders.Repeats, "")
	}
	t.Add("a repeat 30 mm off", cells...)
	return t
}

func alarms(scales []*Scale) Table {
	t := Table{Title: "False alarms", Note: "Share of clean sessions with at least one.", Head: head("finding", scales)}
	names := map[string]bool{}
	for _, s := range scales {
		for name := range s.Blunders.Alarms {
			names[name] = true
		}
	}
	for _, name := range slices.Sorted(maps.Keys(names)) {
		row(&t, name, scales, func(s *Scale) any { return Share{s.Blunders.Alarms[name], s.Blunders.Clean.N} })
	}
	row(&t, "any", scales, func(s *Scale) any { return s.Blunders.Clean })
	return t
}

func byGroup(s *Scale) Table {
	t := Table{Title: "By sex and stature, at " + s.Name(), Note: "Share of bodies on which every must truly holds; the tool after one round. False passes: of the told passes of musts.",
		Head: []string{"", "bodies", "some kit fits", "copied", "by eye", "stature alone", "least change", "best fit", "false passes"}}
	for _, g := range s.Groups {
		t.Add(g.Name, g.Copied.N, g.SomeKitFits, g.Copied, g.ByEye, g.Stature, g.Least, g.Best, g.FalsePass)
	}
	return t
}
