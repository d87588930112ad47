package sheet

// A layout puts a card on paper.
type layout struct {
	pen
	card   *Card
	free   Box     // the paper within its edges
	detail int     // which checks are told with their sentence
	loose  float64 // room to be spread between checks and sections
}

// What is told with its sentence, by detail: less where a page would not hold it,
// and in short findings are only counted.
const (
	inShort = iota
	marginsOnly
	failsInWords
	musts
	allButPasses
)

const (
	gap             = 6.0   // between sections
	leastShown      = 165.0 // height of the figure
	leastShownAtAll = 106.0 // where the page is full
	leastInstead    = 48.0  // of the words in its place
)

// Pages lays the card out: one page, which only a card with very much to say
// overflows into a second one. missing are the letters that PDF draws as Instead.
func (c *Card) Pages(p Paper) (pages []*Drawing, missing []rune) {
	faces := newFaces()
	for detail := allButPasses; detail >= inShort && pages == nil; detail-- {
		if spare := c.page(p, faces, detail, 0).spare(); spare >= 0 {
			pages = []*Drawing{c.page(p, faces, detail, spare).Drawing}
		}
	}
	if pages == nil {
		pages = c.twoPages(p, faces)
	}
	return pages, faces.missing()
}

func (c *Card) newLayout(p Paper, faces *faces, detail int, loose float64) *layout {
	return &layout{
		pen: pen{&Drawing{W: p.W, H: p.H}, faces}, card: c, detail: detail, loose: loose,
		free: Box{edge, edge, p.W - edge, p.H - edge},
	}
}

// page lays all of the card out on one page, which it may overflow.
func (c *Card) page(p Paper, faces *faces, detail int, loose float64) *layout {
	l := c.newLayout(p, faces, detail, loose)
	more := gap + l.looser(len(c.Musts)+len(c.Shoulds))
	y := l.head(l.free.Top)
	y = l.lengths(y + more)
	y = l.middle(y + more)
	y = l.cautions(y + more)
	l.free.Top = l.sign(y + more)
	return l
}

// looser keeps of the room to be spread what goes to each of the checks, and
// returns what is left for each gap between sections.
func (l *layout) looser(checks int) float64 {
	const gaps, most = 4, 2.5
	spare := l.loose
	l.loose = min(spare/float64(checks), most)
	return min((spare-l.loose*float64(checks))/gaps, 2*gap)
}

// spare is how much height the page has left.
func (l *layout) spare() float64 { return l.free.Bottom - l.free.Top }

// twoPages puts on a second page what stands under the figure on a full one.
func (c *Card) twoPages(p Paper, faces *faces) []*Drawing {
	one := c.firstPage(p, faces, allButPasses)
	for detail := allButPasses - 1; detail >= marginsOnly && one.spare() < leading*small; detail-- {
		one = c.firstPage(p, faces, detail)
	}
	one.right(one.free.Right, one.free.Bottom, "page 1 of 2")
	two := c.newLayout(p, faces, allButPasses, 0)
	y := two.heading(two.free.Left, two.free.Top, two.wide(), two.fitted(c.Climber, two.wide()-60, heading, true))
	two.right(two.free.Right, two.free.Top+ascent*heading, "page 2 of 2")
	y = two.under(two.free.Left, y, two.wide(), true)
	y = two.cautions(y + gap)
	two.sign(y + gap)
	return []*Drawing{one.Drawing, two.Drawing}
}

func (c *Card) firstPage(p Paper, faces *faces, detail int) *layout {
	l := c.newLayout(p, faces, detail, 0)
	y := l.head(l.free.Top)
	y = l.lengths(y+gap) + gap
	x, w := l.sides()
	bottom := l.allChecks(x, y, l.free.Right-x)
	l.figure(c.Figure, Box{l.free.Left, y, l.free.Left + w, bottom})
	l.free.Top = bottom
	return l
}

// wide is the width of the page within its edges.
func (l *layout) wide() float64 { return l.free.Right - l.free.Left }
