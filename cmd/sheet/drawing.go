package sheet

// A Drawing is what stands on one page, in the order in which it is drawn: the
// paths first, then the texts.
type Drawing struct {
	W, H  float64
	Paths []Path
	Texts []Text
}

// A Text is one run of letters on a line.
type Text struct {
	X, Y  float64 // where its baseline starts
	Size  float64
	Bold  bool
	White bool // on black
	S     string
	Width float64
}

// A Path is a line along points, or the area within them.
type Path struct {
	Points []Point
	Width  float64   // of the line; 0 for an area
	Dash   []float64 // lengths of dashes and gaps; none for a line without gaps
	White  bool
}

// A Point of a page.
type Point struct{ X, Y float64 }

// A Box is a rectangle of a page.
type Box struct{ Left, Top, Right, Bottom float64 }

// How far letters reach above and below their baseline, in ems: capitals and
// accents no further than the first, tails no further than the second.
const ascent, descent = 0.74, 0.22

// Box is where t stands.
func (t Text) Box() Box {
	return Box{t.X, t.Y - ascent*t.Size, t.X + t.Width, t.Y + descent*t.Size}
}

// Box holds the points of p.
func (p Path) Box() Box {
	b := Box{p.Points[0].X, p.Points[0].Y, p.Points[0].X, p.Points[0].Y}
	for _, q := range p.Points[1:] {
		b = Box{min(b.Left, q.X), min(b.Top, q.Y), max(b.Right, q.X), max(b.Bottom, q.Y)}
	}
	return b
}

// Meets says whether b and c have more than an edge in common.
func (b Box) Meets(c Box) bool {
	const hair = 0.01
	return b.Left < c.Right-hair && c.Left < b.Right-hair && b.Top < c.Bottom-hair && c.Top < b.Bottom-hair
}

// Within says whether b lies in c.
func (b Box) Within(c Box) bool {
	return b.Left >= c.Left && b.Right <= c.Right && b.Top >= c.Top && b.Bottom <= c.Bottom
}

// moved is d with everything moved by dx and dy.
func (d *Drawing) moved(dx, dy float64) ([]Path, []Text) {
	paths, texts := make([]Path, len(d.Paths)), make([]Text, len(d.Texts))
	for i, p := range d.Paths {
		points := make([]Point, len(p.Points))
		for j, q := range p.Points {
			points[j] = Point{q.X + dx, q.Y + dy}
		}
		p.Points = points
		paths[i] = p
	}
	for i, t := range d.Texts {
		t.X, t.Y = t.X+dx, t.Y+dy
		texts[i] = t
	}
	return paths, texts
}

// shrink makes what stands between the edges smaller, so that so much more than
// there is room for fits.
func (d *Drawing) shrink(edge, over float64) {
	high := d.H - 2*edge
	f := high / (high + over)
	at := func(p Point) Point { return Point{d.W/2 + (p.X-d.W/2)*f, edge + (p.Y-edge)*f} }
	for i := range d.Paths {
		p := &d.Paths[i]
		p.Width *= f
		for j := range p.Points {
			p.Points[j] = at(p.Points[j])
		}
	}
	for i := range d.Texts {
		t := &d.Texts[i]
		to := at(Point{t.X, t.Y})
		t.X, t.Y, t.Size, t.Width = to.X, to.Y, t.Size*f, t.Width*f
	}
}
