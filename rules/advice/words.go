package advice

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// Setting is what every answer says of itself.
const Setting = "A setting, not a verdict: set, hang, read again."

// Words tells the change as something to do, with lengths in unit (mm, cm, in):
// "lengthen the main bridge by 55 mm, from 1160 to 1215 mm; anything from 1200 to
// 1260 mm will do (slides, work 1)". Windows are told rounded inwards.
func (c *Change) Words(unit string) string {
	if c.Piece == ropeAbove {
		words := "stay at least " + rules.FormatBelow(c.To, unit) + " below the union"
		if c.From.Known() {
			words += ", not " + rules.FormatBelow(float64(c.From), unit)
		}
		return words + " (practice, no work)"
	}
	length := func(mm float64) string { return rules.FormatLength(mm, unit) }
	bare := func(mm float64) string { return strings.TrimSuffix(length(mm), " "+unit) }
	by, verb := c.To-float64(c.From), "lengthen"
	if by < 0 {
		by, verb = -by, "shorten"
	}
	words := fmt.Sprintf("%s the %s by %s, from %s to %s", verb, pieceNamed(c.Piece), length(by), bare(float64(c.From)), length(c.To))
	if len(c.Each) > 0 {
		words = fmt.Sprintf("set the %s to %s", pieceNamed(c.Piece), length(c.To))
	}
	if c.Window != nil {
		lo, hi := Inwards(*c.Window, unit)
		words += fmt.Sprintf("; anything from %s to %s will do", bare(lo), length(hi))
	}
	return fmt.Sprintf("%s (%s, work %d)", words, rules.HowWord(c.how()), c.Cost)
}

// how is the way to change the piece.
func (c *Change) how() fit.How { return fit.How(slices.Index(howWords[:], c.How)) }

// ReTied is the piece that the change ties anew; ok is false where it does not.
func (c *Change) ReTied() (_ fit.Piece, ok bool) {
	for p := range fit.NumPieces {
		if p.Key() == c.Piece {
			return p, c.how() == fit.ReTie
		}
	}
	return 0, false
}

// CordWords are what cord says of each piece that one of the answers ties anew, and
// of its length in mm, once each; none where cord is nil.
func CordWords(cord func(p fit.Piece, finished float64) string, answers ...[]Change) []string {
	var told []string
	for _, changes := range answers {
		for i := range changes {
			p, ok := changes[i].ReTied()
			if !ok || cord == nil {
				continue
			}
			if words := cord(p, changes[i].To); words != "" && !slices.Contains(told, words) {
				told = append(told, words)
			}
		}
	}
	return told
}

// pieceNamed is the piece with the key, in the trade's words; the key as words where
// there is none.
func pieceNamed(key string) string {
	for p := range fit.NumPieces {
		if p.Key() == key {
			return rules.PieceName(p)
		}
	}
	return strings.ReplaceAll(key, "_", " ")
}

// sixteenth is one of an inch, in mm, exact.
const sixteenth = rules.MMPerInch / 16

// Inwards rounds a window in mm to what is told of it in unit (mm, cm, in), never to
// more; lo is above hi where nothing that can be told lies within it.
func Inwards(w [2]float64, unit string) (lo, hi float64) {
	step := 1.0 // mm
	if unit == "in" {
		step = sixteenth
	}
	return math.Ceil(w[0]/step-1e-6) * step, math.Floor(w[1]/step+1e-6) * step
}

// atLeast tells a length in mm that has to be reached, in unit: never less than it.
func atLeast(mm float64, unit string) string {
	up, _ := Inwards([2]float64{mm, mm}, unit)
	return rules.FormatLength(up, unit)
}

// Words tells the readings to take first, and what they may save of a change of work
// cost.
func (s *Sooner) Words(cost int) string {
	would := fmt.Sprintf("a change of work %d would do", s.Cost)
	if s.Cost == 0 {
		would = "nothing would have to change"
	}
	return fmt.Sprintf("%s, in place of work %d, once these are read three times afresh, one after the other: %s", would, cost, named(s.Readings))
}

// BoundsHead is the heading of what is odd about bounds.
const BoundsHead = "Bounds that the search could not take as told"

// BoundWords tells each of odd, with lengths in unit (mm, cm, in).
func BoundWords(odd []OddBound, unit string) []string {
	words := make([]string, len(odd))
	for i := range odd {
		words[i] = odd[i].Words(unit)
	}
	return words
}

// Words tells the conflict, with lengths in unit (mm, cm, in).
func (c *Conflict) Words(unit string) string {
	if len(c.Checks) == 0 && len(c.Bounds) > 0 {
		return "no length lies within the bounds of all for: " + named(c.Bounds)
	}
	if c.Cause == causeGeometry {
		words := fmt.Sprintf("no lengths within the bounds meet %s, however well they are measured", inOne(c.Checks))
		if len(c.Bounds) > 0 {
			words += "; other bounds for one of these would do: " + named(c.Bounds)
		}
		if c.Easing != nil {
			words += fmt.Sprintf("; so would the limit %s eased by %s, which is the school's to decide", c.Easing.Limit, c.Easing.words(unit))
		}
		return words
	}
	words := fmt.Sprintf("there are lengths that meet %s, but not surely enough", inOne(c.Checks))
	switch {
	case len(c.Next) > 0:
		words += "; read three times afresh: " + named(c.Next)
	case len(c.Pieces) > 0:
		keys := make([]string, len(c.Pieces))
		for i, p := range c.Pieces {
			keys[i] = "kit." + p
		}
		words += "; what limits it is how closely these can be set: " + named(keys)
	}
	return words
}

// inOne lists checks that have to be met at once.
func inOne(checks []string) string {
	switch n := len(checks); n {
	case 0:
		return "every must"
	case 1:
		return checks[0]
	default:
		return strings.Join(checks[:n-1], ", ") + " and " + checks[n-1] + " together"
	}
}

// named lists keys of the session file in the trade's words.
func named(keys []string) string {
	names := make([]string, len(keys))
	for i, k := range keys {
		names[i] = rules.InputName(strings.TrimSuffix(k, ".bounds_mm"))
	}
	return strings.Join(names, "; ")
}
