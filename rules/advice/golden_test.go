package advice_test

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/advice"
)

var update = flag.Bool("update", false, "write the golden file afresh")

type teller struct{ strings.Builder }

func (b *teller) say(format string, args ...any) { fmt.Fprintf(b, format+"\n", args...) }

func (b *teller) changes(name string, feasible bool, cost int, ratio rules.Num, changes []advice.Change, unit string) {
	b.say("%s: feasible %t, work %d, ratio %.3f", name, feasible, cost, ratio)
	for i := range changes {
		c := &changes[i]
		b.say("  %s", c.Words(unit))
		if c.Window != nil {
			b.say("  from %.1f to %.1f", c.Window[0], c.Window[1])
		}
		if len(c.Each) > 0 {
			b.say("  now %.1f", c.Each)
		}
	}
}

func (b *teller) checks(list []advice.Check) {
	for i := range list {
		if c := &list[i]; c.Verdict != rules.Pass {
			b.say("  %s at %q: %s, guard %.2f", c.Name, c.At, c.Brief("mm"), c.Guard)
		}
	}
}

func (b *teller) conflict(c *advice.Conflict) {
	b.say("conflict: %s", c.Words("mm"))
	b.say("  %q %q %q", c.Checks, c.Bounds, c.Pieces)
}

func (b *teller) answer(a *advice.Answer, unit string) {
	b.say("unknown %q, estimated %q, stopped %t", a.Unknown, a.Estimated, a.StoppedEarly)
	b.checks(a.Now)
	for i, o := range []advice.Outcome{a.LeastChange, a.BestFit} {
		b.changes([]string{"least change", "best fit"}[i], o.Feasible, o.Cost, o.Ratio, o.Changes, unit)
		b.checks(o.Checks)
	}
	if a.Sooner != nil {
		b.say("sooner: %s", a.Sooner.Words(a.LeastChange.Cost))
	}
	if a.Conflict != nil {
		b.conflict(a.Conflict)
	}
}

func (b *teller) shared(a *advice.SharedAnswer) {
	b.say("own %q, unknown %q, estimated %q, stopped %t", a.Own, a.Unknown, a.Estimated, a.StoppedEarly)
	for i, o := range []advice.SharedOutcome{a.LeastChange, a.BestFit} {
		b.changes([]string{"least change", "best fit"}[i], o.Feasible, o.Cost, o.Ratio, o.Changes, "mm")
		for _, list := range o.Checks {
			b.checks(list)
		}
	}
	if a.Conflict != nil {
		b.say("apart %q", a.Conflict.Files)
		b.conflict(&a.Conflict.Conflict)
	}
}

// frames tells what is seen of each piece as it is and when it is moved.
func (b *teller) frames(w *advice.WhatIf) {
	run := func(r *[2]float64) string {
		if r == nil {
			return "none"
		}
		return fmt.Sprintf("%.1f to %.1f", r[0], r[1])
	}
	for p := range fit.NumPieces {
		for _, marks := range []int{0, 3, -7} {
			w.Step(p, marks)
			f := w.Frame(p)
			b.say("%s at %.1f (held %q): holds %s, passes %s", p.Key(), f.Piece.To, f.Piece.Held, run(f.Holds), run(f.Passes))
		}
		if p%2 == 0 {
			w.Reset(p)
		}
	}
	for p := range fit.NumPieces {
		if v, ok := w.Lengths()[p]; ok {
			b.say("%s is to be %.1f", p.Key(), v)
		}
	}
}

