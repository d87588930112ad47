package rules

import "example.com/hangtape/fit"

// A CheckID is one of the checks, in the order in which they are told. All that
// is known of a check stands in one entry of one table: checks_reach.go,
// checks_collision.go, checks_recovery.go and checks_kit.go. Verdicts, sentences,
// explain and the README's table follow from it.
type CheckID int

// NumChecks is how many checks there are.
const NumChecks = afterKit

// CheckInfo is what the program knows of a check. Its slices are shared: read
// them, never write to them.
type CheckInfo struct {
	Name  string // stable, in files and answers
	Group string // reach, collision, recovery-room or kit
	Kind  Kind
	Unit  string // mm, deg, kN, or "" for a ratio or a count; UnitAt tells it for an end

	Title    string // its name for people
	What     string // what has to be so
	Why      string // what goes wrong where it is not
	Measured string // how it is judged
	Do       string // what to do where it fails
	Source   string

	Limits   []Limit       // the limits that it is held against, in their order
	Readings []fit.Reading // the readings that it may rest on, in the file's order

	counts bool  // it counts things: told without decimals
	ends   []end // its two sides or ends, the first one first; or only one
}

type checkTable map[CheckID]CheckInfo

// checkInfo and endInfo are the checks of all tables and their ends, in order.
var checkInfo, endInfo = func() (checks [NumChecks]CheckInfo, ends [NumEnds]endOfCheck) {
	for _, table := range []checkTable{reachChecks, collisionChecks, recoveryChecks, kitChecks} {
		for c, info := range table {
			checks[c] = info
		}
	}
	var n End
	for c, info := range checks {
		for i := range info.ends {
			ends[n] = endOfCheck{check: CheckID(c), end: info.ends[i]}
			n++
		}
	}
	return checks, ends
}()

// Info tells what the program knows of c, which must be one of the checks.
func (c CheckID) Info() CheckInfo { return checkInfo[c] }

// String is the check's name.
func (c CheckID) String() string { return checkInfo[c].Name }

// endAt is the end of c that is named at, or else its first.
func (c CheckID) endAt(at string) *end {
	ends := checkInfo[c].ends
	for i := range ends {
		if ends[i].at == at {
			return &ends[i]
		}
	}
	return &ends[0]
}

// UnitAt is the unit of c at one of its ends: the knee bends in degrees, the
// leg that has to push is told in millimetres.
func (c CheckID) UnitAt(at string) string {
	if unit := c.endAt(at).unit; unit != "" {
		return unit
	}
	return checkInfo[c].Unit
}

// A Span is where a check's margin shows in the side view: the pose, and the
// two landmarks whose heights it compares.
type Span struct {
	Pose         fit.Pose
	Lower, Upper fit.Landmark // Lower is the lower one where the check passes with nothing to spare or better
}

// Span tells where c shows at one of its ends or sides. The pose is fit.NoPose
// for a check that no pose shows; ok is false where no two landmarks do.
func (c CheckID) Span(at string) (span Span, ok bool) {
	span = c.endAt(at).span
	return span, span.Lower != span.Upper
}

// Span tells where c shows, as CheckID.Span; false also for none.
func (c *Check) Span() (span Span, ok bool) {
	if c == nil {
		return Span{}, false
	}
	id, ok := CheckNamed(c.Name)
	if !ok {
		return Span{}, false
	}
	return id.Span(c.At)
}

// CheckNamed is the check with that name, and whether there is one.
func CheckNamed(name string) (CheckID, bool) {
	for c := range checkInfo {
		if checkInfo[c].Name == name {
			return CheckID(c), true
		}
	}
	return 0, false
}
