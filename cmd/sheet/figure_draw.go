package sheet

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"example.com/hangtape/fit"
)

// A view puts millimetres of the side view on the page.
type view struct {
	*pen
	scale  float64 // points for each mm
	x0, y0 float64 // where the hip point is
}

func (v view) at(p fit.Point) Point { return Point{v.x0 + p.X*v.scale, v.y0 - p.Y*v.scale} }

const (
	barHigh    = 18.0
	textGap    = 16.0 // from the drawing to its labels
	letterRoom = 11.0
)

// figure draws the side view into b under its title, or says why there is none.
func (p *pen) figure(f *Figure, b Box) {
	b.Top = p.heading(b.Left, b.Top, b.Right-b.Left, f.Title)
	if f.Instead != "" {
		p.para(b.Left, b.Top, b.Right-b.Left, small, false, f.Instead)
		return
	}
	p.sideView(f, b)
}

// sideView draws the side view into b, as large as it fits with its labels beside
// it.
func (p *pen) sideView(f *Figure, b Box) {
	high, low := f.sides()
	v := p.viewOf(f, b, high, low)
	if room := float64(len(high)) * leading * small; v.at(fit.Point{Y: f.thigh()}).Y-b.Top < room {
		high, low = nil, f.needed(b.Bottom-barHigh-b.Top) // too small for labels beside the rope
		v = p.viewOf(f, b, high, low)
	}
	v.body(&f.Shape)
	v.kit(&f.Shape)
	in, thigh := extent(&f.Shape), b.Top
	if high != nil {
		thigh = v.at(fit.Point{Y: f.thigh()}).Y
	}
	v.labels(high, v.x0+f.ropeRight()*v.scale+textGap, b.Top, thigh)
	b.Bottom = max(v.at(fit.Point{Y: in.Top}).Y, thigh+float64(len(low))*leading*small) + barHigh
	v.labels(low, v.x0+in.Right*v.scale+textGap, thigh, b.Bottom-barHigh)
	x, y := b.Left+1, b.Bottom-8
	p.line(1.4, Point{x, y}, Point{x + f.Bar*v.scale, y})
	for _, end := range []float64{x, x + f.Bar*v.scale} {
		p.line(1.4, Point{end, y - 3}, Point{end, y + 3})
	}
	p.text(x+f.Bar*v.scale+6, y+3, small, false, fmt.Sprintf("%s, scale 1 : %.0f", f.BarText, ptPerMM/v.scale))
}

// viewOf is the largest view in b with these labels beside rope and legs.
func (p *pen) viewOf(f *Figure, b Box, high, low []Label) view {
	in := extent(&f.Shape)
	scale := min((b.Right-b.Left-p.beside(high))/(f.ropeRight()-in.Left), (b.Right-b.Left-p.beside(low))/(in.Right-in.Left),
		(b.Bottom-barHigh-b.Top)/(in.Bottom-in.Top))
	return view{p, scale, b.Left - in.Left*scale, b.Top + in.Bottom*scale}
}

// ropeRight is where there is room beside the rope, in mm.
func (f *Figure) ropeRight() float64 { return f.Shape.At[fit.MarkRope].X + 90 }

// needed are the labels that fit into a height: of a small drawing those of the
// pieces, and the Garda hitch's.
func (f *Figure) needed(high float64) []Label {
	if float64(len(f.Labels))*leading*small <= high {
		return f.Labels
	}
	return slices.DeleteFunc(slices.Clone(f.Labels), func(l Label) bool { return l.Letter == "" && l.Point != f.Shape.At[fit.MarkGardaTop] })
}

// thigh is the height, in mm, over which there is room beside the rope.
func (f *Figure) thigh() float64 { return max(f.Shape.At[fit.MarkKnee].Y, 0) + 60 }

// sides parts the labels into those that stand beside the rope and those that
// stand beside the legs.
func (f *Figure) sides() (high, low []Label) {
	for _, l := range f.Labels {
		if l.Y > f.thigh() {
			high = append(high, l)
		} else {
			low = append(low, l)
		}
	}
	return high, low
}

// beside is the width that labels take beside the drawing.
func (p *pen) beside(labels []Label) float64 {
	w := 0.0
	for _, l := range labels {
		w = max(w, p.width(l.Text, small, false))
	}
	return w + letterRoom + textGap
}

