package flow

import (
	"slices"
	"strings"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/drill"
	"example.com/hangtape/sessions"
)

// DrillStep is the ID of the step of the ground drill.
const DrillStep = "drill"

// A drilling is what is worked out for the drill of a draft, and not part of the
// session.
type drilling struct {
	plan *drill.Plan   // nil where the rules cannot run
	seen *drill.Review // nil where there was no drill
	just bool          // its clock was stopped, and what it has shown was not read yet

	required bool    // the school does not do without it
	climb    float64 // mm, how high a climb goes whose moves are counted; 0 until it is told
}

// passed says whether the drill was done and has shown what it should: nothing
// leads to it again.
func (d *drilling) passed() bool { return d.seen != nil && d.seen.Verdict == rules.Pass }

// Drilling says whether a drill runs: its climber hangs.
func (d *Draft) Drilling() bool {
	r := d.Session.Drill
	return r != nil && !r.Started.IsZero() && r.Done.IsZero()
}

// startDrill begins the drill, or begins it anew.
func (d *Draft) startDrill(now time.Time) {
	note := ""
	if r := d.Session.Drill; r != nil { // that one was stopped before stays to be read
		note = strings.ReplaceAll(r.Note, stoppedAt, "Before that stopped at ")
	}
	d.Session.Drill = &sessions.Drill{Started: now.UTC().Truncate(time.Second), Note: note}
	d.drill.just = false
}

// endDrill stops the drill's clock. One that went backwards ends it at its start.
func (d *Draft) endDrill(now time.Time) {
	r := d.Session.Drill
	r.Done = now.UTC().Truncate(time.Second)
	if r.Done.Before(r.Started) {
		r.Done = r.Started
	}
	d.drill.just = true
}

// stoppedAt starts the sentence in the drill's note that tells where it was stopped.
const stoppedAt = "Stopped at "

// notedAs are the steps as that note tells them, which is read back: it stays as it
// is, whatever they are called.
var notedAs = map[string]string{
	drill.LoadLow:      "Load the whole system, low",
	drill.EaseLeft:     "Ease the left hitch",
	drill.EaseRight:    "Ease the right hitch",
	drill.EaseBoth:     "Ease both hitches",
	drill.HangOnTether: "Hang on the tether",
	drill.StandUp:      "Stand up and sit back",
	drill.FreeGarda:    "Break and release the Garda hitch",
}

// stopDrill notes that the drill was stopped at s, and why.
func (d *Draft) stopDrill(s drill.Step, why string) {
	d.Session.Drill.Note = remarked(d.Session.Drill.Note, stoppedAt, stoppedAt+notedAs[s.Name]+": "+why)
}

// stopped is the step at which the drill was stopped, or has to be.
func (d *Draft) stopped() (drill.Step, bool) {
	for _, s := range drill.Steps() {
		if x := d.seenIn(s.Name); x.Held == fit.No || x.Drop.Known && drill.TooFar(x.Drop.V) {
			return s, true
		}
	}
	return d.stopNoted()
}

// stopNoted is the step at which somebody stopped the drill.
func (d *Draft) stopNoted() (drill.Step, bool) {
	if d.Session.Drill == nil {
		return drill.Step{}, false
	}
	said := strings.TrimPrefix(remark(d.Session.Drill.Note, stoppedAt), stoppedAt)
	for _, s := range drill.Steps() {
		if strings.HasPrefix(said, notedAs[s.Name]+":") {
			return s, true
		}
	}
	return drill.Step{}, false
}

// seenIn is what was noted of the step called name; of one that was not come to,
// an empty note that is kept nowhere.
func (d *Draft) seenIn(name string) *sessions.DrillStep {
	if r := d.Session.Drill; r != nil {
		if i := slices.IndexFunc(r.Steps, func(s sessions.DrillStep) bool { return s.Name == name }); i >= 0 {
			return &r.Steps[i]
		}
	}
	return &sessions.DrillStep{Name: name}
}

// noteHeld notes whether a step held.
func (d *Draft) noteHeld(name string, held fit.Choice) {
	s := d.seenIn(name)
	if s.Held == fit.Unanswered {
		d.Session.Drill.Steps = append(d.Session.Drill.Steps, *s)
		s = d.seenIn(name)
	}
	s.Held = held
}

