package flow

import (
	"fmt"
	"strings"
	"time"

	"example.com/hangtape/rules"
)

func (s *State) downNow(now time.Time) {
	if !s.Hanging() {
		s.Said = Said{Kind: Noted, Text: "nobody hangs: the clock does not run"}
		return
	}
	d := s.Draft.clone()
	if d.Drilling() {
		if at, ok := s.drillStepAt(); ok {
			d.stopDrill(at, "down at once")
		}
	}
	d.stop(now)
	d.Down = true
	s.commit(d)
	s.move(s.placeOf("down"))
}

// stop ends the hang or the drill that runs. A clock that went backwards ends it
// at its start.
func (d *Draft) stop(now time.Time) {
	if d.Drilling() {
		d.endDrill(now)
		return
	}
	d.drill.just = false
	h := &d.Session.Fit.Hangs[len(d.Session.Fit.Hangs)-1]
	h.Ended = now
	if now.Before(h.Started) {
		h.Ended = h.Started
	}
}

// resume takes back that the last hang, or the drill, ended.
func resume(d *Draft) {
	if d.drill.just {
		d.Session.Drill.Done, d.drill.just = time.Time{}, false
		unstop(d)
		return
	}
	d.Session.Fit.Hangs[len(d.Session.Fit.Hangs)-1].Ended = time.Time{}
}

// thisHang names the hang that runs, the n-th, where a report of it would have a
// height read again in the hang to come.
func thisHang(r *rules.Report, n int) {
	to, now := fmt.Sprintf("hangs.%d.", n+1), fmt.Sprintf("hangs.%d.", n)
	here := func(key *string) {
		if rest, ok := strings.CutPrefix(*key, to); ok {
			*key = now + rest
		}
	}
	for i := range r.Checks {
		for j := range r.Checks[i].Missing {
			here(&r.Checks[i].Missing[j])
		}
	}
	for i := range r.Next {
		here(&r.Next[i].Reading)
	}
}

// HangingSince is when the climber who hangs now was up.
func (d *Draft) HangingSince() time.Time {
	if d.Drilling() {
		return d.Session.Drill.Started
	}
	h := d.Session.Fit.Hangs
	return h[len(h)-1].Started
}

// gettingDown is the order of getting a climber down, a paragraph each.
func gettingDown() []string {
	var out []string
	for i, l := range rules.GettingDown() {
		out = append(out, fmt.Sprintf("%d. %s", i+1, l))
	}
	return out
}
