package sheet

import (
	"math"

	"example.com/hangtape/fit"
)

func (v view) dashed(width float64, a, b Point) {
	v.Paths = append(v.Paths, Path{Points: []Point{a, b}, Width: width, Dash: []float64{4, 2}})
}

// dot is a full circle with a radius in points.
func (v view) dot(p fit.Point, r float64) {
	if c := v.at(p); p.Known() {
		v.area(false, arc(c, r, r, 0, 2*math.Pi)...)
	}
}

func (v view) ellipse(e fit.Ellipse) []Point {
	return arc(v.at(e.Centre), e.RX*v.scale, e.RY*v.scale, 0, 2*math.Pi)
}

// oval is an upright oval from a to b, so many points wide to each side.
func (v view) oval(a, b Point, wide float64) []Point {
	return arc(Point{(a.X + b.X) / 2, (a.Y + b.Y) / 2}, wide, math.Abs(a.Y-b.Y)/2, 0, 2*math.Pi)
}

// capsule is the outline at a distance r in mm from the line from a to b.
func (v view) capsule(a, b fit.Point, r float64) []Point {
	p, q, r := v.at(a), v.at(b), r*v.scale
	turn := math.Atan2(q.Y-p.Y, q.X-p.X)
	out := append(arc(q, r, r, turn-math.Pi/2, turn+math.Pi/2), arc(p, r, r, turn+math.Pi/2, turn+3*math.Pi/2)...)
	return append(out, out[0])
}

// arc is part of an ellipse about c as a line along points.
func arc(c Point, rx, ry, from, to float64) []Point {
	const parts = 32
	points := make([]Point, parts+1)
	for i := range points {
		sin, cos := math.Sincos(from + (to-from)*float64(i)/parts)
		points[i] = Point{c.X + rx*cos, c.Y + ry*sin}
	}
	if to-from == 2*math.Pi {
		points[parts] = points[0]
	}
	return points
}
