package advice_test

import (
	"slices"
	"testing"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/advice"
)

// benched is how many made-up sessions a benchmark goes through.
const benched = 100

// BenchmarkAdvise is a whole answer, by example.
func BenchmarkAdvise(b *testing.B) {
	eachExample(b, func(name string, f *fit.Fitting, l rules.Limits) {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				advice.Advise("", f, l, rules.MarkMetric)
			}
		})
	})
}

// BenchmarkAnswers goes through varied sessions of real bodies: whole answers
// with windows and what would do sooner, and conflicts by themselves.
func BenchmarkAnswers(b *testing.B) {
	answers, conflicts := sorted(b)
	b.Run("answers", func(b *testing.B) { through(b, answers, adviseOn) })
	b.Run("conflicts", func(b *testing.B) { through(b, conflicts, adviseOn) })
}

func adviseOn(f *fit.Fitting) { advice.Advise("", f, rules.DefaultLimits(), rules.MarkMetric) }

// BenchmarkFrames is a what-if frame after each of some steps of each piece.
func BenchmarkFrames(b *testing.B) {
	answers, _ := sorted(b)
	through(b, answers, func(f *fit.Fitting) {
		w := advice.NewWhatIf(f, rules.DefaultLimits(), rules.MarkMetric)
		w.Step(fit.PieceMainBridge, 1)
		w.Step(fit.PieceTether, -1)
		w.Frame(fit.PieceMainBridge)
	})
}

// sorted are made-up sessions, those with an answer and those with none.
func sorted(b *testing.B) (answers, conflicts []*fit.Fitting) {
	for n := 0; len(answers) < benched || len(conflicts) < benched/4; n++ {
		f := madeUp(b, n)
		if a := advice.Advise("", f, rules.DefaultLimits(), rules.MarkMetric); a.Conflict == nil {
			answers = append(answers, f)
		} else {
			conflicts = append(conflicts, f)
		}
	}
	return answers[:min(len(answers), benched)], conflicts
}

// through tells how long do takes at the median and at the 95th percentile of
// the sessions, each at its best over the rounds.
func through(b *testing.B, sessions []*fit.Fitting, do func(f *fit.Fitting)) {
	best := make([]time.Duration, len(sessions))
	for b.Loop() {
		for i, f := range sessions {
			start := b.Elapsed()
			do(f)
			if d := b.Elapsed() - start; best[i] == 0 || d < best[i] {
				best[i] = d
			}
		}
	}
	slices.Sort(best)
	ms := func(share float64) float64 {
		return best[int(share*float64(len(best)-1)+0.5)].Seconds() * 1000
	}
	b.ReportMetric(ms(0.5), "ms-median")
	b.ReportMetric(ms(0.95), "ms-p95")
	b.ReportMetric(ms(1), "ms-worst")
}
