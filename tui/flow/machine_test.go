package flow_test

import (
	"bytes"
	"errors"
	"maps"
	"testing"
	"time"

	"pgregory.net/rapid"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/flow"
	"example.com/hangtape/tui/flow/flowtest"
)

// TestWhateverIsDone does random things to a flow. Whatever they are, no text is
// lost, what is saved can be read again, somebody is asked something that is
// asked, back after going on restores, and the way out is open.
func TestWhateverIsDone(t *testing.T) {
	var examples []*sessions.Session
	for _, s := range flowtest.Examples(t, "../../testdata/sessions/examples") {
		examples = append(examples, s)
	}
	cord := fit.LearnCord(nil)
	judge := func(s *sessions.Session) (*rules.Report, error) { return s.Judge() }
	rapid.Check(t, func(t *rapid.T) {
		now := time.Date(2026, 5, 7, 9, 0, 0, 0, time.UTC)
		start := *rapid.SampledFrom(examples).Draw(t, "session")
		if rapid.Bool().Draw(t, "new") {
			start = flowtest.Blank(&start)
		}
		if rapid.Bool().Draw(t, "short") {
			start.Purpose, start.Notes = sessions.FirstFitting, "Short fitting: what is read was chosen by what it settles."
		}
		if rapid.Bool().Draw(t, "room for the drill") && len(start.Fit.Hangs) > 0 {
			start = *start.Clone()
			start.Purpose = sessions.FirstFitting
			for i := range start.Fit.Hangs[0].Heights[fit.Ground] {
				start.Fit.Hangs[0].Heights[fit.Ground][i] -= 500
			}
		}
		s := flow.Start(start, flow.Config{Judge: judge, Cord: cord, Earlier: rapid.SampledFrom(examples).Draw(t, "earlier")})
		for range rapid.IntRange(1, 60).Draw(t, "events") {
			now = now.Add(time.Duration(rapid.IntRange(-30, 300).Draw(t, "seconds")) * time.Second)
			before := s
			e := event(t, &s, now)
			s = s.Do(e)
			held(t, e, &before, &s)
			if tied := s.Tied; tied != nil {
				e := flow.KeptTied{Piece: tied.Piece, Cord: cord}
				if rapid.Bool().Draw(t, "not kept") {
					e.Err = errors.New("no space")
				}
				before, s = s, s.Do(e)
				held(t, e, &before, &s)
			}
			s.CordToCut(s.Ask())
			if s.Left {
				return
			}
		}
		review, ok := s.Find("review")
		if !ok {
			t.Fatal("no way to the review")
		}
		s = s.Do(flow.GoTo{Place: review})
		if s = s.Do(flow.Pick{Option: len(s.Options()) - 1, Now: now}); !s.Left {
			t.Fatal("no way out of the review")
		}
	})
}

func event(t *rapid.T, s *flow.State, now time.Time) flow.Event {
	return rapid.OneOf(
		rapid.Just[flow.Event](flow.Enter{Now: now}),
		rapid.Just[flow.Event](flow.Enter{Now: now}),
		rapid.Just[flow.Event](flow.Enter{Now: now}),
		rapid.Just[flow.Event](flow.Back{}),
		rapid.Just[flow.Event](flow.Skip{}),
		rapid.Just[flow.Event](flow.SkipStep{}),
		rapid.Just[flow.Event](flow.Older{}),
		rapid.Just[flow.Event](flow.Newer{}),
		rapid.Just[flow.Event](flow.Keep{}),
		rapid.Just[flow.Event](flow.ToWanted{}),
		rapid.Just[flow.Event](flow.DownNow{Now: now}),
		rapid.Custom(func(t *rapid.T) flow.Event { return trial(t, s) }),
		rapid.Map(rapid.IntRange(-1, 8), func(i int) flow.Event { return flow.Pick{Option: i, Now: now} }),
		rapid.Map(rapid.SampledFrom([]string{"", " ", "1217", "-5", "0", "12 3", "x", "68 1/2 in", "5", "360", "1e9", "Ash", "\x1b[2J", "a\"b\\"}),
			func(text string) flow.Event { return flow.Typed{Text: text} }),
		rapid.Custom(func(t *rapid.T) flow.Event {
			g := rapid.SampledFrom(s.Asked()).Draw(t, "step")
			return flow.GoTo{Place: rapid.SampledFrom(g.Places).Draw(t, "place")}
		}),
	).Draw(t, "event")
}

