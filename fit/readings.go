package fit

// A Reading names one thing that is read off a tape. Heights come off the
// hanging tape and belong to a hang; the others are laid lengths. The order is
// that of the session file, which also settles ties.
type Reading int8

// A Spread is what a reading lands on, which settles how far repeats of it
// scatter.
type Spread int8

// The kinds of mark that a tape is laid to.
const (
	Hardware Spread = iota // a knot, a ring, a carabiner
	Body                   // a bone or a crease under clothes
	Garda                  // the Garda hitch held in one of its two poses
)

// A Pose is how the climber hangs.
type Pose int

// The poses. Heights are read in the first three, in this order, which keeps the
// climber up for the shortest time; the others are only computed.
const (
	NoPose     Pose = iota // laid lengths: nobody hangs
	Seated                 // seated on the main bridge, feet off the ground
	ThighLevel             // foot in the loop, Garda hitch drawn up until the thigh looks level
	TetherTaut             // Garda hitch drawn up until the tether stops it
	Standing               // stood up in the foot loop, both friction hitches slid up
	OnTether               // both friction hitches have let go
)

// ReadingInfo is what the program knows of a reading. File keys, forms, ties and
// explanations follow from the one table of them, in readings_table.go.
type ReadingInfo struct {
	Table  string // its table in the session file: "climber", "hangs", "rope", "kit.tether", …
	Key    string // its key in that table, unit at the end
	Name   string // in the trade's words
	Spread Spread
	Pose   Pose // NoPose for a laid length

	Mark string // where it is, in a sentence: what stands with the question for it
	How  string // how to take it well
	Why  string // what it is used for
}

// Info tells what the program knows of r, which must be one of the readings.
func (r Reading) Info() ReadingInfo { return readingInfo[r] }

// IsHeight says whether r comes off the hanging tape and so belongs to a hang.
func (r Reading) IsHeight() bool { return r >= firstHeight && r <= lastHeight }

// String is the reading's name in the trade's words.
func (r Reading) String() string { return readingInfo[r].Name }
