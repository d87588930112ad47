package rules

import "example.com/hangtape/fit"

// A CheckID is one of the checks. What a check says, why, and what to do about
// it stand in one table (checks_table.go), from which the answers of check,
// explain and the README's table follow.
type CheckID int

// The checks, in the order in which they are told.
const (
	HitchTopReach CheckID = iota
	HitchHandhold
	HitchPairLevel
	ConnectorAtFace
	GardaLowReach
	FootLoopAtWaist

	GardaUnderConnector
	GardaReleaseRoom

	TetherLetsThighLevel
	TetherStopsKnee
	KneeBendOnTether
	SlipDrop
	SlipForce
	DrillGroundRoom

	GardaConnectorSize
	HitchCordGrip
	HitchCordBite
	HitchWraps
	HitchCordStrength
	TetherStrength
	TwoLoadPaths

	NumChecks
)

// CheckInfo is what the program knows of a check. Its slices are shared: read
// them, never write to them.
type CheckInfo struct {
	Name  string // stable, in files and answers
	Group string // reach, collision, recovery-room or kit
	Kind  Kind
	Unit  string // mm, deg, kN, or "" for a ratio or a count; UnitAt tells it for an end

	What     string // what has to be so
	Why      string // what goes wrong where it is not
	Measured string // how it is judged
	Do       string // what to do where it fails
	Source   string

	Limits   []Limit       // the limits that it is held against, in their order
	Readings []fit.Reading // the readings that it may rest on, in the file's order
	Ends     [2]string     // its two sides or ends, the first one first; "" twice where it has only one
}

// Info tells what the program knows of c, which must be one of the checks.
func (c CheckID) Info() CheckInfo { return checkInfo[c] }

// String is the check's name.
func (c CheckID) String() string { return checkInfo[c].Name }

// UnitAt is the unit of c at one of its ends: the knee bends in degrees, the
// leg that has to push is told in millimetres.
func (c CheckID) UnitAt(end string) string {
	if c == KneeBendOnTether && end == "leg" {
		return "mm"
	}
	return checkInfo[c].Unit
}

// CheckNamed is the check with that name, and whether there is one.
func CheckNamed(name string) (CheckID, bool) {
	for c, info := range checkInfo {
		if info.Name == name {
			return CheckID(c), true
		}
	}
	return 0, false
}
