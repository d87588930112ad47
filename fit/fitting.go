package fit

import "time"

// Number is a value that may be unknown. The zero Number is unknown, so that
// nothing is ever taken for 0 because nobody told it.
type Number struct {
	V     float64
	Known bool
}

// Some is a known number.
func Some(v float64) Number { return Number{v, true} }

// A Fitting is all that was read and told in one session, in millimetres,
// kilograms, kilonewtons, per cent and degrees. It is plain data: nothing in it
// is computed. Readings are lists, one entry for each time they were taken; an
// empty list was not taken.
type Fitting struct {
	Started     time.Time // of the session; zero where it is not told
	RecheckDays int       // after so many days a kept length counts as estimated; 0 means 180

	Tape        Tape
	Sex         Sex
	StatureTold Number // mm, told and not measured
	Mass        Number // kg, with clothes and kit
	MassU       Number // kg, standard uncertainty; unknown means ± 2

	Laid  [NumReadings][]float64 // mm; indexed by the readings that are not heights
	Hangs []Hang                 // in the order in which the climber hung

	Rope    Rope
	Posture [NumPostures]Setting
	Kit     Kit
	Changes []Change
	Kept    []Kept

	// Survey stands in for SurveyRegression where it is not nil: for the trial,
	// whose climbers are people of the survey and must not be known from it.
	Survey func(s Sex, withInseam bool) Regression
}

// A Hang is one time that the climber hung, with the heights read then.
type Hang struct {
	Started, Ended time.Time              // zero where not told
	Heights        [NumReadings][]float64 // mm on the hanging tape; indexed by the readings that are heights
}

// Tape is the tape measure in use.
type Tape struct {
	Class    TapeClass
	Division float64 // mm, its smallest division
	Hook     bool    // laid lengths start from the tape's end
}

// TapeClass is an accuracy class of OIML R 35-1.
type TapeClass int

// The accuracy classes.
const (
	ClassI TapeClass = iota + 1
	ClassII
	ClassIII
)

// Sex as the body survey recorded it; it only chooses the regression.
type Sex int

// The sexes of the survey; Unsaid gives each the same weight.
const (
	Unsaid Sex = iota
	Male
	Female
)

// Rope is the rope in the tree.
type Rope struct {
	Diameter   Number // mm, from its label
	Elongation Number // %, between 50 kg and 150 kg, from its label
	LeastAbove Number // mm, the shortest rope above the climber that will be used
	DrillAbove Number // mm, rope above during the drill
}

// A Posture is a quantity of how the climber holds the body that nobody reads.
type Posture int

// The postures, in the order of the session file.
const (
	ShinAngle    Posture = iota // deg from vertical, forward positive
	KneeBend                    // deg, standing in the foot loop
	BehindRope                  // mm, the hip behind the rope when standing
	Set                         // mm lost when a hitch takes the load
	Lean                        // deg, trunk from vertical when seated
	AheadDefault                // mm, the rope ahead of the hip where it was not read
	Sole                        // mm, thickness of the boot sole
	EyeAboveNose                // mm
	ReachFactor                 // share of full reach that is comfortable
	LevelByEye                  // mm, the knee above the hip when the thigh looks level

	NumPostures
)

// A Setting is what a session says of a posture in place of its default.
type Setting struct {
	V, U  float64 // in the posture's unit
	Given bool
}

// A Piece is a part of the kit whose length can change.
type Piece int

// The pieces, in the order of the session file.
const (
	PieceMainBridge Piece = iota
	PieceHitchLeft
	PieceHitchRight
	PieceFootLoop
	PieceTether
	PieceBackupBridge

	NumPieces
)

// pieceKeys are the pieces' tables under kit in the session file.
var pieceKeys = [NumPieces]string{"main_bridge", "hitch_left", "hitch_right", "foot_loop", "tether", "backup_bridge"}

// Key is the piece's table under kit in the session file.
func (p Piece) Key() string { return pieceKeys[p] }

// How says in what way the length of a piece can be changed.
type How int

// The ways to change a length. The zero How is a fixed piece.
const (
	Fixed How = iota
	Slides
	ReTie
)

// Kit is the gear between saddle and rope.
type Kit struct {
	Pieces      [NumPieces]PieceInfo
	Garda       bool   // the kit has a Garda hitch
	InsideWidth Number // mm, of the Garda hitch's connectors
	OwnRings    Choice // the backup bridge has rings of its own
}

// PieceInfo is what is known of a piece beside its length.
type PieceInfo struct {
	Present  bool // the kit has it
	Change   How
	Bounds   [2]float64 // mm, least and most; of the loop for a hitch
	Bounded  bool       // Bounds were told
	Cord     Number     // mm, diameter
	Strength Number     // kN, from the cord's label
	Wraps    Number     // of a hitch: turns of cord on the rope
	Strands  Number     // of the tether: strands side by side
}

// Choice is a yes or a no that may be unsaid.
type Choice int

// The answers. The zero Choice is unsaid.
const (
	Unanswered Choice = iota
	No
	Yes
)

// A Change is a piece set or tied to another length between two hangs.
type Change struct {
	Piece     Piece
	From      Number    // mm
	To        float64   // mm, the length now
	Measured  []float64 // mm, laid on again after setting it; empty where it was not
	AfterHang int       // counted from 1
}

// Kept is a length taken over from an earlier session by an act of its own.
type Kept struct {
	Key     string    // in the session file: "climber.thigh_mm", "kit.tether.length_mm", …
	Session string    // id of the session that it was taken from
	Taken   time.Time // zero where it is not told, which counts as old
}
