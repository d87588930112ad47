package sheet

// A Paper is a size of paper, upright, in points.
type Paper struct {
	Name string // as the command takes it
	W, H float64
}

const ptPerMM = 72 / 25.4

// Papers are those that a sheet can be laid out for: ISO 216 A4, and letter of
// ANSI/ASME Y14.1 size A.
func Papers() []Paper {
	return []Paper{
		{"a4", 210 * ptPerMM, 297 * ptPerMM},
		{"letter", 8.5 * 72, 11 * 72},
	}
}

// turned is the paper lying on its side.
func (p Paper) turned() Paper { return Paper{p.Name, p.H, p.W} }

// edge is left free on every side: most printers reach within 6 mm.
const edge = 26.0
