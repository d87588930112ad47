package sheet

import "strings"

// cautions stand on every sheet, run on to save room.
func (l *layout) cautions(y float64) float64 {
	y = l.heading(l.free.Left, y, l.wide(), "Cautions")
	y = l.para(l.free.Left, y, l.wide(), small, false, strings.Join(l.card.Cautions, " "))
	if len(l.card.CordCautions) > 0 {
		y = l.para(l.free.Left, y+2, l.wide(), small, false, "Cord: "+strings.Join(l.card.CordCautions, " "))
	}
	return y
}

// sign is who answers for the fitting, with room for a pen.
func (l *layout) sign(y float64) float64 {
	const size, pens = 20.0, 0.36
	l.line(1.2, Point{l.free.Left, y}, Point{l.free.Right, y})
	y += 4
	end := l.text(l.free.Left, y+ascent*size, size, true, l.card.Sign.Head)
	x, w := end+12, (1-pens)*l.wide()-(end-l.free.Left)-24
	bottom := y
	for _, s := range l.card.Sign.Lines {
		lines := l.lines(s, w, small, false)
		if l.card.Sign.Signed {
			lines = l.atMost(l.most+1, s, w, small, false)
		}
		for _, s := range lines {
			l.text(x, bottom+ascent*small, small, false, s)
			bottom += leading * small
		}
	}
	px := l.free.Right - pens*l.wide()
	for i, who := range signers {
		base := y + 9 + float64(i)*18
		at := l.text(px, base, small, false, who+" ")
		l.line(0.6, Point{at + 2, base + 1}, Point{l.free.Right, base + 1})
		bottom = max(bottom, base+2)
	}
	return bottom
}
