package drill

import (
	"fmt"
	"math"
	"strings"

	"example.com/hangtape/rules"
)

// ForceNotKnown is said in place of a chart.
const ForceNotKnown = "Not known: mass, rope and the lengths behind the drop are needed."

// Known says whether the force is known; the drops may be known without it.
func (f Force) Known() bool { return !math.IsNaN(f.Points[0].Peak[BothLow]) }

// PeakWords tell the chart in words, with lengths in unit (mm, cm, in): the limits,
// then a fall in each line.
func (f Force) PeakWords(unit string) []string {
	out := []string{fmt.Sprintf("Peak force if the tether has to catch. Limits: %s kN, and %s kN to aim at for the saddle.", kN(f.Limits[0]), kN(f.Limits[1]))}
	for fall := range NumFalls {
		peaks := make([]string, len(f.Points))
		for i, p := range f.Points {
			peaks[i] = fmt.Sprintf("%s kN with %s of rope above", kN(p.Peak[fall]), rules.FormatBelow(p.Above, unit))
		}
		out = append(out, fmt.Sprintf("%s: %s.", fall, strings.Join(peaks, ", ")))
	}
	return out
}

// DropWords tell how far each fall drops, a line each, with lengths in unit (mm, cm,
// in).
func (f Force) DropWords(unit string) []string {
	var out []string
	for fall := range NumFalls {
		out = append(out, fmt.Sprintf("drop, %s: %s", fall, rules.FormatLength(f.Drops[fall], unit)))
	}
	return out
}

// StayHead stands before StayWords.
const StayHead = "So far below the union each stays, at least, with these lengths:"

// StayWords tell how far below the union climbers stay, a line each, of a force that
// is known.
func (f Force) StayWords(unit string) []string {
	below := func(mm, limit float64) string {
		if math.IsNaN(mm) {
			return fmt.Sprintf("no rope is long enough for %s kN", kN(limit))
		}
		return fmt.Sprintf("%s for %s kN", rules.FormatBelow(mm, unit), kN(limit))
	}
	var out []string
	for _, s := range f.Stay {
		out = append(out, fmt.Sprintf("a climber of %.0f kg: %s, better %s", s.Mass, below(s.Peak, f.Limits[0]), below(s.Saddle, f.Limits[1])))
	}
	return out
}

// Words name the ways from saddle to rope, a line each, and how many of them
// share no part.
func (p Paths) Words() []string {
	var out []string
	for _, c := range p.Chains {
		out = append(out, "saddle, "+strings.Join(rules.PartWords(c), ", ")+", rope")
	}
	switch {
	case !p.Known:
		return append(out, "How many of them share no part is not known: it was not said on which rings the backup bridge hangs.")
	case len(p.Shared) > 0:
		return append(out, fmt.Sprintf("%d without a part in common; each of these alone holds the climber: %s.", p.Ways, strings.Join(rules.PartWords(p.Shared), ", ")))
	}
	return append(out, fmt.Sprintf("%d without a part in common. Saddle webbing, rope and union are shared by all.", p.Ways))
}

// PathsHead stands before the ways from saddle to rope.
const PathsHead = "Ways from saddle to rope"