// extent is what the shape takes up, in mm; Top and Bottom are heights, the
// lower one first.
func extent(sh *fit.Shape) Box {
	head := sh.Head.Centre
	b := Box{head.X - sh.Head.RX, math.Inf(1), math.Inf(-1), math.Inf(-1)}
	if !head.Known() {
		b.Left = -100
	}
	for _, l := range sh.Lines {
		for _, m := range []fit.Landmark{l.From, l.To} {
			p := sh.At[m]
			b = Box{min(b.Left, p.X), min(b.Top, p.Y), max(b.Right, p.X), max(b.Bottom, p.Y)}
		}
	}
	const room = 60 // of limbs about their lines, and boots
	return Box{b.Left - room, b.Top - room, b.Right + room + 70, b.Bottom}
}

// body draws limbs and trunk as outlines, so that the kit stands out from them.
func (v view) body(sh *fit.Shape) {
	const thick = 90.0 // mm
	var limbs [][]Point
	for _, l := range sh.Lines {
		if l.Stroke == fit.StrokeBody && l.To != fit.MarkWristUp && l.To != fit.MarkNeck {
			limbs = append(limbs, v.capsule(sh.At[l.From], sh.At[l.To], thick/2))
		}
	}
	if sole := sh.At[fit.MarkSole]; sole.Known() {
		limbs = append(limbs, v.capsule(fit.Point{X: sole.X - 40, Y: sole.Y + 30}, fit.Point{X: sole.X + 130, Y: sole.Y + 30}, 30))
	}
	if h := sh.Head; h.Centre.Known() {
		limbs = append(limbs, v.ellipse(h))
	}
	for _, outline := range limbs {
		v.line(1.4, outline...)
	}
	for _, outline := range limbs {
		v.area(true, outline...)
	}
	v.dot(sh.At[fit.MarkHip], 2.2)
}

// kit draws what hangs between saddle and rope.
func (v view) kit(sh *fit.Shape) {
	const legs = 1.3 // pt, half of what the legs of rope are apart
	for _, l := range sh.Lines {
		a, b := v.at(sh.At[l.From]), v.at(sh.At[l.To])
		//exhaustive:enforce
		switch l.Stroke {
		case fit.StrokeRope:
			for _, dx := range []float64{-legs, legs} {
				v.line(0.7, Point{a.X + dx, a.Y}, Point{b.X + dx, b.Y})
			}
		case fit.StrokeGround:
			v.line(1.6, a, b)
		case fit.StrokeBridge:
			v.line(1.6, a, b)
		case fit.StrokeTether, fit.StrokeHitchLoop:
			v.line(2.4, a, b)
		case fit.StrokeFootLoop:
			v.dashed(1.2, a, b)
		case fit.StrokeConnector:
			v.line(1.5, v.oval(a, b, 3.2)...)
		case fit.StrokeWraps:
			v.area(false, Point{a.X - 3.5, a.Y}, Point{a.X + 3.5, a.Y}, Point{b.X + 3.5, b.Y}, Point{b.X - 3.5, b.Y})
		case fit.StrokeGarda:
			v.area(false, Point{a.X - 4.5, a.Y}, Point{a.X + 4.5, a.Y}, Point{b.X + 4.5, b.Y}, Point{b.X - 4.5, b.Y})
		case fit.StrokeBody: // drawn under the kit
		}
	}
	for _, m := range []fit.Landmark{fit.MarkMainRings, fit.MarkBackupRings} {
		v.dot(sh.At[m], 1.8)
	}
}

// labels stand one under the other at x, each as near to its place as the others
// leave it, with a line to it.
func (v view) labels(labels []Label, x, top, bottom float64) {
	labels = slices.Clone(labels)
	slices.SortStableFunc(labels, func(a, b Label) int { return cmp.Compare(b.Y, a.Y) })
	const high = leading * small
	y := make([]float64, len(labels))
	for i, l := range labels {
		y[i] = max(v.at(l.Point).Y, top+high/2)
		if i > 0 {
			y[i] = max(y[i], y[i-1]+high)
		}
	}
	for i := len(y) - 1; i >= 0; i-- { // and back up where the last ones are too low
		limit := bottom - high/2
		if i < len(y)-1 {
			limit = y[i+1] - high
		}
		y[i] = min(y[i], limit)
	}
	for i, l := range labels {
		p := v.at(l.Point)
		v.line(0.35, p, Point{x - textGap/2, y[i]}, Point{x - 2, y[i]})
		v.dot(l.Point, 1.1)
		base := y[i] + 0.35*small
		if l.Letter != "" {
			v.text(x, base, small, true, l.Letter)
		}
		v.text(x+letterRoom, base, small, false, l.Text)
	}
}
