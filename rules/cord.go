package rules

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.com/hangtape/fit"
)

// CordHead stands before a list of cord to cut.
const CordHead = "Cord to cut, to be trimmed once it is tied and hung"

// CordToCut says how much cord to cut for piece p of f's kit, to be finished at a
// length in mm, by what m has learnt, with lengths in unit (mm, cm, in): "cut 1140 mm of 8 mm
// cord for a backup tether of 178 mm". Where the session does not tell the cord it
// says so of each cord that is usual; empty where no such piece can be tied.
func CordToCut(m *fit.CordModel, f *fit.Fitting, p fit.Piece, finished float64, unit string) string {
	c := fit.CordFor(f, p, finished)
	what := fmt.Sprintf(" for a %s of %s", PieceName(p), FormatLength(finished, unit))
	if c.Use == fit.CordHitch && c.Host == 0 {
		return "how much cord to cut" + what + " is known once the rope's diameter is told"
	}
	cords := []float64{c.Diameter}
	if c.Diameter == 0 {
		cords = fit.UsualCords(p)
	}
	var cuts []string
	for _, d := range cords {
		c.Diameter = d
		if c.Check() == nil {
			cut := FormatLength(m.Cut(c, MarkIn(unit)).Length, unit)
			cuts = append(cuts, fmt.Sprintf("%s of %s mm cord", cut, strconv.FormatFloat(d, 'f', -1, 64)))
		}
	}
	if len(cuts) == 0 {
		return ""
	}
	return "cut " + strings.Join(cuts, ", or ") + what
}

// TiedWords say of a piece that was tied what its knots took, and how far off that
// is from what the others say, with lengths in unit.
func TiedWords(r fit.CordResidual, unit string) string {
	than := "more"
	if r.Off < 0 {
		than = "less"
	}
	return fmt.Sprintf("knots took %s, %s %s than foretold (± %s)", FormatLength(r.Used, unit), FormatLength(math.Abs(r.Off), unit), than, FormatLength(r.U, unit))
}

// TiedQuestion asks about a piece that is doubtful; empty of another one.
func TiedQuestion(r fit.CordResidual) string {
	if !r.Doubtful() {
		return ""
	}
	return fmt.Sprintf("QUESTIONED: %.1f standard deviations off. Was it cut, tied and read as told? It counts, and makes the next pieces longer", math.Abs(r.Off)/r.U)
}

// A CordPart is a fit.CordPart in words: what it is, how long, and how that comes
// about.
type CordPart struct{ Name, Length, How string }

// CordParts tell where the cord of a cut for c goes, with lengths in unit.
func CordParts(c fit.Cord, cut fit.CordCut, unit string) []CordPart {
	show := func(mm float64) string { return FormatLength(mm, unit) }
	var out []CordPart
	for _, p := range cut.Parts {
		told := CordPart{Length: show(p.Length), How: fmt.Sprintf("%d x %s", p.Count, show(p.Each))}
		switch p.Name {
		case "strands":
			told.Name = "strands"
		case "eyes":
			told.Name = "eyes"
		case "wraps":
			told.Name = "turns on the rope"
		case "hitch":
			told.Name, told.How = c.Hitch.String(), fmt.Sprintf("%.1f d", p.Each/c.Diameter)
		case "bend":
			told.Name, told.How = c.Closing.String(), fmt.Sprintf("%.1f d", p.Each/c.Diameter)
		case "ends":
			told.Name, told.How = c.Closing.String(), fmt.Sprintf("%d x %.1f d", p.Count, p.Each/c.Diameter)
		case "tails":
			told.Name, told.How = "tails", fmt.Sprintf("%d x %s at least", p.Count, show(p.Each))
		case "trimming":
			told.Name, told.How = "trimming", "cut off again when all is well"
		}
		out = append(out, told)
	}
	return out
}

// CordGoes tells where the cord that is cut for piece p of f's kit goes, a line
// each; none where the session does not tell the cord or no such piece can be tied.
func CordGoes(m *fit.CordModel, f *fit.Fitting, p fit.Piece, finished float64, unit string) []string {
	c := fit.CordFor(f, p, finished)
	if c.Check() != nil {
		return nil
	}
	cut := m.Cut(c, MarkIn(unit))
	out := []string{fmt.Sprintf("Where the cord of the %s goes, %s in all (d: its diameter):", PieceName(p), FormatLength(cut.Length, unit))}
	for _, part := range CordParts(c, cut, unit) {
		out = append(out, fmt.Sprintf("- %s: %s, %s", part.Name, part.Length, part.How))
	}
	return out
}
