package advice

import (
	"fmt"
	"math"
	"strings"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// Sensitivity says how much margin a millimetre of each piece buys, for every
// end of every check: the slope of the margin, in the check's unit for each mm.
type Sensitivity [rules.NumEnds][fit.NumPieces]float64

// A Slope is the part that one piece has in a margin.
type Slope struct {
	Piece fit.Piece
	PerMM float64 // margin in the unit of its end, for each mm that the piece gets longer
}

// Words tells what a longer piece does to a margin in unit (mm, deg, kN or "" for
// a ratio), per mm or, where people read in inches, per inch: "each mm of the main
// bridge adds 0.49 mm".
func (s Slope) Words(unit, people string) string {
	by, verb, each := s.PerMM, "adds", "mm"
	if by < 0 {
		by, verb = -by, "takes"
	}
	if people == "in" {
		each = "in"
	}
	piece := rules.PieceName(s.Piece)
	if rules.IsLength(unit) {
		return fmt.Sprintf("each %s of the %s %s %.2f %s", each, piece, verb, by, each)
	}
	if each == "in" {
		by *= rules.MMPerInch
	}
	return strings.TrimSpace(fmt.Sprintf("each %s of the %s %s %.4f %s", each, piece, verb, by, unit))
}

// Of are the pieces that move the end e, in the order of the session file.
func (s *Sensitivity) Of(e rules.End) []Slope {
	var list []Slope
	for p := range fit.NumPieces {
		if v := s[e][p]; math.Abs(v) > 1e-9 { // false for NaN
			list = append(list, Slope{p, v})
		}
	}
	return list
}

// Sensitivities are those of f as it is, under the limits l: one piece is moved, all
// others held, and the slope taken over ± 1 mm. A piece whose length is not known buys NaN;
// so it is with an end that is unknown. f must have no Faults.
func Sensitivities(f *fit.Fitting, l rules.Limits) *Sensitivity {
	const step = 1.0 // mm
	m := fit.NewModel(f, fit.Options{})
	var s fit.State
	m.Current(&s)
	var now [fit.NumPieces]float64
	to := lengths{}
	for p := range now {
		if now[p] = m.Length(fit.Piece(p), &s); !math.IsNaN(now[p]) {
			to[fit.Piece(p)] = now[p]
		}
	}
	m = fit.NewModel(f.Changed(to), fit.Options{})
	var sense Sensitivity
	var up, down [rules.NumEnds]float64
	for p := range fit.NumPieces {
		_, known := to[p]
		if known {
			m.SetLength(p, now[p]+step)
			m.Current(&s)
			rules.Margins(&s, &l, up[:])
			m.SetLength(p, now[p]-step)
			m.Current(&s)
			rules.Margins(&s, &l, down[:])
			m.SetLength(p, now[p])
		}
		for e := range sense {
			if sense[e][p] = (up[e] - down[e]) / (2 * step); !known {
				sense[e][p] = math.NaN()
			}
		}
	}
	return &sense
}
