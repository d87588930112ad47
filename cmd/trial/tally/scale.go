package tally

import (
	"fmt"

	"example.com/hangtape/cmd/trial/runs"
	"example.com/hangtape/cmd/trial/truth"
	"example.com/hangtape/rules"
)

// A Scale is everything counted at one width of the true spreads.
type Scale struct {
	Width float64

	Bodies, SomeKitFits int
	Copied, ByEye       Fits // over all bodies
	Stature             Fits // over those that the tool was tried on
	StatureAnswered     Share
	Least, Best         Fitted
	Drawn, Left         Verdicts // the kits as they came, and as the best fit left them
	ShortVerdicts       Verdicts
	Numbers, Short      Mean // written down: all readings, and those that the tool asked for
	ShortMusts          Mean
	Near                Share // kits that truly lie within 3 u of a limit that lengths can move
	Coverage            [truth.NumEnds]Share
	Off                 [truth.NumEnds][]float64 // in standard uncertainties
	Blunders            Blunders
	Groups              []Group
}

// Fits counts bodies on which every must that can be mended truly holds, and what
// missed on the others, a check each.
type Fits struct {
	All    Share
	Misses [rules.NumChecks]int
}

func (f *Fits) add(misses []int) {
	f.All.Add(len(misses) == 0)
	var seen [rules.NumChecks]bool
	for _, e := range misses {
		c, _ := rules.CheckNamed(truth.Ends[e].Check)
		if !seen[c] {
			f.Misses[c]++
		}
		seen[c] = true
	}
}

// Fitted counts, of the bodies that some kit within the bounds fits, those that are
// fitted as they came and after one and two rounds of change.
type Fitted struct {
	After     [3]Share
	AfterOne  Fits // what missed after one round
	Retied    Mean
	Minutes   Mean
	Conflicts map[string]int
}

func (f *Fitted) add(r *runs.Full) {
	f.Retied.Add(float64(r.Retied))
	f.Minutes.Add(r.Hanging.Minutes())
	if r.Conflict != "" {
		if f.Conflicts == nil {
			f.Conflicts = map[string]int{}
		}
		f.Conflicts[r.Conflict]++
	}
	if r.SomeKitFits {
		for i := range f.After {
			f.After[i].Add(r.Fitted(i))
		}
		f.AfterOne.add(r.Misses[1])
	}
}

// Count counts the rows of one scale.
func Count(width float64, rows []runs.Row) *Scale {
	s := &Scale{Width: width, Groups: groups()}
	for i := range rows {
		s.add(&rows[i])
	}
	return s
}

func (s *Scale) add(r *runs.Row) {
	s.Bodies++
	if r.Thumb.SomeKitFits {
		s.SomeKitFits++
	}
	s.Copied.add(r.Thumb.Copied)
	s.ByEye.add(r.Thumb.ByEye)
	for i := range s.Groups {
		s.Groups[i].add(r)
	}
	if !r.Tool {
		return
	}
	s.Stature.add(r.Stature.Misses)
	s.StatureAnswered.Add(r.Stature.Answered)
	s.Least.add(&r.Least)
	s.Best.add(&r.Best)
	s.Drawn.add(&r.Least.Before)
	s.Left.add(&r.Best.After)
	s.ShortVerdicts.add(&r.Short.Judged)
	s.Numbers.Add(float64(r.Least.Numbers))
	s.Short.Add(float64(r.Short.Numbers))
	s.ShortMusts.Add(float64(r.Short.NumbersMusts))
	s.cover(&r.Least.Before)
	s.Blunders.add(&r.Blunder)
}

// Name is the scale as a column head.
func (s *Scale) Name() string { return fmt.Sprintf("%gx", s.Width) }
