package drill_test

import (
	"math"
	"strings"
	"testing"

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
	all := strings.Join(p.Refused, "\n")
	for _, want := range []string{"tether-lets-thigh-level is fail", "room enough under the boots"} {
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
	if s := force.Stay; !(s[0].Peak < s[1].Peak && s[1].Peak < s[2].Peak) {
		t.Errorf("stay %v", s)
	}
}

func TestWhatWasSeenIsHeldAgainstTheModel(t *testing.T) {
	_, _, a := example(t, "5-two-hangs-one-change")
	taut := a.State().YTaut
	for _, c := range []struct {
		name string
		step drill.SeenStep
		want rules.Verdict
	}{
		{"as expected, but not all done", drill.SeenStep{Name: drill.EaseBoth, Held: fit.Yes, Garda: fit.Some(taut)}, rules.Unknown},
		{"Garda hitch elsewhere", drill.SeenStep{Name: drill.EaseBoth, Held: fit.Yes, Garda: fit.Some(taut + 60)}, rules.Tight},
		{"did not hold", drill.SeenStep{Name: drill.EaseBoth, Held: fit.No}, rules.Fail},
		{"sank too far", drill.SeenStep{Name: drill.EaseLeft, Drop: fit.Some(51)}, rules.Fail},
		{"knee jammed", drill.SeenStep{Name: drill.HangOnTether, KneeFree: fit.No}, rules.Fail},
	} {
		if r := drill.Look(a, drill.Seen{Steps: []drill.SeenStep{c.step}}); r.Verdict != c.want {
			t.Errorf("%s: %s, want %s (%v)", c.name, r.Verdict, c.want, r.Findings)
		}
	}
}

// A sag as the label expects leaves the modulus and makes it surer; a sag half as
// deep speaks of a stiffer rope and disagrees.
func TestSagSharpensTheModulus(t *testing.T) {
	_, _, a := example(t, "5-two-hangs-one-change")
	sag := a.State().Sag
	m := drill.Look(a, drill.Seen{Sag: fit.Some(sag)}).Modulus
	if math.Abs(m.Both-m.Label) > 1e-9 || m.BothU >= m.LabelU || m.Disagrees {
		t.Errorf("the expected sag gives %+v", m)
	}
	if m = drill.Look(a, drill.Seen{Sag: fit.Some(sag / 2)}).Modulus; m.Both <= m.Label || !m.Disagrees {
		t.Errorf("half the sag gives %+v", m)
	}
}
