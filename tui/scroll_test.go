package tui

import (
	"strings"
	"testing"
)

// However little room there is for a text, a page on shows more of it, down to
// its end.
func TestAPageOnGoesOnWhereThereIsRoomForALine(t *testing.T) {
	lines := strings.Split("a b c d e f", " ")
	for room := range 5 {
		m := &Model{}
		shown := strings.Join(m.scrolled(lines, room), " ")
		for range lines {
			m.scroll += m.page
			shown = strings.Join(m.scrolled(lines, room), " ")
		}
		if !strings.HasPrefix(shown, "f ") && !strings.Contains(shown, " f ") {
			t.Errorf("room %d: stopped at %q", room, shown)
		}
	}
}
