package advice

import "example.com/hangtape/rules"

// An Answer is what to change, in the order of `hangtape advise --json`.
type Answer struct {
	Format       int       `json:"format"`
	ID           string    `json:"id"`
	StoppedEarly bool      `json:"stopped_early"`
	Sooner       *Sooner   `json:"sooner"`
	LeastChange  Outcome   `json:"least_change"`
	BestFit      Outcome   `json:"best_fit"`
	Unknown      []string  `json:"unknown"`   // musts with an unknown side or end
	Estimated    []string  `json:"estimated"` // readings that a must rests on an estimate for
	Conflict     *Conflict `json:"conflict"`

	Now       []Check    `json:"-"` // the checks as they are, by margin and guard alone
	OddBounds []OddBound `json:"-"`
}

// Sooner says that a cheaper set would do after some readings.
type Sooner struct {
	Cost     int      `json:"cost"`
	Readings []string `json:"readings"`
}

// An Outcome is one answer, put through the full model.
type Outcome struct {
	Feasible bool      `json:"feasible"`
	Cost     int       `json:"cost"`
	Ratio    rules.Num `json:"ratio"` // null where nothing is to change
	Changes  []Change  `json:"changes"`
	Checks   []Check   `json:"checks"`
}

// A Change is one length to set.
type Change struct {
	Piece  string      `json:"piece"`
	From   rules.Num   `json:"from"`
	To     float64     `json:"to"`
	Window *[2]float64 `json:"window,omitempty"` // none for rope_above
	How    string      `json:"how"`
	Unit   string      `json:"unit"`

	Cost int         `json:"-"` // of this change alone
	Each []rules.Num `json:"-"` // the files' own lengths, where they are to share a kit
}

// A Check is a verdict of the answer on margin and guard alone.
type Check struct {
	Name    string        `json:"name"`
	Verdict rules.Verdict `json:"verdict"`
	Margin  rules.Num     `json:"margin"`
	U       rules.Num     `json:"u"`
	Guard   rules.Num     `json:"guard"`
	At      string        `json:"-"` // the side or end that decided
}

// Conflict says why no set can pass.
type Conflict struct {
	Cause  string   `json:"cause"`  // geometry or uncertainty
	Checks []string `json:"checks"` // musts that cannot hold together
	Bounds []string `json:"bounds"` // single pieces whose freed bounds would do
	Next   []string `json:"next"`   // readings to take
	Pieces []string `json:"pieces"` // pieces whose setting spread is the limit
	Text   string   `json:"text"`   // Words in mm

	Easing *Easing `json:"-"` // of a conflict of geometry; nil where none would do
}
