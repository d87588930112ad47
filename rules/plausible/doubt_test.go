package plausible_test

import (
	"path/filepath"
	"strings"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules/plausible"
	"example.com/hangtape/sessions"
)

// fitting is an invented one that goes together.
func fitting() *fit.Fitting {
	f := &fit.Fitting{Tape: fit.Tape{Class: fit.ClassII, Division: 1, Hook: true}, Hangs: make([]fit.Hang, 1)}
	for r, v := range map[fit.Reading]float64{
		fit.Stature: 1765, fit.Inseam: 845, fit.Thigh: 436, fit.Shin: 540, fit.Waist: 1110,
		fit.Hip: 1520, fit.Nose: 2218, fit.WristUp: 2640, fit.WristDown: 1412,
		fit.ConnectorTop: 2170, fit.ConnectorBottom: 2058,
		fit.LeftLoopTop: 2500, fit.LeftHitchTop: 2600, fit.RightLoopTop: 2494, fit.RightHitchTop: 2590,
		fit.MainRings: 1547, fit.BackupRings: 1524, fit.Soles: 762, fit.Ground: 260,
		fit.GardaLevel: 1966, fit.KneeLevel: 1524, fit.GardaTaut: 1976,
		fit.Ahead: 190, fit.MainBridge: 1088, fit.MainBridgeRings: 364, fit.GardaToTether: 106,
		fit.FootLoop: 1012, fit.Tether: 118, fit.BackupBridge: 578, fit.BackupBridgeRings: 360,
	} {
		put(f, r, v)
	}
	return f
}

func put(f *fit.Fitting, r fit.Reading, v ...float64) {
	if r.IsHeight() {
		f.Hangs[0].Heights[r] = v
		return
	}
	f.Laid[r] = v
}

// TestSlips types one wrong value into a fitting that goes together: it is
// questioned, and the slip that was made is named.
func TestSlips(t *testing.T) {
	swap := func(v float64) []plausible.Way { return []plausible.Way{{Slip: "two digits swapped", Value: v}} }
	for name, c := range map[string]struct {
		r         fit.Reading
		v         float64
		ways      []plausible.Way
		before    []float64
		why, slip string // "" of slip: none may be named
	}{
		"digits of a thigh":             {r: fit.Thigh, v: 346, ways: swap(436), why: "standard deviations from what stature and this climber's other readings say (about 426 mm)", slip: "two digits swapped (436 mm)"},
		"digits of a Garda hitch":       {r: fit.GardaTaut, v: 1796, ways: swap(1976), why: "Garda hitch, tether taut", slip: "two digits swapped (1976 mm)"},
		"inches for centimetres":        {r: fit.Shin, v: 212.6, ways: []plausible.Way{{Slip: "inches", Value: 540}}, why: "Shin is", slip: "inches (540 mm)"},
		"centimetres for inches":        {r: fit.Stature, v: 4483, ways: []plausible.Way{{Slip: "cm and not in", Value: 1765}}, why: "out of the usual", slip: "cm and not in (1765 mm)"},
		"thigh from the crest":          {r: fit.Thigh, v: 593, why: "Thigh", slip: "from the top of the pelvis"},
		"thigh along the seat":          {r: fit.Thigh, v: 638, why: "Thigh", slip: "front of the knee"},
		"shin to the ankle":             {r: fit.Shin, v: 445, why: "Shin", slip: "to the ankle"},
		"waist at the crotch":           {r: fit.Waist, v: 904, why: "Waist", slip: "at the crotch"},
		"fingertips up":                 {r: fit.WristUp, v: 2829, why: "Raised wrist", slip: "at the fingertips"},
		"fingertips down":               {r: fit.WristDown, v: 1223, why: "unheard of", slip: "at the fingertips"},
		"shin for thigh":                {r: fit.Thigh, v: 545, why: "Thigh", slip: "shin is there"},
		"loop top for hitch top":        {r: fit.LeftHitchTop, v: 2502, why: "", slip: ""},
		"hitch top under its loop":      {r: fit.LeftHitchTop, v: 2400, why: "Left hitch top is not above left loop top", slip: "swapped with left loop top"},
		"bottom above top":              {r: fit.ConnectorBottom, v: 2218, why: "not above", slip: "nose is there"},
		"raised wrist under the nose":   {r: fit.WristUp, v: 1640, ways: swap(2640), why: "Raised wrist is not above nose", slip: "two digits swapped (2640 mm)"},
		"nose under the hip":            {r: fit.Nose, v: 1412, why: "Nose is not above hip", slip: "hanging wrist is there"},
		"soles under the ground":        {r: fit.Soles, v: 160, why: "not above ground", slip: "swapped with ground"},
		"hitch far above its loop":      {r: fit.RightHitchTop, v: 3590, ways: []plausible.Way{{Slip: "two digits swapped", Value: 5390}}, why: "unheard of", slip: ""},
		"bridge shorter than its rings": {r: fit.MainBridge, v: 360, why: "no longer than its rings"},
		"tether's knot for the hitch":   {r: fit.GardaTaut, v: 1870, why: "Garda hitch, tether taut", slip: "where the tether is tied"},
		"another than last time":        {r: fit.FootLoop, v: 1210, ways: swap(1012), before: []float64{1015}, why: "was 1015 mm in the earlier session", slip: "(1012 mm)"},
		"set to another length":         {r: fit.FootLoop, v: 1100, ways: swap(1010 + 400), before: []float64{1015}},
		"true":                          {r: fit.Nose, v: 2222, ways: swap(2122)},
	} {
		t.Run(name, func(t *testing.T) {
			f := fitting()
			put(f, c.r)
			if c.before != nil { // the kit comes before anybody hangs
				f.Hangs[0] = fit.Hang{}
			}
			got, asked := plausible.Of(f, plausible.Try{Reading: c.r, Value: c.v, Ways: c.ways, Before: c.before, Unit: "mm"})
			if asked != (c.why != "") || !strings.Contains(got.Why, c.why) {
				t.Fatalf("asked %v: %+v", asked, got)
			}
			if all := strings.Join(got.Slips, "; "); !strings.Contains(all, c.slip) || c.slip == "" && len(c.ways) > 0 && all != "" {
				t.Errorf("named %q, want %q", all, c.slip)
			}
		})
	}
}

