package sheet

// A layout puts a card on paper.
type layout struct {
	pen
	card *Card
	free Box // the paper within its edges
	telling
	loose float64 // room to be spread between checks and sections
}

// A telling is how much is told: less where a page would not hold it.
type telling struct {
	detail int // which checks are told with their sentence
	most   int // lines of a list, or of a note
}

// What is told with its sentence, by detail. In short findings are only counted;
// the least leaves passes no line of their own.
const (
	passesRunOn = iota
	inShort
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
	anyLines        = 1000
)

// tellings are all of them, from much to little.
var tellings = []telling{
	{allButPasses, anyLines}, {musts, anyLines}, {failsInWords, anyLines}, {marginsOnly, anyLines}, {inShort, anyLines},
	{inShort, 6}, {inShort, 3}, {inShort, 1}, {passesRunOn, 1},
}

// Pages lays the card out on one page; what there is no room for is told shorter.
// missing are the letters that PDF draws as Instead.
func (c *Card) Pages(p Paper) (pages []*Drawing, missing []rune) {
	faces := newFaces()
	var l *layout
	for _, t := range tellings {
		l = c.page(p, faces, t, 0)
		if spare := l.spare(); spare >= 0 {
			return []*Drawing{c.page(p, faces, t, spare).Drawing}, faces.missing()
		}
	}
	l.shrink(edge, -l.spare()) // a card as no fitting makes one: rather small than cut
	return []*Drawing{l.Drawing}, faces.missing()
}

// page lays all of the card out on one page, which it may overflow.
func (c *Card) page(p Paper, faces *faces, t telling, loose float64) *layout {
	l := &layout{
		pen: pen{&Drawing{W: p.W, H: p.H}, faces}, card: c, telling: t, loose: loose,
		free: Box{edge, edge, p.W - edge, p.H - edge},
	}
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

// wide is the width of the page within its edges.
func (l *layout) wide() float64 { return l.free.Right - l.free.Left }
