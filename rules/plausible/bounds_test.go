package plausible

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// Two heights may be as far apart as their span says, and no further; which way
// they are off is told.
func TestHeightsUpToTheEndsOfTheirSpans(t *testing.T) {
	for _, s := range spans {
		name := rules.Upper(s.high.String())
		for _, c := range []struct {
			apart float64
			want  string
		}{
			{s.least, ""},
			{s.most, ""},
			{s.most + 1, fmt.Sprintf("%s is %.0f mm above %s; that far is unheard of", name, s.most+1, s.low)},
			{s.least - 1, under(s, s.least-1)},
		} {
			var h fit.Hang
			h.Heights[s.low], h.Heights[s.high] = []float64{1000}, []float64{1000 + c.apart}
			list := heightMisfits(&h, "mm")
			switch {
			case c.want == "":
				if len(list) > 0 {
					t.Errorf("%g mm: %+v", c.apart, list)
				}
			case len(list) != 1 || list[0].why != c.want || list[0].about != s.high || list[0].and != s.low:
				t.Errorf("%g mm: %+v, want %q", c.apart, list, c.want)
			case strings.Contains(c.want, "not above") != (list[0].odds == impossible):
				t.Errorf("%q at odds of %g", c.want, list[0].odds)
			case strings.Contains(c.want, "that far") && list[0].odds != unheardOf+math.Abs(c.apart)/1000,
				strings.Contains(c.want, "that close") && list[0].odds != unheardOf+0.001:
				t.Errorf("%g mm at odds of %g", c.apart, list[0].odds)
			}
		}
	}
	var h fit.Hang
	h.Heights[fit.ConnectorBottom], h.Heights[fit.ConnectorTop] = []float64{1000}, []float64{1000}
	if list := heightMisfits(&h, "mm"); len(list) != 1 || list[0].odds != impossible {
		t.Errorf("a connector of no height: %+v", list)
	}
}

// under is what is said of heights that are d mm apart, less than s has it.
func under(s span, d float64) string {
	name := rules.Upper(s.high.String())
	switch {
	case s.least < 0:
		return fmt.Sprintf("%s is %.0f mm under %s; that far is unheard of", name, -d, s.low)
	case d > 0:
		return fmt.Sprintf("%s is %.0f mm above %s; that close is unheard of", name, d, s.low)
	}
	return fmt.Sprintf("%s is not above %s", name, s.low)
}

// Marks in their order are never said to be out of it, however close they are.
func TestMarksThatAreTooCloseAreNotSaidToBeOutOfOrder(t *testing.T) {
	for apart, want := range map[float64]string{
		300: "Hip point is 300 mm above boot soles; that close is unheard of",
		-1:  "Hip point is not above boot soles",
	} {
		var h fit.Hang
		h.Heights[fit.Soles], h.Heights[fit.Hip] = []float64{1000}, []float64{1000 + apart}
		if list := heightMisfits(&h, "mm"); len(list) != 1 || list[0].why != want {
			t.Errorf("%g mm: %+v, want %q", apart, list, want)
		}
	}
}

func TestLengthsUpToTheUsual(t *testing.T) {
	for r, ends := range usual {
		for v, odd := range map[float64]bool{ends[0]: false, ends[1]: false, ends[0] - 1: true, ends[1] + 1: true} {
			f := &fit.Fitting{}
			f.Laid[r] = []float64{v}
			if list := lengthMisfits(f, "mm"); len(list) > 0 != odd || odd && (list[0].about != r || !strings.Contains(list[0].why, "is out of the usual")) {
				t.Errorf("%s of %g mm: %+v", r, v, list)
			}
		}
	}
	for length, odd := range map[float64]bool{399: true, 400: true, 401: false} {
		f := &fit.Fitting{}
		f.Laid[fit.BackupBridge], f.Laid[fit.BackupBridgeRings] = []float64{length}, []float64{400}
		if list := lengthMisfits(f, "mm"); len(list) > 0 != odd {
			t.Errorf("a bridge of %g mm on rings 400 mm apart: %+v", length, list)
		}
	}
}

