package rules

import "example.com/hangtape/fit"

// An End is one side or one end of a check: what has a smooth margin of its own.
// Ends are numbered in the order of the checks and of their sides.
type End int

// NumEnds is how many ends the checks have together.
const NumEnds End = reachEnds + collisionEnds + recoveryEnds + kitEnds

// An end is an End in the table of its check: the one place where its formula
// stands, and all that follows from it.
type end struct {
	at      string                                // its name within the check; "" where there is only one
	unit    string                                // in place of the check's
	balance func(s *fit.State, l *Limits) balance // what it has and needs
	judge   func(*Assessment) EndResult           // in place of balance where it does not follow from the state
	stages  fit.Stage                             // of a state that balance looks at
	rests   []fit.Quantity                        // what balance rests on, in no order that matters

	// needsFollow says that what it needs is not a limit alone, so that it is not
	// told where the end is unknown.
	needsFollow bool

	says phrase
	span Span // zero where no pose shows it
}

// endOfCheck is an end and the check that it belongs to.
type endOfCheck struct {
	check CheckID
	end
}

// hitchMarks and loopMarks are the landmarks of the two friction hitches.
var (
	hitchMarks = [2]fit.Landmark{fit.MarkLeftHitch, fit.MarkRightHitch}
	loopMarks  = [2]fit.Landmark{fit.MarkLeftLoop, fit.MarkRightLoop}
)

// onBothSides are the ends of a check that is held on each friction hitch: 0 is
// the left side, 1 the right one.
func onBothSides(of func(side int) end) []end {
	left, right := of(0), of(1)
	left.at, right.at = "left", "right"
	return []end{left, right}
}

// Check is the check that e belongs to; NumChecks for an end that is none.
func (e End) Check() CheckID {
	if e < 0 || e >= NumEnds {
		return NumChecks
	}
	return endInfo[e].check
}

// At is e's name within its check: its side or end, "" where the check has only
// one.
func (e End) At() string { return endInfo[e].at }

// endsOf are the ends of each check, by their numbers.
var endsOf = func() (of [NumChecks][]End) {
	for e := range NumEnds {
		c := endInfo[e].check
		of[c] = append(of[c], e)
	}
	return of
}()

// Ends are the ends of c, in the order of its table.
func (c CheckID) Ends() []End { return endsOf[c] }

// A balance is what an end has and what it needs, in the check's unit. margin is
// has - needs for a least and needs - has for a most.
type balance struct {
	has, needs float64
	most       bool
}

func least(has, needs float64) balance { return balance{has: has, needs: needs} }
func most(has, needs float64) balance  { return balance{has: has, needs: needs, most: true} }

func (b balance) margin() float64 {
	if b.most {
		return b.needs - b.has
	}
	return b.has - b.needs
}

// margin is that of e in state s under the limits l; 0 for an end that does not
// follow from the state.
func (e End) margin(s *fit.State, l *Limits) float64 {
	if endInfo[e].balance == nil {
		return 0
	}
	return endInfo[e].balance(s, l).margin()
}
