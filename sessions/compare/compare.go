package compare

import (
	"time"

	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

// Format is the format of a comparison as JSON.
const Format = 1

// A Comparison is two sessions side by side: the answer of `hangtape compare
// --json`, field by field. Lengths are in mm, forces in kN, angles in degrees;
// what is unknown is null.
type Comparison struct {
	Format      int         `json:"format"`
	A           Head        `json:"a"`
	B           Head        `json:"b"`
	SameClimber bool        `json:"same_climber"` // both name one, and the same
	Readings    []Row       `json:"readings"`     // what was read, or told off a label, by its key
	Lengths     []Row       `json:"lengths"`      // the pieces as they are at the end of the session
	Poses       []Row       `json:"poses"`
	Checks      []CheckRow  `json:"checks"`
	Limits      []LimitMove `json:"limits"` // only those that differ
	Told        []Words     `json:"told"`   // what people told in words, only where it differs
}

// A Head says which session it is.
type Head struct {
	ID      string         `json:"id"`
	File    string         `json:"file"`
	Climber string         `json:"climber"`
	Place   string         `json:"place"`
	Started string         `json:"started"` // RFC 3339, "" where it is not told
	Purpose string         `json:"purpose"`
	Outcome rules.Verdict  `json:"outcome"` // by the rules of today
	Tally   map[string]int `json:"tally"`   // checks by verdict
}

// A Row is one number on both sides.
type Row struct {
	Name    string    `json:"name"` // key of the file without the number of its hang, piece, or pose
	Unit    string    `json:"unit"`
	A       Side      `json:"a"`
	B       Side      `json:"b"`
	Delta   rules.Num `json:"delta"` // B less A
	U       rules.Num `json:"u"`     // standard uncertainty of Delta
	Shared  bool      `json:"shared"`
	Changed bool      `json:"changed"` // |Delta| > 1.96·U
}

// A Side is a number in one of the sessions. A height counts from the hip point
// of its hang.
type Side struct {
	Value  rules.Num `json:"value"`
	U      rules.Num `json:"u"`
	N      int       `json:"n"`      // how often it was read; 0 for what is not read
	Origin string    `json:"origin"` // measured, kept, estimated, default, predicted, derived; "" where there is none
}

// A CheckRow is one check on both sides: the end that decides each.
type CheckRow struct {
	Name           string     `json:"name"`
	Kind           rules.Kind `json:"kind"`
	Unit           string     `json:"unit"`
	A              CheckSide  `json:"a"`
	B              CheckSide  `json:"b"`
	Delta          rules.Num  `json:"delta"`   // of the margins, B less A; null where their ends have different units
	U              rules.Num  `json:"u"`       // standard uncertainty of Delta
	Changed        bool       `json:"changed"` // |Delta| > 1.96·U
	VerdictChanged bool       `json:"verdict_changed"`
}

// A CheckSide is a check in one of the sessions, by the rules of today.
type CheckSide struct {
	Verdict rules.Verdict `json:"verdict"`
	At      string        `json:"at"`
	Margin  rules.Num     `json:"margin"`
	U       rules.Num     `json:"u"`
	Guard   rules.Num     `json:"guard"`
}

// A LimitMove is a limit that is not the same in both sessions.
type LimitMove struct {
	Name string    `json:"name"`
	Unit string    `json:"unit"`
	A    rules.Num `json:"a"`
	B    rules.Num `json:"b"`
}

// Words is a key of the file that tells something else in each session; the
// values are as the file has them, "" where it is not told.
type Words struct {
	Key string `json:"key"`
	A   string `json:"a"`
	B   string `json:"b"`
}

// Of compares two sessions, judged by the rules of today. The error is that of
// judging one of them: readings that cannot be true together.
func Of(a, b *sessions.File) (*Comparison, error) {
	x, err := measure(a)
	if err != nil {
		return nil, err
	}
	y, err := measure(b)
	if err != nil {
		return nil, err
	}
	shared := sharedInputs(x, y)
	c := &Comparison{
		Format: Format, A: x.head(), B: y.head(),
		SameClimber: a.Session.Climber != "" && a.Session.Climber == b.Session.Climber,
		Limits:      limitMoves(a.Session, b.Session),
		Told:        wordsOf(a.Session, b.Session),
	}
	c.Readings = rowsOf(x, y, shared, readingNames(x, y), (*measured).reading)
	c.Lengths = rowsOf(x, y, shared, pieceNames(), (*measured).length)
	c.Poses = rowsOf(x, y, shared, poseNames(x, y), (*measured).pose)
	for id := range rules.NumChecks {
		c.Checks = append(c.Checks, checkRow(x, y, shared, id))
	}
	return c, nil
}

func (m *measured) head() Head {
	s := m.file.Session
	h := Head{ID: s.ID, File: m.file.Name, Climber: s.Climber, Place: s.Place, Purpose: string(s.Purpose), Outcome: m.report.Outcome, Tally: map[string]int{}}
	if !s.Started.IsZero() {
		h.Started = s.Started.UTC().Format(time.RFC3339)
	}
	for _, c := range m.report.Checks {
		h.Tally[string(c.Verdict)]++
	}
	return h
}

// limitMoves lists the limits that differ, in their order.
func limitMoves(a, b *sessions.Session) []LimitMove {
	moves := []LimitMove{}
	x, y := a.RulesFor(), b.RulesFor()
	for l := range rules.NumLimits {
		if x[l] != y[l] {
			moves = append(moves, LimitMove{l.String(), l.Info().Unit, rules.Num(x[l]), rules.Num(y[l])})
		}
	}
	return moves
}

// Changes is what of a comparison changed: rows by more than their uncertainty,
// checks also where the verdict is another, limits that moved, words that differ.
type Changes struct {
	Checks   []CheckRow  `json:"checks"`
	Lengths  []Row       `json:"lengths"`
	Readings []Row       `json:"readings"`
	Limits   []LimitMove `json:"limits"`
	Told     []Words     `json:"told"`
}

// Changes tells what changed; a length of a piece is not told again as a reading.
func (c *Comparison) Changes() Changes {
	ch := Changes{Checks: []CheckRow{}, Lengths: changedRows(c.Lengths), Readings: []Row{}, Limits: c.Limits, Told: c.Told}
	for _, r := range c.Checks {
		if r.Changed || r.VerdictChanged {
			ch.Checks = append(ch.Checks, r)
		}
	}
	for _, r := range changedRows(c.Readings) {
		if !isPieceLength(r.Name) {
			ch.Readings = append(ch.Readings, r)
		}
	}
	return ch
}

// None says that nothing changed.
func (c Changes) None() bool {
	return len(c.Checks)+len(c.Lengths)+len(c.Readings)+len(c.Limits)+len(c.Told) == 0
}

func changedRows(rows []Row) []Row {
	out := []Row{}
	for _, r := range rows {
		if r.Changed {
			out = append(out, r)
		}
	}
	return out
}

func isPieceLength(name string) bool {
	for _, p := range pieceNames() {
		if name == "kit."+p+".length_mm" {
			return true
		}
	}
	return false
}
