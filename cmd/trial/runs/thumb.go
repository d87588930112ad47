package runs

import (
	"example.com/hangtape/cmd/trial/practice"
	"example.com/hangtape/cmd/trial/truth"
)

// A Thumb is what the two rules of thumb come to for one body: the musts that
// truly miss, an end each, and whether any kit within the bounds fits at all.
type Thumb struct {
	Copied, ByEye []int
	SomeKitFits   bool
}

// Thumb sets both kits on sound gear.
func (b *Bench) Thumb(body truth.Body) Thumb {
	var t Thumb
	w := b.soundWorld(body)
	_, room := w.BestKit(b.Bounds, &b.limits)
	t.SomeKitFits = room >= 0
	d := b.dice(body, streamPractice)
	copied := w.Margins(practice.Copied(d, &w, b.Bounds, truth.AsOwned), &b.limits)
	eye := w.Margins(practice.ByEye(d, &w, b.Bounds, truth.AsOwned), &b.limits)
	t.Copied, t.ByEye = mendable(copied.Misses()), mendable(eye.Misses())
	return t
}
