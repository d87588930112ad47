package flow

import (
	"reflect"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/tui/number"
)

// A Phase is where the climber is during a step.
type Phase int

// The phases, in the order of a fitting.
const (
	Ground Phase = iota // nobody hangs
	Aloft               // the climber hangs and the clock runs
	Close               // review and sign-off
)

// A Step is a group of questions that are answered in one place and pose.
type Step struct {
	ID    string // stable, for tests and links
	Title string
	Phase Phase
	Pose  fit.Pose
	Asks  []Ask
}

// Kind is what an answer to a question looks like.
type Kind int

// The kinds of question.
const (
	Reading Kind = iota // lengths off the tape, one for each time it was taken
	Amount              // one number: off a label, or told
	Text                // words: a name, a place, a note
	Day                 // a date
	Choice              // one of a few, by digit
)

// An Ask is one question: one field on a screen, one prompt in a line.
type Ask struct {
	Key      string // in the session file; heights as "hangs.nose_mm"
	Kind     Kind
	Title    string
	How      string      // what to look at or to know; where it is empty the explanation tells
	Topic    string      // the explanation that helps here
	Reading  fit.Reading // of a Reading
	Quantity number.Kind
	Accepted number.Range // as the session file does; zero where the quantity's own bounds do

	When    func(*Draft) bool     // nil: always asked
	Aside   func(*Draft) bool     // passed over on the way, but there to go to; nil: never
	Tells   func(*Draft) []string // what is to be known beside the question; nil: nothing
	Options func(*Draft) []Option // of a Choice
	Mark    func(*Draft) int      // of a Choice: the option that Enter takes
	note    func(*State, answer)  // takes an answer that is no part of the session, in place of a cell
	change  func(*Draft) int      // of a question about one change: which, from 0
	cell    func(*Draft) any      // where the answer is kept: *[]float64, *fit.Number, *float64, *string or *time.Time; of a Choice, its value
}

// An Option is one answer to a Choice.
type Option struct {
	Word  string // as it is spoken and may be typed
	Act   Act    // what choosing it does beside noting it
	stops bool   // it ends the hang that runs
	set   func(*Draft)
	do    func(*State) // in place of all that
}

// An Act is what an option does to the flow.
type Act int

// The acts.
const (
	GoOn         Act = iota // to the next question
	Stay                    // the same question again
	ClimbUp                 // the climber leaves the ground: a new hang, the clock runs
	StayUp                  // the climber still hangs: back to the readings
	ToHang                  // correct the readings of a hang that has ended
	Landed                  // down from a hang: what is asked then, and the review
	ToReview                // on to the review
	Again                   // once more: changes, then another hang
	Sign                    // sign off
	EndReCheck              // end a re-check with its outcome
	DrillUp                 // the climber leaves the ground for the drill: the clock runs
	DrillStop               // the drill is stopped: get down
	DrillAgain              // to the start of the drill
	ToDrilled               // to what the drill has shown
	SignThenNext            // sign off, then the next student on this kit
	ToStudents              // to the sessions that are open, or the next student
	Leave                   // out of the wizard, all saved
)

// Told is how often an answer was given: for a Reading the number of repeats,
// else 0 or 1.
func (a Ask) Told(d *Draft) int {
	if a.cell == nil {
		return 0
	}
	switch c := a.cell(d).(type) {
	case *[]float64:
		return len(*c)
	case *fit.Number:
		return count(c.Known)
	case *float64:
		return count(*c != 0)
	case *string:
		return count(*c != "")
	case *time.Time:
		return count(!c.IsZero())
	}
	return 0
}

func count(told bool) int {
	if told {
		return 1
	}
	return 0
}

// answered says whether somebody has answered the question: whether its answer is
// another than the one that was given before anybody was asked.
func (a Ask) answered(d, given *Draft) bool {
	switch {
	case a.cell == nil:
		return false
	case !a.asked(given):
		return a.Told(d) > 0
	}
	return !reflect.DeepEqual(a.cell(d), a.cell(given))
}

// onTheWay says whether going on leads to the question.
func (a Ask) onTheWay(d *Draft) bool { return a.asked(d) && !a.passedOver(d) }

// asked says whether the question is asked at all, as things stand.
func (a Ask) asked(d *Draft) bool { return a.When == nil || a.When(d) }
