package sheet

import (
	"strings"

	"example.com/hangtape/rules"
)

// Sizes of type, in points. Nothing is smaller than small.
const (
	small   = 9.0
	verdict = 10.5
	heading = 11.0
	leading = 1.15 // of a line, in sizes of its type
)

// A pen draws on one page.
type pen struct {
	*Drawing
	faces *faces
}

// text draws s with its baseline at y, and returns where it ends.
func (p *pen) text(x, y, size float64, bold bool, s string) float64 {
	return p.put(Text{X: x, Y: y, Size: size, Bold: bold, S: s})
}

// put draws t, whose letters may be any and whose width is yet to be measured.
func (p *pen) put(t Text) float64 {
	f := p.faces.of(t.Bold)
	if t.S = legible(t.S); t.S == "" {
		return t.X
	}
	t.Width = f.width(t.S, t.Size)
	p.Texts = append(p.Texts, t)
	return t.X + t.Width
}

// width is how wide s will be.
func (p *pen) width(s string, size float64, bold bool) float64 {
	return p.faces.of(bold).width(legible(s), size)
}

// right draws s small, so that it ends at x.
func (p *pen) right(x, y float64, s string) { p.text(x-p.width(s, small, false), y, small, false, s) }

// fitted is s, cut with an ellipsis where it is wider than w.
func (p *pen) fitted(s string, w, size float64, bold bool) string {
	if p.width(s, size, bold) <= w {
		return s
	}
	letters := []rune(s)
	for len(letters) > 0 && p.width(string(letters)+"…", size, bold) > w {
		letters = letters[:len(letters)-1]
	}
	return strings.TrimRight(string(letters), " ") + "…"
}

// lines breaks s between words so that no line is wider than w, and inside a
// word that is wider by itself.
func (p *pen) lines(s string, w, size float64, bold bool) []string {
	var lines []string
	line := ""
	for _, word := range rules.Unbroken(s) {
		switch joined := strings.TrimPrefix(line+" "+word, " "); {
		case p.width(joined, size, bold) <= w:
			line = joined
			continue
		case line != "":
			lines = append(lines, line)
		}
		line = word
		for p.width(line, size, bold) > w {
			head, tail := p.split(line, w, size, bold)
			lines, line = append(lines, head), tail
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// atMost are the lines of s, but no more than n, the last one then with an
// ellipsis.
func (p *pen) atMost(n int, s string, w, size float64, bold bool) []string {
	lines := p.lines(s, w, size, bold)
	if len(lines) > n {
		lines = append(lines[:n-1:n-1], p.fitted(lines[n-1]+" …", w, size, bold))
	}
	return lines
}

// split parts a word after as many letters as fit, but one at least.
func (p *pen) split(word string, w, size float64, bold bool) (head, tail string) {
	letters := []rune(word)
	n := 1
	for n < len(letters)-1 && p.width(string(letters[:n+1]), size, bold) <= w {
		n++
	}
	return string(letters[:n]), string(letters[n:])
}

// para draws s broken to width w from the top y down, and returns where it ends.
func (p *pen) para(x, y, w, size float64, bold bool, s string) float64 {
	for _, line := range p.lines(s, w, size, bold) {
		p.text(x, y+ascent*size, size, bold, line)
		y += leading * size
	}
	return y
}

// heading draws a title with a line under it from the top y down, and returns
// where it ends.
func (p *pen) heading(x, y, w float64, s string) float64 {
	p.text(x, y+ascent*heading, heading, true, s)
	y += heading * 1.1
	p.line(0.8, Point{x, y}, Point{x + w, y})
	return y + 3
}

// line draws a line along points.
func (p *pen) line(width float64, points ...Point) {
	p.Paths = append(p.Paths, Path{Points: points, Width: width})
}

// area fills what lies within points, black, or white to clear what is under it.
func (p *pen) area(white bool, points ...Point) {
	p.Paths = append(p.Paths, Path{Points: points, White: white})
}

// corners are those of b, the first one twice.
func (b Box) corners() []Point {
	return []Point{{b.Left, b.Top}, {b.Right, b.Top}, {b.Right, b.Bottom}, {b.Left, b.Bottom}, {b.Left, b.Top}}
}

// verdict draws the word of v in a box that tells it from others without colour:
// pass in a thin line, tight in a thick one, unknown in a broken one, fail white
// on black. y is the baseline.
func (p *pen) verdict(x, y, size float64, v rules.Verdict) {
	pad := size * 0.3
	w := p.width(v.Loud(), size, true)
	b := Box{x, y - ascent*size - pad*0.5, x + w + 2*pad, y + pad*0.7}
	t := Text{X: x + pad, Y: y, Size: size, Bold: true, S: v.Loud()}
	frame := Path{Points: b.corners(), Width: 0.6}
	//exhaustive:enforce
	switch v {
	case rules.Fail:
		frame.Width, t.White = 0, true
	case rules.Unknown:
		frame.Width, frame.Dash = 1, []float64{2, 2}
	case rules.Tight:
		frame.Width = 1.8
	case rules.Pass:
	}
	p.Paths = append(p.Paths, frame)
	p.put(t)
}
