package flow

import (
	"slices"
	"strings"

	"example.com/hangtape/fit"
	"example.com/hangtape/sessions"
)

// passedOver says whether the way leads past the question, because the session
// or the hang in hand asks for little. It is there to go to all the same.
func (a Ask) passedOver(d *Draft) bool {
	switch {
	case a.Aside != nil && a.Aside(d):
		return true
	case a.Kind == Reading && a.Reading < fit.NumReadings && slices.Contains(d.again, a.Reading):
		return false
	case a.Kind == Reading && (a.Reading.IsHeight() || a.Reading == fit.Ahead) && d.brief():
		return d.leavesOut(a.Reading)
	}
	if a.Key == "session.purpose" || a.Key == "session.notes" || !a.ofTheFitting() {
		return a.Key == "session.notes" && d.ReChecking() // it ends with what came out in its notes
	}
	switch {
	case d.carriedOver(a):
		return true
	case d.Session.Purpose == sessions.ReCheck:
		return a.Kind != Reading || !slices.Contains(reChecked, a.Reading)
	case d.reTuning():
		return !d.reTuned(a)
	case d.Short():
		return !d.picks(a)
	}
	return false
}

// Once says whether a reading, once it is taken, leads on to the next question,
// since this session takes each of them once: an answer holds an earlier one then.
// Whoever comes back takes as many more as they like.
func (d *Draft) Once(a Ask) bool {
	return (d.reTuning() || d.IsHeld()) && a.Kind == Reading && a.Reading < fit.NumReadings &&
		!slices.Contains(d.again, a.Reading) && a.Told(d) == 0
}

// ofTheFitting says whether the question is about what a fitting is made of: one
// of the tables of the file that come before its sign-off.
func (a Ask) ofTheFitting() bool {
	table, _, _ := strings.Cut(a.Key, ".")
	return slices.Contains([]string{"session", "tape", "climber", "hangs", "rope", "kit"}, table)
}

// reChecked are the readings of a re-check: what shows at the smallest cost
// whether anything moved.
var reChecked = []fit.Reading{fit.Hip, fit.ConnectorBottom, fit.GardaLevel, fit.KneeLevel, fit.GardaTaut}

// reTunedHeights are the heights that a re-tune reads on its way: those that the
// musts rest on. The others are there to go to.
var reTunedHeights = []fit.Reading{
	fit.Hip, fit.WristUp, fit.ConnectorBottom, fit.LeftHitchTop, fit.RightHitchTop, fit.BackupRings,
	fit.GardaLevel, fit.KneeLevel, fit.GardaTaut,
}

// reTuning says whether the session asks for what is new since another alone.
func (d *Draft) reTuning() bool {
	return d.Session.Purpose == sessions.ReTune && d.Followed != nil
}

// reTuned says whether a re-tune asks on its way: for the heights that matter,
// for lengths that are neither kept nor read yet, for what the news have made
// stale, and for what nobody may take over: the climber's mass, how far the rope
// hangs ahead, and who has inspected the kit.
func (d *Draft) reTuned(a Ask) bool {
	switch {
	case a.Kind == Reading && a.Reading.IsHeight():
		return slices.Contains(reTunedHeights, a.Reading)
	case slices.Contains([]string{massKey, "rope.ahead_mm", "kit.inspected_by", "kit.inspected"}, a.Key):
		return true
	case d.stale()[a.Key] != "":
		return true
	case a.Kind == Reading:
		return a.Told(d) == 0 && len(d.Followed.Fit.Laid[a.Reading]) > 0
	}
	return false
}
