package flow_test

import (
	"strings"
	"testing"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/flow"
)

// A part that somebody says is not in the kit does not come back with the file
// because of what was told of it before; and that is not taken out unasked.
func TestPartThatIsNotThereStaysAway(t *testing.T) {
	for _, c := range []struct {
		key, field, typed string
		there             func(k *fit.Kit) bool
	}{
		{"kit.tether", "kit.tether.length_mm", "130", func(k *fit.Kit) bool { return k.Pieces[fit.PieceTether].Present }},
		{"kit.hitch_left", "kit.hitch_left.cord_mm", "8", func(k *fit.Kit) bool { return k.Pieces[fit.PieceHitchLeft].Present }},
		{"kit.backup_bridge", "kit.backup_bridge.rings_mm", "360", func(k *fit.Kit) bool { return k.Pieces[fit.PieceBackupBridge].Present }},
		{"kit.garda", "kit.garda.inside_width_mm", "38", func(k *fit.Kit) bool { return k.Garda }},
	} {
		t.Run(c.key, func(t *testing.T) {
			s := newStarts(t).with(0, 0x80)
			now := s.Session.Started.Add(time.Hour)
			say := func(key string, e ...flow.Event) {
				p, ok := s.Find(key)
				if !ok {
					t.Fatal("nothing asks for", key)
				}
				s = s.Do(flow.GoTo{Place: p})
				for _, e := range e {
					s = s.Do(e)
				}
			}
			say(c.key, flow.Pick{Option: 0, Now: now})
			say(c.field, flow.Typed{Text: c.typed}, flow.Enter{Now: now})
			before := string(sessions.Encode(&s.Session))
			say(c.key, flow.Pick{Option: 1, Now: now})
			if s.Said.Kind != flow.Refused || !strings.HasPrefix(s.Said.Text, "not yet: ") || string(sessions.Encode(&s.Session)) != before {
				t.Fatalf("said %q", s.Said.Text)
			}
			s = s.Do(flow.Pick{Option: 1, Now: now})
			read, err := sessions.Decode("x", stored(t, &s))
			if err != nil {
				t.Fatal(err)
			}
			if c.there(&s.Session.Fit.Kit) || c.there(&read.Fit.Kit) {
				t.Errorf("it is back:\n%s", sessions.Encode(&s.Session))
			}
		})
	}
}