// cameTo says whether the drill has come to step i: all before it were seen, and
// nothing has stopped it.
func (d *Draft) cameTo(i int) bool {
	if _, ok := d.stopNoted(); ok || !d.Drilling() {
		return false
	}
	for _, s := range drill.Steps()[:i] {
		if x := d.seenIn(s.Name); x.Held != fit.Yes || !d.noted(s, x) {
			return false
		}
	}
	return true
}

// noted says whether what has to be looked at in a step was seen, and nothing of
// it ends the drill.
func (d *Draft) noted(s drill.Step, x *sessions.DrillStep) bool {
	if x.Drop.Known && drill.TooFar(x.Drop.V) {
		return false
	}
	for _, n := range s.Notes {
		if c := yesNo(n, x); c != nil && *c != fit.Yes {
			return false
		}
	}
	return true
}

// drillable says whether a drill belongs to the session at all. One that runs does,
// whatever the purpose is now: somebody hangs.
func (d *Draft) drillable() bool {
	return d.Drilling() || !d.ReChecking() && d.Session.Purpose != sessions.Review
}

// lookAtDrill sees that what is told of the drill is that of the draft.
func (s *State) lookAtDrill() {
	id := s.Step().ID
	if s.Step().Phase != Close {
		return
	}
	if s.drillOf != s.Saves+1 {
		s.drillOf, s.drill.plan, s.drill.seen = s.Saves+1, nil, nil
		if s.judged {
			s.drill.seen = s.Session.DrillReview()
		}
	}
	if id == DrillStep && s.drill.plan == nil && s.judged {
		s.drill.plan = s.Session.DrillPlan()
	}
}

// DrillSeen tells what the drill has shown, with lengths in the session's unit, or
// that one is required; else nothing where there was none, and before the review.
func (d *Draft) DrillSeen() []string {
	switch {
	case d.Drilling():
		return nil
	case d.Session.Drill == nil && d.drill.required && d.drillable():
		return []string{"Not done yet, and the school requires it"}
	case d.drill.seen == nil:
		return nil
	}
	return d.drill.seen.Words(string(d.Session.Unit))
}

// DrillBut is what a drill that is over has against the verdict on lengths.
func (d *Draft) DrillBut() string { return d.drill.seen.But() }

// openDrill is where a drill that runs goes on: the first question of it that has
// no answer.
func (s *State) openDrill() Place {
	p := s.placeOf(DrillStep)
	for ok := true; ok && s.Steps[p.Step].ID == DrillStep; p, ok = s.after(p) {
		a := s.ask(p)
		if a.Key == "drill.down" || a.unanswered(&s.Draft) || a.tooFar(&s.Draft) {
			return p
		}
	}
	return s.placeOf(DrillStep)
}

// tooFar says whether the question has an answer that ends the drill, if it is
// right.
func (a Ask) tooFar(d *Draft) bool {
	return strings.HasPrefix(a.Key, "drill.") && strings.HasSuffix(a.Key, ".drop_mm") && a.Told(d) > 0 && drill.TooFar(a.cell(d).(*fit.Number).V)
}

// unanswered says whether the question waits for a yes or a no.
func (a Ask) unanswered(d *Draft) bool {
	if a.Kind != Choice || a.cell == nil {
		return false
	}
	c, ok := a.cell(d).(*fit.Choice)
	return ok && *c == fit.Unanswered
}

// placeInDrill is the drill's question with that key.
func (s *State) placeInDrill(key string) Place {
	p := s.placeOf(DrillStep)
	for a, ask := range s.Steps[p.Step].Asks {
		if ask.Key == key {
			p.Ask = a
		}
	}
	return p
}

// drillStepAt is the step of the drill that is being seen; none once it is through.
func (s *State) drillStepAt() (drill.Step, bool) {
	for _, st := range drill.Steps() {
		if x := s.seenIn(st.Name); x.Held != fit.Yes || !s.noted(st, x) {
			return st, true
		}
	}
	return drill.Step{}, false
}
