// Package rules says what is right, how sure that is, and what to do about it.
//
// A check holds what a fitting has against what it needs, in mm, degrees,
// kilonewtons, or a plain ratio or count; heights count from the hip point, as in
// package fit. Its margin is positive where the rule is met: has - needs for a
// least, needs - has for a most. u is the margin's standard uncertainty, and the
// guard is how much margin a pass needs so that it is at least 95 % sure for this
// one check inside this model:
//
//	guard = 1.645·u + max(0, -shift)
//
// A check over two sides or ends tells the worse one. The verdicts:
//
//	pass     margin ≥ guard
//	tight    0 ≤ margin < guard, or a must that rests on an estimate
//	fail     margin < 0
//	unknown  something that it needs is missing, or the pose cannot be
//
// Unknown is never passed over: a fitting's outcome is the worst verdict of its
// musts, from fail over unknown and tight to pass. A should is advice: it keeps
// nobody from signing.
//
// Judge makes the report of a session, Assess the verdicts alone; package advice
// beneath tells what to change.
package rules

import (
	"strings"

	"example.com/hangtape/fit"
)

// Judge runs every check on f under the limits l and returns the whole report.
// It is pure and deterministic, and keeps nothing of f. The error, an
// *Impossible, says what in f cannot be.
func Judge(id string, f *fit.Fitting, l Limits) (*Report, error) {
	if faults := f.Faults(); len(faults) > 0 {
		return nil, &Impossible{faults}
	}
	return Assess(f, l).Report(id), nil
}

// findings gathers what does not fit together, and marks what it doubts.
func (a *Assessment) findings() {
	a.found = []Finding{}
	for _, list := range [][]Finding{a.disagreements(), a.unlikely(), a.repeats(), a.domain(), a.outsideSurvey(), a.odd()} {
		a.found = append(a.found, list...)
	}
}

// Report tells the assessment of the session id.
func (a *Assessment) Report(id string) *Report {
	r := &Report{Format: 1, ID: id, Inputs: a.inputs(), Poses: a.Poses(), Findings: a.found, Next: a.next()}
	r.Checks = a.checks(theVerdict)
	r.Outcome = Outcome(r.Checks)
	return r
}

// Bare is the report without what costs most: its checks have no sentences, and
// only they, the outcome and the findings are told. It is for many sessions.
func (a *Assessment) Bare(id string) *Report {
	r := &Report{Format: 1, ID: id, Findings: a.found, Checks: make([]Check, NumChecks)}
	for c := range NumChecks {
		r.Checks[c] = a.bare(c, theVerdict)
	}
	r.Outcome = Outcome(r.Checks)
	return r
}

// PlainChecks tells the checks by margin and guard alone, whatever they rest on.
func (a *Assessment) PlainChecks() []Check { return a.checks(plainVerdict) }

// Check tells one check.
func (a *Assessment) Check(c CheckID) Check { return a.check(c, theVerdict) }

func (a *Assessment) checks(of func(*EndResult) Verdict) []Check {
	list := make([]Check, NumChecks)
	for c := range NumChecks {
		list[c] = a.check(c, of)
	}
	return list
}

// Impossible is the error for a fitting that cannot be.
type Impossible struct{ Faults []fit.Fault }

func (e *Impossible) Error() string {
	words := make([]string, len(e.Faults))
	for i, f := range e.Faults {
		words[i] = f.Error()
	}
	return strings.Join(words, "\n")
}

// Outcome is the worst verdict of the musts among checks.
func Outcome(checks []Check) Verdict {
	worst := Pass
	for _, c := range checks {
		if c.Kind == Must && c.Verdict.Rank() < worst.Rank() {
			worst = c.Verdict
		}
	}
	return worst
}

// check tells the end that decides c by the verdict that of tells.
func (a *Assessment) check(c CheckID, of func(*EndResult) Verdict) Check {
	k := a.bare(c, of)
	k.Text = sentence(c, &k, "mm")
	return k
}

// bare is check without the sentence.
func (a *Assessment) bare(c CheckID, of func(*EndResult) Verdict) Check {
	info, e := c.Info(), a.worst(c, of)
	r, at := &a.ends[e], e.At()
	k := Check{
		Name: info.Name, Group: info.Group, Kind: info.Kind, Verdict: of(r), At: at,
		Has: Num(r.Has), Needs: Num(r.Needs), Margin: Num(r.Margin), U: Num(r.U), Shift: Num(r.Shift), Guard: Num(r.Guard),
		Unit: c.UnitAt(at), Missing: []string{},
		Blocks: info.Kind == Must && (r.Verdict == Fail || r.Verdict == Unknown || r.Predicted),
	}
	if of(r) != Pass && r.Missing != nil && (of(r) == Unknown || r.capped()) {
		k.Missing = r.Missing
	}
	if of(r) == Unknown {
		nan := Num(nan)
		k.Has, k.Margin, k.U, k.Shift, k.Guard = nan, nan, nan, nan, nan
		if endInfo[e].needsFollow {
			k.Needs = nan
		}
	}
	return k
}
