package rules_test

import (
	"strings"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// A must blocks the sign-off where it fails, is unknown or rests on what a change
// predicts; nothing else does.
func TestWhatBlocksTheSignOff(t *testing.T) {
	for name, c := range map[string]struct {
		edit    func(*fit.Fitting)
		check   string
		verdict rules.Verdict
		want    bool
	}{
		"a must that passes":            {func(*fit.Fitting) {}, "slip-drop", rules.Pass, false},
		"a must that is tight":          {set(fit.GardaLevel, 1946), "tether-lets-thigh-level", "", false},
		"a must that fails":             {set(fit.RightHitchTop, 2650), "hitch-top-reach", rules.Fail, true},
		"a must that is unknown":        {leaveOut(fit.FootLoop), "slip-drop", rules.Unknown, true},
		"a should that fails":           {set(fit.LeftLoopTop, 2460), "hitch-handhold", rules.Fail, false},
		"a must that rests on a change": {func(f *fit.Fitting) { f.Changes = []fit.Change{{Piece: fit.PieceTether, To: 119, AfterHang: 1}} }, "slip-drop", "", true},
	} {
		f := goodFitting()
		c.edit(f)
		got := check(t, judge(t, f, rules.DefaultLimits()), c.check)
		if got.Blocks != c.want || c.verdict != "" && got.Verdict != c.verdict {
			t.Errorf("%s: %s is %s, blocks: %t", name, c.check, got.Verdict, got.Blocks)
		}
	}
}

// No line is broken between a number and its unit, whatever digit it ends in.
func TestNumbersKeepTheirUnits(t *testing.T) {
	for _, number := range []string{"10", "19", "25", "-7", "0.5"} {
		for width := 20; width < 30; width++ {
			text := strings.Repeat("word ", 4) + number + " mm " + strings.Repeat("word ", 4)
			if lines := rules.Wrap(text, width); !strings.Contains(lines, number+" mm") {
				t.Errorf("in %d columns:\n%s", width, lines)
			}
		}
	}
	if lines := rules.Wrap("aaaaaaaaaaaaaaaaaa bc mm", 21); !strings.Contains(lines, "bc\nmm") && !strings.Contains(lines, "\nbc mm") {
		t.Errorf("%q", lines)
	}
}

// What is needed and what there is are told by the words that go with their sign;
// nothing is neither over nor under.
func TestWordsThatGoWithTheSign(t *testing.T) {
	for want, c := range map[string]rules.Check{
		"with the thigh level the Garda hitch's top is 12 mm under the main connector's bottom; at least 0 mm under is needed": {Has: 12, Needs: 0, Margin: 12},
		"with the thigh level the Garda hitch's top is 0 mm under the main connector's bottom; at least 25 mm under is needed": {Has: 0, Needs: 25, Margin: -25},
	} {
		c.Name, c.Unit, c.U, c.Verdict = "garda-under-connector", "mm", 5, rules.Pass
		if got := rules.Sentence(c, "mm"); !strings.HasPrefix(got, want) {
			t.Errorf("%q\nwant %q", got, want)
		}
	}
	tiny := rules.Check{Name: "slip-drop", Unit: "mm", Verdict: rules.Tight, Margin: 0.0003, U: 4}
	if got := rules.MarginWords(tiny, "mm"); got != "0.000 ± 4.000 mm to spare" {
		t.Errorf("%q", got)
	}
}

// An estimate is named where it brings more than a tenth of the uncertainty, and
// not where it brings less.
func TestEstimatesOfALittlePartAreNotNamed(t *testing.T) {
	a := rules.Assess(leftOut(fit.WristUp, fit.Nose, fit.Thigh, fit.Waist), rules.DefaultLimits())
	for e := range rules.NumEnds {
		u := a.End(e).U
		named := map[string]bool{}
		for _, key := range a.Estimates(e) {
			named[key] = true
		}
		for part, key := range map[fit.BodyPart]string{fit.PartThigh: "climber.thigh_mm", fit.PartWaist: "climber.waist_mm", fit.PartNose: "hangs.1.nose_mm", fit.PartFull: "hangs.1.wrist_up_mm"} {
			i, ok := a.Model().Residual(part)
			if !ok {
				t.Fatalf("%s is not estimated", key)
			}
			brings := a.CheckEffect(i, e.Check())
			if a.Deciding(e.Check()) != e || u != u {
				continue
			}
			if share := max(brings, -brings) / u; share > 0.11 && !named[key] || share < 0.09 && named[key] {
				t.Errorf("%s: %s brings %.3f of the uncertainty, named: %t", e.Check(), key, share, named[key])
			}
		}
	}
}
