package drill_test

import (
	"flag"
	"fmt"
	"math"
	"strings"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/internal/golden"
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/drill"
)

var update = flag.Bool("update", false, "write the golden file afresh")

// tellPlan writes all that is told of a drill before it.
func tellPlan(b *strings.Builder, p *drill.Plan, unit string) {
	say := func(lines ...string) { b.WriteString(strings.Join(lines, "\n") + "\n") }
	expect := func(list []drill.Expectation) {
		for _, e := range list {
			say("  " + e.Name() + ": " + e.In(unit))
		}
	}
	say(strings.ToUpper(string(p.Verdict())), p.HangAtWords(unit))
	for _, r := range p.Refused {
		say(string(r.Verdict) + ": " + r.In(unit))
	}
	for _, s := range p.Steps {
		say(s.Name+": "+s.Title, s.Do.In(unit))
		for _, see := range s.See {
			say("- " + see.In(unit))
		}
		say(s.Stop.In(unit), s.Then.In(unit))
		expect(s.Expect)
	}
	if p.Force.Known() {
		say(p.Force.Chart(80, unit, false)...)
		say(p.Force.Chart(50, unit, true)...)
		say(p.Force.PeakWords(unit)...)
	}
	say(p.Force.DropWords(unit)...)
	say(p.Force.StayWords(unit)...)
	say(p.Rehearsal.Words(unit)...)
	say(p.Rehearsal.Climb(12345, unit).In(unit))
	say(p.Paths.Words()...)
}

// What is told of the drill of the examples, as it was read and found good.
func TestWordsOfTheExamples(t *testing.T) {
	var b strings.Builder
	for i, name := range []string{"1-good-kit", "2-one-must-fails", "3-stature-only"} {
		unit := []string{"mm", "cm", "in"}[i]
		f, l, a := example(t, name)
		fmt.Fprintf(&b, "# %s in %s\n", name, unit)
		tellPlan(&b, drill.New(f, l, a), unit)
		for _, share := range []float64{0.5, 0.9, 2} {
			r := drill.Look(a, drill.Seen{Sag: fit.Some(a.State().Sag * share), Stale: share == 2, Steps: []drill.SeenStep{{Name: drill.EaseBoth, Garda: fit.Some(300)}}})
			for _, line := range r.Words(unit) {
				b.WriteString("seen: " + line + "\n")
			}
		}
		b.WriteString("\n")
	}
	golden.Hold(t, "testdata/told.golden", b.String(), *update)
}

