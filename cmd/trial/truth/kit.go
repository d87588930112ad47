package truth

import "math"

// A Piece is a length of the kit that can be changed.
type Piece int

// The pieces.
const (
	MainBridge Piece = iota
	LeftLoop
	RightLoop
	FootLoop
	Tether
	BackupBridge

	NumPieces
)

// A Kit is how the changeable lengths are set, mm: bridges, tether and foot loop
// laid on the ground and pulled snug, loops as they hang.
type Kit struct {
	Lengths    [NumPieces]float64
	LeastAbove float64 // the least rope above that the climber will use
	DrillAbove float64 // rope above during the drill
}

// AsOwned is the rope above that a climber starts with, mm; no length is set.
var AsOwned = Kit{LeastAbove: 3000, DrillAbove: 7000}

// How close hands come to a length that they set, mm, as a standard deviation: a
// cord tied anew, and a bridge that slides.
const (
	TieSpread   = 7.5
	SlideSpread = 2.8
)

// With is k with one length changed.
func (k Kit) With(p Piece, length float64) Kit {
	k.Lengths[p] = length
	return k
}

// Bounds are the least and the most that each piece can be set to.
type Bounds [NumPieces][2]float64

// Clamp is length moved within the bounds of p.
func (b Bounds) Clamp(p Piece, length float64) float64 {
	return min(max(length, b[p][0]), b[p][1])
}

// SchoolBounds are those of a kit as a school would own it.
var SchoolBounds = Bounds{
	MainBridge:   {700, 1400},
	LeftLoop:     {200, 500},
	RightLoop:    {200, 500},
	FootLoop:     {800, 1300},
	Tether:       {80, 400},
	BackupBridge: {400, 900},
}

// Tune is k with the piece p set to the length within b at which of is 0, or to
// the end of b where it comes nearest to 0.
func (w *World) Tune(k Kit, p Piece, b Bounds, of func(Kit) float64) Kit {
	at := func(length float64) float64 { return of(k.With(p, length)) }
	lo, hi := b[p][0], b[p][1]
	if x := root(lo, hi, at); !math.IsNaN(x) {
		return k.With(p, x)
	}
	if math.Abs(at(lo)) < math.Abs(at(hi)) {
		return k.With(p, lo)
	}
	return k.With(p, hi)
}
