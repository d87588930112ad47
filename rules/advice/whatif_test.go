package advice_test

import (
	"fmt"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/advice"
	"example.com/hangtape/sessions"
)

func ExampleWhatIf() {
	file, err := sessions.ReadFile(filepath.Join(examples, "2-one-must-fails.toml"), nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	w := advice.NewWhatIf(&file.Session.Fit, file.Session.RulesFor(), rules.MarkMetric)
	tell := func(fr advice.Frame) {
		c := fr.Checks[rules.TetherLetsThighLevel]
		fmt.Printf("%s %.0f mm: %s %s, margin %.1f mm", fr.Piece.Piece.Key(), fr.Piece.To, c.Name, c.Verdict, float64(c.Margin))
		if fr.Passes != nil {
			fmt.Printf(", all musts that it moves pass from %.1f to %.1f", fr.Passes[0], fr.Passes[1])
		}
		fmt.Println()
	}
	tell(w.Frame(fit.PieceBackupBridge))
	w.Step(fit.PieceBackupBridge, +8)
	tell(w.Frame(fit.PieceBackupBridge))
	fmt.Println("to apply:", w.Lengths()[fit.PieceBackupBridge])
	w.Reset(fit.PieceBackupBridge)
	fmt.Println("to apply:", len(w.Lengths()))
	// Output:
	// backup_bridge 559 mm: tether-lets-thigh-level fail, margin -12.6 mm, all musts that it moves pass from 601.0 to 710.2
	// backup_bridge 595 mm: tether-lets-thigh-level tight, margin 10.4 mm, all musts that it moves pass from 601.0 to 710.2
	// to apply: 595
	// to apply: 0
}

func eachExample(t testing.TB, do func(name string, f *fit.Fitting, l rules.Limits)) {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(examples, "*.toml"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no examples: %v", err)
	}
	for _, file := range files {
		f, err := sessions.ReadFile(file, nil)
		if err != nil {
			t.Fatal(err)
		}
		do(strings.TrimSuffix(filepath.Base(file), ".toml"), &f.Session.Fit, f.Session.RulesFor())
	}
}

// A frame says what judging the changed fitting says, and its windows are where
// verdicts turn.
func TestWhatIfFrames(t *testing.T) {
	eachExample(t, func(name string, f *fit.Fitting, l rules.Limits) {
		w := advice.NewWhatIf(f, l, rules.MarkMetric)
		for p := range fit.NumPieces {
			if w.Piece(p).Held != "" {
				continue
			}
			w.Step(p, 3)
			fr := w.Frame(p)
			report, err := rules.Judge("", f.Changed(w.Lengths()), l)
			if err != nil {
				t.Fatal(err)
			}
			for c, want := range report.Checks {
				got := fr.Checks[c]
				if worse := want.Verdict == rules.Tight && got.Verdict == rules.Pass; got.Verdict != want.Verdict && !worse {
					t.Errorf("%s %s: %s is %s, judged %s", name, p.Key(), got.Name, got.Verdict, want.Verdict)
				}
			}
			for v, want := range report.Poses {
				if got := fr.Poses[v]; got != want && !math.IsNaN(float64(want.Value)) {
					t.Errorf("%s %s: pose %v, want %v", name, p.Key(), got, want)
				}
			}
			edges(t, name, w, f, l, fr)
		}
	})
}

// edges goes just inside and just outside of a frame's windows.
func edges(t *testing.T, name string, w *advice.WhatIf, f *fit.Fitting, l rules.Limits, fr advice.Frame) {
	t.Helper()
	p, b := fr.Piece.Piece, fr.Piece.Bounds
	at := func(v float64) *rules.Assessment {
		to := w.Lengths()
		to[p] = v
		return rules.Assess(f.Changed(to), l)
	}
	now := at(fr.Piece.To)
	holds := func(v float64) bool {
		a := at(v)
		for e := range rules.NumEnds {
			if now.End(e).Plain == rules.Pass && a.End(e).Plain != rules.Pass {
				return false
			}
		}
		return true
	}
	passes := func(v float64) bool {
		a, lo, hi := at(v), at(b[0]), at(b[1])
		for c := range rules.NumChecks {
			if c.Info().Kind != rules.Must || c == rules.SlipForce || c == rules.TetherStrength || c == rules.TwoLoadPaths {
				continue
			}
			for _, e := range c.Ends() {
				moved := lo.End(e).Margin != hi.End(e).Margin && !(lo.End(e).Plain == rules.Unknown && hi.End(e).Plain == rules.Unknown)
				if moved && a.End(e).Plain != rules.Pass {
					return false
				}
			}
		}
		return true
	}
	check := func(what string, run *[2]float64, ok func(float64) bool) {
		if run == nil {
			for k := range 41 {
				if v := b[0] + (b[1]-b[0])*float64(k)/40; ok(v) {
					t.Errorf("%s %s: no run %s, but so it is at %.1f", name, p.Key(), what, v)
				}
			}
			return
		}
		for k, out := range [2]float64{-1, 1} {
			if v := run[k]; !ok(v) {
				t.Errorf("%s %s: not %s at the edge %.1f", name, p.Key(), what, v)
			}
			if v := run[k] + 0.2*out; v > b[0] && v < b[1] && ok(v) {
				t.Errorf("%s %s: %s at %.1f too, beyond %.1f", name, p.Key(), what, v, run[k])
			}
		}
	}
	if v := fr.Piece.To; v >= b[0] && v <= b[1] {
		check("holding", fr.Holds, holds)
	} else if fr.Holds != nil {
		t.Errorf("%s %s: out of its bounds at %g, and holding in %v", name, p.Key(), v, *fr.Holds)
	}
	check("passing", fr.Passes, passes)
}

func TestWhatIfStepsFromMarkToMark(t *testing.T) {
	f := fit.Fitting{}
	f.Laid[fit.Tether] = []float64{131}
	f.Kit.Pieces[fit.PieceTether] = fit.PieceInfo{Present: true, Change: fit.ReTie, Bounded: true, Bounds: [2]float64{122, 148}}
	w := advice.NewWhatIf(&f, rules.DefaultLimits(), rules.MarkMetric)
	for _, c := range []struct {
		marks int
		want  float64
	}{{+1, 135}, {+1, 140}, {-1, 135}, {-2, 125}, {-1, 125}, {+9, 145}, {0, 145}} {
		if w.Step(fit.PieceTether, c.marks); w.Piece(fit.PieceTether).To != c.want {
			t.Errorf("%+d marks: at %g, want %g", c.marks, w.Piece(fit.PieceTether).To, c.want)
		}
	}
	if err := w.Set(fit.PieceTether, 150); err == nil || w.Piece(fit.PieceTether).To != 145 {
		t.Errorf("beyond its bounds: %v, at %g", err, w.Piece(fit.PieceTether).To)
	}
	if err := w.Set(fit.PieceFootLoop, 1000); err == nil || !strings.Contains(err.Error(), "not known") {
		t.Errorf("a length that is not known was moved: %v", err)
	}
	if w.Reset(fit.PieceTether); len(w.Lengths()) != 0 {
		t.Errorf("still on trial: %v", w.Lengths())
	}
}

// A bound that is a mark is the last one, however it rounds; a piece that is out of
// its bounds only comes back.
func TestWhatIfStepsToItsBounds(t *testing.T) {
	for _, c := range []struct {
		mark, is, lo, hi float64 // mm
		down, up         float64
	}{
		{rules.MarkMetric, 131, 120, 150, 120, 150},
		{rules.MarkInch, 5 * 25.4, 3.5 * 25.4, 7 * 25.4, 3.5 * 25.4, 7 * 25.4},
		{0.1, 0.5, 0.1 * 3, 0.7, 0.3, 0.7}, // three times 0.1 is a little more than 0.3, seven times less than 0.7
		{rules.MarkMetric, 90, 120, 150, 90, 150},
		{rules.MarkMetric, 170, 120, 150, 120, 170},
		{rules.MarkMetric, 123, 121, 124, 123, 123},
		{rules.MarkMetric, 123, 121, 126, 123, 125},
	} {
		f := fit.Fitting{}
		f.Laid[fit.Tether] = []float64{c.is}
		f.Kit.Pieces[fit.PieceTether] = fit.PieceInfo{Present: true, Change: fit.ReTie, Bounded: true, Bounds: [2]float64{c.lo, c.hi}}
		w := advice.NewWhatIf(&f, rules.DefaultLimits(), c.mark)
		for marks, want := range map[int]float64{-99: c.down, 99: c.up} {
			w.Reset(fit.PieceTether)
			if w.Step(fit.PieceTether, marks); math.Abs(w.Piece(fit.PieceTether).To-want) > 1e-9 {
				t.Errorf("%g mm within %g to %g mm, %+d marks: at %g, want %g", c.is, c.lo, c.hi, marks, w.Piece(fit.PieceTether).To, want)
			}
		}
	}
}

// The slope of a margin by a bridge is that of its rise: L / (4·z), by the
// formula's derivative.
func TestSensitivityIsTheSlope(t *testing.T) {
	eachExample(t, func(name string, f *fit.Fitting, l rules.Limits) {
		if name != "1-good-kit" {
			return
		}
		a := rules.Assess(f, l)
		s := a.State()
		sense := advice.Sensitivities(f, l)
		under := rules.GardaUnderConnector.Ends()[0]
		rise := math.Sqrt(s.MainBridge*s.MainBridge-s.MainBridgeRings*s.MainBridgeRings) / 2
		if got, want := sense[under][fit.PieceMainBridge], s.MainBridge/4/rise; math.Abs(got-want) > 1e-4 {
			t.Errorf("main bridge: %g, want %g", got, want)
		}
		over := rules.TetherStopsKnee.Ends()[0]
		if got := sense[over][fit.PieceTether]; math.Abs(got+1) > 1e-9 {
			t.Errorf("a longer tether buys %g of tether-stops-knee, want -1", got)
		}
		var moved []fit.Piece
		for _, slope := range sense.Of(under) {
			moved = append(moved, slope.Piece)
		}
		if fmt.Sprint(moved) != fmt.Sprint([]fit.Piece{fit.PieceMainBridge, fit.PieceFootLoop}) {
			t.Errorf("garda-under-connector is moved by %v", moved)
		}
	})
}

func BenchmarkWhatIf(b *testing.B) {
	eachExample(b, func(name string, f *fit.Fitting, l rules.Limits) {
		b.Run(name, func(b *testing.B) {
			w := advice.NewWhatIf(f, l, rules.MarkMetric)
			step := 1
			for b.Loop() {
				w.Step(fit.PieceMainBridge, step)
				w.Frame(fit.PieceMainBridge)
				step = -step
			}
		})
	})
}
