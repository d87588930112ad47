package sheet

import (
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// A Card is what stands on the sheet of one fitting, in words.
type Card struct {
	Climber string
	About   []string // whose, where, when, with what: one line each
	Marks   []string // what the whole sheet is, in capitals: DEMO, UNFINISHED, PREDICTED, with a word on each
	Outcome rules.Verdict
	Tally   string

	Lengths  []Length // by piece
	LengthOf string   // what lengths and windows mean
	PenMarks string   // where to put the marks
	Rope     string   // how much rope above it holds with
	Musts    []Check
	Shoulds  []Check
	Findings []string
	Missing  []string // what unknown checks wait for, by name
	Limits   []string // moved by the school
	Drill    []string // what was seen, or that it was not done
	Sign     Sign

	Cautions     []string
	CordCautions []string // where a length of cord to cut is told

	Figure *Figure
	At     time.Time // of the session, for the document's date
}

// A Length is one piece of the kit as it is set.
type Length struct {
	Letter string // by which the drawing names it
	Piece  string
	Set    string // its length now, with what it is worth: predicted, kept, estimated
	Window string // where the musts that it moves pass, or why there is none
	Off    bool   // it is set outside its window
	Passes bool   // it is, and as it was read every must passes: set anew it would be less sure
	Lay    string // from where to where the tape is laid
	Cut    string // cord to cut for it; "" where the cord is not told
}

// Told is the window, and that the piece is set outside it.
func (n Length) Told() string {
	switch {
	case n.Passes:
		return n.Window + " if set anew"
	case n.Off:
		return "NOT IN " + n.Window
	}
	return n.Window
}

// A Check is one check as the sheet tells it.
type Check struct {
	Verdict   rules.Verdict
	Name      string
	Margin    string // "12 ± 5 mm to spare"
	Text      string // the whole sentence
	Predicted bool
}

// Word is the verdict in capitals.
func (c Check) Word() string { return c.Verdict.Loud() }

// Told is the margin with what it is worth.
func (c Check) Told() string {
	if c.Predicted {
		return c.Margin + ", predicted"
	}
	return c.Margin
}

// A Sign says who answers for the fitting.
type Sign struct {
	Signed bool
	Head   string   // SIGNED or NOT SIGNED, in capitals
	Lines  []string // by whom, when, as what; or what holds it up
}

// signers are those who sign on paper.
var signers = []string{"Instructor", "Climber"}

// letters name the pieces in the drawing, by fit.Piece.
var letters = [fit.NumPieces]string{"A", "B", "C", "D", "E", "F"}
