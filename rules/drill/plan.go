package drill

import (
	"fmt"
	"math"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// mostSlack is the most slack, in mm, that may be left in the tether before a
// hitch is eased. It is fixed, and no limit that a school may move: judgement.
const mostSlack = 50.0

// roomStep is the step, in mm, in which the height to hang at is told.
const roomStep = 10.0

// A Plan is the ground drill for one fitting.
type Plan struct {
	Refused    []string // why it is not to be done yet; empty where it may
	HangHigher float64  // mm to hang higher first; 0 where there is room, NaN where it is not known
	Steps      []Step
	Force      Force
	Rehearsal  Rehearsal
}

// A Step of the drill, in order.
type Step struct {
	Name   string // in the session file
	Do     string
	See    []string // what must be seen before the next step
	Stop   string   // what ends the drill
	Expect []Expectation
}

// New plans the drill for the fitting f, assessed by a under the limits l.
func New(f *fit.Fitting, l rules.Limits, a *rules.Assessment) *Plan {
	e := expectations(a)
	p := &Plan{Steps: steps(e), Force: force(f, l, a), Rehearsal: rehearsal(e)}
	p.room(a)
	if left := e[SlackLeft].Value; left > mostSlack {
		p.Refused = append(p.Refused, fmt.Sprintf("the Garda hitch meets the main connector with %.0f mm of slack left in the tether; at most %.0f mm may be left: shorten the tether or the backup bridge", left, mostSlack))
	}
	for c := range rules.NumChecks {
		if c.Info().Kind != rules.Must {
			continue
		}
		if k := a.Check(c); k.Verdict == rules.Fail || k.Verdict == rules.Unknown {
			p.Refused = append(p.Refused, fmt.Sprintf("%s is %s: %s", k.Name, k.Verdict, k.Text))
		}
	}
	return p
}

// room refuses the drill where the boots would not clear the ground, and tells
// how much higher to hang.
func (p *Plan) room(a *rules.Assessment) {
	worst := 0.0
	for _, e := range rules.DrillGroundRoom.Ends() {
		r := a.End(e)
		if r.Plain == rules.Unknown {
			p.HangHigher = math.NaN()
			p.Refused = append(p.Refused, "the room under the boots is not known")
			return
		}
		worst = math.Max(worst, r.Guard-r.Margin)
	}
	if worst > 0 {
		p.HangHigher = math.Ceil(worst/roomStep) * roomStep
		p.Refused = append(p.Refused, fmt.Sprintf("there is not room enough under the boots: hang at least %.0f mm higher and read the soles and the ground again", p.HangHigher))
	}
}

// The names of the steps in the session file.
const (
	LoadLow      = "load-low"
	EaseLeft     = "ease-left"
	EaseRight    = "ease-right"
	EaseBoth     = "ease-both"
	HangOnTether = "hang-on-tether"
	StandUp      = "stand-up"
	FreeGarda    = "free-garda"
)

// steps are common practice: nobody is dropped, and each step is small enough to
// be stopped by a hand.
func steps(e [numQuantities]Expectation) []Step {
	easing := func(which string) string {
		return "Draw the Garda hitch up until the tether is taut. With a hand on the rope and the boots ready, push the " + which +
			" down by hand, a little at a time, until the tether or the other hitch carries."
	}
	return []Step{
		{
			Name: LoadLow, Do: "With the boots just off the ground, load everything slowly: main bridge, both hitches, then the foot loop. Bounce gently. A free drop is for a test weight, never for a person.",
			See:  []string{"both hitches hold without creeping", "the gates are closed and loaded along the spine", "the rope above sags about as much as expected"},
			Stop: "anything creeps, slips, opens or sounds wrong", Expect: []Expectation{e[Sag], e[RoomSeated]},
		},
		{
			Name: EaseLeft, Do: easing("left hitch"),
			See:  []string{"the right hitch holds", "the body sinks no more than a hand's width"},
			Stop: "the other hitch slips, or the body drops instead of sinking", Expect: []Expectation{e[GardaTaut]},
		},
		{
			Name: EaseRight, Do: easing("right hitch"),
			See:  []string{"the left hitch holds", "the body sinks no more than a hand's width"},
			Stop: "the other hitch slips, or the body drops instead of sinking", Expect: []Expectation{e[GardaTaut]},
		},
		{
			Name: EaseBoth, Do: easing("two hitches together"),
			See:  []string{"the tether carries", "the Garda hitch grips and stays where it is"},
			Stop: "the Garda hitch slips, or the boots near the ground", Expect: []Expectation{e[GardaTaut], e[RoomTether]},
		},
		{
			Name: HangOnTether, Do: "Hang on the tether with the foot in the loop. Keep the legs moving.",
			See:  []string{"the knee is free and the leg can push", "both hands reach the hitches and the Garda hitch"},
			Stop: "the knee is jammed or the hands do not reach", Expect: []Expectation{e[KneeBend], e[GardaTaut], e[RoomTether]},
		},
		{
			Name: StandUp, Do: "Stand up in the foot loop, run both hitches up, set them, and sit back on the main bridge.",
			See:  []string{"the climber comes back up without help", "both hitches take the load again"},
			Stop: "two tries do not do it: the second person lowers or lifts", Expect: []Expectation{e[Gain], e[GardaLow]},
		},
		{
			Name: FreeGarda, Do: "Seated on the main bridge with the tether slack, run the Garda hitch up a little, open it, and take it off the rope and put it back.",
			See:  []string{"it comes free without tools", "nothing else was opened meanwhile"},
			Stop: "it stays jammed: it cannot be released while it is loaded", Expect: []Expectation{e[GardaLow]},
		},
	}
}
