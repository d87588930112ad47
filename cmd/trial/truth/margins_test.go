package truth

import (
	"math"
	"testing"
)

// An end whose formula was forgotten would hold on every body.
func TestEveryEndHasATrueMargin(t *testing.T) {
	w := Draw(NewDice(3, 0, 0, 1), survey(t)[0])
	k, _ := w.BestKit(SchoolBounds, &limits)
	for e, margin := range w.Margins(k, &limits) {
		if math.IsNaN(margin) {
			t.Errorf("%s %s has no true margin", Ends[e].Check, Ends[e].At)
		}
	}
}