func TestDoubtsInWords(t *testing.T) {
	for want, slips := range map[string][]string{
		"Thigh is odd.":                               nil,
		"Thigh is odd. Perhaps inches?":               {"inches"},
		"Thigh is odd. Perhaps inches, or the ankle?": {"inches", "the ankle"},
	} {
		if got := (Doubt{Why: "Thigh is odd", Slips: slips}).Words(); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// What speaks of the reading itself is told before what is odder elsewhere.
func TestWhatIsToldFirst(t *testing.T) {
	b := bench{t: Try{Reading: fit.Nose}}
	nose, against, thigh := misfit{about: fit.Nose, odds: 4}, misfit{about: fit.Hip, and: fit.Nose, odds: 5}, misfit{about: fit.Thigh, and: fit.Thigh, odds: 9}
	for _, c := range []struct {
		m, o  misfit
		first bool
	}{{nose, thigh, true}, {thigh, nose, false}, {against, thigh, true}, {against, nose, true}, {nose, against, false}, {nose, nose, false}} {
		if got := b.comesFirst(&c.m, &c.o); got != c.first {
			t.Errorf("%+v before %+v: %t", c.m, c.o, got)
		}
	}
}

// A repeat or an earlier session speaks against a value from so far off on.
func TestHowFarRepeatsAndEarlierSessionsReach(t *testing.T) {
	f := &fit.Fitting{Hangs: make([]fit.Hang, 1)}
	f.Laid[fit.FootLoop] = []float64{1000}
	for v, want := range map[float64]bool{1029.9: true, 1030: false, 970: false, 970.1: true} {
		b := bench{f: f, t: Try{Reading: fit.FootLoop, Value: v}}
		if got := b.fits(v); got != want {
			t.Errorf("%g mm beside 1000 mm fits: %t", v, got)
		}
	}
	b := bench{f: &fit.Fitting{}, t: Try{Reading: fit.FootLoop, Before: []float64{990, 1010}}}
	for v, want := range map[float64]bool{1059.9: false, 1060: true, 940: true, 940.1: false} {
		if got := b.farFromEarlier(v); got != want {
			t.Errorf("%g mm is far from 1000 mm: %t", v, got)
		}
	}
	if b.t.Before = nil; b.farFromEarlier(2000) {
		t.Error("far from nothing")
	}
	if list := listOf(f, fit.Nose, 1); list != nil {
		t.Errorf("a hang that nobody hung read %v", list)
	}
}

// The marks that a value may have been read at are where they were read, or else
// where the model has them; those of the tape for a height, of the same table for
// a length.
func TestMarksBesideAReading(t *testing.T) {
	f := &fit.Fitting{Tape: fit.Tape{Class: fit.ClassII, Division: 1}, Hangs: make([]fit.Hang, 1)}
	for r, v := range map[fit.Reading]float64{fit.Stature: 1765, fit.Thigh: 436, fit.Shin: 540, fit.Ahead: 190, fit.FootLoop: 1012, fit.Tether: 118} {
		f.Laid[r] = []float64{v}
	}
	heights := map[fit.Reading]float64{fit.Hip: 1520, fit.ConnectorTop: 2170, fit.ConnectorBottom: 2058, fit.LeftLoopTop: 2500, fit.LeftHitchTop: 2600, fit.Soles: 760}
	for r, v := range heights {
		f.Hangs[0].Heights[r] = []float64{v}
	}
	m := fit.NewModel(f, fit.Options{})
	var s fit.State
	m.Current(&s)
	marks := func(r fit.Reading) [fit.NumReadings]float64 { return (&bench{f: f, t: Try{Reading: r}}).marks() }
	same := func(name string, got, want float64) {
		t.Helper()
		if !(math.Abs(got-want) < 1e-9 || math.IsNaN(got) && math.IsNaN(want)) {
			t.Errorf("%s at %g, want %g", name, got, want)
		}
	}
	tape := marks(fit.Nose)
	for r, v := range heights {
		same(r.String(), tape[r], v)
	}
	same("nose by the survey", tape[fit.Nose], 1520+s.Nose)
	same("raised wrist by the survey", tape[fit.WristUp], 1520+s.WristUp)
	same("Garda hitch by the lengths", tape[fit.GardaLevel], 1520+s.YLevel)
	same("a loop that nobody read", tape[fit.RightLoopTop], math.NaN())
	same("a length beside a height", tape[fit.Thigh], math.NaN())
	body := marks(fit.Thigh)
	same("thigh", body[fit.Thigh], 436)
	same("shin", body[fit.Shin], 540)
	same("waist by the survey", body[fit.Waist], s.Waist)
	same("foot loop beside the body", body[fit.FootLoop], math.NaN())
	loop := marks(fit.FootLoop)
	same("foot loop", loop[fit.FootLoop], 1012)
	same("thigh beside the kit", loop[fit.Thigh], math.NaN())
	same("tether, of another table", loop[fit.Tether], math.NaN())

	f.Hangs[0].Heights[fit.Hip] = nil
	same("nose without a hip", marks(fit.ConnectorTop)[fit.Nose], math.NaN())
	f.Laid[fit.Thigh] = []float64{-1} // cannot be: no model of it
	same("waist of what cannot be", marks(fit.Shin)[fit.Waist], math.NaN())
	same("shin of what cannot be", marks(fit.Shin)[fit.Shin], 540)
}

// The nearest mark is named, as far as it is beside the value, and never the
// reading's own.
func TestNeighbouringMarks(t *testing.T) {
	f := &fit.Fitting{Hangs: make([]fit.Hang, 1)}
	f.Hangs[0].Heights[fit.ConnectorTop], f.Hangs[0].Heights[fit.LeftLoopTop], f.Hangs[0].Heights[fit.Nose] = []float64{2000}, []float64{2020}, []float64{2500}
	for v, want := range map[float64]string{
		1985: fit.ConnectorTop.String(), 1984.9: "", 2009: fit.ConnectorTop.String(), 2011: fit.LeftLoopTop.String(), 2035: fit.LeftLoopTop.String(), 2035.1: "", 2500: "",
	} {
		got := (&bench{f: f, t: Try{Reading: fit.Nose, Value: v}}).neighbours()
		if want == "" && got != nil || want != "" && !slices.Equal(got, []string{"read at the mark of another: " + want + " is there"}) {
			t.Errorf("%g mm: %q, want %q", v, got, want)
		}
	}
}

// Two slips at most are named, each once, what was swapped before all others.
func TestMostSlipsThatAreNamed(t *testing.T) {
	f := &fit.Fitting{}
	ways := []Way{{"inches", 1000}, {"inches", 1000}, {"feet", 1001}, {"metres", 1002}}
	b := bench{f: f, t: Try{Reading: fit.FootLoop, Value: 20000, Ways: ways, Unit: "mm"}}
	if got := b.slips(); !slices.Equal(got, []string{"inches (1000 mm)", "feet (1001 mm)"}) {
		t.Errorf("%q", got)
	}
}

// What the model has is a mark too where a change stands for a reading.
func TestMarksOfWhatWasTiedAnew(t *testing.T) {
	f := &fit.Fitting{Tape: fit.Tape{Class: fit.ClassII, Division: 1}, Hangs: make([]fit.Hang, 1)}
	f.Hangs[0].Heights[fit.Hip], f.Hangs[0].Heights[fit.ConnectorTop] = []float64{1520}, []float64{2170}
	f.Changes = []fit.Change{{Piece: fit.PieceHitchLeft, To: 300, AfterHang: 1}, {Piece: fit.PieceHitchRight, To: 320, AfterHang: 1}}
	at := (&bench{f: f, t: Try{Reading: fit.Nose}}).marks()
	if at[fit.LeftLoopTop] != 2470 || at[fit.RightLoopTop] != 2490 {
		t.Errorf("loops end at %g and %g", at[fit.LeftLoopTop], at[fit.RightLoopTop])
	}
	none := (&bench{f: f, t: Try{Reading: fit.Nose, Hang: 1}}).marks()
	if !math.IsNaN(none[fit.ConnectorTop]) {
		t.Errorf("in a hang to come the connector is at %g", none[fit.ConnectorTop])
	}
}

// A rope a little behind the hip point is usual.
func TestRopeALittleBehindTheHip(t *testing.T) {
	for v, odd := range map[float64]bool{-40: false, 0: false, -60: true} {
		f := &fit.Fitting{}
		f.Laid[fit.Ahead] = []float64{v}
		if list := lengthMisfits(f, "mm"); len(list) > 0 != odd {
			t.Errorf("%g mm ahead: %+v", v, list)
		}
	}
}
