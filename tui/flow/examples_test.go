package flow_test

import (
	"os"
	"path/filepath"
	"testing"

	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/flow"
)

// examples are the finished sessions, by name.
func examples(t *testing.T) map[string]*sessions.Session {
	t.Helper()
	out := map[string]*sessions.Session{}
	paths, err := filepath.Glob("../../testdata/sessions/examples/*.toml")
	if err != nil || len(paths) == 0 {
		t.Fatal("no examples", err)
	}
	for _, p := range paths {
		data, err := os.ReadFile(p)
		if err != nil {
			t.Fatal(err)
		}
		s, err := sessions.Decode(p, data)
		if err != nil {
			t.Fatal(err)
		}
		out[filepath.Base(p)] = s
	}
	return out
}

// TestTypingASessionGivesItsFile types each finished session into the flow and
// finds the same file.
func TestTypingASessionGivesItsFile(t *testing.T) {
	for name, want := range examples(t) {
		t.Run(name, func(t *testing.T) {
			y := &typist{want: want, given: map[string]int{}}
			st := flow.Start(blank(want), flow.Config{Judge: (*sessions.Session).Judge})
			for n := 0; !st.Left; n++ {
				if n > 2000 {
					t.Fatalf("no end; stuck at %s: %s", st.Ask().Key, st.Said.Text)
				}
				now := y.clockAt(&st)
				if st.Ask().Key == "review" && st.Session.Purpose != want.Purpose {
					p, _ := st.Find("session.purpose")
					st = st.Do(flow.GoTo{Place: p})
				}
				text, option, isOption := y.answer(&st)
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