// Answers, as the slow tests hold them against brute force, the simplex and the
// full model, kept so that a change of them is seen at once.
func TestGoldenAnswers(t *testing.T) {
	type teach struct {
		name string
		tell func(b *teller)
	}
	var all []teach
	l := rules.DefaultLimits()
	for n := range 7 {
		all = append(all, teach{fmt.Sprintf("session %d", n), func(b *teller) {
			mark := []float64{rules.MarkMetric, rules.MarkInch}[n%2]
			b.answer(advice.Advise("", widely(t, n), l, mark), []string{"mm", "in"}[n%2])
		}})
	}
	narrow := func(n int, by float64) *fit.Fitting {
		f := widely(t, n)
		for p := range f.Kit.Pieces {
			b := &f.Kit.Pieces[p].Bounds
			middle := (b[0] + b[1]) / 2
			b[0], b[1] = middle-by, middle+by
		}
		return f
	}
	for _, c := range []struct {
		n  int
		by float64
	}{{0, 15}, {0, 40}, {0, 70}, {2, 25}, {4, 15}, {7, 40}, {8, 15}, {10, 40}, {13, 15}, {21, 40}, {34, 15}} {
		all = append(all, teach{fmt.Sprintf("session %d within %g mm", c.n, c.by), func(b *teller) { b.answer(advice.Advise("", narrow(c.n, c.by), l, rules.MarkMetric), "cm") }})
	}
	all = append(all,
		teach{"together", func(b *teller) { b.shared(advice.AdviseTogether(sharers(t, 0, 1), rules.MarkMetric)) }},
		teach{"three together", func(b *teller) { b.shared(advice.AdviseTogether(sharers(t, 2, 3, 4), rules.MarkMetric)) }},
		teach{"together within little", func(b *teller) {
			list := sharers(t, 4, 13)
			list[0].Fitting, list[1].Fitting = narrow(4, 30), narrow(13, 30)
			b.shared(advice.AdviseTogether(list, rules.MarkMetric))
		}},
		teach{"together where neither can", func(b *teller) {
			list := sharers(t, 0, 1)
			list[0].Fitting, list[1].Fitting = narrow(0, 20), narrow(1, 20)
			b.shared(advice.AdviseTogether(list, rules.MarkMetric))
		}},
		teach{"apart", func(b *teller) {
			list := sharers(t, 0, 1)
			list[0].Fitting.Kit.Pieces[fit.PieceFootLoop].Bounds = [2]float64{700, 800}
			list[1].Fitting.Kit.Pieces[fit.PieceFootLoop].Bounds = [2]float64{900, 1300}
			list[1].Fitting.Kit.Pieces[fit.PieceTether].Change = fit.Fixed
			b.shared(advice.AdviseTogether(list, rules.MarkMetric))
		}},
		teach{"a loop that does not reach", func(b *teller) {
			f := widely(t, 0)
			f.Laid[fit.FootLoop] = []float64{150}
			f.Kit.Pieces[fit.PieceFootLoop].Bounds = [2]float64{100, 1500}
			b.answer(advice.Advise("", f, l, rules.MarkMetric), "mm")
		}},
		teach{"a loop that never reaches", func(b *teller) {
			f := widely(t, 0)
			f.Laid[fit.FootLoop] = []float64{150}
			f.Kit.Pieces[fit.PieceFootLoop].Bounds = [2]float64{100, 250}
			f.Kit.Pieces[fit.PieceTether].Change = fit.Fixed
			b.answer(advice.Advise("", f, l, rules.MarkMetric), "mm")
			b.frames(advice.NewWhatIf(f, l, rules.MarkMetric))
		}},
		teach{"a loop on trial that reaches somewhere", func(b *teller) {
			f := widely(t, 0)
			f.Kit.Pieces[fit.PieceFootLoop].Bounds = [2]float64{100, 1500}
			b.frames(advice.NewWhatIf(f, l, rules.MarkMetric))
			f.Laid[fit.FootLoop] = []float64{150}
			b.frames(advice.NewWhatIf(f, l, rules.MarkMetric))
		}},
		teach{"a tether of no known length", func(b *teller) {
			f := widely(t, 2)
			f.Laid[fit.Tether] = nil
			b.answer(advice.Advise("", f, l, rules.MarkMetric), "mm")
			b.frames(advice.NewWhatIf(f, l, rules.MarkMetric))
		}},
		teach{"little known", func(b *teller) {
			f := widely(t, 1)
			f.Mass, f.Rope.LeastAbove = fit.Number{}, fit.Number{}
			f.Laid[fit.BackupBridgeRings] = nil
			b.answer(advice.Advise("", f, l, rules.MarkMetric), "mm")
		}},
		teach{"on trial", func(b *teller) { b.frames(advice.NewWhatIf(widely(t, 2), l, rules.MarkMetric)) }},
		teach{"on trial in inches", func(b *teller) { b.frames(advice.NewWhatIf(narrow(3, 60), l, rules.MarkInch)) }},
	)
	eachExample(t, func(name string, f *fit.Fitting, l rules.Limits) {
		all = append(all, teach{"slopes " + name, func(b *teller) {
			sense := advice.Sensitivities(f, l)
			for e := range rules.NumEnds {
				for _, s := range sense.Of(e) {
					b.say("%s %q: %s", e.Check(), e.At(), s.Words(e.Check().UnitAt(e.At()), "mm"))
				}
			}
		}})
	})

	const golden = "testdata/answers.golden"
	want, err := os.ReadFile(golden)
	if err != nil && !*update {
		t.Fatal(err)
	}
	parts := strings.Split(string(want), "\n# ")
	var file strings.Builder
	file.WriteString("Answers of made-up sessions; go test ./rules/advice -run GoldenAnswers -update\n")
	for i, c := range all {
		t.Run(c.name, func(t *testing.T) {
			var b teller
			c.tell(&b)
			fmt.Fprintf(&file, "\n# %s\n%s", c.name, b.String())
			if *update {
				return
			}
			if i+1 >= len(parts) {
				t.Fatal("is not in the golden file")
			}
			got, lines := strings.Split(c.name+"\n"+b.String(), "\n"), strings.Split(parts[i+1], "\n")
			for k := range min(len(got), len(lines)) {
				if got[k] != lines[k] {
					t.Fatalf("%q\nwant %q", got[k], lines[k])
				}
			}
		})
	}
	if *update {
		if err := os.WriteFile(golden, []byte(file.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}
