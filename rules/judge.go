// Package rules says what is right, how sure that is, and what to do about it.
//
// A check holds what a fitting has against what it needs. Its margin is
// positive where the rule is met; the guard is how much margin a pass needs, so
// that it is at least 95 % sure for this one check inside this model. The
// verdicts are pass, tight, fail and unknown; unknown is never passed over.
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
	a := assess(f, &l)
	r := &Report{Format: 1, ID: id}
	r.Findings = append(r.Findings, a.disagreements()...)
	r.Findings = append(r.Findings, a.unlikely()...)
	r.Findings = append(r.Findings, a.repeats()...)
	r.Findings = append(r.Findings, a.domain()...)
	r.Findings = append(r.Findings, a.outsideSurvey()...)
	r.Findings = append(r.Findings, a.odd()...)
	a.judgeEnds()
	r.Inputs, r.Poses = a.inputs(), a.poses()
	r.Checks = make([]Check, NumChecks)
	for c := range NumChecks {
		r.Checks[c] = a.check(c)
	}
	r.Next = a.next()
	r.Outcome = outcome(r.Checks)
	if r.Findings == nil {
		r.Findings = []Finding{}
	}
	if r.Next == nil {
		r.Next = []Next{}
	}
	return r, nil
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

// outcome is the worst verdict of the musts.
func outcome(checks []Check) Verdict {
	worst := Pass
	for _, c := range checks {
		if c.Kind == Must && rankOf(c.Verdict) < rankOf(worst) {
			worst = c.Verdict
		}
	}
	return worst
}

// check tells the end that decides c.
func (a *assessment) check(c CheckID) Check {
	info, e := c.Info(), a.worst(c)
	r := &a.ends[e]
	at := ""
	for i, x := range endsOf[c] {
		if x == e {
			at = info.Ends[i]
		}
	}
	k := Check{
		Name: info.Name, Group: info.Group, Kind: info.Kind, Verdict: r.verdict, At: at,
		Has: Num(r.has), Needs: Num(r.needs), Margin: Num(r.margin), U: Num(r.u), Shift: Num(r.shift), Guard: Num(r.guard),
		Unit: c.UnitAt(at), Missing: r.missing,
		Blocks: info.Kind == Must && (r.verdict == Fail || r.verdict == Unknown || r.predicted),
	}
	if r.verdict == Unknown {
		nan := Num(nan)
		k.Has, k.Margin, k.U, k.Shift, k.Guard = nan, nan, nan, nan, nan
		if !limitBySelf(e) {
			k.Needs = nan
		}
	}
	if k.Missing == nil {
		k.Missing = []string{}
	}
	k.Text = Sentence(k, "mm")
	return k
}
