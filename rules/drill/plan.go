package drill

import (
	"fmt"
	"math"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// roomStep is the step, in mm, in which the height to hang at is told.
const roomStep = 10.0

// A Plan is the ground drill for one fitting.
type Plan struct {
	Refused    []Refusal // why it is not to be done yet; empty where it may
	HangAt     float64   // least height of the boots above the ground, seated, mm; NaN where it is not known
	HangHigher float64   // mm to hang higher first; 0 where there is room, NaN where it is not known
	Steps      []Step
	Force      Force
	Rehearsal  Rehearsal
	Paths      Paths

	e [numQuantities]Expectation // of the fitting as it was read
}

// Room is how far the boots are above the ground as they were read, seated.
func (p *Plan) Room() Expectation { return p.e[RoomSeated] }

// HangAtWords tells how high the boots are to be, with lengths in unit.
func (p *Plan) HangAtWords(unit string) string {
	if math.IsNaN(p.HangAt) {
		return "How high to hang is not known."
	}
	return fmt.Sprintf("Seated, the boots at least %s above the ground, and not much higher: %s were read.",
		rules.FormatLength(p.HangAt, unit), rules.FormatPM(p.Room().Value, p.Room().U, unit))
}

// A Refusal is a reason why the drill is not to be done yet.
type Refusal struct {
	Verdict rules.Verdict // fail; tight or unknown where nothing fails but it is not sure
	check   *rules.Check  // that is short; nil where it is none
	said    rules.Saying
}

// In tells the reason with lengths in unit.
func (r Refusal) In(unit string) string {
	if r.check != nil {
		return r.check.Name + " " + r.Verdict.Loud() + ": " + rules.Sentence(*r.check, unit)
	}
	return r.said.In(unit)
}

// Paths are the ways from saddle to rope.
type Paths struct {
	Chains [][]string // the parts of each, from the saddle up
	Ways   int        // that share no part
	Shared []string   // parts that every way runs through
	Known  bool       // whether Ways is: where the backup bridge hangs may be unsaid
}

// New plans the drill for the fitting f, assessed by a under the limits l.
func New(f *fit.Fitting, l rules.Limits, a *rules.Assessment) *Plan {
	_, e := propagated(a)
	p := &Plan{Steps: steps(e), Force: force(f, l, a), Rehearsal: rehearsal(e), e: e}
	p.Paths.Chains = rules.LoadChains(&f.Kit)
	p.Paths.Ways, p.Paths.Shared, p.Paths.Known = rules.LoadPaths(&f.Kit)
	p.slack()
	p.room(a)
	for c := range rules.NumChecks {
		if k := a.Check(c); k.Blocks {
			p.Refused = append(p.Refused, Refusal{Verdict: k.Verdict, check: &k})
		}
	}
	return p
}

// slack refuses the drill where the Garda hitch meets the main connector before
// the tether is taut, so that the slack cannot be taken up.
func (p *Plan) slack() {
	left := p.e[SlackLeft]
	switch most := left.Value + rules.GuardFactor*left.U; {
	case left.Value > mostSlack:
		p.Refused = append(p.Refused, Refusal{Verdict: rules.Fail, said: rules.Say("the Garda hitch meets the main connector with %v of slack left in the tether; at most %v may be left: shorten the tether or the backup bridge",
			rules.Length(left.Value), MostSlack)})
	case most > mostSlack:
		p.Refused = append(p.Refused, Refusal{Verdict: rules.Tight, said: rules.Say("up to %v of slack may be left in the tether once the Garda hitch meets the main connector; at most %v may be: read both again",
			rules.Length(most), MostSlack)})
	}
}

// room refuses the drill where the boots would not clear the ground, and tells
// how high to hang.
func (p *Plan) room(a *rules.Assessment) {
	lacks, fails := math.Inf(-1), false
	for _, e := range rules.DrillGroundRoom.Ends() {
		r := a.End(e)
		if r.Plain == rules.Unknown {
			p.HangAt, p.HangHigher = math.NaN(), math.NaN()
			k := a.Check(rules.DrillGroundRoom)
			p.Refused = append(p.Refused, Refusal{Verdict: rules.Unknown, check: &k})
			return
		}
		lacks = math.Max(lacks, r.Guard-r.Margin)
		fails = fails || r.Plain == rules.Fail
	}
	p.HangAt = math.Ceil((p.e[RoomSeated].Value+lacks)/roomStep) * roomStep
	if lacks <= 0 {
		return
	}
	p.HangHigher = math.Ceil(lacks/roomStep) * roomStep
	v := rules.Tight
	if fails {
		v = rules.Fail
	}
	p.Refused = append(p.Refused, Refusal{Verdict: v, said: rules.Say("there is not room enough under the boots: hang at least %v higher and read soles and ground again", rules.Length(p.HangHigher))})
}

// Verdict is pass where the drill may be done, else the worst of what is against
// it.
func (p *Plan) Verdict() rules.Verdict {
	v := rules.Pass
	for _, r := range p.Refused {
		if r.Verdict.Rank() < v.Rank() {
			v = r.Verdict
		}
	}
	return v
}
