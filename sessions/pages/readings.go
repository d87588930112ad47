package pages

import (
	"strings"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

func (p *page) readings(s *sessions.Session, r *rules.Report) {
	inputs := map[string]rules.Input{}
	if r != nil {
		for _, in := range r.Inputs {
			inputs[in.Name] = in
		}
	}
	kept := map[string]fit.Kept{}
	for _, k := range s.Fit.Kept {
		kept[k.Key] = k
	}
	p.section("Readings, and what they come to (± one standard uncertainty)")
	s.Fit.EachList(func(key string, values []float64) {
		if len(values) == 0 {
			return
		}
		text := p.takes(values)
		in, counts := inputs[key]
		switch {
		case counts && in.Origin == fit.Predicted.String() && in.Value.Known():
			text += "; moved by a change since, predicted " + p.value(in.Value, in.U, in.Unit)
		case counts && len(values) == 1 && in.U.Known():
			text += " (± " + rules.FormatValue(float64(in.U), float64(in.U), p.unitOf(in.Unit)) + ")"
		case counts && in.Value.Known():
			text += " (" + p.value(in.Value, in.U, in.Unit) + ")"
		case !counts && r != nil && strings.HasPrefix(key, "hangs."):
			text += "; a later hang counts"
		}
		if k, ok := kept[key]; ok {
			text += "; " + join("kept from "+dayOf(k.Taken), k.Session)
		}
		p.item(rules.InputName(key), text)
	})
	if s.Fit.Mass.Known {
		p.item(rules.InputName("climber.mass_kg"), p.limit(s.Fit.Mass.V, "kg"))
	}
}

// takes are the readings of one mark, their unit once.
func (p *page) takes(values []float64) string {
	takes := make([]string, len(values))
	for i, v := range values {
		takes[i] = strings.TrimSuffix(p.length(v), " "+p.Unit)
	}
	return strings.Join(takes, ", ") + " " + p.Unit
}
