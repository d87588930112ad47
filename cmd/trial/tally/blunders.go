package tally

import (
	"example.com/hangtape/cmd/trial/runs"
)

// Blunders counts how single blunders were noticed.
type Blunders struct {
	Noticed, Blamed []Share // by size
	Clean           Share   // sessions without a blunder that raised an alarm
	Alarms          map[string]int
	Repeats         Share
}

func (b *Blunders) add(r *runs.Blunder) {
	if b.Alarms == nil {
		b.Alarms = map[string]int{}
		b.Noticed, b.Blamed = make([]Share, len(runs.BlunderSizes)), make([]Share, len(runs.BlunderSizes))
	}
	b.Clean.Add(len(r.FalseAlarms) > 0)
	seen := map[string]bool{}
	for _, name := range r.FalseAlarms {
		if !seen[name] {
			b.Alarms[name]++
		}
		seen[name] = true
	}
	b.Repeats.Add(r.Repeats)
	if r.Tried {
		for i := range runs.BlunderSizes {
			b.Noticed[i].Add(r.Noticed[i])
			if r.Noticed[i] {
				b.Blamed[i].Add(r.Blamed[i])
			}
		}
	}
}
