package flow

import (
	"example.com/hangtape/rules/drill"
	"example.com/hangtape/tui/number"
)

// The screens of the drill that are only read.
const (
	ForceKey     = "drill.force"     // what a catch comes to, with its chart
	RehearsalKey = "drill.rehearsal" // one move with this climber's numbers

	climbKey = "drill.climb"
)

// toRead are what the drill has to read, reached from its gate and from its end.
func toRead() []Ask {
	back := Option{Word: "back", do: (*State).back}
	force := Ask{Key: ForceKey, Kind: Choice, Title: "If the tether has to catch", Topic: "peak-force-chart", Tells: (*Draft).tellForce,
		Options: func(*Draft) []Option { return []Option{back} }}
	rehearsal := Ask{Key: RehearsalKey, Kind: Choice, Title: "One move, to rehearse", Topic: "rehearsal", Tells: (*Draft).tellRehearsal,
		Options: func(d *Draft) []Option {
			if d.drill.plan == nil {
				return []Option{back}
			}
			return []Option{{Word: "how many moves a climb takes", do: toDrill(climbKey)}, back}
		},
		Mark: func(d *Draft) int { return count(d.drill.plan != nil) }}
	climb := Ask{Key: climbKey, Kind: Amount, Title: "How high is the climb?", Topic: "rehearsal", Quantity: number.Laid,
		How:      "As far up as it will go, such as 12 m. Empty: not told.",
		Accepted: number.Range{Least: 1000, Most: 100_000},
		note:     (*State).climbing}
	asks := []Ask{force, rehearsal, climb}
	for i := range asks {
		asks[i].When = func(d *Draft) bool { return !d.hangRuns() }
		asks[i].Aside = func(*Draft) bool { return true }
	}
	return asks
}

// readOptions lead to what there is to read of the drill.
func (d *Draft) readOptions() []Option {
	if d.drill.plan == nil {
		return nil
	}
	return []Option{{Word: "the force, if the tether has to catch", do: toDrill(ForceKey)}, d.toRehearse()}
}

func (d *Draft) toRehearse() Option {
	return Option{Word: "one move, to rehearse", do: toDrill(RehearsalKey)}
}

// toDrill leads to a question of the drill.
func toDrill(key string) func(*State) {
	return func(s *State) { s.move(s.placeInDrill(key)) }
}

// DrillPlan is the plan of the drill; nil elsewhere than in its step, and where
// the rules cannot run.
func (d *Draft) DrillPlan() *drill.Plan { return d.drill.plan }

const noPlan = "Not yet: the readings have to be put right first."

// tellForce tells what a catch comes to; with a chart the first lines stand in it.
func (d *Draft) tellForce() []string {
	if d.drill.plan == nil {
		return []string{noPlan}
	}
	if !d.drill.plan.Force.Known() {
		return append([]string{drill.ForceNotKnown}, d.tellPaths()...)
	}
	return append(d.drill.plan.Force.PeakWords(string(d.Session.Unit)), d.BesideForce()...)
}

// BesideForce is what is told beside the chart of the force, which must be known.
func (d *Draft) BesideForce() []string {
	unit, f := string(d.Session.Unit), d.drill.plan.Force
	out := append(listed(f.DropWords(unit)), drill.StayHead)
	out = append(append(out, listed(f.StayWords(unit))...), drill.LeftOut)
	return append(out, d.tellPaths()...)
}

func (d *Draft) tellPaths() []string {
	words := d.drill.plan.Paths.Words()
	last := len(words) - 1
	return append(append([]string{drill.PathsHead + ":"}, listed(words[:last])...), words[last])
}

func listed(lines []string) []string {
	out := make([]string, len(lines))
	for i, l := range lines {
		out[i] = "- " + l
	}
	return out
}

// tellRehearsal teaches one move, and how many a climb takes that was told.
func (d *Draft) tellRehearsal() []string {
	if d.drill.plan == nil {
		return []string{noPlan}
	}
	unit, r := string(d.Session.Unit), d.drill.plan.Rehearsal
	out := r.Words(unit)
	if d.drill.climb > 0 {
		out = append(out, r.Climb(d.drill.climb, unit).In(unit)+".")
	}
	return out
}

// climbing takes the height of a climb, which is kept nowhere, and says how many
// moves it takes.
func (s *State) climbing(v answer) {
	s.setText(s.field(), "")
	s.drill.climb = v.number
	s.back()
	if s.drill.plan != nil {
		unit := string(s.Session.Unit)
		s.Said = Said{Kind: Taken, Text: s.drill.plan.Rehearsal.Climb(v.number, unit).In(unit)}
	}
}
