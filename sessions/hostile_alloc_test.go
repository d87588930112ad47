package sessions

import (
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

// TestHostileFilesCostLittle decodes what is made to cost much: within the limits
// of size, depth and count as near to them as can be, and far beyond. What is
// allocated for one stays under 100 MB; nothing is that the disk holds beyond the
// limit.
func TestHostileFilesCostLittle(t *testing.T) {
	lines := func(n int, format string) string {
		var b strings.Builder
		for i := range n {
			fmt.Fprintf(&b, format+"\n", i)
		}
		return b.String()
	}
	repeat := strings.Repeat
	for what, text := range map[string]string{
		"lists 100,000 deep":           "x = " + repeat("[", 100_000) + repeat("]", 100_000),
		"lists as deep as may be":      lines(3900, "x%d = [[[[[[[[1]]]]]]]]"),
		"tables 5,000 deep":            "x = " + repeat("{a=", 5000),
		"tables as many as may be":     lines(400, "x%d = {a = 1}"),
		"a dotted key of 32,000 parts": repeat("a.", 32_000) + "a = 1",
		"dotted keys as may be":        lines(3900, "x%d.b.c.d.e.f = 1"),
		"headers as may be":            lines(3900, "[a%d.b.c.d.e.f]"),
		"keys as many as may be":       lines(3999, "x%d = 1"),
		"keys as long as may be":       lines(16, repeat("k", 16_000)+"%d = 1"),
		"tables of one name":           repeat("[[hangs]]\n", 3999),
		"a list as long as may be":     "[[hangs]]\nhip_mm = [" + repeat("1,", 8000) + "]",
		"lists over many lines":        "[[hangs]]\nhip_mm = [" + repeat("1,\n", 80_000) + "]",
		"escapes":                      `x = "` + repeat(`\u0041`, 2500) + `"`,
		"a text over 200,000 lines":    `x = """` + repeat("\n", 200_000),
		"a text that never ends":       repeat(`"`, 200_000),
		"comments":                     repeat("#\n", 130_000),
		"blank lines":                  repeat("\n", 262_144),
		"a key of 1 MB":                repeat("a", 1_000_000) + " = 1",
		"dates":                        "x = [" + repeat("2026-01-01,\n", 20_000) + "]",
	} {
		if got := allocated(func() {
			if _, err := Decode("f.toml", []byte(text)); err == nil {
				t.Errorf("%s: taken as a session", what)
			}
		}); got > 100<<20 {
			t.Errorf("%s: %d MB", what, got>>20)
		} else if testing.Verbose() {
			t.Logf("%s: %d kB", what, got>>10)
		}
	}
	big := filepath.Join(t.TempDir(), "big.toml")
	if err := os.WriteFile(big, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Truncate(big, 100<<20); err != nil {
		t.Fatal(err)
	}
	if got := allocated(func() {
		if _, err := ReadFile(big, nil); err == nil {
			t.Error("100 MB: taken as a session")
		}
	}); got > 1<<20 {
		t.Errorf("100 MB on disk: %d kB", got>>10)
	}
	if got := allocated(func() {
		if _, err := ReadFile("-", endless{}); err == nil {
			t.Error("standard input without end: taken as a session")
		}
	}); got > 8<<20 {
		t.Errorf("standard input without end: %d kB", got>>10)
	}
}

// endless is what a device gives that never ends.
type endless struct{}

func (endless) Read(b []byte) (int, error) { return len(b), nil }

// allocated is how many bytes f asks for in all.
func allocated(f func()) uint64 {
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	f()
	runtime.ReadMemStats(&after)
	return after.TotalAlloc - before.TotalAlloc
}
