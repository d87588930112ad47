package flow_test

import (
	"testing"

	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/flow"
	"example.com/hangtape/tui/flow/flowtest"
)

// TestTypingASessionGivesItsFile types each finished session into the flow and
// finds the same file.
func TestTypingASessionGivesItsFile(t *testing.T) {
	for name, want := range flowtest.Examples(t, "../../testdata/sessions/examples") {
		t.Run(name, func(t *testing.T) {
			y := flowtest.New(want)
			blank := flowtest.Blank(want)
			st := flow.Start(blank, flow.Config{Judge: (*sessions.Session).Judge, Given: &blank})
			for n := 0; !st.Left; n++ {
				if n > 2000 {
					t.Fatalf("no end; stuck at %s: %s", st.Ask().Key, st.Said.Text)
				}
				now := y.Now(&st)
				if p, ok := y.Elsewhere(&st); ok {
					st = st.Do(flow.GoTo{Place: p})
				}
				text, option, isOption := y.Answer(&st)
				switch {
				case isOption:
					st = st.Do(flow.Pick{Option: option, Now: now})
				case text == "":
					st = st.Do(flow.Enter{Now: now})
				default:
					st = st.Do(flow.Typed{Text: text}).Do(flow.Enter{Now: now})
				}
				if st.Said.Kind == flow.Refused {
					t.Fatalf("%s: %q refused: %s", st.Ask().Key, text, st.Said.Text)
				}
			}
			if got, want := string(sessions.Encode(&st.Session)), string(sessions.Encode(want)); got != want {
				t.Errorf("got\n%s\nwant\n%s", got, want)
			}
		})
	}
}