// trial is what only some places lead to: there, or elsewhere a way to them.
func trial(t *rapid.T, s *flow.State) flow.Event {
	p := fit.Piece(rapid.IntRange(0, int(fit.NumPieces)-1).Draw(t, "piece"))
	switch {
	case s.Unadvised():
		return flow.Advised{Answer: s.Advise()}
	case s.Ask().Key == flow.WhatIfKey:
		return rapid.SampledFrom([]flow.Event{
			flow.TryMarks{Piece: p, Marks: rapid.IntRange(-30, 30).Draw(t, "marks")}, flow.Try{Piece: p, To: 600}, flow.TryPiece{Piece: p},
			flow.TryBack{Piece: p}, flow.EndTrial{}, flow.Apply{To: s.Trial},
		}).Draw(t, "trial")
	}
	for _, g := range s.Asked() {
		if key := s.Steps[g.Step].Asks[0].Key; key == flow.AdviceKey || key == flow.WhatIfKey && rapid.Bool().Draw(t, "what if") {
			return flow.GoTo{Place: g.Places[0]}
		}
	}
	return flow.Skip{}
}

// tester is what *testing.T and *rapid.T share.
type tester interface {
	Helper()
	Fatalf(format string, args ...any)
}

// held fails where e broke a promise.
func held(t tester, e flow.Event, before, after *flow.State) {
	t.Helper()
	was, is := sessions.Encode(&before.Session), stored(t, after)
	changed := !bytes.Equal(was, is)
	if changed && after.Saves <= before.Saves {
		t.Fatalf("%#v changed the session and does not save it", e)
	}
	if changed && after.Said.Kind == flow.Doubted {
		t.Fatalf("%#v asks about a reading and takes it", e)
	}
	promised(t, e, before, after)
}

// stored is the file of the session; it fails where that reads as another.
func stored(t tester, s *flow.State) []byte {
	t.Helper()
	data := sessions.Encode(&s.Session)
	read, err := sessions.Decode("x", data)
	if err != nil {
		t.Fatalf("the file cannot be read: %v\n%s", err, data)
	}
	if !bytes.Equal(sessions.Encode(read), data) {
		t.Fatalf("the file reads as something else:\n%s", data)
	}
	return data
}

// promised fails where e lost a text, or leads to where nothing is asked, or from
// where there is no way back.
func promised(t tester, e flow.Event, before, after *flow.State) {
	t.Helper()
	lost := maps.Clone(before.Texts)
	for field, text := range before.Texts {
		if after.Texts[field] == text {
			delete(lost, field)
		}
	}
	switch e.(type) {
	case flow.Typed, flow.Enter:
		if after.Said.Kind == flow.Doubted && len(lost) > 0 {
			t.Fatalf("%#v asks about a reading and loses %q", e, lost)
		}
		// the field in use alone may change, and only by being taken
		if len(lost) > 1 || len(lost) == 1 && after.Said.Kind == flow.Refused {
			t.Fatalf("%#v lost %q", e, lost)
		}
	default:
		if len(lost) > 0 {
			t.Fatalf("%#v lost %q", e, lost)
		}
	}
	asked := false
	for _, g := range after.Asked() {
		for _, p := range g.Places {
			asked = asked || p == after.At
		}
	}
	if !asked {
		t.Fatalf("after %#v a question is shown that is not asked: %s", e, after.Ask().Key)
	}
	if _, ok := e.(flow.Skip); ok && after.At != before.At {
		if back := after.Do(flow.Back{}); back.At != before.At || back.Ask().Key != before.Ask().Key {
			t.Fatalf("back from %s leads to %s, not to %s", after.Ask().Key, back.Ask().Key, before.Ask().Key)
		}
	}
}
