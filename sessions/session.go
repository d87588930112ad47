package sessions

import (
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// A Session is one session file: the readings as a fit.Fitting, and what else
// people wrote down. Times are UTC; a zero time was not told.
type Session struct {
	ID         string // ULID
	Purpose    Purpose
	Started    time.Time
	Finished   time.Time // zero while the session is unfinished
	Place      string
	Climber    string
	Instructor string
	Unit       Unit
	Follows    string // id of the session that this one re-tunes or re-checks
	Notes      string

	Fit    fit.Fitting             // Fit.Started is Started
	Limits map[rules.Limit]float64 // only what the school has moved

	KitLabel    string
	InspectedBy string
	Inspected   time.Time // a day
	Tied        [fit.NumPieces]Tied

	Drill   *Drill   // nil where it was not done
	SignOff *SignOff // nil where nobody signed
}

// Purpose is why the climber hangs today; in files as it is, for people its Word.
type Purpose string

// The purposes.
const (
	FirstFitting Purpose = "first-fitting"
	ReTune       Purpose = "re-tune"
	ReCheck      Purpose = "re-check"
	Review       Purpose = "review"
)

// Purposes are all of them, in the order in which they are offered.
func Purposes() []Purpose { return []Purpose{FirstFitting, ReTune, ReCheck, Review} }

// Word is a purpose for people.
func (p Purpose) Word() string {
	switch p {
	case FirstFitting:
		return "first fitting"
	case ReTune:
		return "re-tune"
	case ReCheck:
		return "re-check"
	case Review:
		return "review"
	}
	return string(p)
}

// Unit is what people read and type in a session; files are in millimetres.
type Unit string

// The units.
const (
	MM   Unit = "mm"
	CM   Unit = "cm"
	Inch Unit = "in"
)

// Tied says when a piece was tied and by whom.
type Tied struct {
	On time.Time // a day
	By string
}

// Drill is what was seen in the ground drill; the model's figures are computed
// afresh, never stored.
type Drill struct {
	Started time.Time
	Done    time.Time // zero while the drill runs
	Steps   []DrillStep
	Sag     fit.Number // mm, seen when the rope took the load slowly
	Note    string
}

// A DrillStep is one step of the drill as it was seen.
type DrillStep struct {
	Name                             string
	Held                             fit.Choice
	Drop, Garda                      fit.Number // mm
	KneeFree, HandsReach, CameBackUp fit.Choice
}

// SignOff is who answers for the fitting, and what the rules said then.
type SignOff struct {
	By      string
	At      time.Time
	Note    string
	Outcome rules.Verdict
	Rules   string // digest of the limits and rules that judged it
	Checks  []SignedCheck
}

// A SignedCheck is a verdict as it was signed.
type SignedCheck struct {
	Name    string
	Verdict rules.Verdict
	Margin  rules.Num
	Guard   rules.Num
}
