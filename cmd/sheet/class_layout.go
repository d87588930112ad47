package sheet

import (
	"fmt"
	"strings"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// mostLines and fewestLines bound how many lines a cell of the class may have: as
// many as leave the pages as few as they can be. The fewest still hold the name and
// what the row is.
const (
	mostLines   = 9
	fewestLines = 2
)

// ClassPage is how many students one page surely holds, whatever is told of them.
const ClassPage = 10

// shortNames are those of the pieces, for columns too narrow for the whole ones.
var shortNames = [fit.NumPieces]string{
	fit.PieceMainBridge:   "main bridge",
	fit.PieceHitchLeft:    "left loop",
	fit.PieceHitchRight:   "right loop",
	fit.PieceFootLoop:     "foot loop",
	fit.PieceTether:       "backup tether",
	fit.PieceBackupBridge: "backup bridge",
}

// columns of the class: the student, the verdict, the pieces, and the rest.
func (c *Class) columns() []column {
	all := []column{{"Student", 0.145}, {"Verdict", 0.1}}
	for _, name := range shortNames {
		all = append(all, column{name, 0.066})
	}
	return append(all, column{"rope above", 0.06}, column{"Short of pass", 0.199}, column{"Signed", 0.1})
}

// Pages lays the class out on its side, on as few pages as it takes and with as
// much told as these hold; missing are the letters that PDF draws as Instead.
func (c *Class) Pages(p Paper) (pages []*Drawing, missing []rune) {
	faces := newFaces()
	pages = c.pages(p.turned(), faces, fewestLines)
	for lines := mostLines; lines > fewestLines; lines-- {
		if more := c.pages(p.turned(), faces, lines); len(more) == len(pages) {
			pages = more
			break
		}
	}
	for i, d := range pages {
		l := &pen{d, faces}
		l.right(d.W-edge, edge+ascent*heading, fmt.Sprintf("page %d of %d", i+1, len(pages)))
	}
	return pages, faces.missing()
}

// pages lays all rows out, with so many lines to a cell.
func (c *Class) pages(p Paper, faces *faces, lines int) (pages []*Drawing) {
	for rows := c.Rows; len(pages) == 0 || len(rows) > 0; {
		l := &layout{pen: pen{&Drawing{W: p.W, H: p.H}, faces}, free: Box{edge, edge, p.W - edge, p.H - edge}}
		rows = rows[c.page(l, rows, lines):]
		pages = append(pages, l.Drawing)
	}
	return pages
}

// page draws as many rows as one page holds, and returns how many.
func (c *Class) page(l *layout, rows []Row, lines int) int {
	l.text(l.free.Left, l.free.Top+ascent*16, 16, true, l.fitted(fmt.Sprintf("%s: %s", c.Title, rules.Count(len(c.Rows), "student", "students")), l.wide()-80, 16, true))
	end := l.free.Bottom - float64(len(l.lines(strings.Join(c.Cautions, " "), l.wide(), small, false)))*leading*small
	l.para(l.free.Left, end, l.wide(), small, false, strings.Join(c.Cautions, " "))
	l.heading(l.free.Left, end-heading*1.1-3, l.wide(), "Cautions")
	end -= heading*1.1 + 3 + gap
	columns := c.columns()
	y := l.header(l.free.Top+22, columns)
	for i, r := range rows {
		trial := &layout{pen: pen{&Drawing{}, l.faces}, free: l.free}
		if next := trial.student(y, columns, r, lines); next <= end || i == 0 {
			y = l.student(y, columns, r, lines)
			continue
		}
		return i
	}
	return len(rows)
}

// student is one row, and returns where it ends.
func (l *layout) student(y float64, columns []column, r Row, lines int) float64 {
	top := y + 3
	b := &cells{layout: l, x: l.free.Left, top: top, bottom: top, columns: columns}
	plain := func(s string) Text { return Text{S: s, Size: small} }
	strong := func(s string) Text { return Text{S: s, Size: small, Bold: true} }
	b.texts(top, lines, strong(r.Climber), plain(r.About))
	l.pen.verdict(b.x, top+ascent*verdict, verdict, r.Outcome)
	b.texts(top+1.4*verdict, 0)
	for _, s := range r.Lengths {
		b.texts(top, lines, strong(s))
	}
	b.texts(top, lines, plain(r.Rope))
	b.texts(top, lines, plain(strings.Join(r.Short, "; ")))
	b.texts(top, lines, Text{S: strings.TrimPrefix(r.Sign, "signed "), Size: small, Bold: !r.Signed})
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
