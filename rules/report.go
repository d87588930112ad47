package rules

import (
	"encoding/json"
	"math"
	"strings"
)

// Verdict is how a check came out, with its uncertainty; in JSON and in files as
// it is, for people its Word.
type Verdict string

// The verdicts, from worst to best.
const (
	Fail    Verdict = "fail"    // the margin is below 0
	Unknown Verdict = "unknown" // something it needs is neither measured nor estimable, or out of the domain
	Tight   Verdict = "tight"   // the margin is 0 or more but inside its guard, or rests on an estimate
	Pass    Verdict = "pass"    // at least 95 % sure, for this one check inside this model
)

// Verdicts are all verdicts, from worst to best.
func Verdicts() []Verdict { return []Verdict{Fail, Unknown, Tight, Pass} }

// Word is a verdict for people, within a sentence.
func (v Verdict) Word() string {
	switch v {
	case Fail:
		return "fail"
	case Unknown:
		return "unknown"
	case Tight:
		return "tight"
	case Pass:
		return "pass"
	}
	return string(v)
}

// Loud is a verdict that stands alone: "PASS".
func (v Verdict) Loud() string { return strings.ToUpper(v.Word()) }

// Rank orders verdicts from worst to best: 0 is a fail, 3 a pass.
func (v Verdict) Rank() int {
	switch v {
	case Fail:
		return 0
	case Unknown:
		return 1
	case Tight:
		return 2
	}
	return 3
}

var nan = math.NaN()

// Num is a number that is null in JSON where it is unknown (NaN).
type Num float64

// Known says whether n has a value.
func (n Num) Known() bool { return !math.IsNaN(float64(n)) }

// MarshalJSON writes the shortest decimal that reads back the same, or null.
func (n Num) MarshalJSON() ([]byte, error) {
	if f := float64(n); !math.IsNaN(f) && !math.IsInf(f, 0) {
		return json.Marshal(f + 0) // + 0 turns -0 into 0
	}
	return []byte("null"), nil
}

// A Report is everything that the rules say of one session: the answer of
// `hangtape check --json`, field by field.
type Report struct {
	Format   int       `json:"format"`
	ID       string    `json:"id"`
	Outcome  Verdict   `json:"outcome"` // the worst verdict of the musts
	Inputs   []Input   `json:"inputs"`
	Poses    []Value   `json:"poses"`
	Checks   []Check   `json:"checks"`
	Findings []Finding `json:"findings"`
	Next     []Next    `json:"next"`
}

// An Input is one base input, or an estimate that stands for a reading, under
// its key in the session file.
type Input = Value

// A Value is a named quantity with its standard uncertainty.
type Value struct {
	Name   string `json:"name"`
	Value  Num    `json:"value"`
	U      Num    `json:"u"`
	Unit   string `json:"unit"`
	Origin string `json:"origin"` // measured, kept, estimated, default, predicted; derived for poses
}

// A Check is one rule with its verdict. Has and Needs keep their sign; Margin
// is positive where the rule is met.
type Check struct {
	Name    string   `json:"name"`
	Group   string   `json:"group"`
	Kind    Kind     `json:"kind"`
	Verdict Verdict  `json:"verdict"`
	At      string   `json:"at"` // the side or end that decided
	Has     Num      `json:"has"`
	Needs   Num      `json:"needs"`
	Margin  Num      `json:"margin"`
	U       Num      `json:"u"`
	Shift   Num      `json:"shift"`
	Guard   Num      `json:"guard"`
	Unit    string   `json:"unit"`
	Missing []string `json:"missing"` // keys that would settle it
	Text    string   `json:"text"`

	// Blocks says that nobody may sign over it: a must that fails, is unknown,
	// or rests on a predicted input.
	Blocks bool `json:"-"`
}

// Kind says what a check is for the sign-off; in JSON as it is, for people its Word.
type Kind string

// The kinds of check.
const (
	Must   Kind = "must"   // blocks the sign-off
	Should Kind = "should" // advice
)

// Word is a kind for people.
func (k Kind) Word() string {
	if k == Must {
		return "must"
	}
	return "should"
}

// A Finding is something that does not fit together. Text is in mm; In tells it
// in another unit.
type Finding struct {
	Name   string   `json:"name"`
	Text   string   `json:"text"`
	Inputs []string `json:"inputs"`

	said Saying
}

// Next is the reading that would shrink a check's guard most, or settle it.
type Next struct {
	Check     string `json:"check"`
	Reading   string `json:"reading"`
	UNow      Num    `json:"u_now"`
	UThen     Num    `json:"u_then"`
	GuardThen Num    `json:"guard_then"`
}
