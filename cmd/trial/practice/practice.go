// Package practice sets kits the way climbers do today, without a tape: by lengths
// that are handed on, or by eye. It is what the tool has to beat.
package practice

import "example.com/hangtape/cmd/trial/truth"

const inch = 25.4

// The lengths that are handed on (common practice, no source): loops of 12 in with
// 4 in of wraps, foot loop at the navel with boots on, main connector at the nose,
// tether 7 in. Of the backup bridge practice says nothing: it stays as bought.
const (
	loop     = 12 * inch
	wraps    = 4 * inch
	tether   = 7 * inch
	asBought = 600.0
)

// Copied sets w's kit by the lengths that are handed on, as near as hands come;
// nothing is measured. The rope above is that of the kit above. The wraps are
// changed in w.
func Copied(d truth.Dice, w *truth.World, b truth.Bounds, above truth.Kit) truth.Kit {
	w.WrapHeight = [2]float64{wraps, wraps}
	k := handedOn(w, b, above)
	return miss(b, k, func(p truth.Piece) float64 {
		switch p {
		case truth.MainBridge:
			return d.Tent(0, truth.SlideSpread)
		case truth.BackupBridge:
			return 0
		}
		return d.Tent(0, truth.TieSpread)
	})
}

// ByEye sets w's kit by the same practice, tuned on the climber by somebody who
// knows what each length is for: the hitch tops an inch under the raised wrist but
// the loops no longer than handed on, the Garda hitch at level two inches clear of
// the connector but the foot loop no longer than handed on, and a tether that lets
// the foot come half an inch past level. Each of the six lengths is judged to
// ± 1 in, evenly.
func ByEye(d truth.Dice, w *truth.World, b truth.Bounds, above truth.Kit) truth.Kit {
	w.WrapHeight = [2]float64{wraps, wraps}
	k := handedOn(w, b, above)
	for side, p := range [2]truth.Piece{truth.LeftLoop, truth.RightLoop} {
		k = shorter(k, w.Tune(k, p, b, func(k truth.Kit) float64 { return w.WristUp[side].Y - inch - w.Poses(k).HitchTop[side] }), p)
	}
	k = shorter(k, w.Tune(k, truth.FootLoop, b, func(k truth.Kit) float64 {
		p := w.Poses(k)
		return p.ConnectorBottom - 2*inch - p.Level
	}), truth.FootLoop)
	k = w.Tune(k, truth.Tether, b, func(k truth.Kit) float64 {
		p := w.Poses(k)
		return p.Taut - p.Level - inch/2
	})
	return miss(b, k, func(truth.Piece) float64 { return inch * (2*d.Float64() - 1) })
}

// handedOn is the kit that practice means, set exactly.
func handedOn(w *truth.World, b truth.Bounds, above truth.Kit) truth.Kit {
	k := above
	k.Lengths = [truth.NumPieces]float64{
		truth.LeftLoop: loop, truth.RightLoop: loop,
		truth.FootLoop: w.Navel, truth.Tether: tether, truth.BackupBridge: asBought,
	}
	return w.Tune(k, truth.MainBridge, b, func(k truth.Kit) float64 { return w.Poses(k).ConnectorTop - w.Nose.Y })
}

// shorter is whichever of the two kits has the shorter piece p.
func shorter(a, b truth.Kit, p truth.Piece) truth.Kit {
	if b.Lengths[p] < a.Lengths[p] {
		return b
	}
	return a
}

// miss is k with each piece off by what by says, within the bounds.
func miss(b truth.Bounds, k truth.Kit, by func(truth.Piece) float64) truth.Kit {
	for p := range truth.NumPieces {
		k.Lengths[p] = b.Clamp(p, k.Lengths[p]+by(p))
	}
	return k
}
