package sheet

import (
	"fmt"
	"strings"

	"example.com/hangtape/fit"
)

// mostLines is how many lines a cell of the class has at most, so that
// ClassPage students fit on a page whatever is told of them.
const mostLines = 3

// ClassPage is how many students one page surely holds.
const ClassPage = 10

// columns of the class: the student, the verdict, the pieces, and the rest.
func (c *Class) columns() []column {
	all := []column{{"Student", 0.145}, {"Verdict", 0.1}}
	for _, name := range [fit.NumPieces]string{"main bridge", "left loop", "right loop", "foot loop", "backup tether", "backup bridge"} {
		all = append(all, column{name, 0.066})
	}
	return append(all, column{"rope above", 0.06}, column{"Short of pass", 0.199}, column{"Signed", 0.1})
}

// Pages lays the class out on its side, as many pages as it takes; missing are
// the letters that PDF draws as Instead.
func (c *Class) Pages(p Paper) (pages []*Drawing, missing []rune) {
	faces := newFaces()
	rows := c.Rows
	for {
		l := &layout{pen: pen{&Drawing{}, faces}}
		side := p.turned()
		l.Drawing.W, l.Drawing.H = side.W, side.H
		l.free = Box{edge, edge, side.W - edge, side.H - edge}
		rows = rows[c.page(l, rows):]
		pages = append(pages, l.Drawing)
		if len(rows) == 0 {
			break
		}
	}
	for i, d := range pages {
		l := &pen{d, faces}
		l.right(d.W-edge, edge+ascent*heading, fmt.Sprintf("page %d of %d", i+1, len(pages)))
	}
	return pages, faces.missing()
}

// page draws as many rows as one page holds, and returns how many.
func (c *Class) page(l *layout, rows []Row) int {
	l.text(l.free.Left, l.free.Top+ascent*16, 16, true, l.fitted(fmt.Sprintf("%s: %s", c.Title, count(len(c.Rows), "student")), l.wide()-80, 16, true))
	end := l.free.Bottom - float64(len(l.lines(strings.Join(c.Cautions, " "), l.wide(), small, false)))*leading*small
	l.para(l.free.Left, end, l.wide(), small, false, strings.Join(c.Cautions, " "))
	l.heading(l.free.Left, end-heading*1.1-3, l.wide(), "Cautions")
	end -= heading*1.1 + 3 + gap
	columns := c.columns()
	y := l.header(l.free.Top+22, columns)
	for i, r := range rows {
		trial := &layout{pen: pen{&Drawing{}, l.faces}, free: l.free}
		if next := trial.student(y, columns, r); next <= end || i == 0 {
			y = l.student(y, columns, r)
			continue
		}
		return i
	}
	return len(rows)
}

// student is one row, and returns where it ends.
func (l *layout) student(y float64, columns []column, r Row) float64 {
	top := y + 3
	b := &cells{layout: l, x: l.free.Left, top: top, bottom: top, columns: columns}
	plain := func(s string) Text { return Text{S: s, Size: small} }
	strong := func(s string) Text { return Text{S: s, Size: small, Bold: true} }
	b.texts(top, mostLines, strong(r.Climber), plain(r.About))
	l.pen.verdict(b.x, top+ascent*verdict, verdict, r.Outcome)
	b.texts(top+1.4*verdict, 0)
	for _, s := range r.Lengths {
		b.texts(top, mostLines, strong(s))
	}
	b.texts(top, mostLines, plain(r.Rope))
	b.texts(top, mostLines, plain(strings.Join(r.Short, "; ")))
	b.texts(top, mostLines, Text{S: r.Sign, Size: small, Bold: strings.HasPrefix(r.Sign, "NOT")})
	l.line(0.25, Point{l.free.Left, b.bottom + 2}, Point{l.free.Right, b.bottom + 2})
	return b.bottom + 2
}

// cells are those of a row, drawn one after the other.
type cells struct {
	*layout
	x, top, bottom float64
	columns        []column // those to come
}

// texts draws the next cell from the top y down, on so many lines at most; what
// is longer is cut with an ellipsis, each text keeping a line.
func (b *cells) texts(y float64, most int, texts ...Text) {
	w := b.columns[0].share * b.wide()
	for i, t := range texts {
		lines := b.atMost(most-(len(texts)-1-i), t.S, w-5, t.Size, t.Bold)
		for _, s := range lines {
			b.text(b.x, y+ascent*t.Size, t.Size, t.Bold, s)
			y += leading * t.Size
		}
		most -= len(lines)
	}
	b.bottom = max(b.bottom, y)
	b.x += w
	b.columns = b.columns[1:]
}
