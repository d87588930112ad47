package runs

import (
	"example.com/hangtape/cmd/trial/practice"
	"example.com/hangtape/cmd/trial/truth"
)

// near are the lengths that bring one must near its limit, and about how sure the
// tool is of it when all is read, in its unit.
var near = []struct {
	end   int
	piece truth.Piece
	u     float64
}{
	{truth.ReachLeft, truth.LeftLoop, 5},
	{truth.ReachRight, truth.RightLoop, 5},
	{truth.UnderConnector, truth.MainBridge, 7},
	{truth.ReleaseRoom, truth.BackupBridge, 5},
	{truth.LetsLevel, truth.Tether, 7},
	{truth.KneeBends, truth.FootLoop, 1},
	{truth.DropAbove, truth.FootLoop, 11},
}

// kit is what the climber comes with: half of them near a limit (true margin
// within three standard uncertainties of 0), the rest copied or set by eye.
func (b *Bench) kit(d truth.Dice, w *truth.World) truth.Kit {
	switch p := d.Float64(); {
	case p < 0.25:
		return practice.Copied(d, w, b.Bounds, truth.AsOwned)
	case p < 0.5:
		return practice.ByEye(d, w, b.Bounds, truth.AsOwned)
	}
	k, _ := w.BestKit(b.Bounds, &b.limits)
	for p := range truth.NumPieces {
		k.Lengths[p] = b.Bounds.Clamp(p, k.Lengths[p]+20*(2*d.Float64()-1))
	}
	n := near[d.IntN(len(near))]
	target := 3 * n.u * (2*d.Float64() - 1)
	return w.Tune(k, n.piece, b.Bounds, func(k truth.Kit) float64 {
		m := w.Margins(k, &b.limits)
		return m[n.end] - target
	})
}
