package drill

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// Seen is what was seen in a drill.
type Seen struct {
	Steps []SeenStep
	Sag   fit.Number // mm, as the rope took the load slowly
	Stale bool       // the kit was changed since
}

// A SeenStep is what was seen in one step.
type SeenStep struct {
	Name                             string
	Held                             fit.Choice
	Drop                             fit.Number // mm that the body sank
	Garda                            fit.Number // mm above the hip
	KneeFree, HandsReach, CameBackUp fit.Choice
}

// A Review holds what was seen against the model.
type Review struct {
	Verdict  rules.Verdict // fail: something did not hold; tight: it disagrees with the model; unknown: not all was seen
	Findings []rules.Finding
	NotSeen  []string // titles of the steps that were not seen whole
	Modulus  *Modulus // where the sag was seen
	Stale    bool     // the kit was changed since: it was another kit that was seen
}

// Look reviews what was seen in the drill of the fitting that a assessed.
func Look(a *rules.Assessment, seen Seen) *Review {
	l := looker{a: a, Review: &Review{Verdict: rules.Pass, Findings: []rules.Finding{}}}
	l.p, l.e = propagated(a)
	for i, s := range seen.Steps {
		l.step(i, s)
	}
	for _, s := range Steps() {
		if !seen.whole(s) {
			l.NotSeen = append(l.NotSeen, s.Title)
		}
	}
	if seen.Sag.Known {
		l.sag(seen.Sag.V)
	}
	l.Stale = seen.Stale
	if l.Verdict == rules.Pass && (len(l.NotSeen) > 0 || seen.Stale) {
		l.Verdict = rules.Unknown
	}
	return l.Review
}

// whole says whether all that makes the step was seen. What a step shows may
// have been noted with another one.
func (seen Seen) whole(s Step) bool {
	told := func(of func(SeenStep) fit.Choice) bool {
		return slices.ContainsFunc(seen.Steps, func(x SeenStep) bool { return of(x) != fit.Unanswered })
	}
	done := slices.ContainsFunc(seen.Steps, func(x SeenStep) bool { return x.Name == s.Name && x.Held != fit.Unanswered })
	knee, hands, back := told(func(x SeenStep) fit.Choice { return x.KneeFree }), told(func(x SeenStep) fit.Choice { return x.HandsReach }), told(func(x SeenStep) fit.Choice { return x.CameBackUp })
	switch s.Name {
	case HangOnTether:
		return knee && hands
	case StandUp:
		return back
	}
	return done
}

// looker is a review in the making.
type looker struct {
	*Review

	a *rules.Assessment
	p *fit.Propagation
	e [numQuantities]Expectation
}

func (l *looker) step(i int, s SeenStep) {
	title := s.Name
	if st, ok := StepNamed(s.Name); ok {
		title = st.Title
	}
	key := func(k string) string { return fmt.Sprintf("drill.steps.%d.%s", i+1, k) }
	bad := func(k, format string, args ...any) {
		l.Verdict = rules.Fail
		l.Findings = append(l.Findings, rules.Found("drill-failed", []string{key(k)}, rules.Say(title+": "+format, args...)))
	}
	if s.Held == fit.No {
		bad("held", "it did not hold; nobody leaves the ground on it before it was found out why and the drill was done anew")
	}
	if s.Drop.Known && TooFar(s.Drop.V) {
		bad("drop_mm", "the body sank %v; at most %v is eased: the slack was not taken up, or something slipped", rules.Length(s.Drop.V), MostSlack)
	}
	if s.KneeFree == fit.No {
		bad("knee_free", "the knee was jammed and the leg cannot push; the model expects a bend of %.0f ± %.0f deg: look at thigh and shin, then at tether and foot loop", l.e[KneeBend].Value, l.e[KneeBend].U)
	}
	if s.HandsReach == fit.No {
		bad("hands_reach", "a hand did not get there: look at the raised wrist, then at hitch loops and main bridge")
	}
	if s.CameBackUp == fit.No {
		bad("came_back_up", "the climber did not come back up without help: look at the knee's bend, the foot loop and the move itself")
	}
	if s.Garda.Known {
		l.garda(key("garda_mm"), title, s.Garda.V)
	}
}

