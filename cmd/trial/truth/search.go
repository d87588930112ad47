package truth

import "math"

// searchScale makes margins comparable in the search: mm for lengths, and for the
// knee what a millimetre of tether turns it by.
var searchScale = func() (s [NumEnds]float64) {
	for e := range s {
		s[e] = 1
	}
	s[KneeBends] = 0.14
	return s
}()

// BestKit searches the bounds for the kit whose smallest true margin over the
// musts that lengths can move is greatest, and tells that margin in mm (knee bend
// taken as about 7 mm a degree): below 0 no kit within the bounds fits this
// climber. Slip force is met by practice, by staying further below the union, and
// takes no part.
//
// It climbs from several starts, until one ends well inside the limits, by trying
// each length up and down, then each pair that goes together, with steps that halve
// from 64 mm to 1 mm.
func (w *World) BestKit(b Bounds, l *Limits) (Kit, float64) {
	var best Kit
	value := math.Inf(-1)
	for _, loop := range []float64{305, 250, 200} {
		for _, foot := range []float64{w.Navel, w.Navel - 100, w.Navel + 100} {
			if k, v := w.climb(w.start(b, loop, foot), b, l); v > value {
				best, value = k, v
			}
			if value > wideEnough {
				return best, value
			}
		}
	}
	return best, value
}

// wideEnough is a smallest margin, mm, beyond which no other start is tried.
const wideEnough = 30

// start is a kit to climb from.
func (w *World) start(b Bounds, loop, foot float64) Kit {
	k := AsOwned
	k.Lengths = [NumPieces]float64{MainBridge: 1100, LeftLoop: loop, RightLoop: loop, FootLoop: foot, Tether: 150, BackupBridge: 600}
	for p := range NumPieces {
		k.Lengths[p] = b.Clamp(p, k.Lengths[p])
	}
	return k
}

// moves are the directions of the search: single lengths, both loops, and pairs
// that keep a pose where it is.
var moves = [][NumPieces]float64{
	{MainBridge: 1},
	{LeftLoop: 1, RightLoop: 1},
	{LeftLoop: 1},
	{RightLoop: 1},
	{FootLoop: 1},
	{Tether: 1},
	{BackupBridge: 1},
	{FootLoop: 1, Tether: 1},
	{FootLoop: 1, BackupBridge: 1},
	{MainBridge: 1, LeftLoop: -0.6, RightLoop: -0.6},
	{MainBridge: 1, LeftLoop: -0.6, RightLoop: -0.6, Tether: 0.6},
	{MainBridge: 1, FootLoop: 0.6, Tether: 0.6},
	{MainBridge: 1, LeftLoop: -0.6, RightLoop: -0.6, FootLoop: 0.6},
	{MainBridge: 1, LeftLoop: -0.6, RightLoop: -0.6, FootLoop: 0.6, Tether: 0.6},
	{MainBridge: 1, LeftLoop: -0.6, RightLoop: -0.6, FootLoop: 0.6, BackupBridge: 0.6},
	{FootLoop: 1, Tether: 0.5},
	{FootLoop: 0.5, Tether: 1},
}

// climb is the best kit that moves lead to from k, and its smallest margin.
func (w *World) climb(k Kit, b Bounds, l *Limits) (Kit, float64) {
	worth := func(k Kit) float64 {
		p := w.Poses(k)
		var m Margins
		w.lengthMargins(&m, k, l, &p)
		return m.worst(&searchScale)
	}
	value := worth(k)
	for step := 64.0; step >= 1; step /= 2 {
		for moved := true; moved; {
			moved = false
			for _, move := range moves {
				for _, way := range []float64{step, -step} {
					try := k
					for p := range NumPieces {
						try.Lengths[p] = b.Clamp(p, k.Lengths[p]+way*move[p])
					}
					if v := worth(try); v > value+1e-3 {
						k, value, moved = try, v, true
					}
				}
			}
		}
	}
	return k, value
}
