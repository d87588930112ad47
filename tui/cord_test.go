package tui

import (
	"strings"
	"testing"
	"testing/synctest"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/fit"
	"example.com/hangtape/sessions"
)

// TestCordToCutStandsWhereALengthIsTied: beside the length of a piece that is tied
// anew, as it is typed; by what the pieces that were tied have taught; not where
// it slides.
func TestCordToCutStandsWhereALengthIsTied(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		s := roomy(t)
		tether := &s.Fit.Kit.Pieces[fit.PieceTether]
		tether.Change, tether.Cord = fit.ReTie, fit.Some(8)
		d := begin(t, s, "2")
		said := func() string {
			s, a := &d.m().flow, d.m().flow.Ask()
			for _, l := range append(besideOf(s, a), proseOf(s, a)...) {
				if strings.HasPrefix(l, "To tie it: ") {
					return l
				}
			}
			return ""
		}
		d.goTo(d.place("changes.1.piece"))
		d.typed("6") // the tether
		d.typed("178")
		const first = "To tie it: cut 1140 mm of 8 mm cord for a backup tether of 178 mm."
		if got := said(); got != first {
			t.Errorf("said %q, want %q", got, first)
		}
		view := strings.Join(strings.Fields(d.model.View()), " ")
		if !strings.Contains(view, first) {
			t.Errorf("not shown:\n%s", view)
		}
		d.press(tea.KeyEsc)
		d.typed("2") // the main bridge, which slides
		d.typed("1100")
		if got := said(); got != "" {
			t.Errorf("of a piece that slides: %q", got)
		}
		d.goTo(d.place("kit.tether.change"))
		if !strings.HasPrefix(said(), "To tie it: cut ") {
			t.Errorf("beside the piece: %q", said())
		}
		d.leave()

		c := fit.StandardCord(fit.CordTether)
		c.Finished, c.Diameter, c.Tail = 182, 8, 0
		for range 4 {
			if err := d.store.AddPiece(sessions.TiedPiece{On: d.clock.Truncate(24 * time.Hour), TiedCord: fit.TiedCord{Cord: c, Cut: 1000, Tails: 300}}); err != nil {
				t.Fatal(err)
			}
		}
		d = sitAt(t, d.store.Dir(), 80, 24)
		d.typed("2")
		d.goTo(d.place("changes.1.piece"))
		d.typed("6")
		d.typed("178")
		if got := said(); got == first || !strings.HasPrefix(got, "To tie it: cut ") {
			t.Errorf("after four pieces: %q", got)
		}
		d.leave()
	})
}
