package sessionstest

import (
	"math"

	"example.com/hangtape/fit"
	"example.com/hangtape/sessions"
)

// changeBytes is how many bytes a change of Changed takes.
const changeBytes = 4

// mostChanges is how many changes Changed makes at most.
const mostChanges = 40

// Changed is a session of its own like base, with what bytes say done to it, four
// of them a change: what, to which, and two for how much. Whatever the bytes are,
// every number is one that a file may hold, though numbers may contradict each
// other (fit.Fitting.Faults says where).
func Changed(base *sessions.Session, bytes []byte) *sessions.Session {
	s := base.Clone()
	for n := 0; len(bytes) >= changeBytes && n < mostChanges; n++ {
		c := change{s, &s.Fit, int(bytes[1]), amount(uint16(bytes[2])<<8 | uint16(bytes[3]))}
		changes[int(bytes[0])%len(changes)](c)
		bytes = bytes[changeBytes:]
	}
	return s
}

// A change does one thing to s.
type change struct {
	s     *sessions.Session
	f     *fit.Fitting // of s
	which int          // 0 to 255
	by    amount
}

// An amount is the two bytes that say how much.
type amount uint16

// share is the amount as a share of the whole.
func (a amount) share() float64 { return float64(a) / math.MaxUint16 }

// between is a number from least to most. One in eight lies at an end.
func (a amount) between(least, most float64) float64 {
	switch a % 16 {
	case 0:
		return least
	case 1:
		return most
	}
	return least + a.share()*(most-least)
}

// about is a number near v, or now and then far from it.
func (a amount) about(v float64) float64 {
	away := a.share() - 0.5
	switch a % 8 {
	case 0:
		away *= 3000
	case 1:
		away = math.Round(away * 100)
	case 2:
		return v * (1 + away)
	default:
		away *= 80
	}
	return v + away
}

// longest is the longest length of a file, in mm.
const longest = 1e5

// laidLength is v as a laid length may be.
func laidLength(v float64) float64 { return min(max(v, 0.5), longest) }

// changes are what can be done, by number.
var changes = []func(c change){
	change.leaveOut, change.move, change.move, change.move, change.repeat, change.read,
	change.hangAgain, change.posture, change.rope, change.piece, change.piece, change.setLength,
	change.keep, change.limit, change.climber, change.tape, change.kit, change.moveZero,
}
