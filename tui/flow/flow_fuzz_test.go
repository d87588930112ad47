package flow_test

import (
	"flag"
	"maps"
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/flow"
	"example.com/hangtape/tui/flow/flowtest"
)

var (
	drawn    = flag.Int("events", 2000, "how many random events are done to flows")
	drawSeed = flag.Uint64("seed", 1, "which random events")
)

// FuzzFlow holds of any row of events, two bytes each, what TestWhateverIsDone
// holds; what is kept is read again at the end of the row, and not after each event.
func FuzzFlow(f *testing.F) {
	all := newStarts(f)
	for i := range all.examples {
		f.Add(uint8(i), uint8(i+1), []byte{0, 0, 0, 0, 1, 0, 0, 2, 12, 1, 0, 0, 13, 3, 0, 0})
	}
	for k := range byte(kinds) {
		f.Add(k, uint8(0x80)|k, []byte{14, 200, k, 0, k, 1, 0, 0, k, 2, 14, 90, k, 3, 11, 0, 11, 1})
	}
	f.Fuzz(func(t *testing.T, start, how uint8, keys []byte) { pressed(t, all.with(start, how), keys) })
}

// The same of events drawn at random: far more of them in the same time than a
// fuzzer tries.
func TestRandomEventsKeepTheirPromises(t *testing.T) {
	all, draw := newStarts(t), rand.New(rand.NewPCG(*drawSeed, 2))
	keys := make([]byte, 400)
	for n, told := 0, 0; n < *drawn; {
		for i := range keys {
			keys[i] = byte(draw.Uint32())
		}
		start, how := byte(draw.Uint32()), byte(draw.Uint32())
		n += pressed(t, all.with(start, how), keys)
		if t.Failed() {
			t.Fatalf("after a start with %d, %d and the events %q", start, how, keys)
		}
		if n/500_000 > told {
			told = n / 500_000
			t.Logf("%d events", n)
		}
	}
}

// pressed does what keys say, two of them an event, as long as the wizard runs,
// and says how many events these were.
func pressed(t *testing.T, s flow.State, keys []byte) (events int) {
	now := s.Session.Started.Add(time.Hour)
	for ; len(keys) >= 2 && !s.Left; keys = keys[2:] {
		before := s
		e := eventOf(&s, keys[0], keys[1], now)
		s = s.Do(e)
		promised(t, e, &before, &s)
		now = now.Add(time.Duration(keys[1]) * time.Second)
		events++
	}
	stored(t, &s)
	return events
}

// starts are flows that have just been started, so that each is started once: what
// is done to a flow leaves the one before as it was.
type starts struct {
	examples []*sessions.Session
	made     map[[2]byte]flow.State
}

func newStarts(t testing.TB) *starts {
	t.Helper()
	byName := flowtest.Examples(t, "../../testdata/sessions/examples")
	s := &starts{made: map[[2]byte]flow.State{}}
	for _, name := range slices.Sorted(maps.Keys(byName)) {
		s.examples = append(s.examples, byName[name])
	}
	return s
}

// with is a flow of one of the examples, or of a new session.
func (all *starts) with(which, how byte) flow.State {
	n := byte(len(all.examples))
	key := [2]byte{which % n, how & 0xF8}
	if _, ok := all.made[key]; !ok {
		all.made[key] = started(*all.examples[key[0]].Clone(), all.examples[(which%n+how>>4)%n], how)
	}
	return all.made[key]
}

func started(s sessions.Session, earlier *sessions.Session, how byte) flow.State {
	if how&0x80 != 0 {
		s = flowtest.Blank(&s)
	}
	if how&0x40 != 0 {
		s.Purpose, s.Notes = sessions.FirstFitting, "Short fitting: what is read was chosen by what it settles."
	}
	if how&0x20 != 0 && len(s.Fit.Hangs) > 0 { // room for the drill
		for i := range s.Fit.Hangs[0].Heights[fit.Ground] {
			s.Fit.Hangs[0].Heights[fit.Ground][i] -= 500
		}
	}
	c := flow.Config{Judge: func(s *sessions.Session) (*rules.Report, error) { return s.Judge() }, NeedDrill: how&0x10 != 0}
	if how&0x08 != 0 {
		c.Earlier = earlier
	}
	return flow.Start(s, c)
}

// kinds is how many kinds of events eventOf makes.
const kinds = 16

// eventOf is what two bytes mean in front of s.
func eventOf(s *flow.State, kind, which byte, now time.Time) flow.Event {
	switch kind % kinds {
	case 0, 1:
		return flow.Enter{Now: now}
	case 2:
		return flow.Back{}
	case 3:
		return flow.Skip{}
	case 4:
		return flow.SkipStep{}
	case 5:
		return flow.Older{}
	case 6:
		return flow.Newer{}
	case 7:
		return flow.Keep{}
	case 8:
		return flow.ToWanted{}
	case 9:
		return flow.DownNow{Now: now}
	case 10, 11:
		return trialOf(s, which)
	case 12:
		return flow.Typed{Text: texts[int(which)%len(texts)]}
	case 13:
		return flow.Pick{Option: int(which%10) - 1, Now: now}
	case 14:
		asked := s.Asked()
		g := asked[int(which)%len(asked)]
		return flow.GoTo{Place: g.Places[int(which)/len(asked)%len(g.Places)]}
	}
	return flow.Typed{Text: strconv.Itoa(20 * int(which))}
}

var texts = []string{"", " ", "1217", "-5", "0", "12 3", "x", "68 1/2 in", "5", "360", "1e9", "Ash", "\x1b[2J", "a\"b\\"}

// trialOf is what only some places lead to: there, or elsewhere a way to them.
func trialOf(s *flow.State, which byte) flow.Event {
	p := fit.Piece(int(which) % int(fit.NumPieces))
	if s.Ask().Key == flow.WhatIfKey {
		switch which >> 4 % 6 {
		case 0:
			return flow.TryMarks{Piece: p, Marks: int(which)%61 - 30}
		case 1:
			return flow.Try{Piece: p, To: 600}
		case 2:
			return flow.TryPiece{Piece: p}
		case 3:
			return flow.TryBack{Piece: p}
		case 4:
			return flow.EndTrial{}
		}
		return flow.Apply{To: s.Trial}
	}
	for _, g := range s.Asked() {
		if key := s.Steps[g.Step].Asks[0].Key; key == flow.WhatIfKey {
			return flow.GoTo{Place: g.Places[0]}
		}
	}
	return flow.Skip{}
}