// TestSwappedWhileTyping types two marks the wrong way round, one after the other.
func TestSwappedWhileTyping(t *testing.T) {
	f := fitting()
	put(f, fit.LeftHitchTop)
	put(f, fit.LeftLoopTop, 2600)
	got, asked := plausible.Of(f, plausible.Try{Reading: fit.LeftHitchTop, Value: 2500, Unit: "mm"})
	if !asked || !strings.Contains(got.Words(), "Perhaps swapped with left loop top") {
		t.Errorf("%v %s", asked, got.Words())
	}
}

// TestHipAtTheCrest reads the hip point too high: the body's heights that follow
// do not fit it.
func TestHipAtTheCrest(t *testing.T) {
	f := fitting()
	put(f, fit.Hip, 1520+157)
	put(f, fit.Nose)
	put(f, fit.WristUp)
	put(f, fit.KneeLevel)
	put(f, fit.GardaLevel)
	put(f, fit.GardaTaut)
	put(f, fit.WristDown)
	got, asked := plausible.Of(f, plausible.Try{Reading: fit.Nose, Value: 2218, Unit: "mm"})
	if !asked || !strings.Contains(got.Words(), "hip point taken at the top of the pelvis") {
		t.Errorf("%v %s", asked, got.Words())
	}
}

// TestRepeats asks again where repeats lie 30 mm apart, and not where they do not.
func TestRepeats(t *testing.T) {
	for v, want := range map[float64]bool{2218 + 29: false, 2218 + 30: true, 2218 - 30: true, 2128: true} {
		got, asked := plausible.Of(fitting(), plausible.Try{Reading: fit.Nose, Value: v, Unit: "in",
			Ways: []plausible.Way{{Slip: "two digits swapped", Value: 2218}}})
		if asked != want || want && (!strings.Contains(got.Words(), "lie ") || !strings.Contains(got.Words(), "two digits swapped (87 5/16 in)")) {
			t.Errorf("%v: asked %v: %s", v, asked, got.Words())
		}
	}
}

// TestTrueReadings types every example session's readings in the order of the
// file: nothing is questioned but what the rules find in the finished session.
func TestTrueReadings(t *testing.T) {
	paths, err := filepath.Glob("../../testdata/sessions/examples/*.toml")
	if err != nil || len(paths) == 0 {
		t.Fatal(err)
	}
	for _, path := range paths {
		file, err := sessions.ReadFile(path, nil)
		if err != nil {
			t.Fatal(err)
		}
		report, err := file.Session.Judge()
		if err != nil {
			t.Fatal(err)
		}
		found := ""
		for _, f := range report.Findings {
			found += f.Name + " " + strings.Join(f.Inputs, " ") + "\n"
		}
		asked, taken := 0, 0
		try := func(f *fit.Fitting, r fit.Reading, h int, v float64, key string) {
			taken++
			if d, ok := plausible.Of(f, plausible.Try{Reading: r, Hang: h, Value: v, Unit: "mm"}); ok {
				asked++
				if !strings.Contains(found, key) {
					t.Errorf("%s: %s: %s", filepath.Base(path), key, d.Words())
				}
			}
		}
		f := file.Session.Clone().Fit
		f.Laid = [fit.NumReadings][]float64{}
		for h := range f.Hangs {
			f.Hangs[h].Heights = [fit.NumReadings][]float64{}
		}
		all := file.Session.Fit
		for r := range fit.NumReadings {
			for _, v := range all.Laid[r] {
				try(&f, r, 0, v, fit.LaidKey(r))
				f.Laid[r] = append(f.Laid[r], v)
			}
		}
		for h := range all.Hangs {
			for r := range fit.NumReadings {
				for _, v := range all.Hangs[h].Heights[r] {
					try(&f, r, h, v, fit.HeightKey(h, r))
					f.Hangs[h].Heights[r] = append(f.Hangs[h].Heights[r], v)
				}
			}
		}
		t.Logf("%s: %d of %d questioned", filepath.Base(path), asked, taken)
	}
}
