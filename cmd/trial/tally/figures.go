package tally

import (
	"example.com/hangtape/cmd/trial/runs"
	"example.com/hangtape/cmd/trial/truth"
)

// A Figure is one number that a change of the tool may make better or worse.
type Figure struct {
	Name   string  `json:"name"`
	Value  float64 `json:"value"`
	Spread float64 `json:"spread"` // what chance moves it by, one standard deviation
	More   bool    `json:"more"`   // more is better
}

// Worse says whether f is worse than the golden figure by more than chance would
// have it.
func (f Figure) Worse(golden Figure) bool {
	by := golden.Value - f.Value
	if !f.More {
		by = -by
	}
	return by > golden.Spread
}

// Figures are the numbers of one scale by which the tool is judged.
func (s *Scale) Figures() []Figure {
	var out []Figure
	share := func(name string, x Share, more bool) {
		if x.N > 0 {
			out = append(out, Figure{name, x.Value(), x.SD(), more})
		}
	}
	share("fitted from stature alone", s.Stature.All, true)
	share("fitted, least change, one round", s.Least.After[1], true)
	share("fitted, least change, two rounds", s.Least.After[2], true)
	share("fitted, best fit, one round", s.Best.After[1], true)
	share("fitted, best fit, two rounds", s.Best.After[2], true)
	share("false passes", Musts(&s.Drawn.FalsePass), false)
	share("false passes of fitted kits", Musts(&s.Left.FalsePass), false)
	share("false passes, short fitting", Musts(&s.ShortVerdicts.FalsePass), false)
	share("false fails", Musts(&s.Drawn.FalseFail), false)
	share("tight", Musts(&s.Drawn.Tight), false)
	share("false alarms", s.Blunders.Clean, false)
	share("repeats noticed", s.Blunders.Repeats, true)
	for i, size := range runs.BlunderSizes {
		if size == 5 {
			share("blunders of 5 standard deviations noticed", s.Blunders.Noticed[i], true)
			share("blunders of 5 standard deviations blamed", s.Blunders.Blamed[i], true)
		}
	}
	for e, end := range truth.Ends {
		if end.Must && end.Movable {
			share("coverage, "+end.Check+" "+end.At, s.Coverage[e], true)
		}
	}
	short := s.Short.Value() / s.Numbers.Value()
	return append(out, Figure{"short fitting's share of the numbers", short, 0.03, false})
}
