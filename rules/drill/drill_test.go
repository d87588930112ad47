package drill_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/drill"
	"example.com/hangtape/sessions"
)

func example(t *testing.T, name string) (*fit.Fitting, rules.Limits, *rules.Assessment) {
	t.Helper()
	f, err := sessions.ReadFile("../../testdata/sessions/examples/"+name+".toml", nil)
	if err != nil {
		t.Fatal(err)
	}
	l := f.Session.RulesFor()
	return &f.Session.Fit, l, rules.Assess(&f.Session.Fit, l)
}

// A must that fails and too little room under the boots each refuse the drill,
// and the height to hang at makes up for what the room lacks.
func TestRefusedOverAnOpenMustAndWithoutRoom(t *testing.T) {
	f, l, a := example(t, "2-one-must-fails")
	p := drill.New(f, l, a)
	var all string
	for _, r := range p.Refused {
		all += r.In("mm") + "\n"
	}
	for _, want := range []string{"tether-lets-thigh-level FAIL", "room enough under the boots"} {
		if !strings.Contains(all, want) {
			t.Errorf("refused %q, want %q in it", all, want)
		}
	}
	lacks := 0.0
	for _, e := range rules.DrillGroundRoom.Ends() {
		lacks = math.Max(lacks, a.End(e).Guard-a.End(e).Margin)
	}
	if p.HangHigher < lacks || p.HangHigher >= lacks+10 {
		t.Errorf("hang %g mm higher, where %g mm are lacking", p.HangHigher, lacks)
	}
	if room := p.Room().Value + lacks; p.HangAt < room || p.HangAt >= room+10 {
		t.Errorf("hang at %g mm, where %g mm are needed", p.HangAt, room)
	}
	if p.Verdict() != rules.Fail {
		t.Errorf("the drill is %s", p.Verdict())
	}
}

// With no slack both peaks are twice the weight (published small fact: fall
// factor 0), more rope above softens the catch, and a heavier climber stays
// further below the union.
func TestForceFollowsRopeAndMass(t *testing.T) {
	f, l, a := example(t, "1-good-kit")
	force := drill.New(f, l, a).Force
	for i := 1; i < len(force.Points); i++ {
		if near, far := force.Points[i-1].Peak[drill.BothLow], force.Points[i].Peak[drill.BothLow]; far >= near {
			t.Errorf("%g mm of rope: %g kN, not less than %g", force.Points[i].Above, far, near)
		}
	}
	if force.Drops[drill.OneLow] != force.Drops[drill.BothLow]/2 {
		t.Error("one hitch alone does not make half the drop")
	}
	for _, at := range force.Stay { // so far below the union the limits hold
		s := a.State()
		for limit, above := range map[float64]float64{l[rules.PeakForce]: at.Peak, l[rules.SaddleForce]: at.Saddle} {
			if f := fit.PeakForce(fit.Weight(at.Mass), 2*s.Modulus/above, s.Drop()); f > limit {
				t.Errorf("%g kg, %g mm below the union: %g kN, over %g", at.Mass, above, f, limit)
			}
		}
	}
	if s := force.Stay; !(s[0].Peak < s[1].Peak && s[1].Peak < s[2].Peak) {
		t.Errorf("stay %v", s)
	}
}

// A whole drill, seen as it is expected, passes; what is left out, fails or
// disagrees with the model decides.
func TestWhatWasSeenIsHeldAgainstTheModel(t *testing.T) {
	_, _, a := example(t, "5-two-hangs-one-change")
	taut := a.State().YTaut
	whole := func() []drill.SeenStep {
		var all []drill.SeenStep
		for _, s := range drill.Steps() {
			all = append(all, drill.SeenStep{Name: s.Name, Held: fit.Yes})
		}
		all[3].Garda = fit.Some(taut)
		all[4].KneeFree, all[4].HandsReach, all[5].CameBackUp = fit.Yes, fit.Yes, fit.Yes
		return all
	}
	for _, c := range []struct {
		name   string
		change func([]drill.SeenStep)
		want   rules.Verdict
		says   string
	}{
		{"all as expected", func([]drill.SeenStep) {}, rules.Pass, ""},
		{"a step not seen", func(s []drill.SeenStep) { s[6].Held = fit.Unanswered }, rules.Unknown, "Break and release"},
		{"hands not told", func(s []drill.SeenStep) { s[4].HandsReach = fit.Unanswered }, rules.Unknown, "Hang on the tether"},
		{"Garda hitch higher", func(s []drill.SeenStep) { s[3].Garda.V += 60 }, rules.Tight, "has given"},
		{"Garda hitch lower", func(s []drill.SeenStep) { s[3].Garda.V -= 60 }, rules.Tight, "was not taut"},
		{"it did not hold", func(s []drill.SeenStep) { s[3].Held = fit.No }, rules.Fail, "did not hold"},
		{"sank too far", func(s []drill.SeenStep) { s[1].Drop = fit.Some(51) }, rules.Fail, "sank 51 mm"},
		{"knee jammed", func(s []drill.SeenStep) { s[4].KneeFree = fit.No }, rules.Fail, "deg"},
		{"hands do not reach", func(s []drill.SeenStep) { s[4].HandsReach = fit.No }, rules.Fail, "raised wrist"},
		{"no way back up", func(s []drill.SeenStep) { s[5].CameBackUp = fit.No }, rules.Fail, "without help"},
		{"failed and elsewhere", func(s []drill.SeenStep) { s[3].Held, s[3].Garda.V = fit.No, taut+60 }, rules.Fail, "has given"},
	} {
		steps := whole()
		c.change(steps)
		r := drill.Look(a, drill.Seen{Steps: steps})
		if told := strings.Join(r.Words("mm"), "\n"); r.Verdict != c.want || !strings.Contains(told, c.says) {
			t.Errorf("%s: %s, want %s and %q in\n%s", c.name, r.Verdict, c.want, c.says, told)
		}
	}
}

