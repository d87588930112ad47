package drill

import "example.com/hangtape/rules"

// mostSlack is the most slack, in mm, that may be left in the tether before a
// hitch is eased, and the most that a body may sink then. It is fixed, and no
// limit that a school may move: judgement.
const mostSlack = 50.0

// MostSlack is mostSlack in a sentence.
const MostSlack = rules.Length(mostSlack)

// TooFar says whether a body that sank by so many mm sank further than it may when
// a hitch is eased.
func TooFar(sank float64) bool { return sank > mostSlack }

// SlackIn is mostSlack as the steps tell it in unit.
func SlackIn(unit string) string { return rules.Say("%v", MostSlack).In(unit) }

// A Step of the drill, in order.
type Step struct {
	Name   string // in the session file
	Title  string
	Eases  bool // a hitch is eased: the slack in the tether is taken up first
	Do     rules.Saying
	See    []rules.Saying // what must be seen before the next step
	Stop   rules.Saying   // what ends the drill
	Then   rules.Saying   // what to do when it ends here
	Notes  []Note         // what is noted of it, beside that it held
	Expect []Expectation
}

// A Note is something that is noted of a step.
type Note int

// The notes.
const (
	Drop       Note = iota // mm that the body sank
	GardaAt                // mm of the Garda hitch above the hip
	SagSeen                // mm of sag, of the whole drill
	KneeFree               // yes or no, as the rest
	HandsReach             //
	CameBackUp             //
)

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

// TakeUpSlack is what goes before a hitch is eased.
func TakeUpSlack() rules.Saying {
	return rules.Say("Draw the Garda hitch up by hand until the tether is taut, then pull at the tether: with more than %v of slack left no hitch is eased.", MostSlack)
}

// Steps are common practice: nobody is dropped, and each step is small enough to
// be stopped by a hand.
func Steps() []Step { return steps([numQuantities]Expectation{}) }

// StepNamed is the step called name.
func StepNamed(name string) (Step, bool) {
	for _, s := range Steps() {
		if s.Name == name {
			return s, true
		}
	}
	return Step{}, false
}

func steps(e [numQuantities]Expectation) []Step {
	say := rules.Say
	easing := func(name, title, which, then string) Step {
		return Step{
			Name: name, Title: title, Eases: true,
			Do: say("A hand on the rope, the boots ready: push %s down by hand, a little at a time, until the tether carries.%s", which, then),
			See: []rules.Saying{
				say("the tether takes the load"),
				say("the body sinks by no more than %v", MostSlack),
				say("the Garda hitch grips both legs of rope and stays where it is"),
			},
			Stop:  say("anything slips or jerks, or the tether does not carry within %v", MostSlack),
			Then:  say("Stand in the foot loop, set both hitches again and sit back on the main bridge. Come down, find what let go, and begin anew at the first step."),
			Notes: []Note{Drop},
		}
	}
	const again = " Then stand in the foot loop, set the hitch again and sit back."
	left := easing(EaseLeft, "Ease the left hitch", "the left hitch", " The other one alone does not hold, since the rope may run over the union."+again)
	right := easing(EaseRight, "Ease the right hitch", "the right hitch", again)
	left.Expect, right.Expect = []Expectation{e[GardaTaut]}, []Expectation{e[GardaTaut]}
	both := easing(EaseBoth, "Ease both hitches", "both hitches together", "")
	both.Notes = append(both.Notes, GardaAt)
	both.Expect = []Expectation{e[GardaTaut], e[RoomTether]}
	return []Step{
		{
			Name: LoadLow, Title: "Load the whole system, low",
			Do: say("First with a test weight, which alone may ever drop freely. Then with the boots just off the ground: load main bridge, both hitches and foot loop slowly, one after the other, and bounce gently."),
			See: []rules.Saying{
				say("both hitches hold without creeping"),
				say("every connector is closed, locked and loaded along its spine"),
				say("the rope above sags about as much as is expected"),
			},
			Stop:  say("anything creeps, slips, opens or sounds wrong"),
			Then:  say("Come down and put it right: turns, dressing, connector, anchor. Load it low again before anything else."),
			Notes: []Note{SagSeen}, Expect: []Expectation{e[Sag], e[RoomSeated]},
		},
		left, right, both,
		{
			Name: HangOnTether, Title: "Hang on the tether",
			Do: say("Hang on the tether, the foot in the loop, both hitches eased. Keep the legs moving."),
			See: []rules.Saying{
				say("the knee is free and the leg can push"),
				say("both hands get to the hitches and to the Garda hitch"),
			},
			Stop:  say("the knee is jammed, a hand does not get there, or the boots near the ground"),
			Then:  say("The second person helps at once: boots onto whatever stands ready, or lift until the hitches carry. Then see what advise says of tether, backup bridge and foot loop."),
			Notes: []Note{KneeFree, HandsReach}, Expect: []Expectation{e[KneeBend], e[GardaTaut], e[RoomTether]},
		},
		{
			Name: StandUp, Title: "Stand up and sit back",
			Do: say("Stand up in the foot loop, run both hitches up, set them, and sit back on the main bridge."),
			See: []rules.Saying{
				say("the climber comes back up without help"),
				say("both hitches carry again"),
			},
			Stop:  say("two tries do not do it"),
			Then:  say("The second person lifts or lowers now: nobody hangs on while others think. Then look at the knee's bend and the foot loop."),
			Notes: []Note{CameBackUp}, Expect: []Expectation{e[Gain], e[GardaLow]},
		},
		{
			Name: FreeGarda, Title: "Break and release the Garda hitch",
			Do: say("Seated on the main bridge, the tether slack: run the Garda hitch up a little, break it and take it off the rope, then put it back."),
			See: []rules.Saying{
				say("it comes free by hand, without tools"),
				say("nothing else was opened meanwhile"),
			},
			Stop:   say("it stays jammed: it cannot be released while it is loaded"),
			Then:   say("Stand in its foot loop and slack the tether first; open nothing that carries. On the ground, look at garda-release-room."),
			Expect: []Expectation{e[GardaLow]},
		},
	}
}
