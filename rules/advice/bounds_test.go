package advice_test

import (
	"strings"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/advice"
)

// Bounds that are not searched as they were told are told of: the tether is
// 135 mm long, the main bridge's rings are 364 mm apart, the backup bridge's 359.7 mm.
func TestBoundsThatAreNotSearchedAsToldAreTold(t *testing.T) {
	file := goodKit(t)
	for _, c := range []struct {
		piece fit.Piece
		put   func(info *fit.PieceInfo)
		want  string
	}{
		{fit.PieceTether, func(*fit.PieceInfo) {}, ""},
		{fit.PieceTether, func(i *fit.PieceInfo) { i.Bounds = [2]float64{200, 400} }, "set to 135 mm, outside its bounds of 200 mm to 400 mm"},
		{fit.PieceTether, func(i *fit.PieceInfo) { i.Bounds = [2]float64{50, 100} }, "set to 135 mm, outside"},
		{fit.PieceTether, func(i *fit.PieceInfo) { i.Bounds, i.Change = [2]float64{200, 400}, fit.Fixed }, ""},
		{fit.PieceTether, func(i *fit.PieceInfo) { i.Bounds = [2]float64{135, 400} }, ""},
		{fit.PieceTether, func(i *fit.PieceInfo) { i.Bounds = [2]float64{50, 135} }, ""},
		{fit.PieceMainBridge, func(i *fit.PieceInfo) { i.Bounds = [2]float64{365, 1600} }, ""},
		{fit.PieceMainBridge, func(i *fit.PieceInfo) { i.Bounds = [2]float64{300, 1600} }, "its rings keep it at 365 mm or more: nothing shorter is tried"},
		{fit.PieceBackupBridge, func(i *fit.PieceInfo) { i.Bounds = [2]float64{361, 1600} }, ""},
		{fit.PieceBackupBridge, func(i *fit.PieceInfo) { i.Bounds = [2]float64{300, 1600} }, "its rings keep it at 361 mm or more: nothing shorter is tried"},
		{fit.PieceMainBridge, func(i *fit.PieceInfo) { i.Bounds = [2]float64{300, 365} }, "a change ends within them"},
		{fit.PieceMainBridge, func(i *fit.PieceInfo) { i.Bounds = [2]float64{300, 350} }, "it is left as it is"},
	} {
		s := file.Session.Clone()
		c.put(&s.Fit.Kit.Pieces[c.piece])
		words := advice.BoundWords(advice.Advise("", &s.Fit, rules.DefaultLimits(), rules.MarkMetric).OddBounds, "mm")
		if got := strings.Join(words, "\n"); !strings.Contains(got, c.want) || (got == "") != (c.want == "") {
			t.Errorf("%v within %v: told %q, want %q", c.piece, s.Fit.Kit.Pieces[c.piece].Bounds, got, c.want)
		}
	}
}
