package flow

import (
	"slices"
	"strings"

	"example.com/hangtape/rules"
)

// odd is what is remarkable about taking v as the answer to an amount: what the
// rules find about it alone, or where the drill would disagree with the model
// because of it; empty where nothing is.
func (s *State) odd(a Ask, v answer) string {
	if a.note != nil || a.cell == nil {
		return ""
	}
	d := s.Draft.clone()
	a.replace(&d, 0, v)
	report, err := s.Judge(&d.Session)
	if err != nil {
		return ""
	}
	of := report.Findings
	alone := func(f rules.Finding) bool { return len(f.Inputs) == 1 && f.Inputs[0] == a.Key }
	if strings.HasPrefix(a.Key, "drill.") {
		of = disagreements(&d)
		was := disagreements(&s.Draft)
		alone = func(f rules.Finding) bool {
			return !slices.ContainsFunc(was, func(w rules.Finding) bool { return w.Text == f.Text })
		}
	}
	if i := slices.IndexFunc(of, alone); i >= 0 {
		words := rules.Upper(of[i].In(string(s.Session.Unit)))
		if !strings.HasSuffix(words, "?") {
			words += "."
		}
		return words
	}
	return ""
}

// disagreements are where what was seen in the drill of d disagrees with the model.
func disagreements(d *Draft) []rules.Finding {
	if d.Session.Drill == nil {
		return nil
	}
	return slices.DeleteFunc(d.Session.DrillReview().Findings, func(f rules.Finding) bool { return f.Name != "drill-disagrees" })
}
