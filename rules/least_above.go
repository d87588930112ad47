package rules

import "example.com/hangtape/fit"

const (
	aboveStep = 100.0   // mm
	mostAbove = 200_000 // mm: taller than any tree that is climbed
)

// LeastAbove is the shortest rope above the climber, in mm on whole steps of
// 100 mm, with which slip-force passes with its guard under the limits l; false
// where no rope is long enough, or something that it takes is not known. f must
// have no Faults.
func LeastAbove(f *fit.Fitting, l Limits, o fit.Options) (mm float64, ok bool) {
	g := *f
	g.Rope.LeastAbove = fit.Some(mostAbove)
	m := fit.NewModel(&g, o)
	e := SlipForce.Ends()[0]
	passes := func(mm float64) bool {
		m.SetLeastAbove(mm)
		p := m.Propagate(1, func(_ []float64, s *fit.State, out []float64) { out[0] = e.margin(s, &l) })
		u, shift := p.U(0)
		return p.Values[0] >= Guard(GuardFactor, u, shift)
	}
	lo, hi := 0, int(mostAbove/aboveStep)
	if !passes(mostAbove) {
		return 0, false
	}
	for hi-lo > 1 { // hi passes, lo does not
		if mid := (lo + hi) / 2; passes(float64(mid) * aboveStep) {
			hi = mid
		} else {
			lo = mid
		}
	}
	return float64(hi) * aboveStep, true
}