func TestFallsHaveKeysAndWords(t *testing.T) {
	for d, want := range map[drill.Fall][2]string{
		drill.BothLow: {"both_low", "both hitches, Garda hitch low"},
		drill.OneLow:  {"one_low", "one hitch, Garda hitch low"},
		drill.BothUp:  {"both_up", "both hitches, Garda hitch drawn up"},
		drill.OneUp:   {"one_up", "one hitch, Garda hitch drawn up"},
	} {
		if got := [2]string{d.Key(), d.String()}; got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// What is not known is said so, and is no number.
func TestUnknownIsToldAsUnknown(t *testing.T) {
	f, l, _ := example(t, "1-good-kit")
	g := *f
	g.Mass, g.Hangs = fit.Number{}, []fit.Hang{{}}
	p := drill.New(&g, l, rules.Assess(&g, l))
	if got := p.HangAtWords("mm"); got != "How high to hang is not known." {
		t.Errorf("hang at: %q", got)
	}
	if got := p.Room().In("mm"); got != "boots above the ground, seated: not known" {
		t.Errorf("room: %q", got)
	}
	none := drill.Force{Limits: [2]float64{6, 4}, Stay: []drill.Stay{{Mass: 80, Peak: math.NaN(), Saddle: 3000}}}
	if got, want := none.StayWords("mm")[0], "a climber of 80 kg: no rope is long enough for 6.0 kN, better 3.0 m for 4.0 kN"; got != want {
		t.Errorf("stay: %q, want %q", got, want)
	}
	g.Kit.OwnRings = fit.Unanswered
	words := drill.New(&g, l, rules.Assess(&g, l)).Paths.Words()
	if got := words[len(words)-1]; !strings.Contains(got, "it was not said on which rings the backup bridge hangs") {
		t.Errorf("ways: %q", got)
	}
}

// A sag that cannot be, or is not expected, says nothing of the rope.
func TestNoModulusOfASagThatSaysNothing(t *testing.T) {
	f, l, a := example(t, "1-good-kit")
	if m := drill.Look(a, drill.Seen{Sag: fit.Some(0)}).Modulus; m != nil {
		t.Errorf("no sag gives %+v", m)
	}
	g := *f
	g.Mass = fit.Number{}
	if m := drill.Look(rules.Assess(&g, l), drill.Seen{Sag: fit.Some(60)}).Modulus; m != nil {
		t.Errorf("nobody's sag gives %+v", m)
	}
}

// Without the least rope above the modulus is told, and no force.
func TestModulusWithoutItsForce(t *testing.T) {
	f, l, _ := example(t, "1-good-kit")
	g := *f
	g.Rope.LeastAbove = fit.Number{}
	a := rules.Assess(&g, l)
	m := drill.Look(a, drill.Seen{Sag: fit.Some(a.State().Sag)}).Modulus
	if got := m.Words(); !strings.HasSuffix(got, " by both") {
		t.Errorf("%q, want no force", got)
	}
}

func TestSlackThatMayBeLeft(t *testing.T) {
	if got := drill.SlackIn("in"); got != "2.0 in" {
		t.Errorf("%q", got)
	}
	if got := drill.TakeUpSlack().In("cm"); !strings.Contains(got, "with more than 5.0 cm of slack left no hitch is eased") {
		t.Errorf("%q", got)
	}
	for sank, want := range map[float64]bool{50: false, 50.1: true} {
		if got := drill.TooFar(sank); got != want {
			t.Errorf("sank %v mm: too far %t", sank, got)
		}
	}
}

// Nobody reads the cautions who is not told them all.
func TestCautionsBeforeATetherIsLoaded(t *testing.T) {
	all := strings.Join(drill.Cautions(), "\n")
	for _, want := range []string{"Nobody is dropped", "A second person", "rescue plan", "inspected", "Hanging without moving", "come first"} {
		if !strings.Contains(all, want) {
			t.Errorf("%q is not among the cautions", want)
		}
	}
}

// A kit whose ways share a part says which, and a bar that is longer than the
// chart says so at its end.
func TestSharedPartsAndBarsBeyondTheChart(t *testing.T) {
	f, l, _ := example(t, "1-good-kit")
	g := *f
	g.Kit.OwnRings = fit.No
	words := drill.New(&g, l, rules.Assess(&g, l)).Paths.Words()
	if got := words[len(words)-1]; !strings.HasPrefix(got, "1 without a part in common; each of these alone holds the climber: ") {
		t.Errorf("ways: %q", got)
	}
	force := drill.Force{Limits: [2]float64{6, 4}, Points: []drill.Point{{Above: 1000, Peak: [drill.NumFalls]float64{30, 12, 12.1, 11.9}}, {Above: 2000, Peak: [drill.NumFalls]float64{11, 5, 4, 3}}}}
	lines := force.Chart(60, "mm", true)
	if !strings.Contains(lines[2], ">") || strings.Contains(lines[3], ">") {
		t.Errorf("bars:\n%s\n%s", lines[2], lines[3])
	}
	force.Limits[1] = 1.4 // the line stands under the last letter of its word, which begins the row
	if lines := force.Chart(60, "mm", true); !strings.HasPrefix(lines[0], "rope     saddle ") {
		t.Errorf("over the lines: %q", lines[0])
	}
	for _, width := range []int{69, 70} { // the other falls stand under a narrow chart, beside a wide one
		if n := len(force.Chart(width, "mm", true)); n != map[int]int{69: 4 + 3 + 2, 70: 4}[width] {
			t.Errorf("%d lines in %d columns", n, width)
		}
	}
}

// A bar that ends within the chart, be it in its last cell, is not said to go on.
func TestBarsThatEndWithTheChartDoNotGoOn(t *testing.T) {
	for _, peak := range []float64{8.95, 9} {
		force := drill.Force{Limits: [2]float64{6, 4}, Points: []drill.Point{{Above: 1000, Peak: [drill.NumFalls]float64{peak, 4, 3, 2}}}}
		if line := force.Chart(60, "mm", true)[2]; strings.Contains(line, ">") {
			t.Errorf("%g kN: %s", peak, line)
		}
	}
}

// The plan is as bad as its worst refusal, whichever comes first.
func TestVerdictOfAPlan(t *testing.T) {
	for _, c := range []struct {
		refused []rules.Verdict
		want    rules.Verdict
	}{
		{nil, rules.Pass},
		{[]rules.Verdict{rules.Tight, rules.Unknown}, rules.Unknown},
		{[]rules.Verdict{rules.Unknown, rules.Tight}, rules.Unknown},
		{[]rules.Verdict{rules.Unknown, rules.Fail, rules.Tight}, rules.Fail},
	} {
		var p drill.Plan
		for _, v := range c.refused {
			p.Refused = append(p.Refused, drill.Refusal{Verdict: v})
		}
		if got := p.Verdict(); got != c.want {
			t.Errorf("%v: %s, want %s", c.refused, got, c.want)
		}
	}
}

// The foot is in front of the rope by thigh and tilted shin, less how far the rope
// is ahead of the hip.
func TestFootInFrontOfTheRope(t *testing.T) {
	f, l, _ := example(t, "1-good-kit")
	g := *f
	g.Posture[fit.ShinAngle] = fit.Setting{V: 20, U: 2, Given: true}
	a := rules.Assess(&g, l)
	s := a.State()
	want := s.Thigh + s.Shin*math.Sin(20*math.Pi/180) - s.Ahead
	for _, m := range drill.New(&g, l, a).Rehearsal.Moves {
		for _, e := range m.Expect {
			if e.Quantity == drill.FootOut && math.Abs(e.Value-want) > 1e-9 {
				t.Errorf("%g mm, want %g", e.Value, want)
			}
		}
	}
}

// What was seen is named by its key in the session, and a Garda hitch that stands
// off by more than 95 % of what is uncertain disagrees, in either direction.
func TestFindingsOfADrillNameTheirKeys(t *testing.T) {
	_, _, a := example(t, "5-two-hangs-one-change")
	held := drill.Look(a, drill.Seen{Steps: []drill.SeenStep{{Name: drill.LoadLow, Held: fit.Yes}, {Name: drill.EaseBoth, Held: fit.No}}})
	if got := fmt.Sprint(held.Findings[0].Inputs); got != "[drill.steps.2.held]" {
		t.Errorf("named %s", got)
	}
	sag := drill.Look(a, drill.Seen{Sag: fit.Some(1)})
	if got := fmt.Sprint(sag.Findings[0].Inputs); got != "[drill.sag_mm rope.elongation_percent rope.drill_above_mm climber.mass_kg]" {
		t.Errorf("named %s", got)
	}
	p := a.Model().Propagate(1, func(_ []float64, s *fit.State, out []float64) { out[0] = s.YTaut })
	u, _ := p.U(0)
	most := 1.96 * math.Hypot(u, a.Model().Today()[fit.Garda])
	for off, disagrees := range map[float64]bool{most - 0.1: false, most + 0.1: true, 0.1 - most: false, -0.1 - most: true} {
		r := drill.Look(a, drill.Seen{Steps: []drill.SeenStep{{Name: drill.EaseBoth, Held: fit.Yes, Garda: fit.Some(p.Values[0] + off)}}})
		if len(r.Findings) > 0 != disagrees {
			t.Errorf("%g mm off of %g: %+v", off, most, r.Findings)
		}
		if disagrees && (len(r.Findings[0].Inputs) != 2 || r.Findings[0].Inputs[0] != "drill.steps.1.garda_mm") {
			t.Errorf("named %q", r.Findings[0].Inputs)
		}
	}
}

// Where all was seen nothing is said of what was not.
func TestNothingIsLeftToSee(t *testing.T) {
	_, _, a := example(t, "5-two-hangs-one-change")
	var seen drill.Seen
	for _, s := range drill.Steps() {
		seen.Steps = append(seen.Steps, drill.SeenStep{Name: s.Name, Held: fit.Yes, KneeFree: fit.Yes, HandsReach: fit.Yes, CameBackUp: fit.Yes})
	}
	if got := drill.Look(a, seen).Words("mm"); len(got) != 1 || !strings.HasPrefix(got[0], "PASS: all was seen") {
		t.Errorf("%q", got)
	}
}

// What the drill has shown stands behind every verdict on lengths that it speaks
// against: a pass alone would be read as leave to go up.
func TestDrillSpeaksAgainstAVerdict(t *testing.T) {
	for verdict, want := range map[rules.Verdict]string{
		rules.Fail: ", but the drill FAILED", rules.Tight: ", but the drill disagrees with the model", rules.Unknown: "", rules.Pass: "",
	} {
		if got := (&drill.Review{Verdict: verdict}).But(); got != want {
			t.Errorf("%s: %q, want %q", verdict, got, want)
		}
	}
	if got := (*drill.Review)(nil).But(); got != "" {
		t.Errorf("no drill: %q", got)
	}
}
