package sheet

import "strings"

// head is whose sheet it is and how the fitting came out.
func (l *layout) head(y float64) float64 {
	const name, outcome = 20.0, 22.0
	c, x := l.card, l.free.Left
	w := l.width(c.Outcome.Loud(), outcome, true) + 0.6*outcome
	base := y + outcome*0.95
	l.verdict(l.free.Right-w, base, outcome, c.Outcome)
	room := l.wide() - w - 12
	const leastName, least = 2, 12.0 // lines, and how small, before the name is cut
	size := name
	for size > least && l.width(c.Climber, size, true) > room {
		size--
	}
	names := l.atMost(leastName, c.Climber, room, size, true)
	for i, s := range names {
		l.text(x, base-float64(len(names)-1-i)*leading*size, size, true, s)
	}
	y = base + 0.42*outcome
	for i, line := range c.About {
		most := 2 // notes may be long; the file has them whole
		if strings.HasPrefix(line, notesAre) {
			most = min(most, l.most)
		}
		if i == 0 {
			l.right(l.free.Right, y+ascent*small, c.Tally)
			room = l.wide() - l.width(c.Tally, small, false) - 12
		} else {
			room = l.wide()
		}
		for _, s := range l.atMost(most, line, room, small, false) {
			l.text(x, y+ascent*small, small, false, s)
			y += leading * small
		}
	}
	if len(c.Marks) > 0 {
		y = l.strip(y+2, strings.Join(c.Marks, " · "))
	}
	return y
}

// strip is a line across the page, white on black.
func (l *layout) strip(y float64, s string) float64 {
	const size, pad = 10.0, 4.0
	lines := l.lines(s, l.wide()-2*pad, size, true)
	bottom := y + float64(len(lines))*leading*size + 3.5
	l.area(false, Box{l.free.Left, y, l.free.Right, bottom}.corners()...)
	for i, line := range lines {
		l.put(Text{X: l.free.Left + pad, Y: y + 3 + ascent*size + float64(i)*leading*size, Size: size, Bold: true, White: true, S: line})
	}
	return bottom
}

// lettered is the room before a row's name for its letter.
const lettered = 12.0

// column is one of a table, from its left edge.
type column struct {
	title string
	share float64 // of the table's width
}

// lengths is the table of the pieces, with what it means.
func (l *layout) lengths(y float64) float64 {
	columns := []column{{"Piece", 0.17}, {"Set to", 0.175}, {"Window", 0.255}, {"Tape from … to", 0.24}, {"Cord to cut", 0.16}}
	y = l.header(y, columns)
	for _, n := range l.card.Lengths {
		l.text(l.free.Left, y+1.5+ascent*verdict, small, true, n.Letter)
		y = l.row(y, columns, []Text{
			{S: n.Piece, Size: small}, {S: n.Set, Size: verdict, Bold: true},
			{S: n.Told(), Size: small, Bold: n.Off}, {S: n.Lay, Size: small}, {S: n.Cut, Size: small},
		})
	}
	y = l.para(l.free.Left, y+3, l.wide(), small, false, l.card.LengthOf)
	y = l.para(l.free.Left, y, l.wide(), small, false, l.card.PenMarks)
	return l.para(l.free.Left, y+3, l.wide(), heading+1, true, l.card.Rope)
}

// header is the first row of a table.
func (l *layout) header(y float64, columns []column) float64 {
	x, bottom := l.free.Left, y
	for _, c := range columns {
		w := c.share * l.wide()
		bottom = max(bottom, l.para(x, y, w-3, small, true, c.title))
		x += w
	}
	l.line(0.8, Point{l.free.Left, bottom}, Point{l.free.Right, bottom})
	return bottom
}

// row is one line of a table, as high as its highest cell, with a hair under it.
// The cells bring their letters, size and weight.
func (l *layout) row(y float64, columns []column, cells []Text) float64 {
	x, bottom := l.free.Left, y
	for i, c := range columns {
		w := c.share * l.wide()
		at := y + 1.5
		shift := 0.0
		if i == 0 {
			shift = lettered
		}
		for _, s := range l.lines(cells[i].S, w-shift-6, cells[i].Size, cells[i].Bold) {
			t := cells[i]
			t.X, t.Y, t.S = x+shift, at+ascent*verdict, s
			l.put(t)
			at += 1.1 * verdict
		}
		bottom = max(bottom, at+0.5)
		x += w
	}
	l.line(0.25, Point{l.free.Left, bottom}, Point{l.free.Right, bottom})
	return bottom
}
