package runs

import (
	"time"

	"example.com/hangtape/cmd/trial/instructor"
	"example.com/hangtape/cmd/trial/truth"
	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/advice"
)

// Full is one fitting with every reading taken.
type Full struct {
	Before Judged // as the climber came
	After  Judged // after the last change

	SomeKitFits bool
	Changes     int      // rounds of change that were made, two at most
	Misses      [3][]int // musts that can be mended and truly miss, an end each: as it came, after one change, after two
	Conflict    string   // the cause, where the advice found no set that passes
	Retied      int
	Numbers     int
	Hanging     time.Duration
}

const rounds = 2

// Which says which of the two answers of the advice is followed.
type Which int

// The answers.
const (
	LeastChange Which = iota
	BestFit
)

// Full fits a body with every reading, and follows the advice: it reads again what
// is asked for, then sets what the answer says, twice at most.
func (b *Bench) Full(body truth.Body, which Which) Full {
	w := b.world(body)
	d := b.dice(body, streamFull)
	var r Full
	_, room := w.BestKit(b.Bounds, &b.limits)
	r.SomeKitFits = room >= 0
	s := b.session(d, &w, instructor.FullPlan)
	s.ReadAll()
	a := b.settle(s)
	r.Before = b.judged(a, s)
	r.Numbers = s.Numbers
	r.Misses[0] = b.misses(s)
	for round := range rounds {
		r.Misses[round+1] = r.Misses[round]
		if b.settled(a) {
			continue
		}
		ok, cause := b.follow(s, which)
		if cause != "" {
			r.Conflict = cause
		}
		a = b.settle(s)
		if ok {
			r.Changes++
		}
		r.Misses[round+1] = b.misses(s)
	}
	r.After = b.judged(a, s)
	r.Retied, r.Hanging = s.Retied, s.Hanging
	return r
}

func (b *Bench) session(d truth.Dice, w *truth.World, plan instructor.Plan) *instructor.Session {
	k := b.kit(d, w)
	s := instructor.New(d, w, k, b.Bounds, plan)
	s.Fit.Survey = b.Survey
	return s
}

// Fitted says whether every must that can be mended truly held after so many
// changes.
func (r *Full) Fitted(changes int) bool { return len(r.Misses[changes]) == 0 }

// settled says whether every must that can be mended passes.
func (b *Bench) settled(a *rules.Assessment) bool {
	for e := range rules.NumEnds {
		end := truth.Ends[b.ends[e]]
		if end.Must && (end.Movable || b.ends[e] == truth.SlipForce) && a.End(e).Verdict != rules.Pass {
			return false
		}
	}
	return true
}

// follow does what the advice says: first the readings that would make a cheaper
// set do, or that an uncertain answer wants, then the answer. It says whether
// the kit was changed, and the cause of a conflict.
func (b *Bench) follow(s *instructor.Session, which Which) (changed bool, conflict string) {
	for range 2 {
		ans := advice.Advise("", &s.Fit, b.Limits, rules.MarkMetric)
		var wanted []string
		if ans.Sooner != nil && which == LeastChange {
			wanted = ans.Sooner.Readings
		} else if ans.Conflict != nil {
			wanted = ans.Conflict.Next
		}
		if len(wanted) == 0 {
			return b.apply(s, ans, which)
		}
		for _, key := range wanted {
			s.Retake(key)
		}
		if a := b.settle(s); b.settled(a) {
			return false, ""
		}
	}
	return b.apply(s, advice.Advise("", &s.Fit, b.Limits, rules.MarkMetric), which)
}

// apply sets what the answer says.
func (b *Bench) apply(s *instructor.Session, ans *advice.Answer, which Which) (changed bool, conflict string) {
	if ans.Conflict != nil {
		return false, ans.Conflict.Cause
	}
	changes := ans.LeastChange.Changes
	if which == BestFit && ans.BestFit.Feasible {
		changes = ans.BestFit.Changes
	}
	var set []instructor.Setting
	for _, c := range changes {
		if p, ok := pieceNamed(c.Piece); ok {
			set = append(set, instructor.Setting{Piece: p, To: c.To})
		} else {
			s.StayBelow(c.To)
		}
	}
	s.Set(set)
	return len(changes) > 0, ""
}

func pieceNamed(key string) (fit.Piece, bool) {
	for p := range fit.NumPieces {
		if p.Key() == key {
			return p, true
		}
	}
	return 0, false
}
