package flow_test

import (
	"strings"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/flow"
	"example.com/hangtape/tui/flow/flowtest"
)

// TestShortFitting lets the tool choose what is read of each example's climber:
// fewer numbers than the example has, in the order of the poses, until no
// reading can change a verdict; no must is unknown that need not be, and none
// fails or passes that did the other with everything read.
func TestShortFitting(t *testing.T) {
	for name, want := range flowtest.Examples(t, "../../testdata/sessions/examples") {
		if len(want.Fit.Changes) > 0 {
			continue // its second hang answers its first
		}
		t.Run(name, func(t *testing.T) {
			blank := flowtest.Blank(want)
			st := flow.Start(blank, flow.Config{Judge: (*sessions.Session).Judge, Given: &blank})
			st = st.Do(flow.Pick{Option: len(st.Options()) - 1, Now: want.Started})
			if !st.Short() {
				t.Fatal("no short fitting")
			}
			y, visits, numbers, pose, back := flowtest.New(want), map[string]int{}, 0, fit.NoPose, 0
			for n := 0; st.Ask().Key != "review"; n++ {
				if n > 500 {
					t.Fatalf("no end; stuck at %s: %s", st.Ask().Key, st.Said.Text)
				}
				a := st.Ask()
				if a.Reading.IsHeight() && a.Kind == flow.Reading {
					if p := a.Reading.Info().Pose; p != pose {
						if p < pose {
							back++
						}
						pose = p
					}
				}
				now := y.Now(&st)
				if a.Kind != flow.Reading {
					text, option, isOption := y.Answer(&st)
					switch {
					case isOption:
						st = st.Do(flow.Pick{Option: option, Now: now})
					default:
						st = st.Do(flow.Typed{Text: text}).Do(flow.Enter{Now: now})
					}
					continue
				}
				values := a.Values(&flow.Draft{Session: *want, Hang: st.Hang}, sessions.MM)
				slot := st.Slot(a)
				first := min(1, len(values))
				if visits[slot]++; visits[slot] == 1 { // once, and the rest where it is asked for again
					values = values[:first]
				} else {
					values = values[first:]
				}
				for _, v := range values {
					numbers++
					st = st.Do(flow.Typed{Text: v}).Do(flow.Enter{Now: now})
					for st.Said.Kind == flow.Doubted {
						st = st.Do(flow.Enter{Now: now})
					}
				}
				st = st.Do(flow.Enter{Now: now})
			}
			if !strings.Contains(st.WhyPicked(st.Ask()), "reading") && !strings.Contains(st.WhyPicked(st.Ask()), "May still") {
				t.Errorf("the review does not say whether more readings help: %q", st.WhyPicked(st.Ask()))
			}
			all := 0
			want.Fit.EachList(func(_ string, v []float64) { all += len(v) })
			if numbers >= all {
				t.Errorf("%d numbers of %d", numbers, all)
			}
			if back > 1 || len(st.Session.Fit.Hangs) != 1 {
				t.Errorf("went back to an earlier pose %d times, in %d hangs", back, len(st.Session.Fit.Hangs))
			}
			whole, err := want.Judge()
			if err != nil {
				t.Fatal(err)
			}
			for i, c := range st.Report.Checks {
				w := whole.Checks[i]
				if c.Kind != rules.Must {
					continue
				}
				opposite := c.Verdict == rules.Pass && w.Verdict == rules.Fail || c.Verdict == rules.Fail && w.Verdict == rules.Pass
				if opposite || c.Verdict == rules.Unknown && w.Verdict != rules.Unknown {
					t.Errorf("%s: %s, and %s with all read; missing %v", c.Name, c.Verdict, w.Verdict, c.Missing)
				}
			}
			t.Logf("%d of %d numbers; %s", numbers, all, st.WhyPicked(st.Ask()))
		})
	}
}

// TestShortFittingIsResumed kills a short fitting after each answer and resumes it
// from its file alone: no reading that was taken is asked for without
// end, however doubted.
func TestShortFittingIsResumed(t *testing.T) {
	for name, want := range flowtest.Examples(t, "../../testdata/sessions/examples") {
		if len(want.Fit.Changes) > 0 {
			continue
		}
		t.Run(name, func(t *testing.T) {
			blank := flowtest.Blank(want)
			start := func(s sessions.Session) flow.State {
				return flow.Start(s, flow.Config{Judge: (*sessions.Session).Judge, Given: &blank})
			}
			st := start(blank)
			st = st.Do(flow.Pick{Option: len(st.Options()) - 1, Now: want.Started})
			y := flowtest.New(want)
			for n := 0; st.Ask().Key != "review"; n++ {
				if n > 500 {
					t.Fatalf("no end; stuck at %s: %s", st.Ask().Key, st.Said.Text)
				}
				a, now := st.Ask(), y.Now(&st)
				if values := a.Values(&flow.Draft{Session: *want, Hang: st.Hang}, sessions.MM); a.Kind == flow.Reading && len(values) > 0 {
					st = st.Do(flow.Typed{Text: values[0]}).Do(flow.Enter{Now: now})
					for st.Said.Kind == flow.Doubted {
						st = st.Do(flow.Enter{Now: now})
					}
					if takes := a.Told(&st.Draft); takes > 2 { // asked for twice, as in one sitting
						t.Fatalf("%s is asked for again and again", st.Slot(a))
					}
					s := st.Session
					st = start(*s.Clone())
					continue
				}
				if text, option, isOption := y.Answer(&st); isOption {
					st = st.Do(flow.Pick{Option: option, Now: now})
				} else {
					st = st.Do(flow.Typed{Text: text}).Do(flow.Enter{Now: now})
				}
			}
			if !st.Short() {
				t.Error("it is no short fitting any more")
			}
		})
	}
}
