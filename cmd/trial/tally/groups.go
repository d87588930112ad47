package tally

import (
	"math"

	"example.com/hangtape/cmd/trial/runs"
	"example.com/hangtape/cmd/trial/truth"
)

// A Group is the bodies of one sex or stature, so that none is served worse in
// silence.
type Group struct {
	Name string
	in   func(*truth.Body) bool

	Copied, ByEye, Stature, Least, Best Share // every must that can be mended truly holds; Best and Least after one change
	SomeKitFits                         Share
	FalsePass                           Share // of the told passes of musts
}

func groups() []Group {
	sex := func(s truth.Sex) func(*truth.Body) bool { return func(b *truth.Body) bool { return b.Sex == s } }
	band := func(from, to float64) func(*truth.Body) bool {
		return func(b *truth.Body) bool { return b.Stature >= from && b.Stature < to }
	}
	return []Group{
		{Name: "women", in: sex("F")},
		{Name: "men", in: sex("M")},
		{Name: "under 1600 mm", in: band(0, 1600)},
		{Name: "1600 to 1700 mm", in: band(1600, 1700)},
		{Name: "1700 to 1800 mm", in: band(1700, 1800)},
		{Name: "1800 to 1900 mm", in: band(1800, 1900)},
		{Name: "1900 mm and over", in: band(1900, math.Inf(1))},
	}
}

func (g *Group) add(r *runs.Row) {
	if !g.in(&r.Body) {
		return
	}
	g.Copied.Add(len(r.Thumb.Copied) == 0)
	g.ByEye.Add(len(r.Thumb.ByEye) == 0)
	g.SomeKitFits.Add(r.Thumb.SomeKitFits)
	if !r.Tool {
		return
	}
	g.Stature.Add(len(r.Stature.Misses) == 0)
	if r.Least.SomeKitFits {
		g.Least.Add(r.Least.Fitted(1))
		g.Best.Add(r.Best.Fitted(1))
	}
	var v Verdicts
	v.add(&r.Least.Before)
	s := Musts(&v.FalsePass)
	g.FalsePass.K, g.FalsePass.N = g.FalsePass.K+s.K, g.FalsePass.N+s.N
}
