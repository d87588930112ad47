package drill

import (
	"fmt"
	"math"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// Seen is what was seen in a drill.
type Seen struct {
	Steps []SeenStep
	Sag   fit.Number // mm, as the rope took the load slowly
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
	Modulus  *Modulus // where the sag was seen
}

// sagReading is the standard uncertainty, in mm, of a sag seen beside a tape;
// judgement.
const sagReading = 10.0

const disagreeFactor = 1.96 // two-sided 95 % of a normal distribution

// Look reviews what was seen in the drill of the fitting that a assessed.
func Look(a *rules.Assessment, seen Seen) *Review {
	r := &Review{Verdict: rules.Pass, Findings: []rules.Finding{}}
	e := expectations(a)
	done := map[string]bool{}
	for i, s := range seen.Steps {
		done[s.Name] = true
		r.look(a, e, i, s)
	}
	for _, s := range steps(e) {
		if !done[s.Name] && r.Verdict == rules.Pass {
			r.Verdict = rules.Unknown
		}
	}
	if seen.Sag.Known {
		r.Modulus = modulus(a, e[Sag], seen.Sag.V)
		if m := r.Modulus; m.Disagrees {
			r.disagree("drill.sag_mm", fmt.Sprintf("the rope sagged %.0f mm; %.0f ± %.0f mm is expected: look at the rope's label, the rope above and the mass", seen.Sag.V, e[Sag].Value, e[Sag].U),
				"rope.elongation_percent", "rope.drill_above_mm", "climber.mass_kg")
		}
	}
	return r
}

func (r *Review) look(a *rules.Assessment, e [numQuantities]Expectation, i int, s SeenStep) {
	key := func(k string) string { return fmt.Sprintf("drill.steps.%d.%s", i+1, k) }
	bad := func(k, text string) {
		r.Verdict = rules.Fail
		r.Findings = append(r.Findings, rules.Finding{Name: "drill-failed", Text: s.Name + ": " + text, Inputs: []string{key(k)}})
	}
	if s.Held == fit.No {
		bad("held", "it did not hold; nobody leaves the ground on it")
	}
	if s.Drop.Known && s.Drop.V > mostSlack {
		bad("drop_mm", fmt.Sprintf("the body sank %.0f mm; at most %.0f mm is eased", s.Drop.V, mostSlack))
	}
	if s.KneeFree == fit.No {
		bad("knee_free", "the knee was jammed: the leg cannot push")
	}
	if s.HandsReach == fit.No {
		bad("hands_reach", "the hands did not reach")
	}
	if s.CameBackUp == fit.No {
		bad("came_back_up", "the climber did not come back up without help")
	}
	if s.Garda.Known {
		x := e[GardaTaut]
		spread := a.Model().Today()[fit.Garda]
		if off := s.Garda.V - x.Value; math.Abs(off) > disagreeFactor*math.Hypot(x.U, spread) {
			r.disagree(key("garda_mm"), fmt.Sprintf("%s: the Garda hitch was %.0f mm above the hip; %.0f ± %.0f mm is expected: look at the tether, the backup bridge and the hip's reading", s.Name, s.Garda.V, x.Value, x.U),
				fit.HeightKey(a.Model().HangOf(fit.GardaTaut), fit.GardaTaut), a.Model().PieceKey(fit.PieceTether), a.Model().PieceKey(fit.PieceBackupBridge))
		}
	}
}

func (r *Review) disagree(key, text string, inputs ...string) {
	if r.Verdict != rules.Fail {
		r.Verdict = rules.Tight
	}
	r.Findings = append(r.Findings, rules.Finding{Name: "drill-disagrees", Text: text, Inputs: append([]string{key}, inputs...)})
}

// Modulus is a rope's force per unit strain, kN, from its label, from the sag
// that was seen, and from both.
type Modulus struct {
	Label, LabelU float64
	Sag, SagU     float64
	Both, BothU   float64
	Disagrees     bool
}

// modulus weighs the label's modulus and that of the sag by their variances. The
// mass and the rope above count in the sag's; the label does not.
func modulus(a *rules.Assessment, expected Expectation, sag float64) *Modulus {
	s := a.State()
	m := &Modulus{Label: s.Modulus, LabelU: 0.05 * s.Modulus}
	m.Sag = s.Modulus * s.Sag / sag
	m.SagU = m.Sag * math.Hypot(sagReading/sag, a.Model().MassU()/a.Model().Mass())
	wl, ws := 1/(m.LabelU*m.LabelU), 1/(m.SagU*m.SagU)
	m.Both, m.BothU = (m.Label*wl+m.Sag*ws)/(wl+ws), 1/math.Sqrt(wl+ws)
	m.Disagrees = math.Abs(sag-expected.Value) > disagreeFactor*math.Hypot(expected.U, sagReading)
	return m
}
