package fit_test

import (
	"flag"
	"fmt"
	"strings"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/internal/golden"
)

var update = flag.Bool("update", false, "write the golden file afresh")

// tellShape writes where everything of a side view is, a landmark a line.
func tellShape(b *strings.Builder, name string, sh fit.Shape) {
	fmt.Fprintf(b, "# %s, pose %d\n", name, sh.Pose)
	for l, at := range sh.At {
		if at.Known() {
			fmt.Fprintf(b, "%d at %.1f, %.1f", l, at.X, at.Y)
			if sh.Estimated[l] {
				b.WriteString(" estimated")
			}
			b.WriteString("\n")
		}
	}
	if sh.Head.Centre.Known() {
		fmt.Fprintf(b, "head %.1f, %.1f by %g, %g\n", sh.Head.Centre.X, sh.Head.Centre.Y, sh.Head.RX, sh.Head.RY)
	}
	fmt.Fprintf(b, "%d lines", len(sh.Lines))
	for _, c := range sh.Clashes() {
		fmt.Fprintf(b, ", %d is %.1f above %d", c.Lower, c.Depth, c.Upper)
	}
	b.WriteString("\n\n")
}

// The side views of nobody, of a fitting read whole and of one that the survey
// fills in, as they were looked at and found good.
func TestSideViewsAsTheyWereLookedAt(t *testing.T) {
	var b strings.Builder
	low := readings{fit.Stature: {1700}, fit.Hip: {1500}, fit.Soles: {1000}, fit.Ground: {1010}, fit.GardaLevel: {2100}, fit.ConnectorBottom: {2080}, fit.FootLoop: {1040}}
	for _, p := range []fit.Pose{fit.Seated, fit.ThighLevel, fit.TetherTaut, fit.Standing, fit.OnTether} {
		tellShape(&b, "nobody", fit.UsualShape(p))
		whole, _ := stateOf(fitting(everyReading()))
		tellShape(&b, "whole", whole.Shape(p))
		some, _ := stateOf(fitting(low))
		tellShape(&b, "some", some.Shape(p, fit.MarkGardaTie, fit.MarkConnectorTop))
	}
	golden.Hold(t, "testdata/shapes.golden", b.String(), *update)
}