// garda holds the Garda hitch, as it stood with the tether loaded, against where
// the model expects it.
func (l *looker) garda(key, title string, seen float64) {
	x := l.e[GardaTaut]
	off := seen - x.Value
	if !(math.Abs(off) > rules.TwoSided*math.Hypot(x.U, l.a.Model().Today()[fit.Garda])) {
		return
	}
	likely := "the tether or the backup bridge has given, or a knot still sets"
	if off < 0 {
		likely = "the tether was not taut, the backup bridge was pulled shorter, or the seat is another one"
	}
	first := l.largest(GardaTaut)
	if first != "" {
		likely += "; read " + rules.InputName(first) + " again first"
	}
	l.disagree(rules.Say("%s: the Garda hitch stood %v above the hip; %v is expected: %s", title, rules.Length(seen), rules.LengthPM{V: x.Value, U: x.U}, likely), key, first)
}

func (l *looker) sag(seen float64) {
	x := l.e[Sag]
	l.Modulus = modulus(l.a, x, seen)
	if l.Modulus == nil || !l.Modulus.Disagrees {
		return
	}
	likely := "the rope is softer than its label says, there is more of it above, or slack was counted in"
	if seen < x.Value {
		likely = "the rope is stiffer than its label says, less of it is above, or the union holds some of the load"
	}
	l.disagree(rules.Say("The rope sagged %v; %v is expected: %s", rules.Length(seen), rules.LengthPM{V: x.Value, U: x.U}, likely),
		"drill.sag_mm", "rope.elongation_percent", "rope.drill_above_mm", "climber.mass_kg")
}

// largest is the key of the reading that contributes most to what the model
// expects of q; empty where none does.
func (l *looker) largest(q Quantity) string {
	key, most := "", 0.0
	for i, in := range l.a.Model().Inputs {
		if in.N == 0 || in.Hidden {
			continue
		}
		if c := math.Abs(l.p.Contribution(i, int(q))); c > most+1e-12 {
			key, most = in.Key, c
		}
	}
	return key
}

func (l *looker) disagree(s rules.Saying, inputs ...string) {
	if l.Verdict != rules.Fail {
		l.Verdict = rules.Tight
	}
	inputs = slices.DeleteFunc(inputs, func(k string) bool { return k == "" })
	l.Findings = append(l.Findings, rules.Found("drill-disagrees", inputs, s))
}

// But is what the drill has against a verdict on lengths, to stand behind it;
// empty where it has nothing, or there was none.
func (r *Review) But() string {
	switch {
	case r == nil:
	case r.Verdict == rules.Fail:
		return ", but the drill FAILED"
	case r.Verdict == rules.Tight:
		return ", but the drill disagrees with the model"
	}
	return ""
}

// Words tell the review, a line each, with lengths in unit.
func (r *Review) Words(unit string) []string {
	head := map[rules.Verdict]string{
		rules.Pass:    "all was seen, and as the model expects it",
		rules.Tight:   "what was seen disagrees with the model",
		rules.Unknown: "not all was seen of this kit, or not all was told",
		rules.Fail:    "something did not hold: nobody leaves the ground on this",
	}[r.Verdict]
	out := []string{r.Verdict.Loud() + ": " + head}
	for _, f := range r.Findings {
		out = append(out, f.In(unit))
	}
	if r.Stale {
		out = append(out, "The kit was changed since: do the drill anew")
	}
	if len(r.NotSeen) > 0 {
		out = append(out, "Not seen, or not told: "+strings.Join(r.NotSeen, "; "))
	}
	if r.Modulus != nil {
		out = append(out, r.Modulus.Words())
	}
	return out
}