// A sag as the label expects leaves the modulus and makes it surer; a sag half as
// deep speaks of a stiffer rope, disagrees, and is not weighed in.
func TestSagSharpensTheModulus(t *testing.T) {
	_, _, a := example(t, "5-two-hangs-one-change")
	sag := a.State().Sag
	m := drill.Look(a, drill.Seen{Sag: fit.Some(sag)}).Modulus
	if math.Abs(m.Both-m.Label) > 1e-9 || m.BothU >= m.LabelU || m.Disagrees {
		t.Errorf("the expected sag gives %+v", m)
	}
	if m = drill.Look(a, drill.Seen{Sag: fit.Some(sag / 2)}).Modulus; m.Sag <= m.Label || m.Both != m.Label || !m.Disagrees {
		t.Errorf("half the sag gives %+v", m)
	}
}

// The union is hardest on a heavy climber: a chart keeps to its width, shows both
// limits, and no bar of a nearer union is shorter.
func TestChart(t *testing.T) {
	f, l, a := example(t, "1-good-kit")
	force := drill.New(f, l, a).Force
	for _, width := range []int{44, 60, 70, 80, 120} {
		last := width
		for i, line := range force.Chart(width, "mm", true) {
			if n := utf8.RuneCountInString(line); n > width {
				t.Errorf("%d cells in %d: %q", n, width, line)
			}
			if strings.Trim(line, " abcdefghijklmnopqrstuvwxyz.0123456789#|>") != "" {
				t.Errorf("not plain: %q", line)
			}
			if i < 2 {
				continue
			}
			if line == "" { // the other falls, under a narrow chart
				break
			}
			if strings.Count(line, "|") != 2 {
				t.Errorf("not two limits: %q", line)
			}
			if bar := strings.LastIndex(line, "#"); bar > last {
				t.Errorf("a longer bar further below the union: %q", line)
			} else {
				last = bar
			}
		}
	}
	narrow, wide := force.Chart(44, "mm", true), force.Chart(80, "mm", true)
	last := len(force.Points) - 1
	for _, d := range []drill.Fall{drill.OneLow, drill.BothUp, drill.OneUp} {
		for _, line := range []string{narrow[len(narrow)-1], wide[len(wide)-1]} {
			if peak := fmt.Sprintf(" %.1f", force.Points[last].Peak[d]); !strings.Contains(line, peak) {
				t.Errorf("no peak of %s,%s kN, in %q", d, peak, line)
			}
		}
	}
	if lines := force.Chart(80, "mm", false); !strings.Contains(lines[2], "█") {
		t.Errorf("no blocks in %q", lines[2])
	}
	g := *f
	g.Mass = fit.Number{}
	if c := drill.New(&g, l, rules.Assess(&g, l)).Force.Chart(80, "mm", true); c != nil {
		t.Errorf("a chart of forces that are not known: %q", c)
	}
}

// A climb takes its height by what one move climbs, rounded up.
func TestMovesForAClimb(t *testing.T) {
	r := drill.Rehearsal{Net: drill.Expectation{Value: 400, U: 20}}
	for height, want := range map[float64][3]int{12000: {30, 28, 34}, 400: {1, 1, 2}, 401: {2, 1, 2}} {
		if moves, least, most := r.MovesFor(height); [3]int{moves, least, most} != want {
			t.Errorf("%g mm: %d, %d to %d, want %v", height, moves, least, most, want)
		}
	}
	for _, net := range []float64{0, -5, math.NaN()} {
		r.Net.Value = net
		if moves, _, _ := r.MovesFor(1000); moves != 0 {
			t.Errorf("%d moves of %g mm", moves, net)
		}
	}
}

// A refusal for want of a reading is no failure; with room and all musts met
// nothing is refused.
func TestNotKnownIsNoFailure(t *testing.T) {
	f, l, _ := example(t, "1-good-kit")
	ground := func(mm ...float64) *drill.Plan {
		g := *f
		g.Hangs = append([]fit.Hang{}, f.Hangs...)
		g.Hangs[0].Heights[fit.Ground] = mm
		return drill.New(&g, l, rules.Assess(&g, l))
	}
	if p := ground(); p.Verdict() != rules.Unknown || !math.IsNaN(p.HangAt) || len(p.Refused) != 1 {
		t.Errorf("%s, hang at %g, refused %v", p.Verdict(), p.HangAt, p.Refused)
	}
	if p := ground(f.Hangs[0].Heights[fit.Ground][0] - 500); p.Verdict() != rules.Pass || p.HangAt > p.Room().Value {
		t.Errorf("refused without a reason: %v, hang at %g of %g", p.Refused, p.HangAt, p.Room().Value)
	}
}
