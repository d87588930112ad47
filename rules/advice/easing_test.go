package advice

import (
	"math"
	"testing"

	"example.com/hangtape/rules"
)

// A limit is eased by the least whole millimetre or degree that does, the way in
// which it asks for less, within what a school may set, and only where that is
// less than another limit would have to be.
func TestLeastEasing(t *testing.T) {
	a := advising(t, "1-good-kit", wide)
	a.chooser.sets = []set{0} // nothing is changed but limits
	sub := a.subjects[0]
	ways := map[bool]int{}
	for l := range rules.NumLimits {
		if u := l.Info().Unit; u != "mm" && u != "deg" {
			continue
		}
		var now, then [rules.NumEnds]float64
		limits := sub.limits
		rules.Margins(sub.assessed.State(), &limits, now[:])
		limits[l]++
		rules.Margins(sub.assessed.State(), &limits, then[:])
		var up, down bool // whether raising the limit asks for less, or for more
		// short makes the musts that the limit moves short by so much of it.
		short := func(by float64) {
			for _, d := range a.chooser.musts {
				spare := 1000.0
				if slope := then[d.e] - now[d.e]; slope != 0 {
					spare, up, down = -by*math.Abs(slope), slope > 0, slope < 0
				}
				d.more = sum{}
				at := d.at(&choice{})
				d.more.margin = at.guard(d.factor) + spare - at.margin
			}
		}
		if short(0); !up && !down {
			continue
		}
		ways[up]++
		room := math.Floor(sub.limits[l] - l.Info().Bounds[0])
		if up {
			room = math.Floor(l.Info().Bounds[1] - sub.limits[l])
		}
		for _, c := range []struct {
			by   float64
			best *Easing
			want float64
			ok   bool
		}{
			{0.5, nil, 1, room >= 1}, {6.5, nil, 7, room >= 7}, {6.5, &Easing{By: 8}, 7, room >= 7}, {6.5, &Easing{By: 7}, 0, false}, {0.5, &Easing{By: 2}, 1, room >= 1},
			{room - 0.5, nil, room, room >= 1}, {room + 0.5, nil, 0, false},
		} {
			short(c.by)
			if got, ok := a.eased(l, c.best); ok != c.ok || ok && got != c.want {
				t.Errorf("%s short by %g, best %+v: %g %t, want %g %t", l, c.by, c.best, got, ok, c.want, c.ok)
			}
		}
	}
	if ways[true] < 2 || ways[false] < 2 {
		t.Errorf("limits raised and lowered: %v, too few", ways)
	}
}
