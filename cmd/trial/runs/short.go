package runs

import (
	"example.com/hangtape/cmd/trial/instructor"
	"example.com/hangtape/cmd/trial/truth"
	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// Short is a fitting in which the tool's own next reading decides what is read.
type Short struct {
	Judged       Judged // when no verdict can change
	Numbers      int    // written down by then
	NumbersMusts int    // written down when no must's verdict could change
}

// Short measures a kit that came tied and the climber's stature once, then reads
// what the tool asks for, musts first: once, and three times afresh where it asks
// again. It stops when no verdict can change: nothing is asked for that was not
// given, or what is asked for can turn nothing.
func (b *Bench) Short(body truth.Body) Short {
	w := b.world(body)
	s := b.session(b.dice(body, streamFull), &w, instructor.Once)
	s.ReadLaid(append([]fit.Reading{fit.Stature}, kitReadings...))
	var r Short
	a := b.settle(s)
	given := map[string]int{}
	for _, kind := range []rules.Kind{rules.Must, rules.Should} {
		for {
			key := wanted(a, kind, given)
			if key == "" {
				break
			}
			s.Plan = instructor.Once
			if given[key]++; given[key] > 1 || taken(&s.Fit, key) {
				given[key], s.Plan = 2, instructor.Thrice
			}
			s.Retake(key)
			a = b.settle(s)
		}
		if kind == rules.Must {
			r.NumbersMusts = s.Numbers
		}
	}
	r.Judged, r.Numbers = b.judged(a, s), s.Numbers
	return r
}

// wanted is the next reading of the first check of the kind that asks for one that
// can still turn its verdict and was not given twice.
func wanted(a *rules.Assessment, kind rules.Kind, given map[string]int) string {
	for _, w := range a.Report("").Wanted(kind, func(key string) bool { return given[key] >= 2 }) {
		return w.Reading
	}
	return ""
}

// taken says whether the key's reading was written down before it was asked for.
func taken(f *fit.Fitting, key string) bool {
	for r := range fit.NumReadings {
		if !r.IsHeight() && fit.LaidKey(r) == key {
			return len(f.Laid[r]) > 0
		}
	}
	return false
}
