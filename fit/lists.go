package fit

import "slices"

// EachList calls do for every list of readings in f, in the order of the
// session file.
func (f *Fitting) EachList(do func(key string, values []float64)) {
	laid := func(from, to Reading) {
		for r := from; r < to; r++ {
			if len(f.Laid[r]) > 0 {
				do(LaidKey(r), f.Laid[r])
			}
		}
	}
	laid(0, firstHeight)
	for h := range f.Hangs {
		for r := firstHeight; r <= lastHeight; r++ {
			if list := f.Hangs[h].Heights[r]; len(list) > 0 {
				do(HeightKey(h, r), list)
			}
		}
	}
	laid(lastHeight+1, NumReadings)
	for i := range f.Changes {
		if list := f.Changes[i].Measured; len(list) > 0 {
			do(ChangeKey(i, true), list)
		}
	}
}

// WithLaid is a copy of f in which the laid length r was read n times as v.
func (f *Fitting) WithLaid(r Reading, v float64, n int) *Fitting {
	g := *f
	g.Laid[r] = slices.Repeat([]float64{v}, n)
	g.Kept = slices.DeleteFunc(slices.Clone(f.Kept), func(k Kept) bool { return k.Key == LaidKey(r) })
	return &g
}

// WithHeight is a copy of f in which hang h read the height r, y above its hip,
// n times. A hang to come starts with the hip as the last one read it.
func (f *Fitting) WithHeight(h int, r Reading, y float64, n int) *Fitting {
	g := *f
	g.Hangs = slices.Clone(f.Hangs)
	for len(g.Hangs) <= h {
		var hang Hang
		if last := len(g.Hangs) - 1; last >= 0 {
			hang.Heights[Hip] = g.Hangs[last].Heights[Hip]
		}
		g.Hangs = append(g.Hangs, hang)
	}
	if hip := g.Hangs[h].Heights[Hip]; len(hip) > 0 {
		y += Mean(hip)
	}
	g.Hangs[h].Heights[r] = slices.Repeat([]float64{y}, n)
	return &g
}

// Repeated is a copy of f in which the reading of in was taken n times afresh,
// with the mean that it has.
func (f *Fitting) Repeated(in *Input, n int) *Fitting {
	switch {
	case in.Change > 0:
		return f.LaidOn(in.Change-1, in.V, n)
	case !in.Reading.IsHeight():
		return f.WithLaid(in.Reading, in.V, n)
	}
	g := *f
	g.Hangs = slices.Clone(f.Hangs)
	g.Hangs[in.Hang].Heights[in.Reading] = slices.Repeat([]float64{in.V}, n)
	return &g
}

// LaidOn is a copy of f in which the length set by change i, from 0, was laid on
// n times as v.
func (f *Fitting) LaidOn(i int, v float64, n int) *Fitting {
	g := *f
	g.Changes = slices.Clone(f.Changes)
	g.Changes[i].Measured = slices.Repeat([]float64{v}, n)
	return &g
}
