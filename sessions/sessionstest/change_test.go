package sessionstest

import (
	"testing"

	"pgregory.net/rapid"

	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/demo"
)

// Whatever the bytes are, what is made of them is a session that a file can hold,
// and the one that it was made of stays as it was.
func TestChangedSessionsAreFiles(t *testing.T) {
	base, err := sessions.Decode("demo", demo.Files()[3].Data)
	if err != nil {
		t.Fatal(err)
	}
	before := string(sessions.Encode(base))
	different := map[string]bool{}
	rapid.Check(t, func(t *rapid.T) {
		made := sessions.Encode(Changed(base, rapid.SliceOfN(rapid.Byte(), 4, 200).Draw(t, "bytes")))
		if _, err := sessions.Decode("made", made); err != nil {
			t.Fatalf("%v\n%s", err, made)
		}
		if string(sessions.Encode(base)) != before {
			t.Fatal("the session that it was made of has changed")
		}
		different[string(made)] = true
	})
	if len(different) < 10 {
		t.Errorf("only %d different sessions", len(different))
	}
}
